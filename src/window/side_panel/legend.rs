//! What the lines and patches of a plot mean, beside it instead of over it.

use egui::{Color32, RichText, Sense, Stroke, Ui, Vec2};

use crate::window::tokens::tokens;

/// How a thing is drawn.
#[derive(Debug, Clone, Copy)]
pub(super) enum Mark {
    /// A line.
    Line(Color32),
    /// A line of dashes.
    Dashes(Color32),
    /// A patch.
    Patch(Color32),
}

/// One line of small words with their marks.
pub(super) fn legend_ui(ui: &mut Ui, marks: &[(Mark, &str)]) {
    ui.horizontal_wrapped(|ui| {
        ui.spacing_mut().item_spacing = Vec2::new(4.0, 1.0);
        for (mark, words) in marks {
            let (rect, _) = ui.allocate_exact_size(Vec2::new(18.0, 12.0), Sense::hover());
            let middle = [rect.left_center(), rect.right_center()];
            match *mark {
                Mark::Line(colour) => {
                    ui.painter().line_segment(middle, Stroke::new(2.0, colour));
                }
                Mark::Dashes(colour) => {
                    let stroke = Stroke::new(2.0, colour);
                    ui.painter()
                        .extend(egui::Shape::dashed_line(&middle, stroke, 4.0, 3.0));
                }
                Mark::Patch(colour) => {
                    ui.painter()
                        .rect_filled(rect.shrink2(Vec2::new(2.0, 1.0)), 1.0, colour);
                }
            }
            let soft = tokens(ui).text_soft;
            ui.label(RichText::new(*words).small().color(soft));
            ui.add_space(6.0);
        }
    });
}

/// A colour that lets what is behind it be seen.
pub(super) fn thin(colour: Color32) -> Color32 {
    colour.gamma_multiply(0.22)
}
