//! Panels made by hand for tests.

use flapwright_model::cabinet::Drilled;
use flapwright_model::card::{Depth, Drill};
use flapwright_model::door::{Grain, Side};
use flapwright_model::id::{BoxId, DoorId};
use flapwright_model::job::Job;
use flapwright_model::material::MaterialClass;
use flapwright_model::part::{LeafId, Part, PartId};
use flapwright_model::space::{BoxPoint, DoorPoint, SidePoint, TopPoint};
use flapwright_rules::inspection::{
    BoreSource, BoxReport, Face, FaceBands, FacePoint, Inspection, PanelReport, PlacedBore, Solid,
};

/// A small generator of numbers that look random and are the same every time.
pub(crate) struct Lcg(pub(crate) u64);

impl Lcg {
    /// From `low` up to `high`.
    pub(crate) fn between(&mut self, low: f64, high: f64) -> f64 {
        self.0 = self
            .0
            .wrapping_mul(6_364_136_223_846_793_005)
            .wrapping_add(1_442_695_040_888_963_407);
        low + (self.0 >> 33) as f64 / f64::from(1_u32 << 31) * (high - low)
    }

    /// From 0 up to below `count`.
    pub(crate) fn below(&mut self, count: usize) -> usize {
        (self.between(0.0, count as f64) as usize).min(count - 1)
    }
}

pub(crate) fn bore(number: usize, face: Face, u: f64, v: f64, source: BoreSource) -> PlacedBore {
    let at = match face {
        Face::SideInner(_) => FacePoint::Side(SidePoint::new(u, v)),
        Face::Underside => FacePoint::Top(TopPoint::new(u, v)),
        Face::DoorBack | Face::Plain => FacePoint::Door(DoorPoint::new(u, v)),
    };
    PlacedBore {
        number,
        at,
        in_box: BoxPoint::new(u, 0.0, v),
        drill: Drill {
            diameter: 5.0,
            depth: Depth::Blind(11.0),
            purpose: "fitting screw".to_owned(),
            pass: 1,
        },
        source,
    }
}

/// A fitting's bore on the left.
pub(crate) const FITTING: BoreSource = BoreSource::Fitting {
    door: DoorId::new(2),
    side: Side::Left,
};

/// A panel with 5 mm bores, 11 deep, at these u and v.
pub(crate) fn panel(face: Face, size: [f64; 2], places: &[(f64, f64)]) -> PanelReport {
    let part = match face {
        Face::SideInner(Side::Left) => Part::LeftSide,
        Face::SideInner(Side::Right) => Part::RightSide,
        Face::Underside => Part::Top,
        Face::DoorBack | Face::Plain => Part::Leaf {
            door: DoorId::new(2),
            leaf: LeafId::Only,
        },
    };
    let name = match face {
        Face::SideInner(Side::Left) => "left side",
        Face::SideInner(Side::Right) => "right side",
        Face::Underside => "top",
        Face::DoorBack | Face::Plain => "door",
    };
    let bores = places
        .iter()
        .enumerate()
        .map(|(i, (u, v))| bore(i + 1, face, *u, *v, FITTING));
    PanelReport {
        id: PartId {
            box_id: BoxId::new(1),
            part,
        },
        name: name.to_owned(),
        solid: Solid::new(
            BoxPoint::new(0.0, 0.0, 0.0),
            BoxPoint::new(18.0, 720.0, 330.0),
        ),
        face,
        size,
        thickness: 18.0,
        material: "birch plywood".to_owned(),
        class: MaterialClass::Board,
        grain: Grain::Upright,
        bands: FaceBands::default(),
        drilled: Drilled::AfterBanding,
        infill: None,
        bores: bores.collect(),
    }
}

/// A job with nothing in it and one box of these panels.
pub(crate) fn with_panels(panels: Vec<PanelReport>) -> (Job, Inspection) {
    let report = BoxReport {
        id: BoxId::new(1),
        name: "plates".to_owned(),
        quantity: 2,
        outer: [800.0, 720.0, 330.0],
        panels,
        frame: Vec::new(),
        frame_class: None,
        openings: Vec::new(),
    };
    (
        Job::empty(Vec::new(), Vec::new()),
        Inspection {
            boxes: vec![report.into()],
            findings: Vec::new(),
        },
    )
}
