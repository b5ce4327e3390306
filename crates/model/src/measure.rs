//! Lengths, masses, forces and moments as messages say them: in the job's unit, with its symbol.

use crate::length::{Unit, show_inch_64};

/// A length with its unit: to 0.1 mm, or to the nearest 1/64 in.
#[must_use]
pub fn length(millimetres: f64, unit: Unit) -> String {
    match unit {
        Unit::Millimetre => format!("{} mm", tenth(millimetres)),
        Unit::Inch => show_inch_64(millimetres),
    }
}

/// To one decimal, without a trailing zero and without `-0`.
fn tenth(value: f64) -> String {
    let text = format!("{value:.1}");
    let text = text.strip_suffix(".0").unwrap_or(&text);
    if text == "-0" {
        "0".to_owned()
    } else {
        text.to_owned()
    }
}

/// Kilograms in a pound, exact by definition (NIST SP 811, appendix B).
pub const KG_PER_POUND: f64 = 0.453_592_37;
/// Standard gravity, m/s², exact by definition (NIST SP 811, appendix B).
pub const STANDARD_GRAVITY: f64 = 9.806_65;
/// Newtons in a pound-force, by the pound and standard gravity.
pub const NEWTON_PER_POUND: f64 = KG_PER_POUND * STANDARD_GRAVITY;
/// Newton metres in a pound-force inch.
pub const NEWTON_METRE_PER_POUND_INCH: f64 = NEWTON_PER_POUND * 0.0254;

/// What is counted in another unit where lengths are in inches.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash)]
pub enum Measure {
    /// kg or lb.
    Mass,
    /// N or lbf.
    Force,
    /// N·m or lbf·in.
    Moment,
}

impl Measure {
    /// The symbol that goes with a length unit.
    #[must_use]
    pub const fn symbol(self, unit: Unit) -> &'static str {
        match (self, unit) {
            (Self::Mass, Unit::Millimetre) => "kg",
            (Self::Mass, Unit::Inch) => "lb",
            (Self::Force, Unit::Millimetre) => "N",
            (Self::Force, Unit::Inch) => "lbf",
            (Self::Moment, Unit::Millimetre) => "N·m",
            (Self::Moment, Unit::Inch) => "lbf·in",
        }
    }

    /// A value in kg, N or N·m as a number in the unit of [`Self::symbol`].
    #[must_use]
    pub const fn number(self, value: f64, unit: Unit) -> f64 {
        match (self, unit) {
            (_, Unit::Millimetre) => value,
            (Self::Mass, Unit::Inch) => value / KG_PER_POUND,
            (Self::Force, Unit::Inch) => value / NEWTON_PER_POUND,
            (Self::Moment, Unit::Inch) => value / NEWTON_METRE_PER_POUND_INCH,
        }
    }

    /// A number in the unit of [`Self::symbol`] as kg, N or N·m.
    #[must_use]
    pub const fn value(self, number: f64, unit: Unit) -> f64 {
        number / self.number(1.0, unit)
    }

    /// The number as text, without the unit: masses to 0.01, the others to 0.1, lbf·in whole.
    #[must_use]
    pub fn digits(self, value: f64, unit: Unit) -> String {
        let places = match (self, unit) {
            (Self::Mass, _) => 2,
            (Self::Moment, Unit::Inch) => 0,
            (Self::Force | Self::Moment, _) => 1,
        };
        let text = format!("{:.places$}", self.number(value, unit));
        match text.strip_prefix('-') {
            Some(rest) if rest.chars().all(|c| c == '0' || c == '.') => rest.to_owned(),
            _ => text,
        }
    }

    /// The number with its unit.
    #[must_use]
    pub fn text(self, value: f64, unit: Unit) -> String {
        format!("{} {}", self.digits(value, unit), self.symbol(unit))
    }

    /// `likely (low to high)` with the unit behind the likely one.
    #[must_use]
    pub fn range(self, [low, likely, high]: [f64; 3], unit: Unit) -> String {
        format!(
            "{} ({} to {})",
            self.text(likely, unit),
            self.digits(low, unit),
            self.digits(high, unit)
        )
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn masses_forces_and_moments_are_said_in_both_units() {
        let (mm, inch) = (Unit::Millimetre, Unit::Inch);
        assert_eq!(Measure::Mass.text(2.0, inch), "4.41 lb");
        assert_eq!(Measure::Mass.value(1.0, inch), KG_PER_POUND);
        assert_eq!(Measure::Force.text(22.241, inch), "5.0 lbf");
        assert_eq!(Measure::Force.text(-0.02, mm), "0.0 N");
        assert_eq!(Measure::Moment.text(1.0, inch), "9 lbf·in");
        assert_eq!(
            Measure::Moment.range([1.0, 2.0, 3.0], mm),
            "2.0 N·m (1.0 to 3.0)"
        );
    }
}
