//! How long the answer takes: of a large job as a whole, after an edit, and to apply what is safe.

#![expect(
    clippy::expect_used,
    clippy::disallowed_methods,
    reason = "a bench without its job is to fail; it reads the demo"
)]

use divan::{Bencher, black_box};
use flapwright_answer::{Answer, apply_safe_remedies, inspect};
use flapwright_model::change::{duplicate_box, long_wall};
use flapwright_model::door::{BuildUp, DoorFit, Leaves};
use flapwright_model::edit::{Edit, apply};
use flapwright_model::file::read_job;
use flapwright_model::id::BoxId;
use flapwright_model::job::Job;
use flapwright_model::severity::SeveritySetting;
use flapwright_rules::checks::CHECKS;

fn main() {
    divan::main();
}

fn demo_job(name: &str) -> Job {
    let path = format!(
        "{}/../../assets/demo/{name}.ron",
        env!("CARGO_MANIFEST_DIR")
    );
    let text = std::fs::read_to_string(path).expect("the demo ships with the program");
    read_job(&text).expect("the demo is sound")
}

/// A wall of galleys with five widths of each box.
fn galleys(boxes: usize) -> Job {
    long_wall(&demo_job("houseboat-galley"), boxes, 5)
}

/// The checks that follow a door on its way or work out its forces; all others only look at places.
const MOVING: [&str; 22] = [
    "door-outside-size-span",
    "wide-door-sags",
    "door-too-heavy",
    "door-too-light",
    "size-covers-part-of-mass-range",
    "lift-cannot-work",
    "falls-when-let-go",
    "springs-open",
    "fitting-hits-shelf",
    "top-edge-hits-panel",
    "leaves-meet",
    "door-hits-ceiling",
    "door-hits-obstacle",
    "door-hits-neighbour",
    "open-doors-meet",
    "open-door-at-head-height",
    "handle-out-of-reach",
    "gap-catches-fingers",
    "hand-force-too-high",
    "one-sided-fitting-racks",
    "card-example-fails",
    "card-unproved",
];

/// A job with the checks of which this holds off.
fn without(mut job: Job, off: impl Fn(&str) -> bool) -> Job {
    for check in CHECKS.iter().filter(|check| off(check.name)) {
        job.settings
            .weights
            .insert(check.name.to_owned(), SeveritySetting::Off);
    }
    job
}

/// The demo jobs: the clean one, the one whose tweak raises findings with remedies, and the one with
/// twenty troubles.
#[divan::bench(args = ["houseboat-galley", "houseboat-galley-tweaked", "houseboat-galley-troubles"])]
fn demo(bencher: Bencher<'_, '_>, name: &str) {
    let job = demo_job(name);
    bencher.bench(|| inspect(black_box(&job)));
}

/// One check alone on the galley.
#[divan::bench(args = MOVING)]
fn four_boxes_and_one_check(bencher: Bencher<'_, '_>, name: &str) {
    let job = without(demo_job("houseboat-galley"), |it| it != name);
    bencher.bench(|| inspect(black_box(&job)));
}

#[divan::bench(args = [500, 2000], sample_count = 5)]
fn whole(bencher: Bencher<'_, '_>, boxes: usize) {
    let job = galleys(boxes);
    bencher.bench(|| Answer::of(black_box(&job)));
}

/// The same without the checks on motion.
#[divan::bench(args = [2000], sample_count = 5)]
fn whole_standing(bencher: Bencher<'_, '_>, boxes: usize) {
    let job = without(galleys(boxes), |name| MOVING.contains(&name));
    bencher.bench(|| Answer::of(black_box(&job)));
}

/// The same with no check at all.
#[divan::bench(args = [2000], sample_count = 5)]
fn whole_placed(bencher: Bencher<'_, '_>, boxes: usize) {
    let job = without(galleys(boxes), |_| true);
    bencher.bench(|| Answer::of(black_box(&job)));
}

/// One box becomes narrower: to a new width each time, so that its door is a new one.
#[divan::bench(args = [500, 2000], sample_count = 50)]
fn edit_of_one_box(bencher: Bencher<'_, '_>, boxes: usize) {
    let mut job = galleys(boxes);
    let mut answer = Answer::of(&job);
    bencher.bench_local(|| {
        job.boxes[boxes / 2].width -= 0.01;
        let touched = [job.boxes[boxes / 2].id].into();
        answer.after(black_box(&job), &touched);
    });
}

/// The same where nobody says which box it was.
#[divan::bench(args = [2000], sample_count = 50)]
fn edit_of_some_box(bencher: Bencher<'_, '_>, boxes: usize) {
    let mut job = galleys(boxes);
    let mut answer = Answer::of(&job);
    bencher.bench_local(|| {
        job.boxes[boxes / 2].width -= 0.01;
        answer.update(black_box(&job));
    });
}

#[divan::bench(args = [500, 2000], sample_count = 50)]
fn box_put_in_at_the_front(bencher: Bencher<'_, '_>, boxes: usize) {
    let mut job = galleys(boxes);
    let mut answer = Answer::of(&job);
    let mut along = -99_000.0;
    bencher.bench_local(|| {
        let copy = duplicate_box(&job, job.boxes[0].id);
        let Some(Edit::InsertBox { mut with, .. }) = copy else {
            return;
        };
        // Above all rows, each beside the last.
        along += 1500.0;
        with.place.along_wall = along;
        with.place.above_floor = 19_900.0;
        let insert = Edit::InsertBox { after: None, with };
        let back = apply(&mut job, insert).expect("a sound job");
        answer.after(black_box(&job), &back.boxes());
    });
}

#[divan::bench(args = [500, 2000], sample_count = 50)]
fn revision_edited(bencher: Bencher<'_, '_>, boxes: usize) {
    let mut job = galleys(boxes);
    let mut answer = Answer::of(&job);
    let none = std::collections::BTreeSet::<BoxId>::new();
    bencher.bench_local(|| {
        job.title_block.revision.push('x');
        answer.after(black_box(&job), &none);
    });
}

/// Every second box has reveals that are uneven with those of its neighbour.
fn uneven(boxes: usize) -> Job {
    let mut job = galleys(boxes);
    for wall_box in &mut job.boxes {
        wall_box.height = 540.0;
    }
    for wall_box in job.boxes.iter_mut().step_by(2) {
        let doors: Vec<_> = wall_box.doors().iter().map(|door| door.id).collect();
        for id in doors {
            if let Some(door) = wall_box.door_mut(id)
                && let DoorFit::Overlay { reveals } = &mut door.fit
            {
                reveals.top += 3.0;
            }
        }
    }
    job
}

/// Doors so light that other sizes are offered for each.
fn light(boxes: usize) -> Job {
    let mut job = galleys(boxes);
    for wall_box in &mut job.boxes {
        let doors: Vec<_> = wall_box.doors().iter().map(|door| door.id).collect();
        for id in doors {
            if let Some(door) = wall_box.door_mut(id)
                && let Leaves::One(leaf) = &mut door.leaves
                && let BuildUp::Plain { thickness, .. } = &mut leaf.build
            {
                *thickness = 8.0;
            }
        }
    }
    job
}

#[divan::bench(args = [50, 200], sample_count = 3)]
fn safe_remedies(bencher: Bencher<'_, '_>, boxes: usize) {
    let job = uneven(boxes);
    bencher.bench(|| apply_safe_remedies(black_box(&job)));
}

#[divan::bench(args = [250, 1000], sample_count = 3)]
fn light_doors_with_every_remedy_judged(bencher: Bencher<'_, '_>, boxes: usize) {
    let job = light(boxes);
    bencher.bench(|| Answer::of(black_box(&job)).judged());
}

#[divan::bench(args = [250, 1000], sample_count = 3)]
fn safe_remedies_of_light_doors(bencher: Bencher<'_, '_>, boxes: usize) {
    let job = light(boxes);
    bencher.bench(|| apply_safe_remedies(black_box(&job)));
}

/// All boxes in one place.
#[divan::bench(args = [100, 400], sample_count = 3)]
fn boxes_in_one_place(bencher: Bencher<'_, '_>, boxes: usize) {
    let mut job = galleys(boxes);
    let place = job.boxes[0].place;
    for wall_box in &mut job.boxes {
        wall_box.place = place;
    }
    bencher.bench(|| inspect(black_box(&job)));
}
