//! What lifts the door: the springs or struts of one size at one setting and temperature.
//!
//! A spring table says what the card says it of (pair or piece); a strut's force is always that
//! of one strut. All fitted pieces work together.

use flapwright_model::card::{Card, Size};
use flapwright_model::lift::{Lift, PieceCount, Strut};
use flapwright_model::space::SectionPoint;

use crate::closed::ClosedDoor;
pub use crate::error::DriveError;
use crate::limits::LARGEST_NUMBER;
use crate::motion::Motion;
use crate::pose::PoseJet;
use crate::spring::Spring;
use crate::strut::{Gas, GasStrut, NOMINAL_CELSIUS, StrutState};
use flapwright_model::message::{AsTyped, Degrees, Mm, Word};

/// Steps of the sweep that proves a strut's stroke.
const STROKE_STEPS: u16 = 64;
/// A strut may be this much off its stroke, mm: rounding of typed places.
const STROKE_TOLERANCE: f64 = 1e-6;

/// How the lift is set and where it hangs.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct DriveState {
    /// How many fittings carry the door, 1 or 2.
    pub pieces: u8,
    /// From 0 (weakest) to 1 (strongest setting of a spring).
    pub setting: f64,
    /// Temperature, °C; acts on struts.
    pub celsius: f64,
}

impl DriveState {
    /// As the card has it fitted, at a setting, at 20 °C.
    #[must_use]
    pub fn of(card: &Card, setting: f64) -> Self {
        let pieces = if card.sides.ties().len() == 1 { 1 } else { 2 };
        Self {
            pieces,
            setting,
            celsius: NOMINAL_CELSIUS,
        }
    }
}

/// By how much figures of a card are to be multiplied when that many pieces are fitted.
pub(crate) fn share(per: PieceCount, pieces: u8) -> f64 {
    match per {
        PieceCount::PerPair => f64::from(pieces) / 2.0,
        PieceCount::PerPiece => f64::from(pieces),
    }
}

/// The springs or struts that lift a door.
#[derive(Debug, Clone, PartialEq)]
pub struct Drive(Kind);

#[derive(Debug, Clone, PartialEq)]
enum Kind {
    Nothing,
    Spring(Spring),
    Strut(GasStrut),
}

/// What lifts, at one place of the way.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Push {
    /// Spring moment S about the input, N·m: + pushes open. S = -dE/dq.
    pub moment: f64,
    /// Friction R about the input, N·m, never below 0.
    pub friction: f64,
    /// The strut, where there is one.
    pub strut: Option<StrutState>,
}

impl Drive {
    /// Nothing lifts and nothing rubs.
    pub const NOTHING: Self = Self(Kind::Nothing);

    /// What lifts a door on a size of a card.
    ///
    /// # Errors
    /// [`DriveError`] for a table or a number that cannot be, and for a strut whose stroke does
    /// not reach from closed to fully open.
    pub fn new(
        card: &Card,
        size: &Size,
        door: &ClosedDoor,
        motion: &Motion,
        state: &DriveState,
    ) -> Result<Self, DriveError> {
        let factor = share(card.per, state.pieces);
        match &size.lift {
            Lift::Spring {
                table, friction, ..
            } => {
                let setting = if state.setting.is_nan() {
                    0.0
                } else {
                    state.setting
                };
                let setting = setting.clamp(0.0, 1.0);
                Ok(Self(Kind::Spring(Spring::new(
                    table, *friction, setting, factor,
                )?)))
            }
            Lift::Strut(strut) => {
                Self::for_strut(strut, door, motion, door.front_o(card.linkage.front), state)
            }
        }
    }

    /// What a strut does for a door; `front` is o of the front datum that its anchor in the box
    /// counts from, mm.
    ///
    /// # Errors
    /// As [`Drive::new`].
    pub fn for_strut(
        strut: &Strut,
        door: &ClosedDoor,
        motion: &Motion,
        front: f64,
        state: &DriveState,
    ) -> Result<Self, DriveError> {
        let strut = place_strut(strut, door, front, state)?;
        check_stroke(&strut, motion)?;
        Ok(Self(Kind::Strut(strut)))
    }

    /// What it does at an input angle.
    pub(crate) fn push(&self, input: f64, jets: &(PoseJet, Option<PoseJet>)) -> Push {
        match &self.0 {
            Kind::Nothing => Push {
                moment: 0.0,
                friction: 0.0,
                strut: None,
            },
            Kind::Spring(spring) => Push {
                moment: spring.moment(input),
                friction: spring.friction,
                strut: None,
            },
            Kind::Strut(strut) => {
                let state = strut.state(jets);
                let (moment, friction) = (strut.moment(&state), strut.friction(&state));
                Push {
                    moment,
                    friction,
                    strut: Some(state),
                }
            }
        }
    }

    /// What it does at s.
    #[must_use]
    pub fn at(&self, motion: &Motion, s: f64) -> Push {
        let input = motion.input(s);
        self.push(input, &motion.jets(input))
    }

    /// Work that it has stored at s, J, counted from an arbitrary zero.
    #[must_use]
    pub fn energy(&self, motion: &Motion, s: f64) -> f64 {
        let input = motion.input(s);
        match &self.0 {
            Kind::Nothing => 0.0,
            Kind::Spring(spring) => spring.energy(input),
            Kind::Strut(strut) => strut.energy(&strut.state(&motion.jets(input))),
        }
    }
}

/// A strut of a card in the section. Its door anchor belongs to the leaf at whose height it is.
fn place_strut(
    strut: &Strut,
    door: &ClosedDoor,
    front: f64,
    state: &DriveState,
) -> Result<GasStrut, DriveError> {
    for (what, value) in [
        (Word("strut-box-down"), strut.box_down),
        (Word("strut-box-back"), strut.box_back),
        (Word("strut-door-down"), strut.door_down),
        (Word("strut-door-back"), strut.door_back),
    ] {
        if value.is_nan() || value.abs() > LARGEST_NUMBER {
            return Err(DriveError::Number {
                what,
                value: AsTyped(value),
            });
        }
    }
    let gas = Gas::new(strut, state.celsius)?;
    let place = SectionPoint::new(front - strut.box_back, door.underside_y - strut.box_down);
    let (anchor, on_second) = door_anchor(door, strut.door_down, strut.door_back);
    Ok(GasStrut::new(
        gas,
        place,
        anchor,
        on_second,
        f64::from(state.pieces),
    ))
}

/// Where an anchor on the door is, closed, and whether it is on the second leaf.
pub(crate) fn door_anchor(door: &ClosedDoor, down: f64, back: f64) -> (SectionPoint, bool) {
    let y = door.underside_y - down;
    let on_second =
        door.leaves.len() > 1 && door.leaves.first().is_some_and(|leaf| y < leaf.bottom);
    let leaf = if on_second {
        door.leaves.last()
    } else {
        door.leaves.first()
    };
    (
        SectionPoint::new(leaf.map_or(0.0, |leaf| leaf.back_o) - back, y),
        on_second,
    )
}

/// The strut is neither pulled apart nor crushed from closed to fully open. The angle in the
/// message is the least at which it is, found by halving.
fn check_stroke(strut: &GasStrut, motion: &Motion) -> Result<(), DriveError> {
    let (compressed, extended) = strut.limits();
    let length = |s: f64| strut.state(&motion.jets(motion.input(s))).length;
    let fits = |s: f64| {
        let length = length(s);
        length <= extended + STROKE_TOLERANCE && length >= compressed - STROKE_TOLERANCE
    };
    let share = |step: u16| f64::from(step) / f64::from(STROKE_STEPS);
    let Some(step) = (0..=STROKE_STEPS).find(|step| !fits(share(*step))) else {
        return Ok(());
    };
    let (mut good, mut bad) = (share(step.saturating_sub(1)), share(step));
    for _ in 0..40 {
        let middle = (good + bad) / 2.0;
        if fits(middle) {
            good = middle;
        } else {
            bad = middle;
        }
    }
    let from = Degrees(motion.input(bad).to_degrees());
    // What the strut would need over the whole way says more than the length just there.
    let needs = (0..=STROKE_STEPS).map(|step| length(share(step)));
    let (least, most) = needs.fold((f64::INFINITY, 0.0_f64), |(least, most), length| {
        (least.min(length), most.max(length))
    });
    if length(share(step)) > extended {
        Err(DriveError::Stretched {
            by: Mm(most - extended),
            from,
            length: Mm(most),
            extended: Mm(extended),
        })
    } else {
        Err(DriveError::Crushed {
            by: Mm(compressed - least),
            from,
            length: Mm(least),
            compressed: Mm(compressed),
        })
    }
}
