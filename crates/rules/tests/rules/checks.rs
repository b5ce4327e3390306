//! The list of the checks, and what holds for all of them.
//!
//! Limits are the settings' defaults: common practice, no source.

use crate::common::*;
use flapwright_model::card::PerSize;
use flapwright_model::door::End;
use flapwright_model::edit::apply;
use flapwright_model::job::Job;
use flapwright_model::linkage::{Bodies, Pivot};
use flapwright_rules::checks::CHECKS;
use flapwright_rules::finding::Severity;

#[test]
fn the_plain_box_has_no_finding() {
    // Its axis stands 3 before the sides and 1 below the door's top edge, so that the edge clears
    // the top; it hangs where its open door is neither at head height nor out of reach.
    let mut card = with_hinges(card());
    card.linkage.end_degrees = 90.0;
    card.linkage.bodies = Bodies::FixedAxis {
        axis: Pivot {
            down: PerSize::All(-14.0),
            back: PerSize::All(-3.0),
        },
    };
    let mut wall_box = wall_box();
    wall_box.place.above_floor = 1270.0;
    let mut job = job(wall_box, card);
    for check in ["open-door-at-head-height", "top-edge-hits-panel"] {
        job.settings.weights.remove(check);
    }
    assert_eq!(inspect(&job).findings, []);
}

#[test]
fn a_page_names_settings_as_the_form_does() {
    for check in CHECKS {
        let labels = check.setting_labels();
        assert!(labels.len() >= check.settings.len(), "{}", check.name);
        let manual = check.manual();
        for setting in check.settings.iter().filter(|it| it.contains('_')) {
            assert!(!manual.contains(setting), "{}: {setting}", check.name);
        }
        // What a page has in quotes is the label of one of its settings, or the bumper gap, which
        // every closed door goes by.
        for quoted in check.page.split('“').skip(1) {
            let label = quoted.split('”').next().unwrap_or_default();
            let known = labels.contains(&label) || label == "bumper gap";
            assert!(known, "{}: {label}", check.name);
        }
    }
}

#[test]
fn every_check_has_a_kebab_case_name_of_its_own_and_a_full_page() {
    let mut names: Vec<&str> = CHECKS.iter().map(|check| check.name).collect();
    for check in CHECKS {
        assert!(
            check
                .name
                .chars()
                .all(|c| c.is_ascii_lowercase() || c == '-'),
            "{} is not kebab-case",
            check.name
        );
        for heading in [
            "## What it looks at",
            "## Why it matters",
            "## Severity",
            "## What can be done",
        ] {
            assert!(
                check.page.contains(heading),
                "{} lacks {heading}",
                check.name
            );
        }
    }
    names.sort_unstable();
    names.dedup();
    assert_eq!(names.len(), CHECKS.len());
}

#[test]
fn safe_remedies_leave_fewer_stops_or_cautions() {
    let mut job = job(wall_box(), card());
    let door = the_job_door(&mut job, 0);
    door.bores_follow = flapwright_model::door::BoreReference::Edges { vertical: End::Top };
    door.tweaks.top = 10.0;
    let count = |job: &Job| {
        let findings = inspect(job).findings;
        let of = |severity| findings.iter().filter(|it| it.severity == severity).count();
        (of(Severity::Stop), of(Severity::Caution))
    };
    let before = count(&job);
    let mut safe = 0;
    for finding in inspect(&job).findings {
        for remedy in finding.remedies.iter().filter(|it| it.claims_safe()) {
            let mut changed = job.clone();
            apply(&mut changed, remedy.edit.clone()).unwrap();
            assert!(count(&changed) < before, "{:?}", remedy.kind);
            safe += 1;
        }
    }
    assert!(safe > 0);
}
