//! A row of the material table.

use super::choices::Choices;
use super::info::{
    Info, Kind, NAME, NONE, Quantity, TEXT, choice, number, optional, quantity, unset, words,
};
use super::limits::{DENSITY, STIFFNESS};
use super::table::{Fields, dotted, edge_of, fields, of_row, place};
use super::value::{FieldValue, NotSet, Value};
use crate::edges::Edge;
use crate::material::{Material, MaterialClass};

const BOARD: &str =
    "Particleboard of the trade, between 600 and 750 kg/m³; common practice, no source.";

fields! {
    /// A field of a material.
    MaterialField of Material:

    Name at [.name] NAME, words("material", NONE),
        "name", "name", "Name of the material, unique in the job; parts call it by that.";
    Class at [.class] Kind::Choice(MaterialClass::CHOICES), choice("Board", NONE),
        "kind", "kind", "What kind of stuff it is: decides hatching and what may be drilled.";
    DensityLow at [.density.low] quantity(Quantity::Density, DENSITY), number(600.0, BOARD),
        "density from", "density, low", "The lightest that is to be expected.";
    DensityLikely at [.density.likely] quantity(Quantity::Density, DENSITY), number(680.0, BOARD),
        "likely", "density, likely", "The most likely density.";
    DensityHigh at [.density.high] quantity(Quantity::Density, DENSITY), number(750.0, BOARD),
        "to", "density, high", "The heaviest that is to be expected.";
    Source at [.source] TEXT, words("", NONE),
        "source", "source", "Where the density is from.";
    StiffnessAlong at [.stiffness ? .along] quantity(Quantity::Modulus, STIFFNESS),
        number(2000.0, "Low for particleboard in bending; common practice, no source."),
        "stiffness along", "stiffness along the grain",
        "Lowest modulus of elasticity of a strip along the grain, in bending; of any strip where there is none.";
    StiffnessAcross at [.stiffness ? .across] optional(Quantity::Modulus, STIFFNESS), unset(NONE),
        "stiffness across", "stiffness across the grain",
        "The same of a strip across the grain, where that is another and known.";
    StiffnessSource at [.stiffness ? .source] TEXT, words("", NONE),
        "source", "source of the stiffness", "Where the stiffness is from.";
}
