//! From a card and a closed door to a mechanism that is known to close.

use euclid::Vector2D;
use std::f64::consts::PI;

use flapwright_model::card::{Card, OpeningKind};
use flapwright_model::linkage::{Bodies, Pivot};
use flapwright_model::space::{SectionPoint, SectionVector};

use crate::closed::{ClosedDoor, ClosedLeaf};
use crate::error::{MotionError, WhichNumber, kind_word};
use crate::flap_table::FlapTable;
use crate::four_bar::{FourBar, LinkNames};
use crate::limits::{LARGEST_END_DEGREES, LARGEST_NUMBER, SHORTEST_ARM};
use crate::mechanism::Mechanism;
use flapwright_model::message::{AsTyped, Count, Degrees, Mm, Word};

/// Turns the pivots of one size of a card into places in the section.
struct Places<'a> {
    card: &'a Card,
    size: &'a str,
    door: &'a ClosedDoor,
}

impl Places<'_> {
    /// Where a pivot is with the door closed, mm.
    fn of(&self, place: &Pivot, pivot: Word) -> Result<SectionPoint, MotionError> {
        let number = |value: Option<f64>, way: Word| {
            let number = WhichNumber::OfPivot { pivot, way };
            match value {
                Some(value) => finite(value, number),
                None => Err(MotionError::NumberMissing {
                    number,
                    size: self.size.to_owned(),
                }),
            }
        };
        let back = number(place.back.of(self.size), Word("way-back"))?;
        let down = number(place.down.of(self.size), Word("way-down"))?;
        let front = self.door.front_o(self.card.linkage.front);
        Ok(SectionPoint::new(
            front - back,
            self.door.underside_y - down,
        ))
    }

    /// Where a pivot on the inner face of the side is: it cannot be in the panel above.
    fn on_side(&self, place: &Pivot, pivot: Word) -> Result<SectionPoint, MotionError> {
        let place = self.of(place, pivot)?;
        let above = place.y - self.door.underside_y;
        if above >= 0.0 && place.x < self.door.front_o(self.card.linkage.front) {
            return Err(MotionError::PivotInPanel {
                pivot,
                above: Mm(above),
            });
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
    let end = finite(linkage.end_degrees, named(Word("end-angle")))?;
    if !(end > 0.0 && end <= LARGEST_END_DEGREES) {
        return Err(MotionError::EndAngle {
            angle: AsTyped(end),
            most: AsTyped(LARGEST_END_DEGREES),
        });
    }
    finite(linkage.path_tolerance, named(Word("path-tolerance")))?;
    finite(linkage.damping, named(Word("damping")))?;
    let end = end.to_radians();
    let places = Places { card, size, door };
    match &linkage.bodies {
        Bodies::FixedAxis { axis } => Ok(Mechanism::Fixed {
            axis: places.of(axis, Word("axis-of-flap"))?,
        }),
        Bodies::PoseTable { reference, poses } => {
            let reference = places.of(reference, Word("reference-of-poses"))?;
            Ok(Mechanism::Table(FlapTable::new(reference, poses, end)?))
        }
        Bodies::Parallel {
            box_pivot,
            door_pivot,
            second_down,
            second_back,
        } => {
            let pivot = places.on_side(box_pivot, Word("first-arm-box"))?;
            let pin = places.of(door_pivot, Word("first-arm-door"))?;
            let second = Vector2D::new(
                -finite(*second_back, named(Word("second-arm-back")))?,
                -finite(*second_down, named(Word("second-arm-down")))?,
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
            let joint_y = finite(joint_y, named(Word("place-of-joint")))?;
            let behind = finite(*joint_behind, named(Word("joint-back")))?;
            let pin_behind = finite(*link_behind, named(Word("link-back")))?;
            let pin_below = finite(*link_below_joint, named(Word("link-down")))?;
            let lower = door.leaves.last().map_or(top.back_o, |leaf| leaf.back_o);
            let pivots = [
                places.of(axis, Word("axis-of-upper-leaf"))?,
                SectionPoint::new(top.back_o - behind, joint_y),
                places.on_side(link_box, Word("guiding-link-box"))?,
                SectionPoint::new(lower - pin_behind, joint_y - pin_below),
            ];
            let names = LinkNames {
                crank: Word("link-upper-leaf"),
                coupler: Word("link-lower-leaf"),
                rocker: Word("guiding-link"),
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
                places.on_side(box_first, Word("first-arm-box"))?,
                places.of(door_first, Word("first-arm-door"))?,
                places.on_side(box_second, Word("second-arm-box"))?,
                places.of(door_second, Word("second-arm-door"))?,
            ];
            let names = LinkNames {
                crank: Word("first-arm"),
                coupler: Word("line-on-door"),
                rocker: Word("second-arm"),
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
            arm: Word("first-arm"),
        });
    }
    if second.length() < SHORTEST_ARM {
        return Err(MotionError::NoLength {
            arm: Word("line-between-arms"),
        });
    }
    // Where the arms come into line with the line through their pivots, nothing keeps the two arms
    // parallel any more: the door could go on with them crossed.
    let arm = pin - pivot;
    let in_line = (second.y.atan2(second.x) - arm.y.atan2(arm.x)).rem_euclid(PI);
    if in_line <= end {
        return Err(MotionError::ArmsInLine {
            at: Degrees(in_line.to_degrees()),
        });
    }
    Ok(Mechanism::Parallel { pivot, pin, second })
}

/// Card kind and bodies belong together.
fn check_kind(card: &Card) -> Result<(), MotionError> {
    let kind = match card.linkage.bodies {
        Bodies::FixedAxis { .. } | Bodies::PoseTable { .. } => OpeningKind::TopHingedFlap,
        Bodies::Parallel { .. } => OpeningKind::ParallelRisingDoor,
        Bodies::Folding { .. } => OpeningKind::FoldingPair,
        Bodies::TwoArms { .. } => OpeningKind::OverTheTopDoor,
    };
    if kind == card.kind {
        Ok(())
    } else {
        Err(MotionError::KindAndBodies {
            kind: kind_word(card.kind),
            bodies: kind_word(kind),
        })
    }
}

/// The door has the leaves that the kind needs, and all its numbers are finite.
fn check_door(kind: OpeningKind, door: &ClosedDoor) -> Result<ClosedLeaf, MotionError> {
    let (needed, found) = (kind.leaf_count(), door.leaves.len());
    if needed != found {
        return Err(MotionError::LeafCount {
            kind: kind_word(kind),
            needed: Count(needed),
            found: Count(found),
        });
    }
    for datum in [door.underside_y, door.side_front_o, door.frame_front_o] {
        finite(datum, named(Word("datum-of-box")))?;
    }
    for (index, leaf) in door.leaves.iter().enumerate() {
        for edge in [leaf.top, leaf.bottom, leaf.back_o, leaf.front_o] {
            finite(
                edge,
                WhichNumber::EdgeOfLeaf {
                    number: Count(index + 1),
                },
            )?;
        }
        if leaf.top <= leaf.bottom || leaf.front_o <= leaf.back_o {
            return Err(MotionError::EmptyLeaf {
                number: Count(index + 1),
            });
        }
    }
    if let Some(handle) = &door.handle {
        for number in [handle.y, handle.projection] {
            finite(number, named(Word("number-of-handle")))?;
        }
    }
    door.leaves.first().copied().ok_or(MotionError::LeafCount {
        kind: kind_word(kind),
        needed: Count(needed),
        found: Count(found),
    })
}

const fn named(name: Word) -> WhichNumber {
    WhichNumber::Named { name }
}

fn finite(value: f64, number: WhichNumber) -> Result<f64, MotionError> {
    if !value.is_finite() {
        Err(MotionError::NotFinite { number })
    } else if value.abs() > LARGEST_NUMBER {
        Err(MotionError::TooLarge {
            number,
            value: AsTyped(value),
        })
    } else {
        Ok(value)
    }
}
