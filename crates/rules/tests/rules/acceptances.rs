//! Accepting findings: what an acceptance stands for, and when the finding is back. The numbers are
//! changed in the acceptance by hand, on both sides of what counts as unchanged: 0.05 of a unit,
//! 0.005 of a plain ratio.

use crate::common::*;
use crate::findings::{Told, told};
use flapwright_model::acceptance::{Acceptance, Topic};
use flapwright_model::card::PerSize;
use flapwright_model::door::DoorFit;
use flapwright_model::edges::{Edge, Edges};
use flapwright_model::edit::apply;
use flapwright_model::job::Job;
use flapwright_model::lift::Carries;
use flapwright_model::linkage::{Bodies, Pivot};
use flapwright_rules::accept::{accept, take_back};
use flapwright_rules::finding::{Severity, Worse};

/// A door 5 mm off its fitting at the top, with room to adjust 3.
fn off() -> Job {
    let mut job = job(wall_box(), card());
    let door = the_job_door(&mut job, 0);
    door.bores_follow = flapwright_model::door::BoreReference::Edges {
        vertical: flapwright_model::door::End::Top,
    };
    *door.tweaks.at_mut(Edge::Top) = 5.0;
    job
}

fn the_finding(job: &Job, check: &str) -> Told {
    told(job)
        .into_iter()
        .find(|it| it.check == check)
        .expect("the job has that finding")
}

fn accepted(job: &Job, check: &str, reason: &str) -> Job {
    let mut job = job.clone();
    let edit = accept(&job, &the_finding(&job, check), reason);
    apply(&mut job, edit).expect("the acceptance fits");
    job
}

const OFF: &str = "bores-off-fitting";

#[test]
fn an_acceptance_keeps_the_reason_without_blanks_around_it_and_replaces_the_one_before() {
    let first = accepted(&off(), OFF, "  bored by hand \n");
    assert_eq!(
        the_finding(&first, OFF).accepted.as_deref(),
        Some("bored by hand")
    );
    let second = accepted(&first, OFF, "plugged");
    assert_eq!(second.accepted.len(), 1);
    assert_eq!(
        the_finding(&second, OFF).accepted.as_deref(),
        Some("plugged")
    );
    let mut back = second.clone();
    let edit = take_back(&back, &the_finding(&back, OFF));
    apply(&mut back, edit).expect("taking it back fits");
    assert_eq!(back.accepted, []);
    assert_eq!(the_finding(&back, OFF).accepted, None);
}

#[test]
fn an_acceptance_is_of_one_check_at_one_place() {
    let job = accepted(&off(), OFF, "known");
    let of_another = |change: fn(&mut Acceptance)| {
        let mut job = job.clone();
        change(&mut job.accepted[0]);
        the_finding(&job, OFF).accepted.clone()
    };
    assert_eq!(of_another(|_| ()).as_deref(), Some("known"));
    assert_eq!(
        of_another(|it| it.check = "bore-near-edge".to_owned()),
        None
    );
    assert_eq!(of_another(|it| it.about = vec![Topic::Width]), None);
    // Taking back another's acceptance leaves this one.
    let mut finding = the_finding(&job, OFF);
    finding.about = vec![Topic::Width];
    let mut same = job.clone();
    apply(&mut same, take_back(&job, &finding)).expect("nothing to take back");
    assert_eq!(same.accepted.len(), 1);
}

/// An inset flap on an axis 12 below its top edge and 5 behind its front, below a shelf 19.9 thick
/// and another inset door: its gaps to both close within the band (see the tests of that check).
fn two_gaps() -> Job {
    let mut card = card();
    card.linkage.end_degrees = 90.0;
    card.linkage.bodies = Bodies::FixedAxis {
        axis: Pivot {
            down: PerSize::All(15.0),
            back: PerSize::All(5.0 - 19.0),
        },
    };
    let mut wall_box = wall_box();
    let inset = |fitted: bool| {
        let mut door = door(Edges::all(3.0));
        door.fit = DoorFit::Inset {
            gaps: Edges::all(3.0),
            set_back: 0.0,
        };
        if !fitted {
            door.fitting = None;
        }
        Some(door)
    };
    wall_box.body.door = inset(false);
    split(&mut wall_box, fixed_shelf(300.0, 19.9, 3.0), inset(true));
    job(wall_box, card)
}

#[test]
fn two_findings_of_one_check_at_one_place_are_accepted_one_by_one() {
    let mut job = two_gaps();
    let of_gaps = |job: &Job| -> Vec<Option<String>> {
        let findings = inspect(job).findings.into_iter();
        findings
            .filter(|it| it.check == "gap-catches-fingers")
            .map(|it| it.accepted.clone())
            .collect()
    };
    assert_eq!(of_gaps(&job), [None, None]);
    job = accepted(&job, "gap-catches-fingers", "no children aboard");
    let marked = of_gaps(&job);
    assert_eq!(
        marked.iter().filter(|it| it.is_some()).count(),
        1,
        "{marked:?}"
    );
}

/// Whether a finding stays accepted when one of its numbers was this much off when it was accepted.
fn stays(job: &Job, check: &str, label: &str, by: f64) -> bool {
    let mut job = job.clone();
    let number = job
        .accepted
        .iter_mut()
        .flat_map(|it| &mut it.numbers)
        .find(|it| it.label == label)
        .expect("the number is kept");
    number.value += by;
    the_finding(&job, check).accepted.is_some()
}

fn worse_of(finding: &Told, label: &str) -> (Worse, &'static str) {
    let number = finding
        .numbers
        .iter()
        .find(|it| it.name == label)
        .expect("it has that number");
    (number.worse, number.unit)
}

#[test]
fn a_number_with_a_unit_may_move_by_half_a_tenth() {
    const NAME: &str = "door-too-heavy";
    let mut card = card();
    card.sizes[0].carries = Carries::Mass { min: 1.0, max: 2.0 };
    let job = accepted(&job(wall_box(), card), NAME, "tried");
    let finding = the_finding(&job, NAME);
    // The door's mass, of which more is worse, and what the size carries, of which less is.
    let label = |worse: Worse| {
        let number = finding.numbers.iter().find(|it| it.worse == worse);
        number.expect("it has one").name
    };
    let (greater, smaller) = (label(Worse::Greater), label(Worse::Smaller));
    assert!(stays(&job, NAME, greater, -0.04));
    assert!(!stays(&job, NAME, greater, -0.06));
    assert!(stays(&job, NAME, greater, 10.0));
    assert!(stays(&job, NAME, smaller, 0.04));
    assert!(!stays(&job, NAME, smaller, 0.06));
    assert!(stays(&job, NAME, smaller, -10.0));
}

#[test]
fn a_plain_ratio_may_move_by_half_a_hundredth() {
    let job = accepted(&off(), OFF, "known");
    let finding = the_finding(&job, OFF);
    let ratio = finding
        .numbers
        .iter()
        .find(|it| it.unit.is_empty())
        .expect("the share of the adjustment");
    let (worse, _) = worse_of(&finding, ratio.name);
    assert_eq!(worse, Worse::Either);
    assert!(stays(&job, OFF, ratio.name, 0.004));
    assert!(stays(&job, OFF, ratio.name, -0.004));
    assert!(!stays(&job, OFF, ratio.name, 0.006));
    assert!(!stays(&job, OFF, ratio.name, -0.006));
}

#[test]
fn numbers_keep_their_meaning_under_the_words_of_version_1() {
    let job = accepted(&off(), OFF, "known");
    let in_words = |words: fn(&str) -> String, by: f64| {
        let mut job = job.clone();
        for number in &mut job.accepted[0].numbers {
            number.label = words(&number.label);
            number.value += by;
        }
        the_finding(&job, OFF).accepted.clone()
    };
    // It wrote "share of the adjustment", and of some numbers also which edge or gap was meant.
    let same = |name: &str| name.replace('_', " ");
    let other = |name: &str| format!("{}, at the top", name.replace('_', " "));
    for words in [same, other] {
        assert_eq!(in_words(words, 0.0).as_deref(), Some("known"));
        assert_eq!(in_words(words, 1.0), None, "a number that changed");
    }
}

/// What the finding says about being back.
fn why_back(job: &Job) -> String {
    let finding = the_finding(job, OFF);
    assert_eq!(finding.accepted, None);
    finding.reasons.last().cloned().unwrap_or_default()
}

#[test]
fn a_finding_that_is_back_says_why() {
    let job = accepted(&off(), OFF, "known");
    let severity = the_finding(&job, OFF).severity;
    assert_eq!(
        severity,
        Severity::Stop,
        "5 is more than the adjustment of 3"
    );

    let mut milder = job.clone();
    milder.accepted[0].severity = Severity::Caution;
    assert_eq!(
        why_back(&milder),
        "reopened.graver: reason \"known\", was caution, is stop"
    );

    let mut fewer = job.clone();
    fewer.accepted[0].numbers.pop();
    assert_eq!(why_back(&fewer), "reopened.more: reason \"known\"");

    let mut other = job.clone();
    let last = other.accepted[0].numbers.last_mut().expect("numbers");
    last.label = "something_else".to_owned();
    assert_eq!(why_back(&other), "reopened.more: reason \"known\"");

    // 5 off now; 4 off when it was accepted.
    let mut nearer = job.clone();
    let number = nearer.accepted[0]
        .numbers
        .iter_mut()
        .find(|it| (it.value - 5.0).abs() < 1e-9)
        .expect("the offset");
    number.value = 4.0;
    let label = number.label.clone();
    assert_eq!(
        why_back(&nearer),
        format!("reopened.worse: reason \"known\", number {label}, was 4 mm, is 5 mm")
    );
}

#[test]
fn a_finding_that_has_become_milder_stays_accepted() {
    let mut job = accepted(&off(), OFF, "known");
    job.accepted[0].severity = Severity::Stop;
    // Greater than a stop there is none; a caution under an accepted stop stays accepted.
    job.settings.weights.insert(
        OFF.to_owned(),
        flapwright_model::severity::SeveritySetting::Caution,
    );
    assert_eq!(the_finding(&job, OFF).severity, Severity::Caution);
    assert!(the_finding(&job, OFF).accepted.is_some());
}
