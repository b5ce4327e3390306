//! Materials: what a panel is made of and how heavy that is.

use serde::{Deserialize, Serialize};

/// A material of the job's table. Parts name it by `name`.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct Material {
    /// Name, unique in the job.
    pub name: String,
    /// What kind of stuff it is: decides hatching and what may be drilled.
    pub class: MaterialClass,
    /// Density as a range, kg/m3.
    pub density: Density,
    /// Where the density is from.
    pub source: String,
    /// How stiff it is in bending, where that is known.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub stiffness: Option<Stiffness>,
}

/// Modulus of elasticity of a strip in bending, N/mm2: the lowest that is to be expected.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct Stiffness {
    /// Of a strip along the grain (of the face veneer, in plywood); of any strip of stuff without
    /// grain.
    pub along: f64,
    /// Of a strip across the grain, where that is another and known.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub across: Option<f64>,
    /// Where the numbers are from.
    pub source: String,
}

/// What kind of stuff a material is.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize, Deserialize)]
pub enum MaterialClass {
    /// Particleboard, MDF, plywood and the like.
    Board,
    /// Solid wood with a grain.
    SolidWood,
    /// Glass or mirror: takes only the bores that the card allows.
    Glass,
    /// Metal section: takes only the bores that the card allows.
    Metal,
    /// Acrylic and other plastics.
    Plastic,
}

/// Low, likely and high density, kg/m3, `low <= likely <= high`.
#[derive(Debug, Clone, Copy, PartialEq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct Density {
    /// The lightest that is to be expected.
    pub low: f64,
    /// The most likely.
    pub likely: f64,
    /// The heaviest that is to be expected.
    pub high: f64,
}

/// A mass that is not known exactly, kg.
#[derive(Debug, Clone, Copy, PartialEq, Default, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct MassRange {
    /// The lightest, kg.
    pub low: f64,
    /// The most likely, kg.
    pub likely: f64,
    /// The heaviest, kg.
    pub high: f64,
}

impl MassRange {
    /// A mass that is known: no spread.
    #[must_use]
    pub const fn exact(kilograms: f64) -> Self {
        Self {
            low: kilograms,
            likely: kilograms,
            high: kilograms,
        }
    }
}

impl std::ops::Add for MassRange {
    type Output = Self;

    fn add(self, other: Self) -> Self {
        Self {
            low: self.low + other.low,
            likely: self.likely + other.likely,
            high: self.high + other.high,
        }
    }
}

impl std::iter::Sum for MassRange {
    fn sum<I: Iterator<Item = Self>>(masses: I) -> Self {
        masses.fold(Self::default(), std::ops::Add::add)
    }
}
