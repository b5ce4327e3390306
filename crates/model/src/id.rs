//! Identities: what a part of a job is called by the program, whatever its name and its place in a
//! list.
//!
//! All kinds of identities of one job come from one counter, [`Job::next_id`], so a number stands
//! for one thing only and is never used again, not even after what had it is gone. 0 stands for
//! "not given yet": a file that is written by hand may leave identities out, and what is new gets
//! them when it comes into the job.
//!
//! In files an identity is its number; where people or machines read it (messages, lists) it has
//! the letter of its kind before it: `b7`, `d12`.
//!
//! [`Job::next_id`]: crate::job::Job::next_id

use std::fmt;

use serde::{Deserialize, Serialize};

/// What all kinds of identities have in common.
pub trait Id: Copy {
    /// The identity of that number.
    fn from_number(number: u32) -> Self;

    /// Its number; 0 while it is not given.
    fn number(self) -> u32;

    /// The same, to be given or changed.
    fn number_mut(&mut self) -> &mut u32;

    /// Whether it is given.
    fn is_given(self) -> bool {
        self.number() != 0
    }
}

macro_rules! id {
    ($(#[$doc:meta])* $name:ident, $letter:literal) => {
        $(#[$doc])*
        #[derive(
            Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash, Default, Serialize, Deserialize,
        )]
        #[serde(transparent)]
        pub struct $name(u32);

        impl $name {
            /// The identity of that number; 0: not given yet.
            #[must_use]
            pub const fn new(number: u32) -> Self {
                Self(number)
            }

            /// Whether it is not given yet; such an identity is left out of files.
            #[must_use]
            pub const fn is_left_out(&self) -> bool {
                self.0 == 0
            }
        }

        impl Id for $name {
            fn from_number(number: u32) -> Self {
                Self(number)
            }

            fn number(self) -> u32 {
                self.0
            }

            fn number_mut(&mut self) -> &mut u32 {
                &mut self.0
            }
        }

        impl fmt::Display for $name {
            fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
                write!(f, concat!($letter, "{}"), self.0)
            }
        }
    };
}

id!(
    /// A box of a job.
    BoxId,
    "b"
);
id!(
    /// An opening of a box, divided or not.
    OpeningId,
    "o"
);
id!(
    /// A shelf, fixed or loose.
    ShelfId,
    "s"
);
id!(
    /// A divider.
    DividerId,
    "v"
);
id!(
    /// A door.
    DoorId,
    "d"
);
id!(
    /// An obstacle of the room.
    ObstacleId,
    "x"
);
id!(
    /// A card in use.
    CardId,
    "c"
);

/// Gives new identities.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct Ids {
    next: u32,
}

impl Ids {
    /// Begins with a number that no identity has had; 0 counts as 1.
    #[must_use]
    pub const fn from(next: u32) -> Self {
        Self {
            next: if next == 0 { 1 } else { next },
        }
    }

    /// A new identity.
    pub fn give<I: Id>(&mut self) -> I {
        I::from_number(self.number())
    }

    /// The number of a new identity, whatever kind it is of.
    pub(crate) const fn number(&mut self) -> u32 {
        let number = self.next;
        // A job of four thousand million changes does not happen; if it did, validation would
        // refuse the second use of the last number.
        self.next = self.next.saturating_add(1);
        number
    }

    /// Gives an identity where there is none.
    pub fn fill<I: Id>(&mut self, id: &mut I) {
        if !id.is_given() {
            *id = self.give();
        }
    }

    /// The number of the next identity.
    #[must_use]
    pub const fn next(&self) -> u32 {
        self.next
    }
}
