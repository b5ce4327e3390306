//! The one table of bores: every number rounded once, every text cleaned once.

use flapwright_drawing::text::printable;
use flapwright_files::{safe_file_name, unique_names};
use flapwright_model::card::Depth;
use flapwright_model::door::Side;
use flapwright_model::job::Job;
use flapwright_rules::finding::Severity;
use flapwright_rules::fingerprint::{fingerprint, grouped};
use flapwright_rules::inspection::{BoxReport, Face, Inspection, PanelReport, PlacedBore};
use flapwright_rules::machine_frame::{self, BenchEdge};
use serde::Serialize;

use super::layers::{LayerNames, Operation};
use super::options::{BoreOptions, FaceUp, ZeroCorner};
use crate::error::ExportError;

/// Longest part of a box's name in a file name, characters and bytes: the panel's name must stay.
const LONGEST_BOX_NAME: (usize, usize) = (30, 90);

/// All bores of a job, panel by panel in the order of its drilling sheets.
#[derive(Debug, Clone, PartialEq, Serialize)]
pub struct BoreList {
    /// Name of the job.
    pub job: String,
    /// Identification number of the drawings, may be empty.
    pub drawing_number: String,
    /// Revision of the job, may be empty.
    pub revision: String,
    /// Always `mm`: the unit of all lengths.
    pub unit: &'static str,
    /// Which way up the panels lie.
    pub face_up: FaceUp,
    /// The corner from which x and y run.
    pub zero_corner: ZeroCorner,
    /// The drilled panels.
    pub panels: Vec<BorePanel>,
}

/// One drilled panel as it lies on the table. Lengths in mm, rounded to 1e-6.
#[derive(Debug, Clone, PartialEq, Serialize)]
pub struct BorePanel {
    /// Name of its DXF file, unique in the list.
    pub file: String,
    /// Name of the box.
    #[serde(rename = "box")]
    pub box_name: String,
    /// Number of the box in the job, from 1.
    pub box_number: usize,
    /// How many are made.
    pub quantity: u32,
    /// Name of the panel, e.g. `right side`.
    pub panel: String,
    /// `left` or `right` for a side.
    pub hand: Option<&'static str>,
    /// The drilled face: `inner face`, `underside` or `back`.
    pub face: &'static str,
    /// From left to right as it lies.
    pub width: f64,
    /// From the reader away.
    pub height: f64,
    /// Thickness.
    pub thickness: f64,
    /// Name of the material.
    pub material: String,
    /// Which edges lengths run from: `finished`, or `cut` where it is drilled before banding.
    pub edges: &'static str,
    /// The two edges that meet where x and y are zero, e.g. `front edge, bottom end`.
    pub zero: String,
    /// The two edges that meet where u and v are zero, as on the drilling sheet.
    pub sheet_zero: String,
    /// Whether a number comes from an invented job or card.
    pub invented: bool,
    /// Findings of severity stop about this panel: while there are any, do not drill.
    pub open_stops: usize,
    /// Stands for the bores, as on the drilling sheet: same bores, same fingerprint.
    pub fingerprint: String,
    /// The bores in the order of the sheet's hole table.
    pub bores: Vec<BoreRow>,
}

/// One bore. Lengths in mm, rounded to 1e-6.
#[derive(Debug, Clone, PartialEq, Serialize)]
pub struct BoreRow {
    /// Number in the sheet's hole table, from 1.
    pub number: usize,
    /// As on the drilling sheet, from its zero corner.
    pub u: f64,
    /// Likewise.
    pub v: f64,
    /// As the panel lies, + to the right from [`BoreList::zero_corner`].
    pub x: f64,
    /// Likewise, + away from the reader.
    pub y: f64,
    /// Diameter.
    pub diameter: f64,
    /// Depth at full diameter; `None` through.
    pub depth: Option<f64>,
    /// Whether it goes through.
    pub through: bool,
    /// What it is for.
    pub purpose: String,
    /// In which pass it is drilled, from 1.
    pub pass: u8,
    /// Layer of its circle.
    pub layer: String,
}

/// The bores of all panels that have any, except panels without a sheet of their own.
///
/// # Errors
/// [`ExportError::BoreNowhere`] when a bore or its panel has a size or place that is infinite or
/// not a number, which is a fault of the program.
pub fn bore_list(
    job: &Job,
    inspection: &Inspection,
    options: &BoreOptions,
) -> Result<BoreList, ExportError> {
    let mut names = LayerNames::new(&options.layers);
    let numbered = inspection.boxes.iter().zip(1_usize..);
    let drilled = numbered.flat_map(|(report, number)| {
        let drilled = |panel: &&PanelReport| !panel.bores.is_empty() && panel.face != Face::Plain;
        let panels = report.panels.iter().filter(drilled);
        panels.map(move |panel| (report, number, panel))
    });
    let mut panels = Vec::new();
    for (report, number, panel) in drilled {
        let place = (report.as_ref(), number);
        panels.push(one_panel(
            job, inspection, place, panel, options, &mut names,
        )?);
    }
    let files = unique_names(panels.iter().map(|panel| panel.file.as_str()));
    for (panel, file) in panels.iter_mut().zip(files) {
        panel.file = file;
    }
    Ok(BoreList {
        job: clean(&job.name),
        drawing_number: clean(&job.title_block.number),
        revision: clean(&job.title_block.revision),
        unit: "mm",
        face_up: options.face_up,
        zero_corner: options.zero,
        panels,
    })
}

fn one_panel(
    job: &Job,
    inspection: &Inspection,
    (report, number): (&BoxReport, usize),
    panel: &PanelReport,
    options: &BoreOptions,
    names: &mut LayerNames<'_>,
) -> Result<BorePanel, ExportError> {
    let [width, height] = machine_frame::size(panel);
    let mut found = BorePanel {
        file: file_name(report, number, panel),
        box_name: clean(&report.name),
        box_number: number,
        quantity: report.quantity,
        panel: clean(&panel.name),
        hand: match panel.face {
            Face::SideInner(Side::Left) => Some("left"),
            Face::SideInner(Side::Right) => Some("right"),
            Face::Underside | Face::DoorBack | Face::Plain => None,
        },
        face: match panel.face {
            Face::SideInner(_) => "inner face",
            Face::Underside => "underside",
            Face::DoorBack | Face::Plain => "back",
        },
        width: rounded(width),
        height: rounded(height),
        thickness: rounded(panel.thickness),
        material: clean(&panel.material),
        edges: if machine_frame::is_cut(panel) {
            "cut"
        } else {
            "finished"
        },
        zero: zero_words(panel, options.zero, options.face_up),
        sheet_zero: sheet_zero_words(panel),
        invented: machine_frame::is_invented(job, report, panel),
        open_stops: machine_frame::open_findings(inspection, panel, Severity::Stop),
        fingerprint: grouped(&fingerprint(panel)),
        bores: Vec::new(),
    };
    for bore in &panel.bores {
        let row = one_row(panel, bore, &found, options, names);
        let numbers = [row.u, row.v, row.x, row.y, row.diameter];
        let depth = row.depth.unwrap_or_default();
        let sizes = [found.width, found.height, found.thickness, depth];
        if !numbers.iter().chain(&sizes).all(|it| it.is_finite()) {
            return Err(ExportError::BoreNowhere {
                panel: format!("{}: {}", found.box_name, found.panel),
                number: bore.number,
            });
        }
        found.bores.push(row);
    }
    Ok(found)
}

fn one_row(
    panel: &PanelReport,
    bore: &PlacedBore,
    found: &BorePanel,
    options: &BoreOptions,
    names: &mut LayerNames<'_>,
) -> BoreRow {
    let [width, height] = machine_frame::size(panel);
    let [u, v] = machine_frame::uv(panel, bore);
    let [x, y] = machine_frame::xy(panel, bore);
    let x = match options.face_up {
        FaceUp::Inner => x,
        FaceUp::Outer => width - x,
    };
    let right = if options.zero.is_right() { width } else { 0.0 };
    let up = if options.zero.is_upper() { height } else { 0.0 };
    let depth = match bore.drill.depth {
        Depth::Blind(depth) => Some(rounded(depth)),
        Depth::Through => None,
    };
    let diameter = rounded(bore.drill.diameter);
    let purpose = clean(&bore.drill.purpose);
    let layer = names.name(&Operation {
        face: found.face,
        hand: found.hand,
        panel: &found.panel,
        diameter,
        depth,
        pass: bore.drill.pass,
        purpose: &purpose,
    });
    BoreRow {
        number: bore.number,
        u: rounded(u),
        v: rounded(v),
        x: rounded(x - right),
        y: rounded(y - up),
        diameter,
        depth,
        through: depth.is_none(),
        pass: bore.drill.pass,
        layer,
        purpose,
    }
}

/// Names of the edges that meet at a corner of the panel as it lies.
fn zero_words(panel: &PanelReport, corner: ZeroCorner, face_up: FaceUp) -> String {
    // Turned over, the edge at the right hand of the sheet lies at the left.
    let right_on_sheet = corner.is_right() != (face_up == FaceUp::Outer);
    let side = if right_on_sheet {
        BenchEdge::Right
    } else {
        BenchEdge::Left
    };
    let end = if corner.is_upper() {
        BenchEdge::Far
    } else {
        BenchEdge::Near
    };
    both(panel, side, end)
}

fn sheet_zero_words(panel: &PanelReport) -> String {
    let side = if machine_frame::u_runs_left(panel) {
        BenchEdge::Right
    } else {
        BenchEdge::Left
    };
    both(panel, side, BenchEdge::Far)
}

fn both(panel: &PanelReport, side: BenchEdge, end: BenchEdge) -> String {
    format!(
        "{}, {}",
        machine_frame::edge_name(panel, side),
        machine_frame::edge_name(panel, end)
    )
}

/// Number and name of the box, name of the panel. The box's name gives way, never the panel's.
fn file_name(report: &BoxReport, number: usize, panel: &PanelReport) -> String {
    let name = safe_file_name(&report.name);
    let (characters, bytes) = LONGEST_BOX_NAME;
    let short: String = name
        .char_indices()
        .take(characters)
        .take_while(|(at, c)| at + c.len_utf8() <= bytes)
        .map(|(_, c)| c)
        .collect();
    safe_file_name(&format!(
        "{number:02}-{}-{}.dxf",
        short.trim_end(),
        panel.name
    ))
}

fn clean(text: &str) -> String {
    printable(text).into_owned()
}

/// To 1e-6 mm, so that the sums of edges leave no tails; never minus zero.
fn rounded(mm: f64) -> f64 {
    (mm * 1e6).round() / 1e6 + 0.0
}
