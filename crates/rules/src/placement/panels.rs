//! Reports of the panels of a box, before their bores are numbered.

use flapwright_model::cabinet::{Panel, PanelBands, WallBox};
use flapwright_model::door::{BuildUp, Grain, Leaf, Side};
use flapwright_model::edges::Edges;
use flapwright_model::id::DoorId;
use flapwright_model::job::Job;
use flapwright_model::material::MaterialClass;
use flapwright_model::part::{LeafId, Part, PartId};

use super::body::{Body, solid};
use super::door_place::{DoorPlace, LeafPlace};
use crate::inspection::{Face, FaceBands, InfillReport, PanelReport, Solid};

/// The panels of the box itself, without bores.
pub(super) fn body_panels(job: &Job, wall_box: &WallBox, body: &Body) -> Vec<PanelReport> {
    let box_id = wall_box.id;
    let sides = [
        (
            Part::LeftSide,
            "left side",
            &body.left,
            &wall_box.left,
            Side::Left,
        ),
        (
            Part::RightSide,
            "right side",
            &body.right,
            &wall_box.right,
            Side::Right,
        ),
    ];
    let mut panels = Vec::new();
    for (part, name, solid, panel, tie) in sides {
        let id = PartId { box_id, part };
        panels.push(report(
            job,
            id,
            name.to_owned(),
            *solid,
            panel,
            Face::SideInner(tie),
        ));
    }
    let across = [
        (Part::Top, "top", &body.top, &wall_box.top.panel),
        (Part::Bottom, "bottom", &body.bottom, &wall_box.bottom.panel),
    ];
    for (part, name, solid, panel) in across {
        let id = PartId { box_id, part };
        panels.push(report(
            job,
            id,
            name.to_owned(),
            *solid,
            panel,
            Face::Underside,
        ));
    }
    if let (Some(solid), Some(panel)) = (&body.back, wall_box.back.panel()) {
        let id = PartId {
            box_id,
            part: Part::Back,
        };
        panels.push(report(
            job,
            id,
            "back".to_owned(),
            *solid,
            panel,
            Face::Plain,
        ));
    }
    let shelves = wall_box.shelves();
    let several = shelves.len() > 1;
    for (rank, shelf) in shelves.into_iter().enumerate() {
        let kind = if shelf.is_fixed() {
            "fixed shelf"
        } else {
            "loose shelf"
        };
        let name = if several {
            format!("{kind} {} from the top", rank + 1)
        } else {
            kind.to_owned()
        };
        let part = Part::Shelf(shelf.id());
        let id = PartId { box_id, part };
        if let Some(solid) = body.shelf(shelf.id()) {
            let panel = &shelf.piece().panel;
            panels.push(report(job, id, name, *solid, panel, Face::Underside));
        }
    }
    let dividers = wall_box.dividers();
    let several = dividers.len() > 1;
    for (rank, divider) in dividers.into_iter().enumerate() {
        let name = if several {
            format!("divider {} from the left", rank + 1)
        } else {
            "divider".to_owned()
        };
        let part = Part::Divider(divider.id);
        let id = PartId { box_id, part };
        if let Some(solid) = body.divider(divider.id) {
            panels.push(report(job, id, name, *solid, &divider.panel, Face::Plain));
        }
    }
    panels
}

fn report(
    job: &Job,
    id: PartId,
    name: String,
    solid: Solid,
    panel: &Panel,
    face: Face,
) -> PanelReport {
    let extent = solid.size();
    let PanelBands {
        front,
        back,
        top_or_left,
        bottom_or_right,
    } = panel.bands;
    let (size, bands) = match face {
        Face::SideInner(_) => (
            [extent.depth, extent.height],
            FaceBands {
                u_start: front,
                u_end: back,
                v_start: top_or_left,
                v_end: bottom_or_right,
            },
        ),
        Face::Underside => (
            [extent.width, extent.depth],
            FaceBands {
                u_start: top_or_left,
                u_end: bottom_or_right,
                v_start: front,
                v_end: back,
            },
        ),
        Face::DoorBack | Face::Plain => ([extent.width, extent.height], FaceBands::default()),
    };
    let class = class_of(job, &panel.material);
    let grain = match (class, face) {
        (MaterialClass::Board | MaterialClass::SolidWood, Face::SideInner(_) | Face::Plain) => {
            Grain::Upright
        }
        (MaterialClass::Board | MaterialClass::SolidWood, Face::Underside | Face::DoorBack) => {
            Grain::Across
        }
        (MaterialClass::Glass | MaterialClass::Metal | MaterialClass::Plastic, _) => Grain::None,
    };
    PanelReport {
        id,
        name,
        solid,
        face,
        size,
        thickness: panel.thickness,
        material: panel.material.clone(),
        class,
        grain,
        bands,
        drilled: panel.drilled,
        infill: None,
        bores: Vec::new(),
    }
}

/// A leaf of a door, without bores; `number` is that of the door's opening from the top.
pub(super) fn leaf_panel(
    job: &Job,
    wall_box: &WallBox,
    (door_id, number): (DoorId, usize),
    (door, place, leaf): (&DoorPlace, &LeafPlace, &Leaf),
) -> PanelReport {
    let edges = place.edges;
    let mut name = if wall_box.doors().len() > 1 {
        format!("door {number} from the top")
    } else {
        "door".to_owned()
    };
    match place.id {
        LeafId::Only => {}
        LeafId::Upper => name.push_str(", upper leaf"),
        LeafId::Lower => name.push_str(", lower leaf"),
    }
    PanelReport {
        id: PartId {
            box_id: wall_box.id,
            part: Part::Leaf {
                door: door_id,
                leaf: place.id,
            },
        },
        name,
        solid: solid(
            (edges.left, edges.right),
            (edges.bottom, edges.top),
            (door.back - place.thickness, door.back),
        ),
        face: Face::DoorBack,
        size: [edges.right - edges.left, edges.top - edges.bottom],
        thickness: place.thickness,
        material: leaf.build.material().to_owned(),
        class: class_of(job, leaf.build.material()),
        grain: leaf.grain,
        bands: seen_from_back(leaf.bands),
        drilled: leaf.drilled,
        infill: infill(job, leaf),
        bores: Vec::new(),
    }
}

/// Seen from the back, u starts at the box-right edge.
const fn seen_from_back(edges: Edges<f64>) -> FaceBands {
    FaceBands {
        u_start: edges.right,
        u_end: edges.left,
        v_start: edges.top,
        v_end: edges.bottom,
    }
}

fn infill(job: &Job, leaf: &Leaf) -> Option<InfillReport> {
    match &leaf.build {
        BuildUp::Plain { .. } => None,
        BuildUp::Framed {
            members, infill, ..
        } => Some(InfillReport {
            members: seen_from_back(*members),
            tongue: infill.tongue,
            thickness: infill.thickness,
            behind: infill.behind,
            class: class_of(job, &infill.material),
            material: infill.material.clone(),
        }),
    }
}

/// A material that the table lacks counts as board; a sound job has none.
fn class_of(job: &Job, material: &str) -> MaterialClass {
    job.material(material)
        .map_or(MaterialClass::Board, |material| material.class)
}
