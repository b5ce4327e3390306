//! What papers give for a load, turned into the other usual forms.
//!
//! All forms speak of an **even door turning about its upper edge** (a top-hinged flap, its
//! thickness left out): its weight m g acts at half its height, so that at an opening angle q from
//! hanging it asks for the moment M = m g H/2 sin q about the edge (the moment of a force, any
//! textbook of statics). A strut whose line passes the edge at a distance a holds that with
//! F = M / a.

use flapwright_model::length::{MM_PER_INCH, Unit};
use flapwright_model::measure::{self, Measure, STANDARD_GRAVITY};

use crate::gravity::METRE;

/// A load in the form in which a paper gives it.
#[derive(Debug, Clone, Copy, PartialEq)]
pub enum GivenLoad {
    /// Door mass, kg.
    Mass(f64),
    /// Door height times door mass, kg·mm.
    HeightTimesMass(f64),
    /// Lift moment about the upper edge at the angle of the door, N·m.
    Moment(f64),
    /// Force of all struts together that holds the door there, N.
    StrutForce(f64),
}

/// The door that the load is said of.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct LoadDoor {
    /// Height, mm.
    pub height: f64,
    /// Opening angle at which moments and forces are said, degrees from hanging.
    pub at_degrees: f64,
    /// Distance of the strut's line from the upper edge at that angle, mm; `None` without a strut.
    pub strut_arm: Option<f64>,
}

/// The same load in every form.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct LoadForms {
    /// Door mass, kg.
    pub mass: f64,
    /// Door height times door mass, kg·mm.
    pub height_times_mass: f64,
    /// Lift moment about the upper edge, N·m.
    pub moment: f64,
    /// Force of all struts together, N; `None` without a strut.
    pub strut_force: Option<f64>,
}

/// Why a load cannot be turned into the other forms.
#[derive(Debug, Clone, PartialEq, thiserror::Error)]
pub enum LoadFormError {
    /// A number that must be above 0 is not.
    #[error("{what} is {value}; it must be above 0")]
    NotPositive {
        /// Which number.
        what: &'static str,
        /// Its value.
        value: f64,
    },
    /// The door hangs, or stands on its head: its weight has no lever.
    #[error(
        "at {degrees} degrees the door's weight has no lever; give an angle between 0 and 180 \
         degrees"
    )]
    NoLever {
        /// The angle.
        degrees: f64,
    },
    /// A force of a strut without its lever.
    #[error("the strut's lever is not known; give the distance of its line from the upper edge")]
    NoArm,
}

/// Turns a load into every form.
///
/// # Errors
/// [`LoadFormError`] for a door without height, an angle at which the weight has no lever, and a
/// strut's force without its lever.
pub fn load_forms(given: GivenLoad, door: LoadDoor) -> Result<LoadForms, LoadFormError> {
    let positive = |what, value: f64| {
        if value > 0.0 && value.is_finite() {
            Ok(value)
        } else {
            Err(LoadFormError::NotPositive { what, value })
        }
    };
    let height = positive("the door height", door.height)?;
    let arm = door
        .strut_arm
        .map(|arm| positive("the strut's lever", arm))
        .transpose()?;
    let share = door.at_degrees.to_radians().sin();
    if !(door.at_degrees > 0.0 && door.at_degrees < 180.0 && share > 1e-6) {
        return Err(LoadFormError::NoLever {
            degrees: door.at_degrees,
        });
    }
    // N·m of one kg.
    let per_kg = STANDARD_GRAVITY * height * METRE / 2.0 * share;
    let mass = match given {
        GivenLoad::Mass(mass) => positive("the mass", mass)?,
        GivenLoad::HeightTimesMass(product) => positive("height times mass", product)? / height,
        GivenLoad::Moment(moment) => positive("the moment", moment)? / per_kg,
        GivenLoad::StrutForce(force) => {
            let arm = arm.ok_or(LoadFormError::NoArm)?;
            positive("the strut's force", force)? * arm * METRE / per_kg
        }
    };
    let moment = mass * per_kg;
    Ok(LoadForms {
        mass,
        height_times_mass: mass * height,
        moment,
        strut_force: arm.map(|arm| moment / (arm * METRE)),
    })
}

/// Height times mass as a number in kg·mm, or in lb·in.
#[must_use]
pub fn height_times_mass_number(kg_mm: f64, unit: Unit) -> f64 {
    match unit {
        Unit::Millimetre => kg_mm,
        Unit::Inch => Measure::Mass.number(kg_mm, unit) / MM_PER_INCH,
    }
}

/// A number of kg·mm, or of lb·in, as kg·mm.
#[must_use]
pub fn height_times_mass_value(number: f64, unit: Unit) -> f64 {
    number / height_times_mass_number(1.0, unit)
}

impl LoadForms {
    /// Each form with its name, in one unit, as a form shows them beside what was typed.
    #[must_use]
    pub fn texts(&self, door: LoadDoor, unit: Unit) -> Vec<(&'static str, String)> {
        let product = height_times_mass_number(self.height_times_mass, unit);
        let symbol = match unit {
            Unit::Millimetre => "kg·mm",
            Unit::Inch => "lb·in",
        };
        let height = measure::length(door.height, unit);
        let mut texts = vec![
            (
                "mass",
                format!(
                    "{} at a height of {height}",
                    Measure::Mass.text(self.mass, unit)
                ),
            ),
            ("height times mass", format!("{product:.0} {symbol}")),
            (
                "moment",
                format!(
                    "{} at {}°",
                    Measure::Moment.text(self.moment, unit),
                    door.at_degrees
                ),
            ),
        ];
        if let Some(force) = self.strut_force {
            texts.push(("force at the strut", Measure::Force.text(force, unit)));
        }
        texts
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    const DOOR: LoadDoor = LoadDoor {
        height: 400.0,
        at_degrees: 90.0,
        strut_arm: Some(100.0),
    };

    fn near(a: f64, b: f64, share: f64) -> bool {
        (a - b).abs() <= share * b.abs()
    }

    #[test]
    fn every_form_leads_to_every_other() {
        let from_mass = load_forms(GivenLoad::Mass(5.0), DOOR).unwrap();
        for given in [
            GivenLoad::HeightTimesMass(from_mass.height_times_mass),
            GivenLoad::Moment(from_mass.moment),
            GivenLoad::StrutForce(from_mass.strut_force.unwrap()),
        ] {
            let forms = load_forms(given, DOOR).unwrap();
            assert!(near(forms.mass, 5.0, 1e-12), "{given:?}: {forms:?}");
        }
    }

    #[test]
    fn moments_are_those_of_the_closed_form_worked_out_apart() {
        // Plate of 5 kg, 0.4 m high, hinged at its edge: N·m at these angles from hanging,
        // computed apart with scipy from m g H/2 sin q.
        for (at_degrees, moment) in [
            (15.0, 2.5381),
            (30.0, 4.9033),
            (45.0, 6.9343),
            (60.0, 8.4928),
            (90.0, 9.8066),
            (105.0, 9.4725),
        ] {
            let door = LoadDoor { at_degrees, ..DOOR };
            let forms = load_forms(GivenLoad::Mass(5.0), door).unwrap();
            assert!(near(forms.moment, moment, 1e-4), "{at_degrees}: {forms:?}");
        }
    }

    #[test]
    fn the_rope_of_the_textbook_trapdoor_is_the_force_at_the_strut() {
        // University Physics (OpenStax) 12.2: a trapdoor of 300 N, 1 m high, at 30 degrees to the
        // floor, held at its middle by a rope at 10 degrees to it. The book prints 1500 N; in full
        // 300 cos 30 / sin 10 = 1496.172 N.
        let door = LoadDoor {
            height: 1000.0,
            at_degrees: 60.0,
            strut_arm: Some(500.0 * 10_f64.to_radians().sin()),
        };
        let forms = load_forms(GivenLoad::Mass(300.0 / STANDARD_GRAVITY), door).unwrap();
        assert!(
            near(forms.strut_force.unwrap(), 1496.172, 1e-6),
            "{forms:?}"
        );
    }

    #[test]
    fn units_are_those_of_nist_sp_811() {
        // NIST SP 811, appendix B.8 (from memory): pound 4.535 924 E-01 kg, pound-force
        // 4.448 222 N, pound-force inch 1.129 848 E-01 N·m, inch 2.54 E-02 m.
        assert!(near(
            Measure::Mass.value(1.0, Unit::Inch),
            4.535_924e-1,
            1e-6
        ));
        assert!(near(Measure::Force.value(1.0, Unit::Inch), 4.448_222, 1e-6));
        assert!(near(
            Measure::Moment.value(1.0, Unit::Inch),
            1.129_848e-1,
            1e-6
        ));
        let kg_mm = height_times_mass_value(1.0, Unit::Inch);
        assert!(near(kg_mm, 4.535_924e-1 * 25.4, 1e-6), "{kg_mm}");
        assert!(near(
            height_times_mass_number(kg_mm, Unit::Inch),
            1.0,
            1e-12
        ));
    }

    #[test]
    fn the_texts_speak_both_units() {
        let forms = load_forms(GivenLoad::Mass(5.0), DOOR).unwrap();
        let text = |unit| format!("{:?}", forms.texts(DOOR, unit));
        let mm = text(Unit::Millimetre);
        for part in ["5.00 kg", "2000 kg·mm", "9.8 N·m at 90°", "98.1 N"] {
            assert!(mm.contains(part), "{part} not in {mm}");
        }
        // 5 kg = 11.023 lb; 2000 kg·mm = 173.59 lb·in; 9.80665 N·m = 86.8 lbf·in; 98.07 N =
        // 22.05 lbf, all by the factors above.
        let inch = text(Unit::Inch);
        for part in ["11.02 lb", "174 lb·in", "87 lbf·in", "22.0 lbf"] {
            assert!(inch.contains(part), "{part} not in {inch}");
        }
    }

    #[test]
    fn what_has_no_answer_is_refused_by_name() {
        let no_arm = LoadDoor {
            strut_arm: None,
            ..DOOR
        };
        let hanging = LoadDoor {
            at_degrees: 0.0,
            ..DOOR
        };
        let flat = LoadDoor {
            height: 0.0,
            ..DOOR
        };
        for (given, door, part) in [
            (GivenLoad::StrutForce(90.0), no_arm, "lever"),
            (GivenLoad::Mass(5.0), hanging, "no lever"),
            (GivenLoad::Mass(5.0), flat, "door height is 0"),
            (GivenLoad::Mass(-1.0), DOOR, "mass is -1"),
            (GivenLoad::Moment(f64::NAN), DOOR, "moment is NaN"),
        ] {
            let error = load_forms(given, door).unwrap_err().to_string();
            assert!(error.contains(part), "{error}");
        }
    }
}
