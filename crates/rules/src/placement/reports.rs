//! One box, placed: panels, bores, openings, doors.

use flapwright_model::cabinet::WallBox;
use flapwright_model::card::{Depth, Drill, first_pass};
use flapwright_model::door::{Door, FittingChoice, Handle, Side};
use flapwright_model::edges::Edges;
use flapwright_model::id::DoorId;
use flapwright_model::job::Job;
use flapwright_model::part::Part;
use flapwright_model::record::RecordState;
use flapwright_model::space::BoxPoint;
use flapwright_motion::mass;
use flapwright_motion::motion::Motion;

use super::body::{Body, solid};
use super::door_motions::DoorMotions;
use super::door_place::DoorPlace;
use super::edge_moves::edge_moves;
use super::faces::{door_back, from_face, side_face, top_face};
use super::fitting::FittingPlace;
use super::leaf_bores::DoorBores;
use super::opening::{OpeningPlace, openings, shelf_rails, whole_opening};
use super::panels::{body_panels, leaf_panel};
use crate::inspection::{
    BoreSource, BoxReport, DoorReport, Face, FacePoint, OpeningReport, PanelReport, PlacedBore,
    Solid,
};

/// Pitch of the system rows, mm: the 32 mm system of the trade (a grown convention, no norm).
const SYSTEM_PITCH: f64 = 32.0;

/// Bores closer than this are one and the same, mm.
const SAME_PLACE: f64 = 0.01;

/// Places everything in one box. Total on every box of a job that validates.
#[must_use]
pub fn place_box(job: &Job, wall_box: &WallBox) -> BoxReport {
    place_among(job, wall_box, &DoorMotions::default())
}

/// The same for one of many boxes: doors that are alike share their motion.
#[must_use]
pub fn place_among(job: &Job, wall_box: &WallBox, motions: &DoorMotions) -> BoxReport {
    let body = Body::of(wall_box);
    let mut drawn = Drawn {
        panels: body_panels(job, wall_box, &body),
        motions,
    };
    let mut reports = Vec::new();
    let mut added = Vec::new();
    for (index, place) in openings(wall_box, &body).into_iter().enumerate() {
        let opening = wall_box.opening(place.id);
        let clear = solid(
            (place.clear.left, place.clear.right),
            (place.clear.bottom, place.clear.top),
            (0.0, body.clear_depth),
        );
        let (door, bores) = opening
            .and_then(|opening| opening.door.as_ref())
            .map(|door| drawn.door(job, wall_box, (&place, index + 1), door))
            .map_or((None, Vec::new()), |(door, bores)| (Some(door), bores));
        reports.push(OpeningReport {
            id: place.id,
            around: place.around,
            clear,
            door_opening: place.door_opening,
            door,
        });
        added.push(bores);
    }
    drawn.system_rows(wall_box);
    drawn.recorded(wall_box);
    drawn.number();
    for (report, bores) in reports.iter_mut().zip(&added) {
        for offset in report.door.iter_mut().flat_map(|door| &mut door.offsets) {
            offset.drilled = offset.drilled.and_then(|(index, at)| {
                let bore = (*bores.get(index)?)?;
                Some((drawn.panels[bore.panel].bores[bore.index].number, at))
            });
        }
    }
    for panel in &mut drawn.panels {
        panel.bores.sort_by_key(|bore| bore.number);
    }
    BoxReport {
        id: wall_box.id,
        name: wall_box.name.clone(),
        quantity: wall_box.quantity,
        outer: [wall_box.width, wall_box.height, wall_box.depth],
        panels: drawn.panels,
        frame: frame_members(wall_box, &body),
        frame_class: wall_box
            .frame
            .as_ref()
            .and_then(|frame| Some(job.material(&frame.material)?.class)),
        openings: reports,
    }
}

/// The panels while bores are being drawn on them.
struct Drawn<'a> {
    panels: Vec<PanelReport>,
    /// The motions of all doors that are alike.
    motions: &'a DoorMotions,
}

impl Drawn<'_> {
    /// Draws a door; `number` is that of its opening from the top.
    fn door(
        &mut self,
        job: &Job,
        wall_box: &WallBox,
        (place, number): (&OpeningPlace, usize),
        door: &Door,
    ) -> (DoorReport, Vec<Option<Added>>) {
        let door_place = DoorPlace::of(wall_box, place, door, &job.settings);
        for (leaf_place, (_, leaf)) in door_place.leaves.iter().zip(door.leaves.iter()) {
            let parts = (&door_place, leaf_place, leaf);
            let panel = leaf_panel(job, wall_box, (door.id, number), parts);
            self.panels.push(panel);
        }
        let choice = door.fitting.as_ref();
        let fitting = choice.and_then(|choice| fitting_place(job, choice, place, &door_place));
        let needed = fitting
            .map(|fitting| fitting.leaf_bores())
            .unwrap_or_default();
        if let Some(fitting) = &fitting {
            self.fitting_in_box(door.id, fitting);
        }
        let bores = DoorBores::of(door, &door_place, &needed);
        let added = bores
            .bores
            .iter()
            .map(|bore| {
                let part = Part::Leaf {
                    door: door.id,
                    leaf: bore.leaf,
                };
                self.bore(part, bore.at, &bore.drill, bore.source)
            })
            .collect();
        if let Some(handle) = &door.handle {
            self.handle(door.id, &door_place, handle);
        }
        // Numbers are known only when every bore of the leaf is: until then the index among the
        // added bores stands in.
        let offsets = bores.offsets(&needed, |index| index);
        let closed = door_place.closed(place, door);
        let motion = fitting
            .zip(choice)
            .and_then(|(fitting, choice)| self.motions.of(fitting.card, choice, &closed));
        let leaf_sizes: Vec<(f64, f64)> = door_place
            .leaves
            .iter()
            .map(|leaf| {
                (
                    leaf.edges.right - leaf.edges.left,
                    leaf.edges.top - leaf.edges.bottom,
                )
            })
            .collect();
        // A leaf without a size has no mass; `leaf-has-no-size` reports it.
        let weighed = mass::door_mass(&job.materials, door, &leaf_sizes).ok();
        let (mass, built_mass) = weighed
            .as_ref()
            .map(|mass| (mass.used, mass.built))
            .unwrap_or_default();
        let report = DoorReport {
            id: door.id,
            overlays: door_place.overlays,
            edges: door_place.edges,
            edge_moves: edge_moves(wall_box.id, place, door),
            front: door_place.front(),
            back: door_place.back,
            kind: fitting.map(|fitting| fitting.card.kind),
            fitting: choice.map(|it| fitting_words(job, it)).unwrap_or_default(),
            offsets,
            envelopes: fitting
                .map(|fitting| fitting.envelopes())
                .unwrap_or_default(),
            axis: motion
                .as_ref()
                .and_then(|it| it.motion.as_ref().ok())
                .map(Motion::axis),
            mass,
            built_mass,
            weighed,
            closed,
            moves: motion,
        };
        (report, added)
    }

    fn fitting_in_box(&mut self, door: DoorId, fitting: &FittingPlace<'_>) {
        for bore in fitting.side_bores() {
            let part = match bore.side {
                Side::Left => Part::LeftSide,
                Side::Right => Part::RightSide,
            };
            self.bore(
                part,
                bore.at,
                bore.drill,
                BoreSource::Fitting {
                    door,
                    side: bore.side,
                },
            );
        }
        for bore in fitting.top_bores() {
            let source = BoreSource::Fitting {
                door,
                side: bore.side,
            };
            self.bore(fitting.opening.around.top, bore.at, bore.drill, source);
        }
    }

    fn handle(&mut self, id: DoorId, door: &DoorPlace, handle: &Handle) {
        let (Some(screws), Some(leaf)) = (handle.screws, door.leaves.last()) else {
            return;
        };
        let middle = f64::midpoint(door.edges.left, door.edges.right) + handle.right_of_middle;
        let y = door.edges.bottom + handle.up;
        let drill = Drill {
            diameter: screws.diameter,
            depth: Depth::Through,
            purpose: "handle screw".to_owned(),
            pass: first_pass(),
        };
        let part = Part::Leaf {
            door: id,
            leaf: leaf.id,
        };
        let half = screws.spacing / 2.0;
        let aside: &[f64] = if half > 0.0 { &[-half, half] } else { &[0.0] };
        for by in aside {
            let at = BoxPoint::new(middle + by, y, door.back);
            self.bore(part, at, &drill, BoreSource::Handle { door: id });
        }
    }

    fn system_rows(&mut self, wall_box: &WallBox) {
        let Some(rows) = &wall_box.system_rows else {
            return;
        };
        let drill = Drill {
            diameter: rows.diameter,
            depth: Depth::Blind(rows.depth),
            purpose: "shelf pin".to_owned(),
            pass: first_pass(),
        };
        for part in [Part::LeftSide, Part::RightSide] {
            let Some(panel) = self.panels.iter().find(|panel| panel.id.part == part) else {
                continue;
            };
            let side = panel.solid;
            let x = if part == Part::LeftSide {
                side.max.x
            } else {
                side.min.x
            };
            let length = side.max.y - side.min.y;
            let mut v = rows.first;
            // Each position from the zero corner on its own: pitches are never added up.
            let mut step = 0.0;
            while v <= length - rows.last + 1e-9 {
                for z in [side.min.z + rows.front, side.max.z - rows.rear] {
                    let at = BoxPoint::new(x, side.max.y - v, z);
                    self.bore(part, at, &drill, BoreSource::SystemRow);
                }
                step += 1.0;
                v = rows.first + SYSTEM_PITCH * step;
            }
        }
    }

    /// Adds a bore to the panel that has it; one that is there already in the same place and
    /// diameter and at least as deep is not drilled twice.
    fn bore(
        &mut self,
        part: Part,
        in_box: BoxPoint,
        drill: &Drill,
        source: BoreSource,
    ) -> Option<Added> {
        let index = self.panels.iter().position(|panel| panel.id.part == part)?;
        let panel = &mut self.panels[index];
        let at = match panel.face {
            Face::SideInner(_) => FacePoint::Side(side_face(&panel.solid, in_box)),
            Face::Underside => FacePoint::Top(top_face(&panel.solid, in_box)),
            Face::DoorBack => {
                let edges = Edges {
                    left: panel.solid.min.x,
                    right: panel.solid.max.x,
                    top: panel.solid.max.y,
                    bottom: panel.solid.min.y,
                };
                FacePoint::Door(door_back(&edges, in_box))
            }
            Face::Plain => return None,
        };
        let bore = PlacedBore {
            number: 0,
            at,
            in_box,
            drill: drill.clone(),
            source,
        };
        let thickness = panel.thickness;
        let shared = source == BoreSource::SystemRow
            && panel.bores.iter().any(|other| {
                (other.in_box - in_box).length() < SAME_PLACE
                    && (other.drill.diameter - drill.diameter).abs() < SAME_PLACE
                    && other.depth_in(thickness) >= bore.depth_in(thickness)
            });
        if shared {
            return None;
        }
        panel.bores.push(bore);
        Some(Added {
            panel: index,
            index: panel.bores.len() - 1,
        })
    }

    /// A drilled panel of the box has the bores of its record and no others. Those of a leaf
    /// follow its edges as an existing door's.
    fn recorded(&mut self, wall_box: &WallBox) {
        for record in &wall_box.records {
            if record.state != RecordState::Drilled {
                continue;
            }
            let of_part = |panel: &&mut PanelReport| panel.id.part == record.part;
            let Some(panel) = self.panels.iter_mut().find(of_part) else {
                continue;
            };
            if matches!(panel.face, Face::DoorBack | Face::Plain) {
                continue;
            }
            let bores = record.bores.iter().filter_map(|bore| {
                let (at, in_box) = from_face(panel.face, &panel.solid, bore.u, bore.v)?;
                Some(PlacedBore {
                    number: 0,
                    at,
                    in_box,
                    drill: bore.drill.clone(),
                    source: BoreSource::Recorded,
                })
            });
            panel.bores = bores.collect();
        }
    }

    /// Numbers the bores in hole-table order; they stay where they are.
    fn number(&mut self) {
        for panel in &mut self.panels {
            // The numbers of a drilled panel are those of the sheet that it was drilled from.
            if let [first, ..] = panel.bores.as_slice()
                && first.source == BoreSource::Recorded
            {
                for (index, bore) in panel.bores.iter_mut().enumerate() {
                    bore.number = index + 1;
                }
                continue;
            }
            let mut order: Vec<usize> = (0..panel.bores.len()).collect();
            order.sort_by(|&a, &b| {
                let (a, b) = (&panel.bores[a], &panel.bores[b]);
                let ((au, av), (bu, bv)) = (a.at.uv(), b.at.uv());
                rank(a.source)
                    .cmp(&rank(b.source))
                    .then(hundredths(av).total_cmp(&hundredths(bv)))
                    .then(hundredths(au).total_cmp(&hundredths(bu)))
                    .then(a.drill.pass.cmp(&b.drill.pass))
            });
            for (number, &index) in order.iter().enumerate() {
                panel.bores[index].number = number + 1;
            }
        }
    }
}

/// Where a bore was added.
#[derive(Debug, Clone, Copy)]
struct Added {
    panel: usize,
    index: usize,
}

/// Order in a hole table: what the fitting needs, then handles, then rows.
const fn rank(source: BoreSource) -> u8 {
    match source {
        BoreSource::Fitting { .. } | BoreSource::AsDrilled { .. } | BoreSource::Recorded => 0,
        BoreSource::Handle { .. } => 1,
        BoreSource::SystemRow => 2,
    }
}

/// Rounded so that noise in the last digit does not decide an order.
fn hundredths(value: f64) -> f64 {
    (value * 100.0).round()
}

fn fitting_place<'a>(
    job: &'a Job,
    choice: &'a FittingChoice,
    opening: &'a OpeningPlace,
    door: &'a DoorPlace,
) -> Option<FittingPlace<'a>> {
    let card = job.card_by_id(choice.card)?;
    card.size(&choice.size)?;
    Some(FittingPlace {
        card,
        size: &choice.size,
        packing: choice.packing,
        opening,
        door,
    })
}

fn fitting_words(job: &Job, choice: &FittingChoice) -> String {
    let card = job.card_by_id(choice.card);
    let name = card.map_or("", |card| card.name.as_str());
    format!("{name}, size {}", choice.size)
}

fn frame_members(wall_box: &WallBox, body: &Body) -> Vec<Solid> {
    let Some(frame) = &wall_box.frame else {
        return Vec::new();
    };
    let z = (-frame.thickness, 0.0);
    let inside = whole_opening(wall_box, body).door_opening;
    let x = (inside.left, inside.right);
    let y = (
        inside.bottom - frame.members.bottom,
        inside.top + frame.members.top,
    );
    let mut members = vec![
        solid((x.0 - frame.members.left, x.0), y, z),
        solid((x.1, x.1 + frame.members.right), y, z),
        solid(x, (inside.top, y.1), z),
        solid(x, (y.0, inside.bottom), z),
    ];
    members.extend(shelf_rails(wall_box, body, z));
    members
}
