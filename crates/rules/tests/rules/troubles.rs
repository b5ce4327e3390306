//! The galley with twenty troubles: what is found in it, and what is left when every safe remedy is
//! applied. Each trouble is named in the job's file beside its box or card; the lists here were made
//! from those comments by hand.

use crate::common::place_of;
use flapwright_answer::{apply_safe_remedies, judged as inspect};
use flapwright_model::edit::apply;
use flapwright_model::file::read_job;
use flapwright_model::job::Job;
use flapwright_rules::inspection::Inspection;

/// Check and place of what a safe remedy clears.
const CLEARED_BY_SAFE_REMEDIES: &[(&str, &str)] = &[
    // 1
    ("bores-off-fitting", "ropes, door"),
    // 17
    ("drilled-panel-differs", "lids, door"),
    // 20
    ("uneven-reveals", "pepper, door; salt, door"),
    // 13: a stronger size of the same card.
    ("door-too-heavy", "anchors, door"),
];

/// Check and place of what goes away with another one.
const GONE_WITH_ANOTHER: &[(&str, &str)] = &[
    // 20: its top edge has no room to swing.
    ("top-edge-hits-panel", "pepper, door"),
    // 17: open, the top edge stands 10.8 - (10 - 7) = 7.8 before the panel, and a little more
    // before it is level; with the reveal that the door was drilled for it would be 6 less.
    ("gap-catches-fingers", "lids, door"),
];

/// Check and place of what needs a person.
const LEFT_FOR_A_PERSON: &[(&str, &str)] = &[
    // 2: all three screws of the left side.
    ("bore-breaks-through", "lamps, left side"),
    // 3
    ("bore-near-edge", "bread, door"),
    // 4: one in each side.
    ("bores-collide", "jars, left side"),
    ("bores-collide", "jars, right side"),
    // 5: both screws of the right bracket.
    ("bore-misses-member", "glasses, door"),
    ("bore-misses-member", "glasses, door"),
    // 6
    ("bore-not-in-this-material", "tools, door"),
    // 7: three cups.
    ("edge-distance-outside-card", "flags, door"),
    ("edge-distance-outside-card", "flags, door"),
    ("edge-distance-outside-card", "flags, door"),
    // 8: and so neither leaf has the bores of an only leaf.
    ("linkage-cannot-close", "nets, door"),
    ("bores-off-fitting", "nets, door"),
    // 9
    ("leaf-has-no-size", "buckets, door"),
    // 10
    ("frame-blocks-fitting", "oil skins, door"),
    // 11
    ("reveal-out-of-range", "soap, door"),
    // 12
    ("doors-overlap", "tea, door; coffee, door"),
    // 14
    ("card-example-fails", ""),
    // 15
    ("drilled-panel-differs", "cups, left side"),
    // 16
    ("stale-sheet", "pans, right side"),
    // 18
    ("side-hinge-bores-on-lift-door", "logs, door"),
    // 19
    ("mirrored-pair-differs", "forks, door; knives, door"),
    // 1, 7, 10 as well: the top edge is where it cannot swing.
    ("top-edge-hits-panel", "ropes, door"),
    ("top-edge-hits-panel", "flags, door"),
    ("top-edge-hits-panel", "oil skins, door"),
];

fn troubles() -> Job {
    read_job(include_str!(
        "../../../../assets/demo/houseboat-galley-troubles.ron"
    ))
    .expect("the galley with troubles is sound")
}

/// Names of checks and places.
type Listed = Vec<(String, String)>;

fn sorted<'a>(list: impl Iterator<Item = (&'a str, &'a str)>) -> Listed {
    let mut list: Listed = list.map(|it| (it.0.to_owned(), it.1.to_owned())).collect();
    list.sort_unstable();
    list
}

fn listed(job: &Job, inspection: &Inspection) -> Listed {
    let findings = inspection.findings.iter();
    let mut list: Listed = findings
        .map(|it| (it.check.to_owned(), place_of(job, &it.subjects)))
        .collect();
    list.sort_unstable();
    list
}

#[test]
fn every_trouble_is_found_and_nothing_else() {
    let expected = CLEARED_BY_SAFE_REMEDIES
        .iter()
        .chain(GONE_WITH_ANOTHER)
        .chain(LEFT_FOR_A_PERSON)
        .copied();
    let job = troubles();
    assert_eq!(listed(&job, &inspect(&job)), sorted(expected));
}

#[test]
fn safe_remedies_leave_what_needs_a_person() {
    let before = troubles();
    let run = apply_safe_remedies(&before);
    assert_eq!(
        listed(&run.job, &run.inspection),
        sorted(LEFT_FOR_A_PERSON.iter().copied())
    );
    let applied: Vec<(&str, String)> = run
        .applied
        .iter()
        .map(|it| (it.check, place_of(&before, &it.subjects)))
        .collect();
    assert_eq!(
        sorted(
            applied
                .iter()
                .map(|(check, place)| (*check, place.as_str()))
        ),
        sorted(CLEARED_BY_SAFE_REMEDIES.iter().copied())
    );
    let mut after = before.clone();
    let undo = apply(&mut after, run.edit.expect("something was done")).expect("it is sound");
    assert_eq!(after, run.job);
    apply(&mut after, undo).expect("undo is sound");
    assert_eq!(after, before);
}

#[test]
fn the_file_names_twenty_troubles() {
    let text = include_str!("../../../../assets/demo/houseboat-galley-troubles.ron");
    for number in 1..=20 {
        let named = format!("// Trouble {number}, ");
        assert_eq!(text.matches(&named).count(), 1, "{named}");
    }
}
