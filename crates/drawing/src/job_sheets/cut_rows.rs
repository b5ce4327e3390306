//! What is to be cut for one box.

use flapwright_model::door::Grain;
use flapwright_model::job::Job;
use flapwright_model::length::show_mm_tenth;
use flapwright_model::material::MaterialClass;
use flapwright_rules::inspection::{BoxReport, FaceBands, InfillReport, PanelReport, Solid};

use crate::grain::{self, GrainDirection, length_along_u};
use crate::panel_sheet::facts::{FaceEdge, edge_name};

/// One line of a cut list.
#[derive(Debug, Clone, PartialEq)]
pub(super) struct CutRow {
    pub(super) name: String,
    /// For all boxes of this description.
    pub(super) pieces: u32,
    /// Finished length and width, mm, length along the grain (along the longer side without one).
    pub(super) finished: [f64; 2],
    /// The same without edge bands: what is sawn.
    pub(super) cut: [f64; 2],
    pub(super) thickness: Option<f64>,
    pub(super) material: String,
    /// Whether the length is along u of the drawn face; bands by that face's edges.
    pub(super) length_along_u: bool,
    pub(super) bands: FaceBands,
    /// Which edges are banded and how thick, in words.
    pub(super) edges: String,
    /// Whether it has a grain; it runs along the length.
    pub(super) grain: bool,
}

/// All that is cut for one box, in the order of its panels; then the face frame and what cards
/// want cut to length.
pub(super) fn rows(job: &Job, report: &BoxReport) -> Vec<CutRow> {
    let mut rows: Vec<CutRow> = Vec::new();
    for panel in &report.panels {
        match &panel.infill {
            None => rows.push(panel_row(report, panel)),
            Some(infill) => rows.extend(framed_rows(report, panel, infill)),
        }
    }
    rows.extend(frame_rows(job, report));
    rows.extend(fitting_parts(job, report));
    rows
}

fn panel_row(report: &BoxReport, panel: &PanelReport) -> CutRow {
    let along_u = length_along_u(panel);
    let bands = panel.bands;
    let cut = [
        panel.size[0] - bands.u_start - bands.u_end,
        panel.size[1] - bands.v_start - bands.v_end,
    ];
    let turned = |[u, v]: [f64; 2]| if along_u { [u, v] } else { [v, u] };
    CutRow {
        name: panel.name.clone(),
        pieces: report.quantity,
        finished: turned(panel.size),
        cut: turned(cut),
        thickness: Some(panel.thickness),
        material: panel.material.clone(),
        length_along_u: along_u,
        bands,
        edges: edges_words(panel),
        grain: panel.grain != Grain::None,
    }
}

fn edges_words(panel: &PanelReport) -> String {
    let banded: Vec<String> = FaceEdge::ALL
        .into_iter()
        .filter(|edge| edge.band(panel.bands) > 0.0)
        .map(|edge| {
            let name = edge_name(panel.face, edge).to_lowercase();
            let short = name.trim_end_matches(" edge").trim_end_matches(" end");
            format!("{short} {}", show_mm_tenth(edge.band(panel.bands)))
        })
        .collect();
    let first = FaceEdge::UStart.band(panel.bands);
    let all = |edge: FaceEdge| edge.band(panel.bands).to_bits() == first.to_bits();
    if banded.len() == 4 && FaceEdge::ALL.into_iter().all(all) {
        format!("all round {}", show_mm_tenth(first))
    } else if banded.is_empty() {
        "none".to_owned()
    } else {
        banded.join(", ")
    }
}

/// A row without bands, for what is not a whole panel.
fn plain(name: String, pieces: u32, size: [f64; 2], thickness: f64, material: &str) -> CutRow {
    let length_and_width = [size[0].max(size[1]), size[0].min(size[1])];
    CutRow {
        name,
        pieces,
        finished: length_and_width,
        cut: length_and_width,
        thickness: Some(thickness),
        material: material.to_owned(),
        length_along_u: true,
        bands: FaceBands::default(),
        edges: "none".to_owned(),
        grain: true,
    }
}

/// Stiles run through, rails stand between them; the joint itself is the maker's.
fn framed_rows(report: &BoxReport, panel: &PanelReport, infill: &InfillReport) -> Vec<CutRow> {
    let members = infill.members;
    let [width, height] = panel.size;
    let (pieces, thick) = (report.quantity, panel.thickness);
    let between = width - members.u_start - members.u_end;
    let bar = |name: &str, length: f64, width: f64| {
        let name = format!("{}, {name}", panel.name);
        plain(name, pieces, [length, width], thick, &panel.material)
    };
    let mut rows = vec![
        bar("left stile", height, members.u_end),
        bar("right stile", height, members.u_start),
        bar("top rail, joint not counted", between, members.v_start),
        bar("bottom rail, joint not counted", between, members.v_end),
    ];
    let held = match infill.class {
        MaterialClass::Glass => "pane",
        MaterialClass::Board
        | MaterialClass::SolidWood
        | MaterialClass::Metal
        | MaterialClass::Plastic => "panel",
    };
    let size = grain::infill_size(panel, infill);
    let mut pane = plain(
        format!("{}, {held}", panel.name),
        pieces,
        size,
        infill.thickness,
        &infill.material,
    );
    match infill.class {
        MaterialClass::Board | MaterialClass::SolidWood => {
            let [width, height] = size;
            pane.finished = match grain::of_infill(panel, infill) {
                GrainDirection::LeftRight => [width, height],
                GrainDirection::UpDown | GrainDirection::FrontBack => [height, width],
            };
            pane.cut = pane.finished;
        }
        MaterialClass::Glass | MaterialClass::Metal | MaterialClass::Plastic => pane.grain = false,
    }
    rows.push(pane);
    rows
}

fn frame_rows(job: &Job, report: &BoxReport) -> Vec<CutRow> {
    let Some(frame) = job
        .box_by_id(report.id)
        .and_then(|wall_box| wall_box.frame.as_ref())
    else {
        return Vec::new();
    };
    let row = |(number, member): (usize, &Solid)| {
        let size = member.size();
        let name = match number {
            0 => "face frame, left stile".to_owned(),
            1 => "face frame, right stile".to_owned(),
            2 => "face frame, top rail, joint not counted".to_owned(),
            3 => "face frame, bottom rail, joint not counted".to_owned(),
            more => format!("face frame, shelf rail {}, joint not counted", more - 3),
        };
        let face = [size.width, size.height];
        plain(name, report.quantity, face, size.depth, &frame.material)
    };
    report.frame.iter().enumerate().map(row).collect()
}

/// Parts that cards want cut to length: clear width between the mounting faces less a deduction.
fn fitting_parts(job: &Job, report: &BoxReport) -> Vec<CutRow> {
    let mut rows = Vec::new();
    let Some(wall_box) = job.box_by_id(report.id) else {
        return rows;
    };
    for door in wall_box.doors() {
        let (Some(choice), Some(place)) = (&door.fitting, report.opening_of(door.id)) else {
            continue;
        };
        let Some(card) = job.card_by_id(choice.card) else {
            continue;
        };
        let between = place.clear.max.x - place.clear.min.x - 2.0 * choice.packing;
        for part in &card.cut_parts {
            let length = between - part.deduction;
            rows.push(CutRow {
                name: part.name.clone(),
                pieces: part.count * report.quantity,
                finished: [length, 0.0],
                cut: [length, 0.0],
                thickness: None,
                material: format!("with fitting {}", card.name),
                length_along_u: true,
                bands: FaceBands::default(),
                edges: "none".to_owned(),
                grain: false,
            });
        }
    }
    rows
}

/// Whether the part is not a sheet that bands and grain are asked of.
pub(super) const fn is_bar(row: &CutRow) -> bool {
    row.thickness.is_none()
}
