//! How long the one answer takes: on the demo jobs, for a box, and after an edit of a large job.

#![expect(clippy::expect_used, reason = "a bench without its job is to fail")]

use divan::{Bencher, black_box};
use flapwright_model::file::read_job;
use flapwright_model::job::Job;
use flapwright_model::severity::SeveritySetting;
use flapwright_rules::checks::CHECKS;
use flapwright_rules::{Inspector, inspect};

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

/// The four boxes of the galley, placed, with no check at all.
#[divan::bench]
fn four_boxes_placed(bencher: Bencher<'_, '_>) {
    let job = without(demo_job("houseboat-galley"), |_| true);
    bencher.bench(|| inspect(black_box(&job)));
}

/// The same with the checks that need no motion.
#[divan::bench]
fn four_boxes_placed_and_looked_at_standing(bencher: Bencher<'_, '_>) {
    let job = without(demo_job("houseboat-galley"), |name| MOVING.contains(&name));
    bencher.bench(|| inspect(black_box(&job)));
}

/// One check alone on the galley.
#[divan::bench(args = MOVING)]
fn four_boxes_and_one_check(bencher: Bencher<'_, '_>, name: &str) {
    let job = without(demo_job("houseboat-galley"), |it| it != name);
    bencher.bench(|| inspect(black_box(&job)));
}

/// Many copies of a demo job along one wall.
fn long_wall(name: &str, copies: u32) -> Job {
    let mut job = demo_job(name);
    let one = std::mem::take(&mut job.boxes);
    for copy in 0..copies {
        for wall_box in &one {
            let mut wall_box = wall_box.clone();
            wall_box.forget_ids();
            wall_box.name = format!("{} {copy}", wall_box.name);
            wall_box.place.along_wall += f64::from(copy) * 25_000.0;
            job.boxes.push(wall_box);
        }
    }
    job.give_ids();
    job
}

/// A reveal of one box changes in a job of this many galleys, clean or with troubles.
#[divan::bench(args = [("houseboat-galley", 500), ("houseboat-galley-troubles", 20)], sample_count = 20)]
fn an_edit_of_a_large_job(bencher: Bencher<'_, '_>, (name, copies): (&str, u32)) {
    let mut job = long_wall(name, copies);
    let mut inspector = Inspector::default();
    let _first = inspector.inspect(&job);
    bencher.bench_local(|| {
        job.boxes[0].width += 0.01;
        inspector.inspect(black_box(&job))
    });
}
