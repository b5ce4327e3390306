//! Colours, sizes and fonts of the window, named by what they mean.
//!
//! No other file of the window names a colour. The inks of the drawings are mapped here too.

use std::sync::Arc;

use egui::{Color32, FontData, FontDefinitions, FontFamily, FontId, Stroke, TextStyle, Theme};
use flapwright_drawing::list::Weight;
use flapwright_drawing::pen::Ink;
use flapwright_drawing::text;
use flapwright_motion::sizes::Grade;
use flapwright_rules::finding::Severity;

/// Screen points for one millimetre of a drawing's texts, pens and dashes.
pub(crate) const POINTS_PER_MM: f32 = 3.9;
/// Width of a field for a length.
pub(crate) const LENGTH_WIDTH: f32 = 84.0;
/// Width of the name before a field of a form.
pub(crate) const LABEL_WIDTH: f32 = 116.0;
/// Width of the name of an edge before its field.
pub(crate) const EDGE_WORD: f32 = 50.0;
/// Room between groups of a form.
pub(crate) const GROUP_GAP: f32 = 8.0;
/// Narrowest and widest the form and the list of findings may be made.
pub(crate) const SIDE_WIDTHS: std::ops::RangeInclusive<f32> = 300.0..=560.0;
/// Width of the panel at the right as long as it is not dragged.
pub(crate) const SIDE_WIDTH: f32 = 360.0;
/// Below this width the two drawings stand one above the other.
pub(crate) const STACK_BELOW: f32 = 820.0;

const NAME_PLAIN: &str = "sheet plain";
const NAME_BOLD: &str = "sheet bold";

/// The colours of one theme.
#[derive(Debug)]
pub(crate) struct Tokens {
    /// Behind the drawings.
    pub(crate) paper: Color32,
    /// Behind forms and lists.
    pub(crate) panel: Color32,
    /// Behind a group inside a panel.
    pub(crate) card: Color32,
    /// Behind typed text.
    pub(crate) field: Color32,
    /// Text.
    pub(crate) text: Color32,
    /// Text of less weight.
    pub(crate) text_soft: Color32,
    /// Lines between things.
    pub(crate) line: Color32,
    /// What is chosen, and the focus ring.
    pub(crate) accent: Color32,
    /// Behind what is chosen.
    pub(crate) chosen: Color32,
    /// Behind a button.
    pub(crate) button: Color32,
    /// Behind a button under the pointer.
    pub(crate) button_hover: Color32,
    /// Severity stop, and a value that is refused.
    pub(crate) stop: Color32,
    /// Severity caution.
    pub(crate) caution: Color32,
    /// Severity note.
    pub(crate) note: Color32,
    /// What suits.
    pub(crate) good: Color32,
    /// Text on a patch of one of the three severities, or of what suits.
    pub(crate) on_severity: Color32,
    ink_plain: Color32,
    ink_soft: Color32,
    ink_bore: Color32,
    ink_moving: Color32,
    ink_fitting: Color32,
    ink_ghost: Color32,
    ink_room: Color32,
}

const LIGHT: Tokens = Tokens {
    paper: Color32::from_rgb(252, 252, 250),
    panel: Color32::from_rgb(240, 240, 236),
    card: Color32::from_rgb(249, 249, 246),
    field: Color32::from_rgb(255, 255, 255),
    text: Color32::from_rgb(32, 34, 38),
    text_soft: Color32::from_rgb(92, 96, 102),
    line: Color32::from_rgb(196, 196, 190),
    accent: Color32::from_rgb(20, 98, 140),
    chosen: Color32::from_rgb(204, 226, 240),
    button: Color32::from_rgb(226, 226, 220),
    button_hover: Color32::from_rgb(212, 214, 208),
    stop: Color32::from_rgb(176, 28, 36),
    caution: Color32::from_rgb(150, 88, 0),
    note: Color32::from_rgb(38, 96, 150),
    good: Color32::from_rgb(20, 110, 84),
    on_severity: Color32::from_rgb(255, 255, 255),
    ink_plain: Color32::from_rgb(24, 26, 30),
    ink_soft: Color32::from_rgb(150, 152, 154),
    ink_bore: Color32::from_rgb(0, 92, 150),
    ink_moving: Color32::from_rgb(110, 62, 150),
    ink_fitting: Color32::from_rgb(20, 110, 84),
    ink_ghost: Color32::from_rgb(196, 0, 120),
    ink_room: Color32::from_rgb(112, 96, 72),
};

const DARK: Tokens = Tokens {
    paper: Color32::from_rgb(24, 26, 29),
    panel: Color32::from_rgb(36, 38, 42),
    card: Color32::from_rgb(45, 48, 53),
    field: Color32::from_rgb(26, 28, 31),
    text: Color32::from_rgb(226, 228, 230),
    text_soft: Color32::from_rgb(164, 168, 174),
    line: Color32::from_rgb(78, 82, 88),
    accent: Color32::from_rgb(110, 186, 226),
    chosen: Color32::from_rgb(38, 74, 98),
    button: Color32::from_rgb(60, 64, 70),
    button_hover: Color32::from_rgb(76, 81, 88),
    stop: Color32::from_rgb(255, 122, 116),
    caution: Color32::from_rgb(240, 180, 78),
    note: Color32::from_rgb(126, 186, 240),
    good: Color32::from_rgb(112, 206, 168),
    on_severity: Color32::from_rgb(20, 20, 22),
    ink_plain: Color32::from_rgb(222, 224, 226),
    ink_soft: Color32::from_rgb(112, 116, 122),
    ink_bore: Color32::from_rgb(104, 190, 250),
    ink_moving: Color32::from_rgb(200, 160, 240),
    ink_fitting: Color32::from_rgb(112, 206, 168),
    ink_ghost: Color32::from_rgb(255, 120, 200),
    ink_room: Color32::from_rgb(196, 178, 148),
};

impl Tokens {
    /// The colours of a theme.
    pub(crate) const fn of(theme: Theme) -> &'static Self {
        match theme {
            Theme::Light => &LIGHT,
            Theme::Dark => &DARK,
        }
    }

    /// The colour of an ink of the drawings.
    pub(crate) const fn ink(&self, ink: Ink) -> Color32 {
        match ink {
            Ink::Plain => self.ink_plain,
            Ink::Soft => self.ink_soft,
            Ink::Bore => self.ink_bore,
            Ink::Moving => self.ink_moving,
            Ink::Fitting => self.ink_fitting,
            Ink::Stop => self.stop,
            Ink::Caution => self.caution,
            Ink::Note => self.note,
            Ink::Ghost => self.ink_ghost,
            Ink::Room => self.ink_room,
            Ink::Paper => self.paper,
        }
    }

    /// The colour of a severity.
    pub(crate) const fn severity(&self, severity: Severity) -> Color32 {
        match severity {
            Severity::Stop => self.stop,
            Severity::Caution => self.caution,
            Severity::Note => self.note,
        }
    }

    /// The colour of a verdict.
    pub(crate) const fn grade(&self, grade: Grade) -> Color32 {
        match grade {
            Grade::Fits => self.good,
            Grade::Marginal => self.caution,
            Grade::No => self.stop,
        }
    }

    fn visuals(&self, theme: Theme) -> egui::Visuals {
        let mut visuals = match theme {
            Theme::Light => egui::Visuals::light(),
            Theme::Dark => egui::Visuals::dark(),
        };
        visuals.panel_fill = self.panel;
        visuals.window_fill = self.card;
        visuals.window_stroke = Stroke::new(1.0, self.line);
        visuals.extreme_bg_color = self.field;
        visuals.faint_bg_color = self.card;
        visuals.weak_text_color = Some(self.text_soft);
        visuals.hyperlink_color = self.accent;
        visuals.error_fg_color = self.stop;
        visuals.warn_fg_color = self.caution;
        visuals.selection.bg_fill = self.chosen;
        visuals.selection.stroke = Stroke::new(1.5, self.accent);
        let widgets = &mut visuals.widgets;
        widgets.noninteractive.fg_stroke.color = self.text;
        widgets.noninteractive.bg_stroke.color = self.line;
        for (state, fill, edge) in [
            (&mut widgets.inactive, self.button, self.line),
            (&mut widgets.hovered, self.button_hover, self.accent),
            (&mut widgets.active, self.chosen, self.accent),
            (&mut widgets.open, self.button_hover, self.line),
        ] {
            state.weak_bg_fill = fill;
            state.bg_fill = fill;
            state.bg_stroke = Stroke::new(1.0, edge);
            state.fg_stroke.color = self.text;
        }
        visuals
    }
}

/// The colours of the theme that `ui` is shown in.
pub(crate) fn tokens(ui: &egui::Ui) -> &'static Tokens {
    Tokens::of(if ui.visuals().dark_mode {
        Theme::Dark
    } else {
        Theme::Light
    })
}

/// The font of the drawings.
pub(crate) fn sheet_font(weight: Weight, size: f32) -> FontId {
    let name = match weight {
        Weight::Plain => NAME_PLAIN,
        Weight::Bold => NAME_BOLD,
    };
    FontId::new(size, FontFamily::Name(name.into()))
}

/// The bold font at the size of plain text.
pub(crate) fn bold(text: impl Into<String>) -> egui::RichText {
    egui::RichText::new(text).family(FontFamily::Name(NAME_BOLD.into()))
}

/// A button that stays down while it is chosen.
pub(crate) fn toggle(ui: &mut egui::Ui, chosen: bool, text: impl Into<String>) -> egui::Response {
    ui.add(egui::Button::selectable(chosen, text.into()).frame_when_inactive(true))
}

/// Gives a context the fonts and both themes.
pub(crate) fn install(ctx: &egui::Context) {
    ctx.set_fonts(fonts());
    for theme in [Theme::Light, Theme::Dark] {
        ctx.style_mut_of(theme, |style| {
            style.visuals = Tokens::of(theme).visuals(theme);
            style.spacing.item_spacing = egui::vec2(6.0, 5.0);
            style.spacing.button_padding = egui::vec2(7.0, 3.0);
            style.spacing.interact_size.y = 22.0;
            style.spacing.indent = 12.0;
            style.spacing.combo_width = 120.0;
            style.spacing.scroll = egui::style::ScrollStyle::solid();
            for (kind, size) in [
                (TextStyle::Body, 13.5),
                (TextStyle::Button, 13.5),
                (TextStyle::Small, 11.5),
                (TextStyle::Monospace, 12.5),
                (TextStyle::Heading, 16.0),
            ] {
                if let Some(font) = style.text_styles.get_mut(&kind) {
                    font.size = size;
                }
            }
        });
    }
}

fn fonts() -> FontDefinitions {
    let mut fonts = FontDefinitions::default();
    for (name, weight) in [(NAME_PLAIN, Weight::Plain), (NAME_BOLD, Weight::Bold)] {
        let data = FontData::from_static(text::font(weight));
        fonts.font_data.insert(name.to_owned(), Arc::new(data));
        let mut family = vec![name.to_owned()];
        if let Some(usual) = fonts.families.get(&FontFamily::Proportional) {
            family.extend(usual.iter().cloned());
        }
        fonts.families.insert(FontFamily::Name(name.into()), family);
    }
    if let Some(usual) = fonts.families.get_mut(&FontFamily::Proportional) {
        usual.insert(0, NAME_PLAIN.to_owned());
    }
    fonts
}

#[cfg(test)]
mod tests {
    use super::*;

    /// Relative luminance and contrast as WCAG 2 defines them.
    fn contrast(a: Color32, b: Color32) -> f64 {
        let light = |c: Color32| {
            let part = |v: u8| {
                let v = f64::from(v) / 255.0;
                if v <= 0.03928 {
                    v / 12.92
                } else {
                    ((v + 0.055) / 1.055).powf(2.4)
                }
            };
            0.2126 * part(c.r()) + 0.7152 * part(c.g()) + 0.0722 * part(c.b())
        };
        let (a, b) = (light(a), light(b));
        (a.max(b) + 0.05) / (a.min(b) + 0.05)
    }

    #[test]
    fn text_can_be_read_on_its_ground_in_both_themes() {
        for theme in [Theme::Light, Theme::Dark] {
            let t = Tokens::of(theme);
            for (what, ink, ground) in [
                ("text on panel", t.text, t.panel),
                ("text on card", t.text, t.card),
                ("soft text on panel", t.text_soft, t.panel),
                ("soft text on card", t.text_soft, t.card),
                ("text on chosen", t.text, t.chosen),
                ("text on button", t.text, t.button),
                ("refusal on panel", t.stop, t.panel),
                ("caution on card", t.caution, t.card),
                ("note on card", t.note, t.card),
                ("on stop", t.on_severity, t.stop),
                ("on caution", t.on_severity, t.caution),
                ("on note", t.on_severity, t.note),
                ("on good", t.on_severity, t.good),
                ("plain ink on paper", t.ink_plain, t.paper),
                ("bore ink on paper", t.ink_bore, t.paper),
                ("ghost ink on paper", t.ink_ghost, t.paper),
                ("room ink on paper", t.ink_room, t.paper),
            ] {
                let ratio = contrast(ink, ground);
                assert!(ratio >= 4.5, "{theme:?}: {what} has contrast {ratio:.2}");
            }
        }
    }
}
