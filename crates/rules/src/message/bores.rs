//! What the checks on bores say.

use flapwright_model::message::{Count, Mm, Share, Sum, Times, Word};
use flapwright_model::messages;
use flapwright_model::part::Subject;

messages! {
    /// How far and which way something has to go, one step a direction.
    pub enum Step in "step" {
        /// To the right, as seen from the front.
        Right = "right" { by: Mm },
        /// To the left, as seen from the front.
        Left = "left" { by: Mm },
        /// Up.
        Up = "up" { by: Mm },
        /// Down.
        Down = "down" { by: Mm },
        /// Away from the front edge.
        Back = "back" { by: Mm },
        /// Towards the front edge.
        Forward = "forward" { by: Mm },
        /// To another depth.
        Depth = "depth" { is: Mm, was: Mm },
        /// It stays where it is.
        Stays = "stays",
    }
}

impl Step {
    /// By so much to the right and up, as seen from the front, mm.
    #[must_use]
    pub fn seen_from_front(right: f64, up: f64) -> Vec<Self> {
        let across = |by| {
            if right > 0.0 {
                Self::Right { by }
            } else {
                Self::Left { by }
            }
        };
        let along = |by| {
            if up > 0.0 {
                Self::Up { by }
            } else {
                Self::Down { by }
            }
        };
        steps((right, across), (up, along))
    }

    /// By so much away from the front edge and down, mm.
    #[must_use]
    pub fn on_side(back: f64, down: f64) -> Vec<Self> {
        let across = |by| {
            if back > 0.0 {
                Self::Back { by }
            } else {
                Self::Forward { by }
            }
        };
        let along = |by| {
            if down > 0.0 {
                Self::Down { by }
            } else {
                Self::Up { by }
            }
        };
        steps((back, across), (down, along))
    }

    /// By so much to the right and away from the front edge, mm.
    #[must_use]
    pub fn on_underside(right: f64, back: f64) -> Vec<Self> {
        let across = |by| {
            if right > 0.0 {
                Self::Right { by }
            } else {
                Self::Left { by }
            }
        };
        let along = |by| {
            if back > 0.0 {
                Self::Back { by }
            } else {
                Self::Forward { by }
            }
        };
        steps((right, across), (back, along))
    }
}

/// What is left of two steps when those that print as nothing are taken out.
fn steps(
    (across, first): (f64, impl Fn(Mm) -> Step),
    (along, second): (f64, impl Fn(Mm) -> Step),
) -> Vec<Step> {
    let mut steps = Vec::new();
    if across.abs() > NOISE {
        steps.push(first(Mm(across.abs())));
    }
    if along.abs() > NOISE {
        steps.push(second(Mm(along.abs())));
    }
    if steps.is_empty() {
        steps.push(Step::Stays);
    }
    steps
}

/// Noise of the last digits, mm.
const NOISE: f64 = 1e-6;

messages! {
    /// Bores in the back of a door and the places where the fitting needs them.
    pub enum BoresOffFitting in "bores-off-fitting" {
        /// Some are elsewhere.
        Off = "off" {
            off: Count,
            all: Count,
            worst: Vec<Step>,
            largest_offset: Mm [either],
            largest_offset_across: Mm [either],
            largest_offset_up: Mm [either],
            share_of_the_adjustment: Option<Share> [either],
            adjustment_sideways_least: Mm [either],
            adjustment_sideways_greatest: Mm [either],
            adjustment_up_least: Mm [either],
            adjustment_up_greatest: Mm [either],
        },
        /// None is elsewhere, some are missing.
        Missing = "missing" {
            missing: Count,
            all: Count,
            share_of_the_adjustment: Option<Share> [either],
            adjustment_sideways_least: Mm [either],
            adjustment_sideways_greatest: Mm [either],
            adjustment_up_least: Mm [either],
            adjustment_up_greatest: Mm [either],
        },
        /// Some are elsewhere, and some are missing too.
        AlsoMissing = "also-missing" { missing: Count },
        /// The bores of one fitting are off by different amounts.
        Uneven = "uneven" { by: Mm },
        /// The fitting has no adjustment in that direction.
        NoAdjustment = "no-adjustment",
        /// More than the fitting can be adjusted by.
        BeyondAdjustment = "beyond-adjustment" { times: Times },
        /// The fitting can be adjusted by it.
        WithinAdjustment = "within-adjustment" { share: Share },
        /// One bore of the only leaf.
        Bore = "bore" { bore: Count, purpose: String, side: Word, way: Vec<Step> },
        /// One bore of a leaf of a folding pair.
        LeafBore = "leaf-bore" {
            leaf: Word, bore: Count, purpose: String, side: Word, way: Vec<Step>,
        },
        /// A bore that is missing in the only leaf.
        NoBore = "no-bore" { purpose: String, side: Word },
        /// A bore that is missing in a leaf of a folding pair.
        NoLeafBore = "no-leaf-bore" { leaf: Word, purpose: String, side: Word },
        /// By how much the fitting can be adjusted.
        Adjusts = "adjusts" {
            sideways_least: Mm, sideways_greatest: Mm, up_least: Mm, up_greatest: Mm,
        },
        /// From where left and right are seen.
        SeenFromFront = "seen-from-front",
    }
}

messages! {
    /// Wood behind a blind bore.
    pub enum BoreBreaksThrough in "bore-breaks-through" {
        /// The drill comes out on the other face.
        Through = "through" {
            bores: Count,
            over: Mm,
            depth: Mm [either],
            thickness: Mm [either],
            wood_left_before_the_point: Mm [either],
        },
        /// Little wood is left.
        Thin = "thin" {
            bores: Count,
            depth: Mm [either],
            thickness: Mm [either],
            wood_left_before_the_point: Mm [either],
        },
        /// How far the point of the drill runs ahead.
        PointLead = "point-lead" { lead: Mm },
    }
}

messages! {
    /// Wood between a bore and an edge.
    pub enum BoreNearEdge in "bore-near-edge" {
        /// The bore cuts the edge.
        Cuts = "cuts" {
            bore: Count,
            purpose: String,
            edge: Word,
            by: Mm,
            wood_to_the_edge: Mm [either],
            wanted: Mm [either],
        },
        /// Little wood is left.
        Near = "near" {
            bore: Count,
            purpose: String,
            edge: Word,
            wood_to_the_edge: Mm [either],
            wanted: Mm [either],
        },
    }
}

messages! {
    /// Wood between two bores.
    pub enum BoresCollide in "bores-collide" {
        /// They run into each other.
        Touch = "touch" {
            first: Count,
            first_purpose: String,
            second: Count,
            second_purpose: String,
            wood_between: Mm [either],
            wanted: Mm [either],
        },
        /// Little wood is left.
        Near = "near" {
            first: Count,
            first_purpose: String,
            second: Count,
            second_purpose: String,
            wood_between: Mm [either],
            wanted: Mm [either],
        },
    }
}

messages! {
    /// A bore in a framed leaf.
    pub enum BoreMissesMember in "bore-misses-member" {
        /// It reaches into the groove or the infill.
        IntoInfill = "into-infill" {
            bore: Count,
            purpose: String,
            by: Mm,
            infill: String,
            wood_to_the_groove: Mm [either],
        },
    }
}

messages! {
    /// Bores in glass or metal.
    pub enum BoreNotInThisMaterial in "bore-not-in-this-material" {
        /// The card gives none for that material.
        NotOnCard = "not-on-card" { bores: Count, material: String },
    }
}

messages! {
    /// The distance to an edge that a card allows.
    pub enum EdgeDistanceOutsideCard in "edge-distance-outside-card" {
        /// Less than the card allows.
        TooNear = "too-near" {
            bore: Count,
            purpose: String,
            edge: Word,
            under: Mm,
            distance: Mm [either],
            least: Mm [either],
            greatest: Mm [either],
        },
        /// More than the card allows.
        TooFar = "too-far" {
            bore: Count,
            purpose: String,
            edge: Word,
            over: Mm,
            distance: Mm [either],
            least: Mm [either],
            greatest: Mm [either],
        },
    }
}

messages! {
    /// The rows of shelf bores and the bores of the fitting.
    pub enum OffTheGrid in "off-the-grid" {
        /// The fitting's bores lie between those of the rows.
        Below = "below" { below_the_grid: Mm [either] },
    }
}

messages! {
    /// Lengths that add up to another one.
    pub enum Chain in "chain" {
        /// Side, clear width and side.
        Widths = "widths",
        /// Overlay and reveal at an edge of a door.
        OverlayAndReveal = "overlay-and-reveal" { door: Subject, edge: Word },
        /// Reveal, door and reveal.
        RevealsAndWidth = "reveals-and-width" { door: Subject },
    }
}

messages! {
    /// Sums of lengths that are rounded to 1/64 in.
    pub enum RoundingDrift in "rounding-drift" {
        /// Some of them no longer come out.
        Drifts = "drifts" { wrong: Count, all: Count, largest_drift: Mm [greater] },
        /// One of them.
        Sum = "sum" { what: Chain, parts: Sum, whole: Mm },
    }
}

messages! {
    /// The two sides of a box.
    pub enum SideNotSymmetric in "side-not-symmetric" {
        /// They do not mirror each other.
        Differ = "differ" { bores_at_one_side_only: Count [greater] },
        /// What each has alone.
        Alone = "alone" { left: Count, right: Count },
    }
}

messages! {
    /// Bores for side hinges in a lift-up door.
    pub enum SideHingeBores in "side-hinge-bores-on-lift-door" {
        /// There are some.
        Cups = "cups" { cups_at_the_side: Count [greater] },
        /// Where they may come from.
        WasSideHung = "was-side-hung" { largest: Mm },
        /// One of them.
        Cup = "cup" { bore: Count, purpose: String, diameter: Mm, from_edge: Mm, down: Mm },
    }
}
