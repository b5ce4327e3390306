//! A drag by so much moves what is dragged by so much, whichever number it sets.

use euclid::default::{Rect, Vector2D};
use flapwright_answer::inspect;
use flapwright_model::change::{FitKind, set_fit};
use flapwright_model::edit::apply;
use flapwright_model::field::{BoxField, DoorField, Field, FieldRef, FixedShelfField, Value};
use flapwright_model::id::{DoorId, ObstacleId};
use flapwright_model::job::Job;
use flapwright_model::room::{Extent, Obstacle};
use flapwright_rules::inspection::BoxReport;

use super::super::{Around, ViewOptions, elevation, section};
use super::{demo_job, options};
use crate::handle::{Grip, Handle};
use crate::list::DisplayList;

const SCALE: f64 = 0.2;

type View = fn(&BoxReport, &ViewOptions) -> DisplayList;

/// A view of the first box with the room around it.
fn seen(job: &Job, view: View) -> DisplayList {
    let around = Some(Around {
        room: job.room.clone(),
        place: job.boxes[0].place,
    });
    let inspection = inspect(job);
    view(
        &inspection.boxes[0],
        &ViewOptions {
            around,
            ..options(0.0)
        },
    )
}

fn number(job: &Job, field: FieldRef) -> f64 {
    let value = field.get(job).and_then(|value| value.number());
    value.unwrap_or_else(|| panic!("{field:?} holds no number"))
}

/// The job after a drag of a handle by `by`, list mm.
fn dragged(job: &Job, handle: &Handle, by: Vector2D<f64>, as_tweak: bool) -> Job {
    let mut job = job.clone();
    for (field, rise) in handle.drag(by, as_tweak) {
        let value = Value::Number(number(&job, field) + rise);
        field.set(&mut job, &value).expect("the field is there");
    }
    job
}

/// Whether a handle sets where the box hangs: its own view then rides along.
fn is_of_place(handle: &Handle) -> bool {
    let is_place = |field| {
        matches!(
            field,
            Field::Box(BoxField::AlongWall | BoxField::AboveFloor)
        )
    };
    handle.pulls.iter().any(|pull| is_place(pull.field.field()))
}

fn is_at(a: Rect<f64>, b: Rect<f64>) -> bool {
    (a.min() - b.min()).length() < 1e-9 && (a.max() - b.max()).length() < 1e-9
}

/// Drags every grip of both views of the first box a little along each of its directions.
#[track_caller]
fn assert_drags_carry(job: &Job) -> Vec<Grip> {
    let mut grips = Vec::new();
    for view in [elevation as View, section] {
        let list = seen(job, view);
        for grip in list.grips.iter().filter(|it| !is_of_place(&it.handle)) {
            let steps = grip.handle.pulls.iter().chain(&grip.handle.tweak);
            for pull in steps {
                // 1.5 mm of the box, along one axis.
                let by = pull.step.normalize() * (1.5 * SCALE);
                let as_tweak = grip.handle.tweak.as_ref() == Some(pull);
                let after = seen(&dragged(job, &grip.handle, by, as_tweak), view);
                let mut same = after.grips.iter().filter(|it| it.handle == grip.handle);
                let moved = grip.place.translate(by);
                assert!(
                    same.any(|it| is_at(it.place, moved)),
                    "{grip:?} dragged by {by:?}"
                );
            }
        }
        grips.extend(list.grips);
    }
    grips
}

fn has(grips: &[Grip], wanted: impl Fn(Field) -> bool) -> bool {
    let mut pulls = grips.iter().flat_map(|grip| &grip.handle.pulls);
    pulls.any(|pull| wanted(pull.field.field()))
}

#[test]
fn reveals_shelves_and_handles_follow_a_drag() {
    let grips = assert_drags_carry(&demo_job());
    assert!(has(&grips, |it| matches!(
        it,
        Field::Door(DoorField::Reveal(_))
    )));
    assert!(has(&grips, |it| matches!(
        it,
        Field::LooseShelf(_) | Field::FixedShelf(_)
    )));
    assert!(has(&grips, |it| it == Field::Door(DoorField::HandleUp)));
}

#[test]
fn gaps_of_inset_doors_follow_a_drag() {
    let mut job = demo_job();
    let id = job.boxes[0].id;
    let doors: Vec<DoorId> = job.boxes[0].doors().iter().map(|door| door.id).collect();
    for door in doors {
        let edit = set_fit(&job, id, door, FitKind::Inset).expect("the door is there");
        apply(&mut job, edit).expect("a sound job");
    }
    let grips = assert_drags_carry(&job);
    assert!(has(&grips, |it| matches!(
        it,
        Field::Door(DoorField::Gap(_))
    )));
    assert!(!has(&grips, |it| matches!(
        it,
        Field::Door(DoorField::Reveal(_))
    )));
}

/// At a shelf that two doors share, split or half and half, its gap and split stand in place of the
/// reveals.
#[test]
fn edges_at_a_shared_shelf_follow_a_drag_by_its_gap_and_split() {
    let mut job = demo_job();
    let first = &job.boxes[0];
    assert_eq!(first.doors().len(), 2);
    let (shelf, split) = (first.fixed_shelves()[0].id, FixedShelfField::UpperOverlay);
    let field = FieldRef::FixedShelf(first.id, shelf, split);
    for (value, is_split) in [(Value::Number(5.0), true), (Value::Unset, false)] {
        field.set(&mut job, &value).expect("the shelf");
        let grips = assert_drags_carry(&job);
        assert!(has(&grips, |it| it == Field::FixedShelf(FixedShelfField::Gap)));
        assert_eq!(has(&grips, |it| it == Field::FixedShelf(split)), is_split);
    }
}

#[test]
fn an_obstacle_is_dragged_whole_and_a_box_along_the_wall() {
    let mut job = demo_job();
    let place = job.boxes[0].place;
    let extent = |from: f64, to: f64| Extent { from, to };
    let id: ObstacleId = job.new_id();
    job.room.obstacles = vec![Obstacle {
        id,
        name: "pipe".to_owned(),
        along_wall: extent(place.along_wall - 60.0, place.along_wall - 30.0),
        above_floor: extent(place.above_floor + 10.0, place.above_floor + 40.0),
        from_wall: extent(50.0, 80.0),
    }];
    assert_drags_carry(&job);
    let list = seen(&job, elevation);
    let pipe = list.grips.iter().find(|it| it.handle.pulls.len() == 4);
    let pipe = pipe.expect("the pipe").place;
    let whole = list.grips.iter().find(|it| is_of_place(&it.handle));
    let whole = whole.expect("the box").handle.clone();
    // 10 mm to the right and 5 up: the view rides along, so the pipe goes the other way.
    let by = Vector2D::new(10.0 * SCALE, 5.0 * SCALE);
    let after = seen(&dragged(&job, &whole, by, false), elevation);
    let there = after.grips.iter().find(|it| it.handle.pulls.len() == 4);
    assert!(is_at(there.expect("the pipe").place, pipe.translate(-by)));
}

/// What is open is not where its numbers say: only a closed door can be taken hold of.
#[test]
fn an_open_door_has_no_grips_in_the_section() {
    let job = demo_job();
    let inspection = inspect(&job);
    let of_doors = |s: f64| {
        let list = section(&inspection.boxes[0], &options(s));
        let is_door = |grip: &&Grip| grip.handle.tweak.is_some();
        list.grips.iter().filter(is_door).count()
    };
    // Top and bottom of each of its two doors.
    assert_eq!((of_doors(0.0), of_doors(0.5)), (4, 0));
}
