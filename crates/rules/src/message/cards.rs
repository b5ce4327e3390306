//! What the checks on fitting cards say.

use flapwright_model::message::{Count, Mm, Word};
use flapwright_model::messages;

messages! {
    /// A card tried on its own worked example.
    pub enum CardExampleFails in "card-example-fails" {
        /// Distances that do not come out.
        Distances = "distances" { distances: Count, largest_difference: Mm [either] },
        /// Only numbers of bores that do not come out.
        Bores = "bores" { largest_difference: Mm [either] },
        /// Bores that are missing or too many on a face.
        BoreCount = "bore-count" { face: Word, listed: Count, has: Count },
        /// One distance.
        Distance = "distance" { face: Word, bore: Count, way: Word, listed: Mm, found: Mm },
    }
}

messages! {
    /// A card without a worked example.
    pub enum CardUnproved in "card-unproved" {
        /// Doors use it.
        Used = "used" { doors: Count [greater] },
    }
}

messages! {
    /// Whether a card was tried on its own worked example.
    pub enum ProofMessage in "proof" {
        /// It comes out.
        Proved = "proved",
        /// There is none.
        NoExample = "no-example",
        /// It does not come out.
        Fails = "fails" { distances: Count },
    }
}
