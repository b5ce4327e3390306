//! What a number stands for: how it is shown, read and stepped.

use flapwright_model::length::{MM_PER_INCH, Unit, parse_length, show_length};

/// What a number stands for.
#[derive(Debug, Clone, Copy, PartialEq)]
pub(crate) enum Quantity {
    /// A length, mm inside, shown in this unit.
    Length(Unit),
    /// A mass, kg.
    Kilograms,
    /// A number of pieces.
    Pieces,
}

impl Quantity {
    /// As it stands in a field.
    pub(crate) fn show(self, value: f64) -> String {
        match self {
            Self::Length(unit) => show_length(value, unit),
            Self::Kilograms => trimmed(value, 3),
            Self::Pieces => trimmed(value, 0),
        }
    }

    /// What was typed, or what is wanted instead.
    pub(crate) fn read(self, text: &str) -> Result<f64, String> {
        match self {
            Self::Length(unit) => parse_length(text, unit).map_err(|error| error.to_string()),
            Self::Kilograms => {
                let text = text.trim().trim_end_matches("kg").trim_end();
                match text.replace(',', ".").parse::<f64>() {
                    Ok(value) if value.is_finite() && value >= 0.0 => Ok(value),
                    Ok(_) | Err(_) => Err("A mass in kg is wanted, e.g. 3.2".to_owned()),
                }
            }
            Self::Pieces => match text.trim().parse::<u32>() {
                Ok(value) if (1..=9999).contains(&value) => Ok(f64::from(value)),
                Ok(_) | Err(_) => Err("A whole number from 1 to 9999 is wanted".to_owned()),
            },
        }
    }

    /// What one step of an arrow key changes.
    pub(crate) fn step(self, size: StepSize) -> f64 {
        let one = match self {
            Self::Length(Unit::Millimetre) => 1.0,
            Self::Length(Unit::Inch) => MM_PER_INCH / 16.0,
            Self::Kilograms => 0.1,
            Self::Pieces => 1.0,
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
            Self::Length(_) | Self::Kilograms => (value * 1e6).round() / 1e6,
            Self::Pieces => value.round().max(1.0),
        }
    }

    /// What stands behind the field.
    pub(crate) const fn suffix(self) -> &'static str {
        match self {
            Self::Length(unit) => unit.symbol(),
            Self::Kilograms => "kg",
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
        assert!(Quantity::Pieces.read("0").is_err());
        assert!(Quantity::Pieces.read("1.5").is_err());
        assert_eq!(Quantity::Pieces.show(12.0), "12");
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
