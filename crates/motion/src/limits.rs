//! What no card and no door goes beyond.

/// No number of a card or a closed door is further from 0: 100 m, far beyond any door.
pub(crate) const LARGEST_NUMBER: f64 = 1e5;

/// Arms shorter than this have no direction, mm.
pub(crate) const SHORTEST_ARM: f64 = 1e-3;

/// No door's input turns further than this, degrees.
pub(crate) const LARGEST_END_DEGREES: f64 = 270.0;
