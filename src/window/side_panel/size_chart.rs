//! Door height against door mass: what each size carries, and where this door is.

use egui::{Align2, RichText, Ui};
use egui_plot::{
    AxisHints, FilledArea, HoverPosition, Line, LineStyle, Plot, PlotPoint, PlotPoints, PlotUi,
    Points, Text,
};
use flapwright_model::length::{MM_PER_INCH, Unit};
use flapwright_model::measure::{Measure, length};
use flapwright_motion::sizes::Grade;

use super::AboutDoor;
use super::cache::{ChartRegion, height_in};
use super::cursor::{even_marks, small, still, y_axis};
use super::legend::{Mark, legend_ui, thin};
use crate::window::tokens::{Tokens, bold, tokens};

/// Shows the chart in a room of that height.
pub(super) fn chart_ui(ui: &mut Ui, about: AboutDoor<'_>, height: f32) {
    let tokens = tokens(ui);
    let unit = about.unit;
    ui.add_space(2.0);
    ui.label(bold("Size chart"));
    let turned = about.known.chart.iter().any(|region| !region.as_given);
    let mut marks = vec![
        (Mark::Line(tokens.text), "this door"),
        (Mark::Patch(thin(tokens.accent)), "chosen size"),
    ];
    if turned {
        marks.push((
            Mark::Dashes(tokens.text_soft),
            "given as moments, turned into masses of a door like this",
        ));
    }
    legend_ui(ui, &marks);
    let regions = &about.known.chart;
    let read = move |position: &HoverPosition<'_>| {
        let at = match position {
            HoverPosition::NearDataPoint { position, .. }
            | HoverPosition::Elsewhere { position } => *position,
        };
        Some(told(about, at))
    };
    let left = if turned { 66.0 } else { 52.0 };
    let (height_words, mass) = (
        format!("door height, {}", unit.symbol()),
        format!("mass, {}", Measure::Mass.symbol(unit)),
    );
    let x_axis = AxisHints::new_x()
        .label(small(&height_words))
        .label_spacing(egui::Rangef::new(20.0, 30.0));
    let plot = still(ui, Plot::new("size chart"))
        .height((height - left).max(150.0))
        .include_y(0.0)
        .x_grid_spacer(|input| even_marks(&input, 7.0))
        .y_grid_spacer(|input| even_marks(&input, 6.0))
        .custom_x_axes(vec![x_axis])
        .custom_y_axes(vec![y_axis(&mass)])
        .label_formatter(read);
    let shown = plot.show(ui, |plot| {
        let (others, chosen): (Vec<_>, Vec<_>) = regions.iter().partition(|it| !it.chosen);
        for region in others.into_iter().chain(chosen) {
            region_ui(plot, region, tokens);
        }
        door_ui(plot, about, tokens);
    });
    shown.response.accessible_name("Size chart");
}

fn region_ui(plot: &mut PlotUi<'_>, region: &ChartRegion, tokens: &Tokens) {
    let (colour, width) = match (region.chosen, region.grade) {
        (true, _) => (tokens.accent, 2.0),
        (false, Grade::No) => (tokens.text_soft, 1.0),
        (false, grade) => (tokens.grade(grade), 1.5),
    };
    let fill = if region.chosen {
        thin(colour)
    } else {
        colour.gamma_multiply(0.07)
    };
    plot.add(
        FilledArea::new(&region.name, &region.heights, &region.least, &region.most)
            .fill_color(fill)
            .allow_hover(false),
    );
    let style = if region.as_given {
        LineStyle::Solid
    } else {
        LineStyle::dashed_dense()
    };
    let lower = region.heights.iter().zip(&region.least);
    let upper = region.heights.iter().zip(&region.most).rev();
    let outline = lower.chain(upper).map(|(&x, &y)| [x, y]);
    let first = region.heights.first().zip(region.least.first());
    let closed: PlotPoints<'_> = outline.chain(first.map(|(&x, &y)| [x, y])).collect();
    plot.line(
        Line::new(&region.name, closed)
            .color(colour)
            .width(width)
            .style(style)
            .allow_hover(false),
    );
    // Names of a second card stand behind the other end: cards of one kind lie over each other.
    let ends = region.heights.iter().zip(&region.most);
    let (end, anchor) = if region.at_left {
        (ends.clone().next(), Align2::LEFT_TOP)
    } else {
        (ends.clone().next_back(), Align2::LEFT_CENTER)
    };
    if let Some((&x, &y)) = end.filter(|_| region.named) {
        let name = RichText::new(format!(" {} ", region.short)).small();
        plot.text(
            Text::new(&region.name, PlotPoint::new(x, y), name)
                .color(colour)
                .anchor(anchor)
                .allow_hover(false),
        );
    }
}

/// The door's point and the range of its mass.
fn door_ui(plot: &mut PlotUi<'_>, about: AboutDoor<'_>, tokens: &Tokens) {
    let unit = about.unit;
    let mass = about.door.mass;
    let x = height_in(unit, about.known.found.door_height);
    let [low, likely, high] =
        [mass.low, mass.likely, mass.high].map(|kg| Measure::Mass.number(kg, unit));
    let bounds = plot.transform().dpos_dvalue_x().abs();
    let cap = if bounds > 0.0 { 5.0 / bounds } else { 0.0 };
    for line in [
        vec![[x, low], [x, high]],
        vec![[x - cap, low], [x + cap, low]],
        vec![[x - cap, high], [x + cap, high]],
    ] {
        plot.line(
            Line::new("range", line)
                .color(tokens.text)
                .width(2.0)
                .allow_hover(false),
        );
    }
    plot.points(
        Points::new("this door", [x, likely])
            .color(tokens.text)
            .radius(3.5)
            .allow_hover(false),
    );
}

/// What is under the pointer.
fn told(about: AboutDoor<'_>, at: PlotPoint) -> String {
    let unit = about.unit;
    let height = match unit {
        Unit::Millimetre => at.x,
        Unit::Inch => at.x * MM_PER_INCH,
    };
    let kilograms = Measure::Mass.value(at.y, unit);
    let carrying: Vec<String> = about
        .known
        .found
        .regions
        .iter()
        .filter(|region| region.carries(height, kilograms))
        .map(|region| format!("{}, size {}", region.card, region.size))
        .collect();
    let carrying = if carrying.is_empty() {
        "no size carries it".to_owned()
    } else {
        carrying.join("\n")
    };
    format!(
        "{} high, {}\n{carrying}",
        length(height.round(), unit),
        Measure::Mass.text(kilograms, unit)
    )
}
