//! Everything that a check, an acceptance or a remedy can say, as data.
//!
//! # How a finding is said
//!
//! A finding has **one message**, its headline: what is wrong and by how much. Where it is, its
//! subjects tell. Its **reasons** are messages of their own: bore by bore, why, what to look at. A
//! remedy has a **kind** and **effects**. None of them holds a sentence: the crate `words` says
//! them from its catalogues, in the job's unit.
//!
//! Each check has one enum, with a variant for each thing that it can say. The key of the text
//! follows from the declaration: `door-hits-ceiling.hits` is the attribute `.hits` of the message
//! `door-hits-ceiling` in `assets/words/*/`. Fields are typed quantities; names that people gave
//! are `String`s, words of the program are keys of the catalogue
//! ([`Word`](flapwright_model::message::Word)), places are ids.
//!
//! A field that is marked `[greater]`, `[smaller]` or `[either]` is a **number of the finding**:
//! machines read it, and an accepted finding comes back when it gets worse. Its name in job files
//! and machine output is the field's.
//!
//! # How to add one
//!
//! Add the variant here and its text to the catalogue. A test in `words` fails while a text is
//! missing, uses an argument that is not there, or is there for nothing.

pub mod bores;
pub mod cards;
pub mod closed;
pub mod load;
pub mod panels;
pub mod remedy;
pub mod slips;
pub mod travel;
pub mod word;

use flapwright_model::message::{Said, Say};
use flapwright_motion::reason_message::{LoadName, ReasonMessage};
use flapwright_motion::{DriveError, Mend, MotionError, WhichNumber};

pub use bores::*;
pub use cards::*;
pub use closed::*;
pub use load::*;
pub use panels::*;
pub use remedy::*;
pub use slips::*;
pub use travel::*;

/// Collects enums of messages in one.
macro_rules! collect {
    ($($name:ident),* $(,)?) => {
        /// What a finding says: its headline or one of its reasons.
        #[derive(Debug, Clone, PartialEq)]
        pub enum Message {
            $(
                #[doc = concat!("See [`", stringify!($name), "`].")]
                $name($name),
            )*
        }

        $(
            impl From<$name> for Message {
                fn from(it: $name) -> Self {
                    Self::$name(it)
                }
            }
        )*

        impl Say for Message {
            fn say(&self) -> Said {
                match self {
                    $( Self::$name(it) => it.say(), )*
                }
            }
        }

        /// What findings say, one example of each.
        fn of_findings() -> Vec<Said> {
            let each = [ $( $name::examples() ),* ];
            each.into_iter().flatten().collect()
        }
    };
}

collect!(
    Advice,
    BoreBreaksThrough,
    BoreMissesMember,
    BoreNearEdge,
    BoreNotInThisMaterial,
    BoresCollide,
    BoresOffFitting,
    BoxTooShallow,
    CardExampleFails,
    CardUnproved,
    DoorHitsCeiling,
    DoorHitsNeighbour,
    DoorHitsObstacle,
    DoorOutsideSizeSpan,
    DoorTooHeavy,
    DoorTooLight,
    DoorsOverlap,
    DrilledPanelDiffers,
    EdgeDistanceOutsideCard,
    FallsWhenLetGo,
    FittingHitsShelf,
    FrameBlocksFitting,
    GapCatchesFingers,
    GlassNeedsSafetyGlass,
    HandForceTooHigh,
    HandleOutOfReach,
    LeafHasNoSize,
    LeavesMeet,
    LiftCannotWork,
    LinkageCannotClose,
    MirroredPairDiffers,
    OffTheGrid,
    OneSidedFittingRacks,
    OpenDoorAtHeadHeight,
    OpenDoorsMeet,
    OpeningTooShort,
    PanelDiffers,
    ReasonMessage,
    Reopened,
    RevealOutOfRange,
    RoundingDrift,
    SideHingeBores,
    SideNotSymmetric,
    SizeCoversPart,
    SpringsOpen,
    StaleSheet,
    TopEdgeHitsPanel,
    UnevenReveals,
    WallFixingReminder,
    WideDoorSags,
);

/// Every message that can be said, one example of each: what a catalogue must have.
#[must_use]
pub fn examples() -> Vec<Said> {
    let parts = [
        BorePlace::examples(),
        Chain::examples(),
        Effect::examples(),
        FittingName::examples(),
        LoadName::examples(),
        ProofMessage::examples(),
        RemedyKind::examples(),
        DriveError::examples(),
        Mend::examples(),
        MotionError::examples(),
        SlipMessage::examples(),
        SlipRemedy::examples(),
        WhichNumber::examples(),
        Step::examples(),
    ];
    let parts = parts.into_iter().flatten();
    of_findings().into_iter().chain(parts).collect()
}
