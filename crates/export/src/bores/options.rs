//! How bores are listed and machine files made.

use serde::Serialize;

use super::layers::LayerPattern;

/// How bores are listed and machine files made.
#[derive(Debug, Clone, PartialEq, Eq, Default)]
pub struct BoreOptions {
    /// Which way up the panel lies on the machine's table.
    pub face_up: FaceUp,
    /// The corner from which x and y run.
    pub zero: ZeroCorner,
    /// How layers are named.
    pub layers: LayerPattern,
}

/// Which way up a panel lies.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Default, Serialize)]
#[serde(rename_all = "kebab-case")]
pub enum FaceUp {
    /// The drilled face is up, as on the drilling sheet: the inner face of a side, the underside
    /// of a top or shelf, the back of a leaf.
    #[default]
    Inner,
    /// The drilled face is down: the panel is turned over from left to right, and all places are
    /// mirrored, for a machine that drills from below.
    Outer,
}

/// The corner from which x (to the right) and y (away from the reader) run, as the panel lies.
///
/// Only the origin moves: the picture keeps its hand, so from a corner at the right or away from
/// the reader places are negative.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Default, Serialize)]
#[serde(rename_all = "kebab-case")]
pub enum ZeroCorner {
    /// At the left, next to the reader: no place is negative.
    #[default]
    LowerLeft,
    /// At the right, next to the reader.
    LowerRight,
    /// At the left, away from the reader.
    UpperLeft,
    /// At the right, away from the reader.
    UpperRight,
}

impl ZeroCorner {
    /// In plain words, e.g. `lower left`.
    #[must_use]
    pub const fn words(self) -> &'static str {
        match self {
            Self::LowerLeft => "lower left",
            Self::LowerRight => "lower right",
            Self::UpperLeft => "upper left",
            Self::UpperRight => "upper right",
        }
    }

    pub(super) const fn is_right(self) -> bool {
        matches!(self, Self::LowerRight | Self::UpperRight)
    }

    pub(super) const fn is_upper(self) -> bool {
        matches!(self, Self::UpperLeft | Self::UpperRight)
    }
}
