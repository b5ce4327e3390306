//! Whether a size suits a door.

/// Whether a size suits a door.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub enum Grade {
    /// It suits.
    Fits,
    /// It will do, at the edge of what it is made for.
    Marginal,
    /// It does not.
    No,
}

impl Grade {
    /// In plain words.
    #[must_use]
    pub const fn words(self) -> &'static str {
        match self {
            Self::Fits => "fits",
            Self::Marginal => "marginal",
            Self::No => "no",
        }
    }
}
