//! The cover: what the job is, box by box, and what must be known before work begins.

use std::collections::BTreeMap;

use euclid::default::{Rect, Vector2D};
use flapwright_model::card::Card;
use flapwright_model::length::show_mm_tenth;
use flapwright_model::material::MaterialClass;
use flapwright_rules::finding::{Finding, Severity};
use flapwright_rules::inspection::BoxReport;
use flapwright_rules::plural;
use flapwright_words::{Names, headline, message, place};

use super::flow::{Flow, Theme};
use super::head_foot::pieces;
use super::list_table::{Cell, Column, ListTable};
use super::setup::SheetSetup;
use crate::brush::{Brush, Lettering};
use crate::cautions::{Context, cautions};
use crate::draft::Draft;
use crate::list::{Across, Along, At, DisplayList, Weight};
use crate::opening_mark;
use crate::page_kind::PageKind;
use crate::pen::{Ink, Layer, Pen};
use crate::views::{ViewOptions, elevation};
use crate::words::fitted;

/// Depth of the picture of a box with its words, mm.
const PICTURE: f64 = 46.0;
/// Depth of the words below the picture, mm.
const UNDER: f64 = 13.0;
/// Least width of a picture with its blank, mm.
const LEAST_WIDTH: f64 = 42.0;

/// The cover and, for a large job, further pages.
pub(super) fn pages(setup: &SheetSetup<'_>) -> Vec<Draft> {
    let mut flow = Flow::new(setup, theme(setup));
    flow.caption("Boxes");
    boxes(setup, &mut flow);
    let table = materials(setup);
    if !table.is_empty() {
        flow.caption("Materials");
        flow.table(&table);
    }
    let table = fittings(setup);
    if !table.is_empty() {
        flow.caption("Fittings");
        flow.table(&table);
    }
    flow.caption("Findings");
    findings(setup, &mut flow);
    flow.finish()
}

fn theme(setup: &SheetSetup<'_>) -> Theme {
    let job = setup.job;
    let count: u32 = job.boxes.iter().map(|it| it.quantity).sum();
    let built = if count == 1 {
        "1 box".to_owned()
    } else {
        format!("{count} boxes")
    };
    let panels = plural::count(setup.drilled().count(), "drilling sheet");
    let mut lead = vec![format!(
        "{built}, {panels}, ceiling {} above the floor. All sizes in mm unless a unit stands \
         beside them.",
        show_mm_tenth(job.room.ceiling)
    )];
    let kinds = setup
        .inspection
        .boxes
        .iter()
        .flat_map(|report| report.doors())
        .filter_map(|door| door.kind);
    let marked: Vec<_> = kinds.collect();
    if !marked.is_empty() {
        let with_arrow = marked.into_iter().any(opening_mark::rises);
        lead.push(opening_mark::legend(job.settings.opening_mark, with_arrow));
    }
    Theme {
        kind: PageKind::Cover,
        title: "Cover".to_owned(),
        headline: job.name.clone(),
        lead,
        cautions: cautions(context(setup)),
        invented: setup.invented(),
    }
}

/// Everything that some page of the job has on it.
fn context(setup: &SheetSetup<'_>) -> Context {
    let panels = || setup.inspection.boxes.iter().flat_map(|it| &it.panels);
    let fitted = setup.fittings().next().is_some();
    let bores = || panels().flat_map(|panel| &panel.bores);
    let through = |bore: &flapwright_rules::inspection::PlacedBore| {
        bore.drill.depth == flapwright_model::card::Depth::Through
    };
    Context {
        leaf: fitted,
        carries_fitting: fitted,
        glass_panel: panels().any(|panel| panel.class == MaterialClass::Glass),
        glass_pane: panels().any(|panel| {
            panel
                .infill
                .as_ref()
                .is_some_and(|infill| infill.class == MaterialClass::Glass)
        }),
        through: bores().any(through),
        blind: bores().any(|bore| !through(bore)),
        ..Context::default()
    }
}

/// Small front views side by side, in rows.
fn boxes(setup: &SheetSetup<'_>, flow: &mut Flow) {
    let reports = &setup.inspection.boxes;
    if reports.is_empty() {
        flow.paragraph("This job has no box.", Weight::Plain);
        return;
    }
    let across = (flow.width() / LEAST_WIDTH).floor().max(1.0);
    let width = flow.width() / across;
    // One scale for all, so that sizes can be compared.
    let scale = reports
        .iter()
        .map(|report| {
            let bounds = picture(setup, report, 1.0).bounds().unwrap_or_default();
            let wide = (width - 6.0) / bounds.width().max(1.0);
            wide.min((PICTURE - UNDER - 2.0) / bounds.height().max(1.0))
        })
        .fold(0.2, f64::min);
    for row in reports.chunks(across as usize) {
        let (at, list) = flow.take(PICTURE);
        for (i, report) in row.iter().enumerate() {
            let corner = At::new(at.x + width * i as f64, at.y - PICTURE);
            let cell = Rect::from_points([corner, At::new(corner.x + width, at.y)]);
            one_box(list, setup, report, cell, scale);
        }
    }
}

fn picture(setup: &SheetSetup<'_>, report: &BoxReport, scale: f64) -> DisplayList {
    let options = ViewOptions {
        scale,
        mark: setup.job.settings.opening_mark,
        show_dimensions: false,
        ..ViewOptions::default()
    };
    let mut list = elevation(report, &options);
    // Bores would be specks at this size.
    list.items.retain(|item| item.layer != Layer::Bores);
    for item in &mut list.items {
        item.shape.redrawn(Pen::Outline, Pen::Thin);
    }
    list
}

fn one_box(
    list: &mut DisplayList,
    setup: &SheetSetup<'_>,
    report: &BoxReport,
    cell: Rect<f64>,
    scale: f64,
) {
    let small = picture(setup, report, scale);
    let bounds = small.bounds().unwrap_or_default();
    let low = cell.min_y() + UNDER;
    let shift = Vector2D::new(
        cell.center().x - bounds.center().x,
        low + 1.0 - bounds.min_y(),
    );
    list.append_shifted(&small, shift);
    let notes = Brush::new(Layer::Notes, Ink::Plain);
    let room = cell.width() - 3.0;
    let [width, height, depth] = report.outer.map(show_mm_tenth);
    let pieces = pieces(report.quantity);
    let lines = [
        (
            format!("“{}”, {pieces}", report.name),
            Weight::Bold,
            low - 3.5,
        ),
        (
            format!("{width} × {height} × {depth}"),
            Weight::Plain,
            low - 7.6,
        ),
    ];
    for (words, weight, y) in lines {
        let (words, height) = fitted(&words, &[2.5, 1.8], weight, room);
        let how = Lettering {
            weight,
            ..Lettering::new(height)
        };
        let at = At::new(cell.center().x, y);
        notes.text(list, at, words, how.held(Along::Middle, Across::Baseline));
    }
    let ends = [
        At::new(cell.min_x() + 1.5, cell.min_y() + 2.0),
        At::new(cell.max_x() - 1.5, cell.min_y() + 2.0),
    ];
    Brush::new(Layer::Sheet, Ink::Soft).line(list, ends[0], ends[1], Pen::Thin);
}

/// Materials in use, by name.
fn materials(setup: &SheetSetup<'_>) -> ListTable {
    let mut used: BTreeMap<&str, Vec<String>> = BTreeMap::new();
    let mut add = |material: &'_ str, thickness: f64| -> Option<()> {
        let name = setup.job.material(material)?.name.as_str();
        let all = used.entry(name).or_default();
        let thick = show_mm_tenth(thickness);
        if !all.contains(&thick) {
            all.push(thick);
        }
        Some(())
    };
    for panel in setup.inspection.boxes.iter().flat_map(|it| &it.panels) {
        add(&panel.material, panel.thickness);
        if let Some(infill) = &panel.infill {
            add(&infill.material, infill.thickness);
        }
    }
    for frame in setup.job.boxes.iter().filter_map(|it| it.frame.as_ref()) {
        add(&frame.material, frame.thickness);
    }
    let mut table = ListTable::new([
        Column::words("material", 60.0),
        Column::words("thickness", 50.0),
        Column::words("density, kg/m³", 60.0),
    ]);
    for (name, thick) in used {
        let density = setup.job.material(name).map_or_else(String::new, |it| {
            let density = it.density;
            format!(
                "{:.0} ({:.0} to {:.0})",
                density.likely, density.low, density.high
            )
        });
        table.row([
            Cell::from(name),
            Cell::from(thick.join(", ")),
            Cell::from(density),
        ]);
    }
    table
}

/// Card and size with how many sets are needed, and where.
fn fittings(setup: &SheetSetup<'_>) -> ListTable {
    let mut needed: BTreeMap<(&str, &str), (&Card, u32, Vec<String>)> = BTreeMap::new();
    for (wall_box, _, choice) in setup.fittings() {
        let Some(card) = setup.job.card_by_id(choice.card) else {
            continue;
        };
        let entry = needed
            .entry((card.name.as_str(), choice.size.as_str()))
            .or_insert_with(|| (card, 0, Vec::new()));
        entry.1 += wall_box.quantity;
        let place = match wall_box.quantity {
            1 => wall_box.name.clone(),
            many => format!("{many} × {}", wall_box.name),
        };
        entry.2.push(place);
    }
    let mut table = ListTable::new([
        Column::words("fitting", 40.0),
        Column::words("size", 24.0),
        Column::words("kind", 50.0),
        Column::words("quantity", 40.0),
        Column::words("for", 90.0),
    ]);
    for ((name, size), (card, count, places)) in needed {
        let both = card.sides.ties().len() == 2;
        let quantity = match (both, count) {
            (true, 1) => "1 pair".to_owned(),
            (true, many) => format!("{many} pairs"),
            (false, 1) => "1 piece".to_owned(),
            (false, many) => format!("{many} pieces"),
        };
        table.row([
            Cell::from(name),
            Cell::from(size),
            Cell::from(card.kind.words()),
            Cell::from(quantity),
            Cell::from(places.join(", ")),
        ]);
    }
    table
}

/// How the findings stand, and those that were accepted.
fn findings(setup: &SheetSetup<'_>, flow: &mut Flow) {
    let (stops, open, notes) = (
        setup.inspection.open(Severity::Stop),
        setup.inspection.open(Severity::Caution),
        setup.inspection.open(Severity::Note),
    );
    let words = format!(
        "{}, {}, {} open.",
        plural::count(stops, "stop"),
        plural::count(open, "caution"),
        plural::count(notes, "note")
    );
    if stops > 0 {
        flow.paragraph(
            &format!("DO NOT BUILD: {words} Parts with an open stop do not work."),
            Weight::Bold,
        );
    } else {
        flow.paragraph(&words, Weight::Plain);
    }
    let mut table = ListTable::new([Column::words("", 24.0), Column::words("finding", 400.0)]);
    let all = &setup.inspection.findings;
    let grave = all
        .iter()
        .filter(|it| it.accepted.is_none() && it.severity >= Severity::Caution);
    let names = Names::of(setup.job);
    let speaker = names.speaker();
    for finding in grave {
        table.row([
            Cell::from(finding.severity.word()),
            Cell::from(headline(finding, &speaker)),
        ]);
    }
    if !table.is_empty() {
        flow.table(&table);
    }
    let accepted: Vec<(&Finding, &String)> = all
        .iter()
        .filter_map(|it| Some((&**it, it.accepted.as_ref()?)))
        .collect();
    if accepted.is_empty() {
        flow.blank(2.0);
        flow.paragraph("No finding has been accepted.", Weight::Plain);
        return;
    }
    let mut table = ListTable::new([
        Column::words("accepted for", 40.0),
        Column::words("finding", 100.0),
        Column::words("because", 100.0),
    ]);
    for (finding, reason) in accepted {
        table.row([
            Cell::from(place(finding, &speaker)),
            Cell::from(message(finding, &speaker)),
            Cell::from(reason.clone()),
        ]);
    }
    flow.blank(2.0);
    flow.table(&table);
}
