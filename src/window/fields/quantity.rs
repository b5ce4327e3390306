//! What a number stands for: how it is shown, read and stepped.

use flapwright_model::field;
use flapwright_model::length::{MM_PER_INCH, Unit, parse_length, show_length};
use flapwright_model::measure::Measure;

/// What a number stands for.
#[derive(Debug, Clone, Copy, PartialEq)]
pub(crate) enum Quantity {
    /// A length, mm inside, shown in this unit.
    Length(Unit),
    /// A mass, kg.
    Kilograms,
    /// A number of pieces.
    Pieces,
    /// A force, N inside, shown in N or lbf.
    Force(Unit),
    /// A temperature, °C.
    Celsius,
    /// A number that is not below 0 and has the same unit in every job, with its symbol.
    Plain(&'static str),
}

impl Quantity {
    /// How a number of the table of fields is shown in a job of that unit.
    pub(crate) const fn of(counted: field::Quantity, unit: Unit) -> Self {
        match counted {
            field::Quantity::Length => Self::Length(unit),
            field::Quantity::Mass => Self::Kilograms,
            field::Quantity::Force => Self::Force(unit),
            field::Quantity::Temperature => Self::Celsius,
            field::Quantity::AreaLoad => Self::Plain("kg/m²"),
            field::Quantity::Percentage => Self::Plain("%"),
            field::Quantity::Ratio => Self::Plain(""),
            field::Quantity::Density => Self::Plain("kg/m³"),
            field::Quantity::Modulus => Self::Plain("N/mm²"),
            field::Quantity::Angle => Self::Plain("°"),
            field::Quantity::Damping => Self::Plain("N·m·s"),
            field::Quantity::Moment => Self::Plain("N·m"),
        }
    }

    /// As it stands in a field.
    pub(crate) fn show(self, value: f64) -> String {
        match self {
            Self::Length(unit) => show_length(value, unit),
            Self::Kilograms => trimmed(value, 3),
            Self::Pieces => trimmed(value, 0),
            Self::Force(unit) => trimmed(Measure::Force.number(value, unit), 3),
            Self::Plain(_) => trimmed(value, 2),
            Self::Celsius => trimmed(value, 1),
        }
    }

    /// What was typed, or what is wanted instead.
    pub(crate) fn read(self, text: &str) -> Result<f64, String> {
        match self {
            Self::Length(unit) => parse_length(text, unit).map_err(|error| error.to_string()),
            Self::Kilograms => {
                plain(text, "kg").ok_or("A mass in kg is wanted, e.g. 3.2".to_owned())
            }
            Self::Force(unit) => {
                let symbol = Measure::Force.symbol(unit);
                plain(text, symbol)
                    .map(|value| Measure::Force.value(value, unit))
                    .ok_or_else(|| format!("A force in {symbol} is wanted, e.g. 5"))
            }
            Self::Plain(symbol) => plain(text, symbol).ok_or_else(|| match symbol {
                "" => "A number is wanted, e.g. 144".to_owned(),
                _ => format!("A number of {symbol} is wanted, e.g. 50"),
            }),
            Self::Celsius => {
                let text = text.trim().trim_end_matches("°C").trim_end();
                let minus = text.strip_prefix(['-', '\u{2212}']);
                plain(minus.unwrap_or(text).trim_start(), "°C")
                    .map(|value| if minus.is_some() { -value } else { value })
                    .ok_or("A temperature in °C is wanted, e.g. 5 or -10".to_owned())
            }
            Self::Pieces => match text.trim().parse::<u32>() {
                Ok(value) => Ok(f64::from(value)),
                Err(_) => Err("A whole number is wanted, e.g. 2".to_owned()),
            },
        }
    }

    /// What one step of an arrow key changes.
    pub(crate) fn step(self, size: StepSize) -> f64 {
        let one = match self {
            Self::Length(Unit::Millimetre) => 1.0,
            Self::Length(Unit::Inch) => MM_PER_INCH / 16.0,
            Self::Kilograms => 0.1,
            Self::Force(unit) => Measure::Force.value(0.5, unit),
            Self::Pieces | Self::Plain(_) | Self::Celsius => 1.0,
        };
        let factor = match (size, self) {
            (StepSize::One, _) | (StepSize::Tenth, Self::Pieces) => 1.0,
            (StepSize::Ten, _) => 10.0,
            (StepSize::Tenth, _) => 0.1,
        };
        one * factor
    }

    /// A stepped value without the last digits that binary fractions add.
    pub(crate) fn tidy(self, value: f64) -> f64 {
        match self {
            Self::Length(_) | Self::Kilograms | Self::Force(_) => (value * 1e6).round() / 1e6,
            Self::Pieces => value.round().max(1.0),
            Self::Plain(_) | Self::Celsius => (value * 1e3).round() / 1e3,
        }
    }

    /// What stands behind the field.
    pub(crate) const fn suffix(self) -> &'static str {
        match self {
            Self::Length(unit) => unit.symbol(),
            Self::Kilograms => "kg",
            Self::Force(unit) => Measure::Force.symbol(unit),
            Self::Plain(symbol) => symbol,
            Self::Celsius => "°C",
            Self::Pieces => "",
        }
    }
}

/// How far one step goes.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(crate) enum StepSize {
    /// With Ctrl.
    Tenth,
    /// As it is.
    One,
    /// With Shift.
    Ten,
}

impl StepSize {
    /// By the keys that are held.
    pub(crate) const fn of(modifiers: egui::Modifiers) -> Self {
        if modifiers.shift {
            Self::Ten
        } else if modifiers.command || modifiers.ctrl {
            Self::Tenth
        } else {
            Self::One
        }
    }
}

/// A number that is not below 0, with its symbol or without.
fn plain(text: &str, symbol: &str) -> Option<f64> {
    let text = text.trim();
    let text = text.strip_suffix(symbol).unwrap_or(text).trim_end();
    let value = text.replace(',', ".").parse::<f64>().ok()?;
    (value.is_finite() && value >= 0.0).then_some(value)
}

fn trimmed(value: f64, digits: usize) -> String {
    let text = format!("{value:.digits$}");
    if !text.contains('.') {
        return text;
    }
    text.trim_end_matches('0').trim_end_matches('.').to_owned()
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn masses_and_counts_are_read_with_point_or_comma_and_refused_with_what_is_wanted() {
        assert_eq!(Quantity::Kilograms.read(" 3,25 kg"), Ok(3.25));
        assert_eq!(Quantity::Kilograms.show(3.25), "3.25");
        assert_eq!(Quantity::Kilograms.show(3.0), "3");
        assert!(Quantity::Kilograms.read("-1").unwrap_err().contains("kg"));
        assert!(Quantity::Kilograms.read("NaN").is_err());
        assert_eq!(Quantity::Pieces.read("12"), Ok(12.0));
        assert!(Quantity::Pieces.read("-1").is_err());
        assert!(Quantity::Pieces.read("1.5").is_err());
        assert_eq!(Quantity::Pieces.show(12.0), "12");
    }

    #[test]
    fn a_force_is_read_and_shown_in_the_unit_of_the_job() {
        // 1 lbf = 0.45359237 kg times 9.80665 m/s2 (NIST SP 811, appendix B).
        let pound = 0.453_592_37 * 9.806_65;
        let read = Quantity::Force(Unit::Inch).read("5 lbf").unwrap();
        assert!((read - 5.0 * pound).abs() < 1e-9);
        assert_eq!(Quantity::Force(Unit::Inch).show(5.0 * pound), "5");
        assert_eq!(Quantity::Force(Unit::Millimetre).show(22.5), "22.5");
        assert!(
            Quantity::Force(Unit::Inch)
                .read("-1")
                .unwrap_err()
                .contains("lbf")
        );
        assert_eq!(Quantity::Plain("kg/m²").read("195 kg/m²"), Ok(195.0));
        assert!(Quantity::Plain("").read("a lot").is_err());
    }

    #[test]
    fn a_step_is_a_millimetre_or_a_sixteenth() {
        let mm = Quantity::Length(Unit::Millimetre);
        let inch = Quantity::Length(Unit::Inch);
        assert_eq!(mm.step(StepSize::One), 1.0);
        assert_eq!(mm.step(StepSize::Ten), 10.0);
        assert_eq!(inch.step(StepSize::One), 1.5875);
        assert_eq!(mm.tidy(0.1 + 0.2), 0.3);
    }
}
