//! A gas strut: force over stroke and temperature, length and lever.
//!
//! The nominal force is that of the extended strut moving out at 20 °C, so its friction is
//! already off it. At compression x the nominal force is F / (1 - k x), an enclosed gas whose
//! volume shrinks with the stroke; k follows from the progression over the stated stroke. The gas
//! pushes with that plus the friction, in proportion to the absolute temperature, and the friction
//! then works against whichever way the strut moves.

use flapwright_model::lift::Strut;
use flapwright_model::space::SectionPoint;

use crate::error::DriveError;
use crate::gravity::METRE;
use crate::limits::{LARGEST_NUMBER, SHORTEST_ARM};
use crate::pose::PoseJet;
use flapwright_model::message::{AsTyped, Word};

/// Absolute zero, °C.
const ABSOLUTE_ZERO: f64 = -273.15;
/// Temperature of the nominal force, °C.
pub const NOMINAL_CELSIUS: f64 = 20.0;

/// A strut between two places.
#[derive(Debug, Clone, Copy, PartialEq)]
pub(crate) struct GasStrut {
    pub(crate) box_anchor: SectionPoint,
    /// Door closed.
    pub(crate) door_anchor: SectionPoint,
    /// Whether the door anchor is on the second leaf.
    pub(crate) on_second: bool,
    gas: Gas,
    /// How many struts act together.
    pieces: f64,
}

/// What is inside.
#[derive(Debug, Clone, Copy, PartialEq)]
pub(crate) struct Gas {
    force: f64,
    /// Per mm.
    shrink: f64,
    friction: f64,
    /// Absolute temperature over that of the nominal force.
    warmth: f64,
    pub(crate) extended: f64,
    pub(crate) compressed: f64,
}

/// A strut at one place of the door's way.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct StrutState {
    /// Between its anchors, mm.
    pub length: f64,
    /// Its lever about the input, mm: dL/dq, + where the strut lengthens on opening.
    pub arm: f64,
    /// With which its gas pushes, N, one strut, friction left out.
    pub force: f64,
}

impl Gas {
    pub(crate) fn new(strut: &Strut, celsius: f64) -> Result<Self, DriveError> {
        for (what, value, least) in [
            (Word("strut-force"), strut.force, 0.0),
            (Word("strut-progression"), strut.progression, 1.0),
            (Word("strut-stroke"), strut.stroke, SHORTEST_ARM),
            (Word("strut-extended"), strut.extended, strut.stroke),
            (Word("strut-friction"), strut.friction, 0.0),
            (Word("temperature"), celsius, ABSOLUTE_ZERO),
        ] {
            if !(value >= least && value <= LARGEST_NUMBER) {
                return Err(DriveError::Number {
                    what,
                    value: AsTyped(value),
                });
            }
        }
        Ok(Self {
            force: strut.force,
            shrink: (1.0 - 1.0 / strut.progression) / strut.stroke,
            friction: strut.friction,
            warmth: (celsius - ABSOLUTE_ZERO) / (NOMINAL_CELSIUS - ABSOLUTE_ZERO),
            extended: strut.extended,
            compressed: strut.extended - strut.stroke,
        })
    }

    /// Force of the gas at a length, N, friction left out. Outside the stroke it is that of the
    /// nearer end.
    pub(crate) fn force_at(&self, length: f64) -> f64 {
        let x = self.extended - length.clamp(self.compressed, self.extended);
        (self.force / (1.0 - self.shrink * x) + self.friction) * self.warmth
    }

    /// Work stored in the gas at a length, J, 0 when extended.
    fn energy_at(&self, length: f64) -> f64 {
        let x = self.extended - length.clamp(self.compressed, self.extended);
        let nominal = if self.shrink > 0.0 {
            -self.force / self.shrink * (-self.shrink * x).ln_1p()
        } else {
            self.force * x
        };
        (nominal + self.friction * x) * self.warmth * METRE
    }
}

impl GasStrut {
    pub(crate) const fn new(
        gas: Gas,
        box_anchor: SectionPoint,
        door_anchor: SectionPoint,
        on_second: bool,
        pieces: f64,
    ) -> Self {
        Self {
            box_anchor,
            door_anchor,
            on_second,
            gas,
            pieces,
        }
    }

    pub(crate) fn state(&self, (first, second): &(PoseJet, Option<PoseJet>)) -> StrutState {
        let jet = match second {
            Some(jet) if self.on_second => jet,
            _ => first,
        };
        let [place, path, _] = jet.point(self.door_anchor);
        let line = place - self.box_anchor.to_vector();
        let length = line.length();
        let arm = if length > SHORTEST_ARM {
            line.dot(path) / length
        } else {
            0.0
        };
        StrutState {
            length,
            arm,
            force: self.gas.force_at(length),
        }
    }

    /// Moment about the input, N·m, all pieces: + pushes open.
    pub(crate) fn moment(&self, state: &StrutState) -> f64 {
        state.force * state.arm * METRE * self.pieces
    }

    /// Friction about the input, N·m, all pieces.
    pub(crate) fn friction(&self, state: &StrutState) -> f64 {
        self.gas.friction * state.arm.abs() * METRE * self.pieces
    }

    /// Work stored, J, all pieces.
    pub(crate) fn energy(&self, state: &StrutState) -> f64 {
        self.gas.energy_at(state.length) * self.pieces
    }

    /// Shortest and longest that it can be, mm.
    pub(crate) const fn limits(&self) -> (f64, f64) {
        (self.gas.compressed, self.gas.extended)
    }
}
