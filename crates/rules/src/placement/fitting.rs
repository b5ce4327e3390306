//! Where a fitting needs its bores, in the box: all from the card's datums, none from the door's
//! edges.

use std::cmp::Ordering;

use flapwright_model::card::{
    AcrossFrom, BackFrom, Card, Distance, DownFrom, Drill, EdgeRange, Spread,
};
use flapwright_model::door::Side;
use flapwright_model::part::LeafId;
use flapwright_model::space::BoxPoint;

use super::body::solid;
use super::door_place::DoorPlace;
use super::opening::OpeningPlace;
use crate::inspection::Solid;

/// A fitting at its place in an opening.
#[derive(Debug, Clone, Copy)]
pub struct FittingPlace<'a> {
    /// Its card.
    pub card: &'a Card,
    /// Name of the size.
    pub size: &'a str,
    /// Thickness of the packing at each side, mm.
    pub packing: f64,
    /// The opening.
    pub opening: &'a OpeningPlace,
    /// The door.
    pub door: &'a DoorPlace,
}

/// A bore that the fitting needs.
#[derive(Debug, Clone)]
pub struct Needed<'a> {
    /// The fitting's own side; for a point of a spread group the nearer side.
    pub side: Side,
    /// Whether it belongs to the group in the very middle of a spread.
    pub middle: bool,
    /// Centre on the drilled face, in the box.
    pub at: BoxPoint,
    /// What is drilled.
    pub drill: &'a Drill,
}

/// A bore that the fitting needs in a leaf.
#[derive(Debug, Clone)]
pub struct NeededInLeaf<'a> {
    /// Which leaf.
    pub leaf: LeafId,
    /// The bore.
    pub bore: Needed<'a>,
    /// Whether it belongs to a spread group.
    pub spread: bool,
    /// Distances to the leaf's edges that the card allows.
    pub edge_ranges: &'a [EdgeRange],
    /// Whether the card allows it in glass or metal.
    pub in_glass_or_metal: bool,
}

impl<'a> FittingPlace<'a> {
    /// Bores in the inner faces of the sides.
    #[must_use]
    pub fn side_bores(&self) -> Vec<Needed<'a>> {
        let mut bores = Vec::new();
        for &side in self.card.sides.ties() {
            let face = match side {
                Side::Left => self.opening.clear.left,
                Side::Right => self.opening.clear.right,
            };
            for bore in &self.card.side_bores {
                let (Some(y), Some(z)) = (self.y(&bore.down), self.z(&bore.back)) else {
                    continue;
                };
                bores.push(Needed {
                    side,
                    middle: false,
                    at: BoxPoint::new(face, y, z),
                    drill: &bore.drill,
                });
            }
        }
        bores
    }

    /// Bores in the underside of the panel above the opening.
    #[must_use]
    pub fn top_bores(&self) -> Vec<Needed<'a>> {
        let mut bores = Vec::new();
        for group in &self.card.top_bores {
            for place in self.spread_places(group.spread.as_ref()) {
                for bore in &group.bores {
                    let (Some(x), Some(z)) = (self.x(&bore.across, place), self.z(&bore.back))
                    else {
                        continue;
                    };
                    let at = BoxPoint::new(x, self.opening.clear.top, z);
                    let SpreadPlace { side, middle, .. } = place;
                    bores.push(Needed {
                        side,
                        middle,
                        at,
                        drill: &bore.drill,
                    });
                }
            }
        }
        bores
    }

    /// Bores in the backs of the leaves.
    #[must_use]
    pub fn leaf_bores(&self) -> Vec<NeededInLeaf<'a>> {
        let mut bores = Vec::new();
        for group in &self.card.door_bores {
            for place in self.spread_places(group.spread.as_ref()) {
                for bore in &group.bores {
                    let (Some(x), Some(y)) = (self.x(&bore.across, place), self.y(&bore.down))
                    else {
                        continue;
                    };
                    let at = BoxPoint::new(x, y, self.door.back);
                    bores.push(NeededInLeaf {
                        leaf: group.leaf,
                        bore: Needed {
                            side: place.side,
                            middle: place.middle,
                            at,
                            drill: &bore.drill,
                        },
                        spread: group.spread.is_some(),
                        edge_ranges: &bore.edge_ranges,
                        in_glass_or_metal: bore.in_glass_or_metal,
                    });
                }
            }
        }
        bores
    }

    /// Bodies of the fittings, one beside each fitted side.
    #[must_use]
    pub fn envelopes(&self) -> Vec<Solid> {
        let envelope = &self.card.envelope;
        let (Some(down_to), Some(back_to)) = (
            envelope.down_to.of(self.size),
            envelope.back_to.of(self.size),
        ) else {
            return Vec::new();
        };
        let front = self.front(envelope.front);
        let y = (
            self.opening.clear.top - down_to,
            self.opening.clear.top - envelope.down_from,
        );
        let z = (front + envelope.back_from, front + back_to);
        let (left, right) = self.mounting_faces();
        self.card
            .sides
            .ties()
            .iter()
            .map(|side| match side {
                Side::Left => solid((left, left + envelope.inward), y, z),
                Side::Right => solid((right - envelope.inward, right), y, z),
            })
            .collect()
    }

    /// x of the mounting faces at left and right: inner faces of the sides, or of the packing.
    #[must_use]
    pub const fn mounting_faces(&self) -> (f64, f64) {
        (
            self.opening.clear.left + self.packing,
            self.opening.clear.right - self.packing,
        )
    }

    const fn front(&self, datum: BackFrom) -> f64 {
        match datum {
            BackFrom::SideFront => self.door.side_front,
            BackFrom::FrameFront => self.door.frame_front,
        }
    }

    fn y(&self, down: &Distance<DownFrom>) -> Option<f64> {
        let from = match down.from {
            DownFrom::BoxTopUnderside => self.opening.clear.top,
            DownFrom::FrameRailUnderside => self.opening.door_opening.top,
            DownFrom::LeafJoint => self.door.joint?,
        };
        Some(from - down.by.of(self.size)?)
    }

    fn z(&self, back: &Distance<BackFrom>) -> Option<f64> {
        Some(self.front(back.from) + back.by.of(self.size)?)
    }

    fn x(&self, across: &Distance<AcrossFrom>, place: SpreadPlace) -> Option<f64> {
        let by = across.by.of(self.size)?;
        Some(match (across.from, place.side) {
            (AcrossFrom::MountingFace, Side::Right) => place.x - by,
            (AcrossFrom::MountingFace, Side::Left) | (AcrossFrom::SpreadPoint, _) => place.x + by,
        })
    }

    /// Where the groups of a card sit across the box.
    fn spread_places(&self, spread: Option<&Spread>) -> Vec<SpreadPlace> {
        let (left, right) = self.mounting_faces();
        let Some(spread) = spread else {
            return self
                .card
                .sides
                .ties()
                .iter()
                .map(|&side| SpreadPlace {
                    side,
                    middle: false,
                    x: match side {
                        Side::Left => left,
                        Side::Right => right,
                    },
                })
                .collect();
        };
        let count = spread.count_for(right - left);
        let (first, last) = (left + spread.end_inset, right - spread.end_inset);
        let step = (last - first) / f64::from(count.saturating_sub(1).max(1));
        // Counted from the nearer end, so that a mirrored box mirrors exactly.
        (0..count)
            .map(|i| {
                let from_right = count - 1 - i;
                let (side, x) = match i.cmp(&from_right) {
                    Ordering::Less => (Side::Left, first + step * f64::from(i)),
                    Ordering::Equal => (Side::Left, f64::midpoint(left, right)),
                    Ordering::Greater => (Side::Right, last - step * f64::from(from_right)),
                };
                SpreadPlace {
                    side,
                    middle: i == from_right,
                    x,
                }
            })
            .collect()
    }
}

/// Where one group of a card sits across the box.
#[derive(Debug, Clone, Copy)]
struct SpreadPlace {
    side: Side,
    middle: bool,
    x: f64,
}
