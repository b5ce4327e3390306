//! Whether a fitting or its arms meet a shelf, a rail or the back.

use flapwright_model::acceptance::Topic;
use flapwright_model::edges::Edge;
use flapwright_model::id::DoorId;
use flapwright_model::message::{Degrees, Mm, Within};
use flapwright_model::part::{Part, PartId, Subject};

use super::clear_way::{NOISE, degrees, is_arm, lap, section};
use super::{BoxContext, Check, Run, finding};
use crate::finding::{Finding, Severity};
use crate::inspection::Solid;
use crate::message::{FittingHitsShelf, word};

const NAME: &str = "fitting-hits-shelf";

pub(super) const CHECK: Check = Check {
    name: NAME,
    page: "\
## What it looks at
The body of the fitting against shelves, top, bottom, back and the members of the face frame; all \
that arms sweep over against shelves, bottom, back and the rails below the opening's upper edge; \
all that leaves sweep over against what stands inside the opening. A card does not say how wide \
an arm is, how it is bent or where it lies across: it is taken as a straight bar 12 mm wide that \
may lie anywhere across. An arm against the panel above is therefore not looked at, for arms that \
pass it are bent around it.

## Why it matters
A shelf in the way of an arm is noticed only when the door is first opened, with the box on the \
wall.

## Severity
Stop.

## What can be done
Set the shelf lower or further back, or choose another size or fitting.",
    severities: &[Severity::Stop],
    settings: &[],
    run: Run::Box(look),
};

fn look(context: &BoxContext<'_>, findings: &mut Vec<Finding>) {
    let obstacles = obstacles(context);
    for (door_id, _, door) in context.doors() {
        let clear = context.opening_of(door_id).map(|it| it.clear);
        for obstacle in &obstacles {
            let hit = door
                .envelopes
                .iter()
                .map(|body| overlap(body, &obstacle.solid))
                .fold(0.0, f64::max);
            if hit > NOISE {
                let message = FittingHitsShelf::Body {
                    obstacle: obstacle.name(),
                    overlap: Mm(hit),
                };

                findings.push(tell(context, door_id, obstacle, message));
                continue;
            }
            let solid = &obstacle.solid;
            let below = clear.is_some_and(|clear| solid.max.y < clear.max.y - NOISE);
            if obstacle.id.part == Part::Top || (obstacle.id.part == Part::Frame && !below) {
                // What a swing into the panel or rail above does has a check of its own.
                continue;
            }
            // Panels and rails that bound the opening are met by leaves in other checks.
            let inside = obstacle.id.part != Part::Frame
                && below
                && clear.is_some_and(|clear| solid.min.y > clear.min.y + NOISE);
            let near = door.sweep().and_then(|sweep| {
                sweep.approach(&section(solid), NOISE, |body| is_arm(body) || inside)
            });
            if let Some(near) = near {
                let message = FittingHitsShelf::Hits {
                    hits: word::hits(near.body),
                    obstacle: obstacle.name(),
                    met_at: Degrees(degrees(door, near.s)),
                };

                findings.push(tell(context, door_id, obstacle, message));
            }
        }
    }
}

/// What a fitting or its arms can meet in the box.
struct InTheWay {
    id: PartId,
    /// Which member, of a face frame.
    topic: Option<Topic>,
    solid: Solid,
}

impl InTheWay {
    /// What of the box it is.
    const fn name(&self) -> Within {
        Within(Subject::Part(self.id))
    }
}

fn obstacles(context: &BoxContext<'_>) -> Vec<InTheWay> {
    let panels = context.report.panels.iter().filter(|panel| {
        matches!(
            panel.id.part,
            Part::Top | Part::Bottom | Part::Back | Part::Shelf(_) | Part::Divider(_)
        )
    });
    let members = context.report.frame.iter().zip(frame_topics(context));
    let frame = members.map(|(member, topic)| InTheWay {
        id: context.part_id(Part::Frame),
        topic,
        solid: *member,
    });
    panels
        .map(|panel| InTheWay {
            id: panel.id,
            topic: None,
            solid: panel.solid,
        })
        .chain(frame)
        .collect()
}

/// Which member of the face frame each of its solids is: the outer ones by their edges, then the
/// rails by the fixed shelves that they are before.
fn frame_topics(context: &BoxContext<'_>) -> Vec<Option<Topic>> {
    let outer = Edge::ALL.map(Topic::Edge);
    let shelves = context.wall_box.fixed_shelves().into_iter();
    let rails = shelves.map(|shelf| Topic::Part(context.part_id(Part::Shelf(shelf.id))));
    outer.into_iter().chain(rails).map(Some).collect()
}

/// The least of the laps of two solids across, up and deep, mm; 0 or less when they are apart.
fn overlap(a: &Solid, b: &Solid) -> f64 {
    let across = lap((a.min.x, a.max.x), (b.min.x, b.max.x));
    let up = lap((a.min.y, a.max.y), (b.min.y, b.max.y));
    let deep = lap((a.min.z, a.max.z), (b.min.z, b.max.z));
    across.min(up).min(deep)
}

fn tell(
    context: &BoxContext<'_>,
    door_id: DoorId,
    obstacle: &InTheWay,
    message: FittingHitsShelf,
) -> Finding {
    let subjects = vec![context.door_subject(door_id), Subject::Part(obstacle.id)];
    let things = [Topic::Door(door_id), Topic::Part(obstacle.id)];
    finding(NAME, Severity::Stop, message, subjects)
        .about(things.into_iter().chain(obstacle.topic.clone()))
}
