//! Lift moment against spring moment over the way of the door.

use egui::Ui;
use egui_plot::{FilledArea, HLine, HoverPosition, Line, PlotPoints};
use flapwright_drawing::pen::Ink;
use flapwright_model::measure::Measure;
use flapwright_motion::gravity::Level;
use flapwright_motion::statics::{CurvePoint, Curves};

use super::AboutDoor;
use super::cache::Lines;
use super::cursor::{LAST_LABEL, follow, line_at, way_plot};
use super::legend::{Mark, legend_ui, thin};
use crate::window::command::Command;
use crate::window::tokens::{bold, tokens};

/// Shows the plot.
pub(super) fn moment_ui(
    ui: &mut Ui,
    about: AboutDoor<'_>,
    (lines, curves): (&Lines, &Curves),
    height: f32,
    queue: &mut Vec<Command>,
) {
    let tokens = tokens(ui);
    let unit = about.unit;
    let (lift, spring) = (tokens.ink(Ink::Moving), tokens.ink(Ink::Fitting));
    ui.label(bold("Weight against fitting"));
    let fitting = if about.known.has_strut {
        "strut, friction"
    } else {
        "spring, friction"
    };
    legend_ui(
        ui,
        &[
            (Mark::Line(lift), "lift moment, light to heavy door"),
            (Mark::Line(spring), fitting),
        ],
    );
    let read = |position: &HoverPosition<'_>| {
        let x = match position {
            HoverPosition::NearDataPoint { position, .. }
            | HoverPosition::Elsewhere { position } => position.x,
        };
        curves.nearest(x / 100.0).map(|point| told(point, unit))
    };
    let shown = way_plot(
        ui,
        "moments",
        height,
        (Measure::Moment.symbol(unit), "how far open"),
    )
    .width(ui.available_width() - LAST_LABEL)
    .label_formatter(read)
    .show(ui, |plot| {
        for (band, colour) in [(&lines.lift_band, lift), (&lines.spring_band, spring)] {
            let area = FilledArea::new("range", &band.x, &band.low, &band.high)
                .fill_color(thin(colour))
                .allow_hover(false);
            plot.add(area);
        }
        let zero = HLine::new("zero", 0.0).color(tokens.text_soft);
        plot.hline(zero.width(1.0).allow_hover(false));
        for (points, colour) in [(&lines.lift, lift), (&lines.spring, spring)] {
            plot.line(
                Line::new("moment", PlotPoints::Borrowed(points))
                    .color(colour)
                    .width(2.0)
                    .allow_hover(false),
            );
        }
        line_at(plot, about.s, tokens.text);
    });
    follow(ui, &shown, "Moment plot", about.s, queue);
}

/// The numbers at one place.
fn told(point: &CurvePoint, unit: flapwright_model::length::Unit) -> String {
    let lift = Level::ALL.map(|level| point.lift.at(level));
    format!(
        "{:.0} % open, {:.0}° at the fitting\nlift moment {}\nfitting {}, friction {}",
        point.s * 100.0,
        point.input.to_degrees(),
        Measure::Moment.range(lift, unit),
        Measure::Moment.text(point.push.moment, unit),
        Measure::Moment.text(point.push.friction, unit)
    )
}
