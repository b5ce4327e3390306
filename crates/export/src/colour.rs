//! Print colours: the one table from inks to colours on paper.

use flapwright_drawing::pen::Ink;

/// A colour on paper, sRGB.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct Rgb {
    /// Red, 0 to 255.
    pub red: u8,
    /// Green, 0 to 255.
    pub green: u8,
    /// Blue, 0 to 255.
    pub blue: u8,
}

impl Rgb {
    const fn new(red: u8, green: u8, blue: u8) -> Self {
        Self { red, green, blue }
    }

    const fn grey(level: u8) -> Self {
        Self::new(level, level, level)
    }

    /// Whether it is black, white or a grey between.
    #[must_use]
    pub const fn is_grey(self) -> bool {
        self.red == self.green && self.green == self.blue
    }

    /// The colour as in SVG and CSS, e.g. `#c00000`.
    #[must_use]
    pub fn hex(self) -> String {
        let Self { red, green, blue } = self;
        format!("#{red:02x}{green:02x}{blue:02x}")
    }
}

/// The colour of `ink` on paper: black and greys, so that sheets survive a black-and-white
/// printer; only marks of findings are coloured.
#[must_use]
pub const fn ink_colour(ink: Ink) -> Rgb {
    match ink {
        Ink::Plain | Ink::Bore => Rgb::grey(0x00),
        Ink::Fitting => Rgb::grey(0x40),
        Ink::Moving => Rgb::grey(0x60),
        Ink::Ghost | Ink::Room => Rgb::grey(0x70),
        Ink::Soft => Rgb::grey(0xA0),
        Ink::Stop => Rgb::new(0xC0, 0x00, 0x00),
        Ink::Caution => Rgb::new(0xA8, 0x50, 0x00),
        Ink::Note => Rgb::new(0x00, 0x58, 0xA8),
        Ink::Paper => Rgb::grey(0xFF),
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    const READABLE: [Ink; 9] = [
        Ink::Plain,
        Ink::Bore,
        Ink::Fitting,
        Ink::Moving,
        Ink::Ghost,
        Ink::Room,
        Ink::Stop,
        Ink::Caution,
        Ink::Note,
    ];

    /// Relative luminance of sRGB as in WCAG 2.
    fn luminance(Rgb { red, green, blue }: Rgb) -> f64 {
        let [r, g, b] = [red, green, blue].map(|level| {
            let level = f64::from(level) / 255.0;
            if level <= 0.04045 {
                level / 12.92
            } else {
                ((level + 0.055) / 1.055).powf(2.4)
            }
        });
        0.2126 * r + 0.7152 * g + 0.0722 * b
    }

    #[test]
    fn all_inks_but_the_softest_stand_out_as_text_must() {
        for ink in READABLE {
            let contrast = 1.05 / (luminance(ink_colour(ink)) + 0.05);
            assert!(
                contrast >= 4.5,
                "{ink:?} has a contrast of {contrast:.2} on paper"
            );
        }
    }

    #[test]
    fn only_findings_are_coloured() {
        for ink in READABLE.into_iter().chain([Ink::Soft, Ink::Paper]) {
            let finding = matches!(ink, Ink::Stop | Ink::Caution | Ink::Note);
            assert_eq!(ink_colour(ink).is_grey(), !finding, "{ink:?}");
        }
    }
}
