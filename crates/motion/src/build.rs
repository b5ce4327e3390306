//! From a card and a closed door to a mechanism that is known to close.

use euclid::Vector2D;
use std::f64::consts::PI;

use flapwright_model::card::{Card, OpeningKind};
use flapwright_model::linkage::{Bodies, Pivot};
use flapwright_model::space::{SectionPoint, SectionVector};

use crate::closed::{ClosedDoor, ClosedLeaf};
use crate::error::MotionError;
use crate::flap_table::FlapTable;
use crate::four_bar::{FourBar, LinkNames};
use crate::limits::{LARGEST_END_DEGREES, LARGEST_NUMBER, SHORTEST_ARM};
use crate::mechanism::Mechanism;

/// Turns the pivots of one size of a card into places in the section.
struct Places<'a> {
    card: &'a Card,
    size: &'a str,
    door: &'a ClosedDoor,
}

impl Places<'_> {
    /// Where a pivot is with the door closed, mm.
    fn of(&self, pivot: &Pivot, name: &'static str) -> Result<SectionPoint, MotionError> {
        let number = |value: Option<f64>, way: &str| {
            let value = value.ok_or_else(|| MotionError::NumberMissing {
                what: format!("{name}, {way}"),
                size: self.size.to_owned(),
            })?;
            finite(value, || format!("{name}, {way}"))
        };
        let back = number(pivot.back.of(self.size), "back")?;
        let down = number(pivot.down.of(self.size), "down")?;
        let front = self.door.front_o(self.card.linkage.front);
        Ok(SectionPoint::new(
            front - back,
            self.door.underside_y - down,
        ))
    }

    /// Where a pivot on the inner face of the side is: it cannot be in the panel above.
    fn on_side(&self, pivot: &Pivot, name: &'static str) -> Result<SectionPoint, MotionError> {
        let place = self.of(pivot, name)?;
        let above = place.y - self.door.underside_y;
        if above >= 0.0 && place.x < self.door.front_o(self.card.linkage.front) {
            return Err(MotionError::PivotInPanel { pivot: name, above });
        }
        Ok(place)
    }
}

/// The mechanism of a card on a door, checked from closed to fully open.
pub(crate) fn mechanism(
    card: &Card,
    size: &str,
    door: &ClosedDoor,
) -> Result<Mechanism, MotionError> {
    if card.size(size).is_none() {
        return Err(MotionError::UnknownSize {
            size: size.to_owned(),
        });
    }
    check_kind(card)?;
    let top = check_door(card.kind, door)?;
    let linkage = &card.linkage;
    let end = finite(linkage.end_degrees, || "the end angle".to_owned())?;
    if !(end > 0.0 && end <= LARGEST_END_DEGREES) {
        return Err(MotionError::EndAngle { degrees: end });
    }
    finite(linkage.path_tolerance, || "the path tolerance".to_owned())?;
    finite(linkage.damping, || "the damping".to_owned())?;
    let end = end.to_radians();
    let places = Places { card, size, door };
    match &linkage.bodies {
        Bodies::FixedAxis { axis } => Ok(Mechanism::Fixed {
            axis: places.of(axis, "the axis of the flap")?,
        }),
        Bodies::PoseTable { reference, poses } => {
            let reference = places.of(reference, "the reference point of the poses")?;
            Ok(Mechanism::Table(FlapTable::new(reference, poses, end)?))
        }
        Bodies::Parallel {
            box_pivot,
            door_pivot,
            second_down,
            second_back,
        } => {
            let pivot = places.on_side(box_pivot, "the first arm's pivot in the box")?;
            let pin = places.of(door_pivot, "the first arm's pivot on the door")?;
            let second = Vector2D::new(
                -finite(*second_back, || "the second arm's distance back".to_owned())?,
                -finite(*second_down, || "the second arm's distance down".to_owned())?,
            );
            parallel(pivot, pin, second, end)
        }
        Bodies::Folding {
            axis,
            joint_behind,
            link_box,
            link_below_joint,
            link_behind,
        } => {
            let joint_y = door.joint_y.ok_or(MotionError::JointMissing)?;
            let joint_y = finite(joint_y, || "the place of the joint".to_owned())?;
            let behind = finite(*joint_behind, || "the joint's distance back".to_owned())?;
            let pin_behind = finite(*link_behind, || "the link's distance back".to_owned())?;
            let pin_below = finite(*link_below_joint, || "the link's distance down".to_owned())?;
            let lower = door.leaves.last().map_or(top.back_o, |leaf| leaf.back_o);
            let pivots = [
                places.of(axis, "the axis of the upper leaf")?,
                SectionPoint::new(top.back_o - behind, joint_y),
                places.on_side(link_box, "the guiding link's pivot in the box")?,
                SectionPoint::new(lower - pin_behind, joint_y - pin_below),
            ];
            let names = LinkNames {
                crank: "the upper leaf",
                coupler: "the lower leaf",
                rocker: "the guiding link",
            };
            Ok(Mechanism::Folding(FourBar::new(pivots, end, &names)?))
        }
        Bodies::TwoArms {
            box_first,
            door_first,
            box_second,
            door_second,
        } => {
            let pivots = [
                places.on_side(box_first, "the first arm's pivot in the box")?,
                places.of(door_first, "the first arm's pivot on the door")?,
                places.on_side(box_second, "the second arm's pivot in the box")?,
                places.of(door_second, "the second arm's pivot on the door")?,
            ];
            let names = LinkNames {
                crank: "the first arm",
                coupler: "the line between the arms' pivots on the door",
                rocker: "the second arm",
            };
            Ok(Mechanism::TwoArms(FourBar::new(pivots, end, &names)?))
        }
    }
}

fn parallel(
    pivot: SectionPoint,
    pin: SectionPoint,
    second: SectionVector,
    end: f64,
) -> Result<Mechanism, MotionError> {
    if (pin - pivot).length() < SHORTEST_ARM {
        return Err(MotionError::NoLength {
            arm: "the first arm",
        });
    }
    if second.length() < SHORTEST_ARM {
        return Err(MotionError::NoLength {
            arm: "the line between the two arms",
        });
    }
    // Where the arms come into line with the line through their pivots, nothing keeps the two arms
    // parallel any more: the door could go on with them crossed.
    let arm = pin - pivot;
    let in_line = (second.y.atan2(second.x) - arm.y.atan2(arm.x)).rem_euclid(PI);
    if in_line <= end {
        return Err(MotionError::CannotClose {
            link: "the pair of arms, there in line with its pivots,",
            degrees: in_line.to_degrees(),
        });
    }
    Ok(Mechanism::Parallel { pivot, pin, second })
}

/// Card kind and bodies belong together.
fn check_kind(card: &Card) -> Result<(), MotionError> {
    let (kind, bodies) = match card.linkage.bodies {
        Bodies::FixedAxis { .. } | Bodies::PoseTable { .. } => {
            (OpeningKind::TopHingedFlap, "top-hinged flap")
        }
        Bodies::Parallel { .. } => (OpeningKind::ParallelRisingDoor, "parallel-rising door"),
        Bodies::Folding { .. } => (OpeningKind::FoldingPair, "folding pair"),
        Bodies::TwoArms { .. } => (OpeningKind::OverTheTopDoor, "over-the-top door"),
    };
    if kind == card.kind {
        Ok(())
    } else {
        Err(MotionError::KindAndBodies {
            kind: card.kind,
            bodies,
        })
    }
}

/// The door has the leaves that the kind needs, and all its numbers are finite.
fn check_door(kind: OpeningKind, door: &ClosedDoor) -> Result<ClosedLeaf, MotionError> {
    let (needed, found) = (kind.leaf_count(), door.leaves.len());
    if needed != found {
        return Err(MotionError::LeafCount {
            kind,
            needed,
            found,
        });
    }
    for datum in [door.underside_y, door.side_front_o, door.frame_front_o] {
        finite(datum, || "a datum of the box".to_owned())?;
    }
    for (index, leaf) in door.leaves.iter().enumerate() {
        for edge in [leaf.top, leaf.bottom, leaf.back_o, leaf.front_o] {
            finite(edge, || {
                format!("an edge of leaf {} from the top", index + 1)
            })?;
        }
        if leaf.top <= leaf.bottom || leaf.front_o <= leaf.back_o {
            return Err(MotionError::EmptyLeaf { number: index + 1 });
        }
    }
    if let Some(handle) = &door.handle {
        for number in [handle.y, handle.projection] {
            finite(number, || "a number of the handle".to_owned())?;
        }
    }
    door.leaves.first().copied().ok_or(MotionError::LeafCount {
        kind,
        needed,
        found,
    })
}

fn finite(value: f64, what: impl FnOnce() -> String) -> Result<f64, MotionError> {
    if !value.is_finite() {
        Err(MotionError::NotFinite { what: what() })
    } else if value.abs() > LARGEST_NUMBER {
        Err(MotionError::TooLarge {
            what: what(),
            value,
        })
    } else {
        Ok(value)
    }
}
