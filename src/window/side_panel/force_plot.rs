//! Hand force at the handle over the way of the door.

use egui::Ui;
use egui_plot::{FilledArea, HLine, HoverPosition, Line, LineStyle, PlotPoints};
use flapwright_drawing::pen::Ink;
use flapwright_model::measure::Measure;
use flapwright_motion::gravity::Level;
use flapwright_motion::statics::{ACCESSIBLE_FORCE, CurvePoint, Curves, Direction};

use super::cursor::{LAST_LABEL, follow, line_at, way_plot};
use super::legend::{Mark, legend_ui, thin};
use super::{AboutDoor, cache::Lines};
use crate::window::command::Command;
use crate::window::tokens::{bold, tokens};

/// What the line at 5 lbf is.
const REFERENCE: &str = "22.2 N (5 lbf)";
/// The same in full.
const REFERENCE_FULL: &str = "Dotted: 22.2 N (5 lbf), a published accessibility figure for operable parts (2010 ADA \
     Standards, 309.4), drawn for comparison. This is no statement that the cabinet conforms.";

/// Shows the plot; gives back where its inside lies from left to right.
pub(super) fn force_ui(
    ui: &mut Ui,
    about: AboutDoor<'_>,
    (lines, curves): (&Lines, &Curves),
    height: f32,
    queue: &mut Vec<Command>,
) -> egui::Rangef {
    let tokens = tokens(ui);
    let unit = about.unit;
    let (opening, closing) = (tokens.accent, tokens.ink(Ink::Moving));
    let (soft, text) = (tokens.text_soft, tokens.text);
    ui.label(bold("Hand force at the handle"));
    legend_ui(
        ui,
        &[
            (Mark::Line(opening), "opening"),
            (Mark::Dashes(closing), "closing"),
            (Mark::Patch(thin(opening)), "light to heavy door, friction"),
        ],
    );
    let read = |position: &HoverPosition<'_>| {
        let x = match position {
            HoverPosition::NearDataPoint { position, .. }
            | HoverPosition::Elsewhere { position } => position.x,
        };
        curves.nearest(x / 100.0).map(|point| told(point, unit))
    };
    let reference = Measure::Force.number(ACCESSIBLE_FORCE, unit);
    let shown = way_plot(ui, "hand force", height, (Measure::Force.symbol(unit), ""))
        .include_y(reference * 1.25)
        .width(ui.available_width() - LAST_LABEL)
        .label_formatter(read)
        .show(ui, |plot| {
            for band in &lines.hand {
                let area = FilledArea::new("range", &band.x, &band.low, &band.high)
                    .fill_color(thin(opening))
                    .allow_hover(false);
                plot.add(area);
            }
            plot.hline(
                HLine::new("zero", 0.0)
                    .color(soft)
                    .width(1.0)
                    .allow_hover(false),
            );
            plot.hline(
                HLine::new("reference", reference)
                    .color(tokens.caution)
                    .width(1.5)
                    .style(LineStyle::dotted_loose())
                    .allow_hover(false),
            );
            for run in &lines.closing {
                let points = PlotPoints::Borrowed(run);
                let line = Line::new("closing", points)
                    .color(closing)
                    .width(2.0)
                    .style(LineStyle::dashed_dense())
                    .allow_hover(false);
                plot.line(line);
            }
            for run in &lines.opening {
                let points = PlotPoints::Borrowed(run);
                plot.line(
                    Line::new("opening", points)
                        .color(opening)
                        .width(2.0)
                        .allow_hover(false),
                );
            }
            line_at(plot, about.s, text);
            let corner = egui_plot::PlotPoint::new(99.0, reference);
            plot.text(
                egui_plot::Text::new("reference", corner, egui::RichText::new(REFERENCE).small())
                    .color(tokens.caution)
                    .anchor(egui::Align2::RIGHT_BOTTOM)
                    .allow_hover(false),
            );
        });
    follow(ui, &shown, "Hand force plot", about.s, queue);
    shown.transform.frame().x_range()
}

/// What the line at 5 lbf is, and where there is no leverage.
pub(super) fn notes_ui(ui: &mut Ui, lines: &Lines) {
    let soft = tokens(ui).text_soft;
    let note = |ui: &mut Ui, text: &str| {
        ui.add(egui::Label::new(egui::RichText::new(text).small().color(soft)).wrap());
    };
    note(ui, REFERENCE_FULL);
    for (from, to) in &lines.gaps {
        let text = format!(
            "No leverage from {:.0} to {:.0} %: the handle hardly moves there, so no force is drawn.",
            from * 100.0,
            to * 100.0
        );
        note(ui, &text);
    }
}

/// The numbers at one place.
fn told(point: &CurvePoint, unit: flapwright_model::length::Unit) -> String {
    let place = format!(
        "{:.0} % open, {:.0}° at the fitting",
        point.s * 100.0,
        point.input.to_degrees()
    );
    let one = |way, likely: Option<f64>| match (point.force_range(way), likely) {
        (Some((low, high)), Some(likely)) => Measure::Force.range([low, likely, high], unit),
        _ => "no leverage here".to_owned(),
    };
    format!(
        "{place}\nopening {}\nclosing {}",
        one(Direction::Opening, point.opening_force(Level::Likely)),
        one(Direction::Closing, point.closing_force(Level::Likely))
    )
}
