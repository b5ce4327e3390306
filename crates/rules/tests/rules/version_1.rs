//! Jobs of version 1 give the bores that the program of that time gave, to the last bit, and what
//! was accepted in them stays accepted.
//!
//! `tests/version-1/*.bores.txt` were printed by that program, from the files that are kept in
//! `crates/model/tests/version-1`: for each panel its name, size and thickness, for each bore its
//! number, u and v, its place in the box, diameter, depth, pass and purpose; numbers with all their
//! digits.

use std::fmt::Write;

use flapwright_answer::judged as inspect;
use flapwright_model::file::read_job;
use flapwright_model::job::Job;
use flapwright_rules::accept::without_finding;

macro_rules! kept {
    ($name:literal) => {
        (
            include_str!(concat!("../../../model/tests/version-1/", $name, ".ron")),
            include_str!(concat!("../version-1/", $name, ".bores.txt")),
        )
    };
}

const KEPT: [(&str, &str); 3] = [
    kept!("houseboat-galley"),
    kept!("houseboat-galley-tweaked"),
    kept!("houseboat-galley-troubles"),
];

fn bores(job: &Job) -> String {
    let mut text = String::new();
    for report in inspect(job).boxes {
        for panel in &report.panels {
            let [width, height] = panel.size;
            let thickness = panel.thickness;
            let name = (&report.name, &panel.name);
            writeln!(
                text,
                "{} | {} | {width:?} {height:?} {thickness:?}",
                name.0, name.1
            )
            .expect("a text takes all");
            for bore in &panel.bores {
                let (u, v) = bore.at.uv();
                let (place, drill) = (bore.in_box, &bore.drill);
                writeln!(
                    text,
                    "  {} | {u:?} {v:?} | {:?} {:?} {:?} | {:?} {:?} {} {}",
                    bore.number,
                    place.x,
                    place.y,
                    place.z,
                    drill.diameter,
                    drill.depth,
                    drill.pass,
                    drill.purpose
                )
                .expect("a text takes all");
            }
        }
    }
    text
}

#[test]
fn the_bores_are_those_of_that_time_to_the_last_bit() {
    for (file, expected) in KEPT {
        let job = read_job(file).expect("a file of version 1");
        let found = bores(&job);
        for (found, expected) in found.lines().zip(expected.lines()) {
            assert_eq!(found, expected, "{}", job.name);
        }
        assert_eq!(found.lines().count(), expected.lines().count());
    }
}

#[test]
fn the_demo_of_today_has_the_same_bores() {
    let demos = [
        include_str!("../../../../assets/demo/houseboat-galley.ron"),
        include_str!("../../../../assets/demo/houseboat-galley-tweaked.ron"),
        include_str!("../../../../assets/demo/houseboat-galley-troubles.ron"),
    ];
    for (demo, (_, expected)) in demos.iter().zip(KEPT) {
        let job = read_job(demo).expect("a demo job");
        assert!(bores(&job) == expected, "{}", job.name);
    }
}

#[test]
fn what_was_accepted_stays_accepted() {
    for (file, _) in KEPT {
        let job = read_job(file).expect("a file of version 1");
        let findings = inspect(&job).findings;
        let accepted = findings.iter().filter(|it| it.accepted.is_some()).count();
        assert_eq!(accepted, job.accepted.len(), "{}", job.name);
        assert!(without_finding(&job, &findings).is_empty());
    }
}
