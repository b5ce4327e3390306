//! Where the bores of a door really are, by what they follow, and how far off the fitting.

use flapwright_model::card::{Depth, Drill, first_pass};
use flapwright_model::door::{BoreReference, Door, DrilledBore, End, Side};
use flapwright_model::id::DoorId;
use flapwright_model::part::LeafId;
use flapwright_model::space::BoxPoint;

use super::door_place::DoorPlace;
use super::fitting::NeededInLeaf;
use crate::inspection::{BoreOffset, BoreSource};

/// A bore in a leaf, in the box.
#[derive(Debug, Clone)]
pub struct LeafBore {
    /// Which leaf.
    pub leaf: LeafId,
    /// Centre on the back of the leaf, in the box.
    pub at: BoxPoint,
    /// What is drilled.
    pub drill: Drill,
    /// Why it is there.
    pub source: BoreSource,
}

/// The bores of a door and how they lie to the fitting. Offsets name a bore by its index in
/// `bores`.
#[derive(Debug, Clone, Default)]
pub struct DoorBores {
    /// All bores of the door but those of the handle.
    pub bores: Vec<LeafBore>,
    /// Index of the bore that is there, if any, for each needed bore in turn.
    pub matched: Vec<Option<usize>>,
}

impl DoorBores {
    /// The bores of a door, given those that its fitting needs.
    #[must_use]
    pub fn of(door: &Door, place: &DoorPlace, needed: &[NeededInLeaf<'_>]) -> Self {
        match &door.bores_follow {
            BoreReference::Fitting => Self::at_fitting(door.id, needed, |_| (0.0, 0.0)),
            BoreReference::Edges { vertical } => {
                Self::at_fitting(door.id, needed, |bore| carried(door, *vertical, bore))
            }
            BoreReference::AsDrilled(drilled) => Self::as_drilled(door.id, drilled, place, needed),
        }
    }

    fn at_fitting(
        door: DoorId,
        needed: &[NeededInLeaf<'_>],
        moved: impl Fn(&NeededInLeaf<'_>) -> (f64, f64),
    ) -> Self {
        let bores: Vec<LeafBore> = needed
            .iter()
            .map(|bore| {
                let (across, up) = moved(bore);
                let at = bore.bore.at;
                LeafBore {
                    leaf: bore.leaf,
                    at: BoxPoint::new(at.x + across, at.y + up, at.z),
                    drill: bore.bore.drill.clone(),
                    source: BoreSource::Fitting {
                        door,
                        side: bore.bore.side,
                    },
                }
            })
            .collect();
        let matched = (0..bores.len()).map(Some).collect();
        Self { bores, matched }
    }

    fn as_drilled(
        door: DoorId,
        drilled: &[DrilledBore],
        place: &DoorPlace,
        needed: &[NeededInLeaf<'_>],
    ) -> Self {
        let bores: Vec<LeafBore> = drilled
            .iter()
            .filter_map(|bore| {
                let edges = place.leaf(bore.leaf)?.edges;
                let x = match bore.from_side {
                    Side::Left => edges.left + bore.across,
                    Side::Right => edges.right - bore.across,
                };
                let y = match bore.from_end {
                    End::Top => edges.top - bore.along,
                    End::Bottom => edges.bottom + bore.along,
                };
                Some(LeafBore {
                    leaf: bore.leaf,
                    at: BoxPoint::new(x, y, place.back),
                    drill: Drill {
                        diameter: bore.diameter,
                        depth: Depth::Blind(bore.depth),
                        purpose: bore.purpose.clone(),
                        pass: first_pass(),
                    },
                    source: BoreSource::AsDrilled { door },
                })
            })
            .collect();
        let matched = match_bores(&bores, needed);
        Self { bores, matched }
    }

    /// How far each needed bore is from the one that is there. `number` gives a bore's number in
    /// its leaf's hole table.
    #[must_use]
    pub fn offsets(
        &self,
        needed: &[NeededInLeaf<'_>],
        number: impl Fn(usize) -> usize,
    ) -> Vec<BoreOffset> {
        needed
            .iter()
            .zip(&self.matched)
            .map(|(bore, matched)| {
                let there = matched.map(|i| (number(i), self.bores[i].at));
                let (across, up) = there.map_or((0.0, 0.0), |(_, at)| {
                    (at.x - bore.bore.at.x, at.y - bore.bore.at.y)
                });
                BoreOffset {
                    leaf: bore.leaf,
                    side: bore.bore.side,
                    purpose: bore.bore.drill.purpose.clone(),
                    needed: bore.bore.at,
                    drilled: there,
                    across,
                    up,
                    edge_ranges: bore.edge_ranges.to_vec(),
                    in_glass_or_metal: bore.in_glass_or_metal,
                }
            })
            .collect()
    }
}

/// How far tweaks carry a bore that is tied to its leaf's edges: (+ to box-right, + up), mm. The
/// edges at the joint of a folding pair have no tweak.
fn carried(door: &Door, vertical: End, bore: &NeededInLeaf<'_>) -> (f64, f64) {
    let across = match bore.bore.side {
        // A group in the middle is drilled from the middle of the door.
        _ if bore.bore.middle => (door.tweaks.right - door.tweaks.left) / 2.0,
        Side::Left => -door.tweaks.left,
        Side::Right => door.tweaks.right,
    };
    let up = match (vertical, bore.leaf) {
        (End::Top, LeafId::Only | LeafId::Upper) => door.tweaks.top,
        (End::Bottom, LeafId::Only | LeafId::Lower) => -door.tweaks.bottom,
        (End::Top, LeafId::Lower) | (End::Bottom, LeafId::Upper) => 0.0,
    };
    (across, up)
}

/// Which bore of an existing door stands for which needed one: within each leaf, side and diameter
/// in order from the top and across where the counts agree, else the nearest that is free.
fn match_bores(bores: &[LeafBore], needed: &[NeededInLeaf<'_>]) -> Vec<Option<usize>> {
    let mut matched = vec![None; needed.len()];
    let mut free: Vec<bool> = vec![true; bores.len()];
    // Between the two fittings' own bores of that diameter: not the middle of the door, because the
    // group in the very middle of a spread belongs to one side as a whole.
    let parting = |leaf: LeafId, diameter: f64| {
        let xs = |side: Side| {
            needed
                .iter()
                .filter(move |bore| {
                    (bore.leaf, bore.bore.side) == (leaf, side)
                        && same_diameter(bore.bore.drill.diameter, diameter)
                })
                .map(|bore| bore.bore.at.x)
        };
        let left = xs(Side::Left).fold(f64::NEG_INFINITY, f64::max);
        let right = xs(Side::Right).fold(f64::INFINITY, f64::min);
        f64::midpoint(left, right)
    };
    let mut groups: Vec<(LeafId, Side, f64)> = Vec::new();
    for bore in needed {
        let group = (bore.leaf, bore.bore.side, bore.bore.drill.diameter);
        if !groups.contains(&group) {
            groups.push(group);
        }
    }
    for (leaf, side, diameter) in groups {
        let in_order = |points: &mut Vec<(usize, BoxPoint)>| {
            points.sort_by(|a, b| b.1.y.total_cmp(&a.1.y).then(a.1.x.total_cmp(&b.1.x)));
        };
        let mut wanted: Vec<(usize, BoxPoint)> = needed
            .iter()
            .enumerate()
            .filter(|(_, bore)| {
                (bore.leaf, bore.bore.side) == (leaf, side)
                    && same_diameter(bore.bore.drill.diameter, diameter)
            })
            .map(|(i, bore)| (i, bore.bore.at))
            .collect();
        let parting = parting(leaf, diameter);
        let mut there: Vec<(usize, BoxPoint)> = bores
            .iter()
            .enumerate()
            .filter(|&(i, bore)| {
                let own = match side {
                    Side::Left => bore.at.x <= parting,
                    Side::Right => bore.at.x > parting,
                };
                free[i] && bore.leaf == leaf && own && same_diameter(bore.drill.diameter, diameter)
            })
            .map(|(i, bore)| (i, bore.at))
            .collect();
        in_order(&mut wanted);
        in_order(&mut there);
        if wanted.len() == there.len() {
            for (want, have) in wanted.iter().zip(&there) {
                matched[want.0] = Some(have.0);
                free[have.0] = false;
            }
            continue;
        }
        for (want, at) in wanted {
            let nearest = there
                .iter()
                .filter(|(i, _)| free[*i])
                .min_by(|a, b| (a.1 - at).length().total_cmp(&(b.1 - at).length()));
            if let Some(&(i, _)) = nearest {
                matched[want] = Some(i);
                free[i] = false;
            }
        }
    }
    matched
}

/// Bores of an existing door count as the same drill when they agree to half a millimetre.
fn same_diameter(a: f64, b: f64) -> bool {
    (a - b).abs() < 0.5
}
