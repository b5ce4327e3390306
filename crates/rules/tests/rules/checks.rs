//! The other checks: holds, just holds, just fails. Limits are the settings' defaults: common
//! practice, no source.

use crate::common::*;
use crate::findings::*;
use flapwright_model::cabinet::{Place, SystemRows};
use flapwright_model::card::{Depth, EdgeRange, LeafEdge, PerSize};
use flapwright_model::door::{BuildUp, DoorFit, End, Handle, HandleScrews, Leaf, Leaves};
use flapwright_model::edges::Edges;
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
fn a_bore_leaves_wood_before_the_point_of_its_drill() {
    // 5 mm bore 13 deep, point 2 ahead: 16 leaves 3 at full diameter and 1 before the point;
    // 17 leaves just the 2 wanted; 15 leaves nothing; 12 is through.
    for (thickness, expected) in [
        (17.0, vec![]),
        (16.99, vec![Severity::Caution]),
        (16.0, vec![Severity::Caution]),
        (15.01, vec![Severity::Caution]),
        (15.0, vec![Severity::Stop]),
        (12.0, vec![Severity::Stop]),
    ] {
        let mut card = card();
        card.side_bores.truncate(1);
        card.side_bores[0].drill.depth = Depth::Blind(13.0);
        let mut it = wall_box();
        it.left = panel(thickness);
        assert_eq!(
            severities(&job(it, card), "bore-breaks-through"),
            expected,
            "{thickness} mm"
        );
    }
}

#[test]
fn a_through_bore_breaks_nothing() {
    let mut card = card();
    card.side_bores[0].drill.depth = Depth::Through;
    assert_eq!(
        severities(&job(wall_box(), card), "bore-breaks-through"),
        []
    );
}

#[test]
fn a_bore_keeps_wood_to_the_edge() {
    // 5 mm bores: rim 2.5 from the centre, 3 wanted: 5.5 just holds.
    for (back, expected) in [
        (5.5, vec![]),
        (5.49, vec![Severity::Caution; 2]),
        (2.51, vec![Severity::Caution; 2]),
        (2.5, vec![Severity::Stop; 2]),
        (-9.0, vec![Severity::Stop; 2]),
    ] {
        let mut card = card();
        card.side_bores = vec![side_bore(64.0, back)];
        assert_eq!(
            severities(&job(wall_box(), card), "bore-near-edge"),
            expected,
            "{back} mm"
        );
    }
}

#[test]
fn bores_keep_wood_between_them() {
    // A shelf bore of 5 beside a fitting bore of 5: 8 apart leaves 3.
    let rows = |first| SystemRows {
        front: 41.0,
        rear: 41.0,
        first,
        last: 600.0 - first,
        diameter: 5.0,
        depth: 12.0,
    };
    for (first, expected) in [
        (90.0, vec![]),
        (89.99, vec![Severity::Caution; 2]),
        (87.01, vec![Severity::Caution; 2]),
        (87.0, vec![Severity::Stop; 2]),
        (84.0, vec![Severity::Stop; 2]),
        // In the very same place it is one bore, drilled once.
        (82.0, vec![]),
    ] {
        let mut it = wall_box();
        it.system_rows = Some(rows(first));
        assert_eq!(
            severities(&job(it, card()), "bores-collide"),
            expected,
            "first at {first}"
        );
    }
}

#[test]
fn bores_of_one_fitting_may_be_close_and_may_not_meet() {
    for (apart, expected) in [(5.5, vec![]), (5.0, vec![Severity::Stop; 2])] {
        let mut card = card();
        card.side_bores = vec![side_bore(64.0, 41.0), side_bore(64.0, 41.0 + apart)];
        assert_eq!(
            severities(&job(wall_box(), card), "bores-collide"),
            expected,
            "{apart} mm"
        );
    }
}

#[test]
fn two_passes_on_one_centre_are_a_stepped_bore() {
    let mut card = card();
    card.side_bores = vec![side_bore(64.0, 41.0), side_bore(64.0, 41.0)];
    card.side_bores[1].drill.pass = 2;
    card.side_bores[1].drill.diameter = 10.0;
    card.side_bores[1].drill.depth = Depth::Blind(3.0);
    assert_eq!(severities(&job(wall_box(), card), "bores-collide"), []);
}

#[test]
fn a_handle_screw_in_a_fitting_bore_is_found() {
    let mut job = job(wall_box(), card());
    // The right fitting's first bore is 29 in and 105 down; the door is 594 high.
    the_job_door(&mut job, 0).handle = Some(Handle {
        mass: 0.1,
        up: 594.0 - 105.0,
        right_of_middle: 794.0 / 2.0 - 29.0,
        projection: 25.0,
        length: 20.0,
        screws: Some(HandleScrews {
            spacing: 0.0,
            diameter: 4.5,
        }),
    });
    assert_eq!(severities(&job, "bores-collide"), [Severity::Stop]);
}

#[test]
fn bores_of_a_framed_leaf_lie_in_its_stiles() {
    // Bores 29 in, 4 across: rim at 31. The groove begins 8 before the inner edge of the stile:
    // 39 just holds, less does not. Two bores at each side.
    for (stile, expected) in [(39.0, 0), (38.99, 4), (20.0, 4)] {
        let mut job = with_glass(job(wall_box(), card()));
        the_job_door(&mut job, 0).leaves = Leaves::One(framed(Edges::all(stile), "test glass"));
        let found = severities(&job, "bore-misses-member");
        assert_eq!(found, vec![Severity::Stop; expected], "stile {stile}");
    }
}

#[test]
fn a_leaf_of_glass_takes_only_what_the_card_says() {
    let mut job = with_glass(job(wall_box(), card()));
    the_job_door(&mut job, 0).leaves = Leaves::One(Leaf {
        build: BuildUp::Plain {
            thickness: 19.0,
            material: "test glass".to_owned(),
        },
        ..leaf(19.0)
    });
    assert_eq!(
        severities(&job, "bore-not-in-this-material"),
        [Severity::Stop]
    );
    for bore in &mut job.cards[0].card.door_bores[0].bores {
        bore.in_glass_or_metal = true;
    }
    assert_eq!(severities(&job, "bore-not-in-this-material"), []);
}

#[test]
fn a_bore_keeps_the_edge_distance_that_its_card_allows() {
    // Top overlay 15: the first bore is 105 from the top edge, and 29 from its own side.
    for (edge, min, max, expected) in [
        (LeafEdge::Top, 100.0, 105.0, 0),
        (LeafEdge::Top, 105.0, 110.0, 0),
        (LeafEdge::Top, 100.0, 104.9, 2),
        (LeafEdge::Top, 105.1, 110.0, 2),
        (LeafEdge::OwnSide, 29.0, 29.0, 0),
        (LeafEdge::OwnSide, 30.0, 40.0, 2),
    ] {
        let mut card = card();
        card.door_bores[0].bores[0].edge_ranges = vec![EdgeRange { edge, min, max }];
        let found = severities(&job(wall_box(), card), "edge-distance-outside-card");
        assert_eq!(
            found,
            vec![Severity::Stop; expected],
            "{edge:?} {min} to {max}"
        );
    }
}

#[test]
fn a_door_that_misses_its_panel_or_meets_its_neighbour_is_found() {
    // Side 18: a reveal of 18 uncovers all of it, of -1 laps 1 past it.
    for (reveal, expected) in [
        (17.99, vec![]),
        (18.0, vec![Severity::Stop]),
        (0.0, vec![]),
        (-1.0, vec![Severity::Note]),
    ] {
        let mut it = wall_box();
        let reveals = Edges {
            left: reveal,
            ..Edges::all(3.0)
        };
        it.body.door = Some(door(reveals));
        assert_eq!(
            severities(&job(it, card()), "reveal-out-of-range"),
            expected,
            "{reveal}"
        );
    }
    for (gap, expected) in [(0.01, 0), (0.0, 4), (-1.0, 4)] {
        let mut it = wall_box();
        it.body.door.as_mut().unwrap().fit = DoorFit::Inset {
            gaps: Edges::all(gap),
            set_back: 0.0,
        };
        let found = severities(&job(it, card()), "reveal-out-of-range");
        assert_eq!(found, vec![Severity::Stop; expected], "gap {gap}");
    }
}

#[test]
fn doors_on_one_shelf_keep_a_gap_with_the_tweaks_of_both() {
    for (tweak, expected) in [(1.49, vec![]), (1.5, vec![Severity::Stop])] {
        let mut it = wall_box();
        split(
            &mut it,
            fixed_shelf(250.0, 19.0, 3.0),
            Some(door(Edges::all(3.0))),
        );
        let mut job = job(it, card());
        the_job_door(&mut job, 0).tweaks.bottom = tweak;
        the_job_door(&mut job, 1).tweaks.top = tweak;
        assert_eq!(
            severities(&job, "reveal-out-of-range"),
            expected,
            "tweak {tweak}"
        );
    }
}

#[test]
fn doors_of_neighbouring_boxes_may_not_lie_over_each_other() {
    // Doors 794 wide, 3 in from each side: boxes 800 wide can come as near as 794.
    for (along, expected) in [(800.0, 0), (794.0, 0), (793.9, 1)] {
        let mut job = job(wall_box(), card());
        let mut second = wall_box();
        second.place = Place {
            along_wall: along,
            above_floor: 0.0,
        };
        add_box(&mut job, second);
        assert_eq!(
            found(&job, "doors-overlap").len(),
            expected,
            "second box at {along}"
        );
    }
}

#[test]
fn a_leaf_without_size_is_a_stop_and_no_panic() {
    let mut it = wall_box();
    it.body.door = Some(door(Edges {
        left: 450.0,
        right: 450.0,
        top: 3.0,
        bottom: 3.0,
    }));
    // 764 clear + 36 - 900 = -100.
    let found = found(&job(it, card()), "leaf-has-no-size");
    assert_eq!(found[0].severity, Severity::Stop);
    assert_close(found[0].numbers[0].value, -100.0);
}

#[test]
fn a_door_of_two_leaves_on_a_flap_fitting_gets_a_remedy() {
    let mut job = job(wall_box(), card());
    the_job_door(&mut job, 0).leaves = Leaves::Two {
        upper: leaf(19.0),
        lower: leaf(19.0),
        joint_down: 280.0,
        joint_gap: 3.0,
    };
    let found = found(&job, "linkage-cannot-close");
    assert_eq!(found[0].severity, Severity::Stop);
    apply(&mut job, found[0].remedies[0].edit.clone()).unwrap();
    assert_eq!(severities(&job, "linkage-cannot-close"), []);
}

#[test]
fn a_slip_in_a_card_shows_against_its_own_example() {
    let mut card = card();
    // Top 18, overlays 15: side bores 18 + 64 down; door bores 15 + 14 in and 15 + 90, 15 + 122
    // down.
    card.example = Some(flapwright_model::card::Example {
        size: "1".to_owned(),
        panel_thickness: 18.0,
        overlays: Edges::all(15.0),
        packing: 0.0,
        joint_down: 0.0,
        side: vec![(82.0, 41.0), (82.0, 137.0)],
        door: vec![(29.0, 105.0), (29.0, 137.0)],
    });
    assert_eq!(
        severities(&job(wall_box(), card.clone()), "card-example-fails"),
        []
    );
    card.side_bores[1].back.by = flapwright_model::card::PerSize::All(173.0);
    let found = found(&job(wall_box(), card), "card-example-fails");
    assert_eq!(found[0].severity, Severity::Stop);
    assert_close(found[0].numbers[0].value, 36.0);
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
