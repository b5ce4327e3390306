//! Words of the catalogue for what checks name again and again.

use flapwright_model::door::Side;
use flapwright_model::edges::Edge;
use flapwright_model::message::Word;
use flapwright_model::part::LeafId;
use flapwright_model::severity::Severity;
use flapwright_motion::outline::BodyId;

/// An edge, as seen from the front.
#[must_use]
pub const fn edge(edge: Edge) -> Word {
    match edge {
        Edge::Left => Word("left"),
        Edge::Right => Word("right"),
        Edge::Top => Word("top"),
        Edge::Bottom => Word("bottom"),
    }
}

/// A side of the box, as seen from the front.
#[must_use]
pub const fn side(side: Side) -> Word {
    edge(side.edge())
}

/// A leaf of a folding pair, at the beginning of a line; `None` for an only leaf.
#[must_use]
pub const fn leaf(leaf: LeafId) -> Option<Word> {
    match leaf {
        LeafId::Only => None,
        LeafId::Upper => Some(Word("upper-leaf")),
        LeafId::Lower => Some(Word("lower-leaf")),
    }
}

/// That a moving body hits something.
#[must_use]
pub const fn hits(body: BodyId) -> Word {
    match body {
        BodyId::Leaf(_) => Word("leaf-hits"),
        BodyId::Handle => Word("handle-hits"),
        BodyId::Arm(_) => Word("arm-hits"),
    }
}

/// That a moving body comes near something.
#[must_use]
pub const fn comes(body: BodyId) -> Word {
    match body {
        BodyId::Leaf(_) => Word("leaf-comes"),
        BodyId::Handle => Word("handle-comes"),
        BodyId::Arm(_) => Word("arm-comes"),
    }
}

/// A severity.
#[must_use]
pub const fn severity(severity: Severity) -> Word {
    match severity {
        Severity::Note => Word("note"),
        Severity::Caution => Word("caution"),
        Severity::Stop => Word("stop"),
    }
}
