//! The check `reveal-out-of-range`.
//!
//! Limits are the settings' defaults: common practice, no source.
//!
//! The plain box is 800 by 600 with panels of 18: reveals of 3 are overlays of 15, its door is 794 by
//! 594.

use crate::common::*;
use crate::findings::*;
use crate::worked::{REVEAL_OUT_OF_RANGE, three_doors};
use flapwright_model::door::DoorFit;
use flapwright_model::edges::{Edge, Edges};
use flapwright_model::job::Job;
use flapwright_rules::finding::{Severity, Worse};

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

fn with_reveal(edge: Edge, reveal: f64, tweak: f64) -> Job {
    let mut job = job(wall_box(), card());
    let it = the_job_door(&mut job, 0);
    if let DoorFit::Overlay { reveals } = &mut it.fit {
        *reveals.at_mut(edge) = reveal;
    }
    *it.tweaks.at_mut(edge) = tweak;
    job
}

#[test]
fn the_edge_that_is_out_of_its_place_is_named_with_its_number() {
    for edge in Edge::ALL {
        let word = edge.word();
        // 18 wide: a reveal of 20 misses it by 2, one of -1 stands 1 past it.
        let missed = the_only(&with_reveal(edge, 20.0, 0.0), REVEAL_OUT_OF_RANGE);
        assert_eq!(missed.severity, Severity::Stop);
        assert_eq!(
            missed.message,
            format!("reveal-out-of-range.misses: edge {word}, by 2 mm, overlay -2 mm")
        );
        assert_numbers(&missed, &[("overlay", -2.0, "mm", Worse::Either)]);
        assert_eq!(missed.subjects, [FIRST_DOOR]);
        let past = the_only(&with_reveal(edge, -1.0, 0.0), REVEAL_OUT_OF_RANGE);
        assert_eq!(past.severity, Severity::Note);
        assert_eq!(
            past.message,
            format!("reveal-out-of-range.past: edge {word}, by 1 mm, reveal -1 mm")
        );
        assert_numbers(&past, &[("reveal", -1.0, "mm", Worse::Either)]);
    }
}

#[test]
fn a_tweak_counts_in_the_place_of_an_edge() {
    // A reveal of 3 and 4 outward: 1 past; a reveal of 16 and 3 inward: 1 missed.
    let past = the_only(&with_reveal(Edge::Left, 3.0, 4.0), REVEAL_OUT_OF_RANGE);
    assert_eq!(
        past.message,
        "reveal-out-of-range.past: edge left, by 1 mm, reveal -1 mm"
    );
    assert_eq!(
        found(&with_reveal(Edge::Left, 3.0, 3.0), REVEAL_OUT_OF_RANGE),
        []
    );
    let missed = the_only(&with_reveal(Edge::Left, 16.0, -3.0), REVEAL_OUT_OF_RANGE);
    assert_eq!(
        missed.message,
        "reveal-out-of-range.misses: edge left, by 1 mm, overlay -1 mm"
    );
}

#[test]
fn an_inset_door_says_which_gap_it_lacks() {
    for edge in Edge::ALL {
        let mut job = job(wall_box(), card());
        let mut gaps = Edges::all(2.0);
        *gaps.at_mut(edge) = 1.0;
        let it = the_job_door(&mut job, 0);
        it.fit = DoorFit::Inset {
            gaps,
            set_back: 0.0,
        };
        *it.tweaks.at_mut(edge) = 0.9;
        assert_eq!(found(&job, REVEAL_OUT_OF_RANGE), []);
        *the_job_door(&mut job, 0).tweaks.at_mut(edge) = 1.5;
        let tight = the_only(&job, REVEAL_OUT_OF_RANGE);
        assert_eq!(
            tight.message,
            format!(
                "reveal-out-of-range.no-gap: edge {}, gap -0.5 mm",
                edge.word()
            )
        );
        assert_numbers(&tight, &[("gap", -0.5, "mm", Worse::Either)]);
    }
}

#[test]
fn doors_that_cannot_both_close_are_told_of_by_the_upper_one() {
    let gap = |upper: usize, bottom: f64, top: f64| {
        let mut job = three_doors();
        the_job_door(&mut job, upper).tweaks.bottom = bottom;
        the_job_door(&mut job, upper + 1).tweaks.top = top;
        found(&job, REVEAL_OUT_OF_RANGE)
    };
    for upper in [0, 1] {
        assert_eq!(gap(upper, 1.0, 1.9), []);
        let met = gap(upper, 1.5, 2.5);
        assert_eq!(met.len(), 1, "{met:#?}");
        assert_eq!(met[0].severity, Severity::Stop);
        assert_eq!(
            met[0].message,
            "reveal-out-of-range.no-gap-below: gap -1 mm"
        );
        assert_numbers(&met[0], &[("gap", -1.0, "mm", Worse::Either)]);
        let its_door = door_subject(&three_doors(), 0, upper);
        assert_eq!(met[0].subjects, [its_door]);
        // 8 + 12 = 20 is more than the 19 of the shelf: its gap says that, no reveal does.
        let far = gap(upper, 0.0, 12.0);
        assert_eq!(far.len(), 1, "{far:#?}");
        assert_numbers(&far[0], &[("gap", -9.0, "mm", Worse::Either)]);
        // 8 - 8 laps over nothing, whatever the gap.
        let missed = gap(upper, -8.0, 0.0);
        assert_eq!(missed.len(), 1, "{missed:#?}");
        assert_eq!(
            missed[0].message,
            "reveal-out-of-range.just-misses: edge bottom, overlay 0 mm"
        );
    }
}
