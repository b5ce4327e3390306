//! One number for each of four edges.

use serde::{Deserialize, Serialize};

/// An edge of a door or opening, **as seen from the front of the box**.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash, Serialize, Deserialize)]
pub enum Edge {
    /// The left edge.
    Left,
    /// The right edge.
    Right,
    /// The top edge.
    Top,
    /// The bottom edge.
    Bottom,
}

impl Edge {
    /// All four, in the order in which forms show them.
    pub const ALL: [Self; 4] = [Self::Left, Self::Right, Self::Top, Self::Bottom];

    /// Plain lower-case word.
    #[must_use]
    pub const fn word(self) -> &'static str {
        match self {
            Self::Left => "left",
            Self::Right => "right",
            Self::Top => "top",
            Self::Bottom => "bottom",
        }
    }

    /// The edge across.
    #[must_use]
    pub const fn opposite(self) -> Self {
        match self {
            Self::Left => Self::Right,
            Self::Right => Self::Left,
            Self::Top => Self::Bottom,
            Self::Bottom => Self::Top,
        }
    }
}

/// A value for each of the four edges, as seen from the front.
#[derive(Debug, Clone, Copy, PartialEq, Default, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct Edges<T> {
    /// At the left edge.
    pub left: T,
    /// At the right edge.
    pub right: T,
    /// At the top edge.
    pub top: T,
    /// At the bottom edge.
    pub bottom: T,
}

impl<T: Copy> Edges<T> {
    /// The same value at all four edges.
    pub const fn all(value: T) -> Self {
        Self {
            left: value,
            right: value,
            top: value,
            bottom: value,
        }
    }

    /// The value at one edge.
    pub const fn at(&self, edge: Edge) -> T {
        match edge {
            Edge::Left => self.left,
            Edge::Right => self.right,
            Edge::Top => self.top,
            Edge::Bottom => self.bottom,
        }
    }

    /// The value at one edge, where it stands.
    pub const fn at_ref(&self, edge: Edge) -> &T {
        match edge {
            Edge::Left => &self.left,
            Edge::Right => &self.right,
            Edge::Top => &self.top,
            Edge::Bottom => &self.bottom,
        }
    }

    /// The value at one edge, to be changed.
    pub const fn at_mut(&mut self, edge: Edge) -> &mut T {
        match edge {
            Edge::Left => &mut self.left,
            Edge::Right => &mut self.right,
            Edge::Top => &mut self.top,
            Edge::Bottom => &mut self.bottom,
        }
    }

    /// Another value for each edge.
    pub fn map<U>(self, mut change: impl FnMut(Edge, T) -> U) -> Edges<U> {
        Edges {
            left: change(Edge::Left, self.left),
            right: change(Edge::Right, self.right),
            top: change(Edge::Top, self.top),
            bottom: change(Edge::Bottom, self.bottom),
        }
    }
}
