//! Keys that stand for an action, without a window library.

/// A key with those that are held with it.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash)]
pub struct Keys {
    /// Whether Ctrl (on a Mac: Command) is held.
    pub ctrl: bool,
    /// Whether Shift is held.
    pub shift: bool,
    /// The key.
    pub key: Key,
}

/// One key.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash)]
pub enum Key {
    /// A letter, as a capital.
    Letter(char),
    /// A digit.
    Digit(u8),
    /// One of the function keys.
    Function(u8),
    /// The key with a plus.
    Plus,
    /// The key with a minus.
    Minus,
    /// The key with an equals sign: plus without Shift on many keyboards.
    Equals,
}

impl Keys {
    /// The key alone.
    #[must_use]
    pub const fn plain(key: Key) -> Self {
        Self {
            ctrl: false,
            shift: false,
            key,
        }
    }

    /// With Ctrl.
    #[must_use]
    pub const fn ctrl(key: Key) -> Self {
        Self {
            ctrl: true,
            ..Self::plain(key)
        }
    }

    /// With Shift.
    #[must_use]
    pub const fn shift(key: Key) -> Self {
        Self {
            shift: true,
            ..Self::plain(key)
        }
    }

    /// With Ctrl and Shift.
    #[must_use]
    pub const fn ctrl_shift(key: Key) -> Self {
        Self {
            ctrl: true,
            shift: true,
            key,
        }
    }

    /// How many keys are held with it.
    #[must_use]
    pub fn held(self) -> u8 {
        u8::from(self.ctrl) + u8::from(self.shift)
    }

    /// Whether it would write a sign into a text field.
    #[must_use]
    pub const fn types_text(self) -> bool {
        !self.ctrl && !matches!(self.key, Key::Function(_))
    }
}
