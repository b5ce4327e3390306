//! Panels that left the program: marked as exported or drilled, and what is said when the job
//! changes afterwards. The expected numbers are worked from the test card: side bores 64 below the
//! underside of an 18 mm top, 41 and 137 back; door bores 14 in from an inner face that the door
//! laps over by 15, 90 and 122 below the underside, where the door's edge stands 15 above it.

use crate::common::*;
use crate::findings::{Told, told};
use flapwright_model::card::PerSize;
use flapwright_model::change::forget_records;
use flapwright_model::door::{BoreReference, DoorFit};
use flapwright_model::edges::Edge;
use flapwright_model::edit::apply;
use flapwright_model::job::Job;
use flapwright_model::part::{Part, PartId};
use flapwright_model::record::RecordState::{self, Drilled, SheetExported};
use flapwright_rules::finding::Severity;
use flapwright_rules::inspection::BoreSource;
use flapwright_rules::records::record;
use proptest::prelude::*;

const fn id(part: Part) -> PartId {
    part_id(part)
}

fn recorded(mut job: Job, part: Part, state: RecordState) -> Job {
    let edit = record(&job, &inspect(&job), &[id(part)], state);
    apply(&mut job, edit).expect("a record is sound");
    job
}

/// A card with a second size whose second side bore lies 13 lower, and a third like the first.
fn three_sizes() -> flapwright_model::card::Card {
    let mut card = card();
    for name in ["2", "3"] {
        let mut size = card.sizes[0].clone();
        size.name = name.to_owned();
        card.sizes.push(size);
    }
    card.side_bores[1].down.by = PerSize::BySize(
        [("1", 64.0), ("2", 77.0), ("3", 64.0)]
            .map(|(name, by)| (name.to_owned(), by))
            .into(),
    );
    card
}

fn with_size(mut job: Job, size: &str) -> Job {
    let fitting = the_job_door(&mut job, 0).fitting.as_mut();
    fitting.expect("the test's door has a fitting").size = size.to_owned();
    job
}

fn with_reveal(mut job: Job, edge: Edge, to: f64) -> Job {
    if let DoorFit::Overlay { reveals } = &mut the_job_door(&mut job, 0).fit {
        *reveals.at_mut(edge) = to;
    }
    job
}

fn the_only(job: &Job) -> Told {
    let mut findings = told(job);
    assert_eq!(findings.len(), 1, "{findings:#?}");
    findings.remove(0)
}

fn number(finding: &Told, label: &str) -> f64 {
    let number = finding.numbers.iter().find(|it| it.name == label);
    number.expect("the number is there").value
}

#[test]
fn a_panel_that_is_recorded_as_it_stands_raises_nothing() {
    for state in [SheetExported, Drilled] {
        for part in [
            Part::LeftSide,
            Part::RightSide,
            Part::Top,
            Part::Bottom,
            LEAF,
        ] {
            let job = recorded(job(wall_box(), with_hinges(card())), part, state);
            assert_eq!(inspect(&job).findings, [], "{part:?} {state:?}");
            let it = &job.boxes[0].records[0];
            assert_eq!((it.part, it.state), (part, state));
        }
    }
}

#[test]
fn recording_and_forgetting_are_undone() {
    let before = job(wall_box(), with_hinges(card()));
    for part in [Part::LeftSide, LEAF] {
        let mut after = before.clone();
        let edit = record(&after, &inspect(&after), &[id(part)], Drilled);
        let undo = apply(&mut after, edit).unwrap();
        let drilled = after.clone();
        let edit = forget_records(&after, &[id(part)]).expect("there is a record");
        let undo_forget = apply(&mut after, edit).unwrap();
        assert_eq!(after, before, "forgotten {part:?}");
        apply(&mut after, undo_forget).unwrap();
        assert_eq!(after, drilled);
        apply(&mut after, undo).unwrap();
        assert_eq!(after, before, "undone {part:?}");
    }
}

#[test]
fn a_drilled_panel_stays_drilled_when_its_sheet_is_exported_again() {
    let job = recorded(job(wall_box(), card()), Part::LeftSide, Drilled);
    let again = recorded(job.clone(), Part::LeftSide, SheetExported);
    assert_eq!(again, job);
}

#[test]
fn bores_of_a_drilled_side_stay_when_the_size_changes() {
    let before = recorded(job(wall_box(), three_sizes()), Part::LeftSide, Drilled);
    let after = with_size(before, "2");
    let report = &inspect(&after).boxes[0];
    // Below the top end of the side: 18 + 64; the free right side follows: 18 + 77.
    let left = the_panel(report, Part::LeftSide);
    assert_places(&places(left), &[(41.0, 82.0), (137.0, 82.0)]);
    assert!(
        left.bores
            .iter()
            .all(|it| it.source == BoreSource::Recorded)
    );
    // In the box: x of the inner face, y = 600 - 82.
    assert_close(left.bores[0].in_box.x, 18.0);
    assert_close(left.bores[0].in_box.y, 518.0);
    assert_close(left.bores[0].in_box.z, 41.0);
    let right = the_panel(report, Part::RightSide);
    assert_places(&places(right), &[(41.0, 82.0), (137.0, 95.0)]);
    let needed = flapwright_rules::records::as_needed(&after, &after.boxes[0]);
    let left = the_panel(&needed, Part::LeftSide);
    assert_places(&places(left), &[(41.0, 82.0), (137.0, 95.0)]);
}

#[test]
fn a_drilled_side_with_another_size_is_a_stop_that_the_old_bores_clear() {
    let before = recorded(job(wall_box(), three_sizes()), Part::LeftSide, Drilled);
    let after = with_size(before, "2");
    let found = the_only(&after);
    assert_eq!(
        (found.check, found.severity),
        ("drilled-panel-differs", Severity::Stop)
    );
    assert_close(number(&found, "largest_move_of_a_bore"), 13.0);
    assert_eq!(
        found.message,
        "drilled-panel-differs.differs: first (panel-differs.moved: bores 1, furthest 2, way [(step.down: by 13 mm)]), largest_move_of_a_bore 13 mm"
    );
    let titles: Vec<&str> = found.remedies.iter().map(|it| it.kind.as_str()).collect();
    assert_eq!(
        titles,
        [
            "remedy.take-size: fitting (fitting-name.size: card \"Plover\", size \"1\")",
            "remedy.take-size: fitting (fitting-name.size: card \"Plover\", size \"3\")",
            "remedy.plug-and-redrill"
        ]
    );
    for remedy in &found.remedies {
        let mut job = after.clone();
        let undo = apply(&mut job, remedy.edit.clone()).unwrap();
        assert_eq!(inspect(&job).findings, [], "{}", remedy.kind);
        apply(&mut job, undo).unwrap();
        assert_eq!(job, after);
    }
}

#[test]
fn a_drilled_side_differs_from_just_past_the_setting_on() {
    // The setting for bores off the fitting: 0.2 mm.
    for (by, expected) in [(0.19, 0), (0.21, 1), (-0.19, 0), (-0.21, 1)] {
        let mut job = recorded(job(wall_box(), card()), Part::LeftSide, Drilled);
        job.boxes[0].records[0].bores[0].u += by;
        assert_eq!(inspect(&job).findings.len(), expected, "{by}");
    }
}

#[test]
fn missing_and_surplus_bores_are_told_apart() {
    let job = recorded(job(wall_box(), card()), Part::LeftSide, Drilled);
    let mut lacking = job.clone();
    lacking.boxes[0].records[0].bores.pop();
    let found = the_only(&lacking);
    assert_eq!(found.severity, Severity::Stop);
    assert_eq!(
        found.message,
        "drilled-panel-differs.differs: first (panel-differs.missing: bores 1), largest_move_of_a_bore 0 mm"
    );
    assert_eq!(
        found.reasons,
        [
            "panel-differs.drill: purpose \"body screw\", is (bore-place.blind: diameter 5 mm, depth 12 mm, u 137 mm, v 82 mm)"
        ]
    );
    let mut more = job;
    let mut extra = more.boxes[0].records[0].bores[0].clone();
    extra.v = 300.0;
    more.boxes[0].records[0].bores.push(extra);
    let found = the_only(&more);
    assert_eq!(found.severity, Severity::Caution);
    assert_eq!(
        found.message,
        "drilled-panel-differs.differs: first (panel-differs.surplus: bores 1), largest_move_of_a_bore 0 mm"
    );
    assert!(
        found.reasons[0].starts_with("panel-differs.plug: bore 3, purpose \"body screw\""),
        "{:?}",
        found.reasons
    );
}

#[test]
fn depth_and_size_and_thickness_of_a_drilled_panel_count() {
    let base = recorded(job(wall_box(), card()), Part::LeftSide, Drilled);
    let mut shallow = base.clone();
    shallow.boxes[0].records[0].bores[0].drill.depth = flapwright_model::card::Depth::Blind(11.0);
    assert!(
        the_only(&shallow)
            .message
            .contains("(step.depth: is 12 mm, was 11 mm)")
    );
    let mut lower = base.clone();
    lower.boxes[0].records[0].size[1] = 590.0;
    let found = the_only(&lower);
    assert_eq!(found.severity, Severity::Stop);
    assert_eq!(
        found.message,
        "drilled-panel-differs.differs: first (panel-differs.size: what height, was 590 mm, is 600 mm), largest_move_of_a_bore 0 mm, height_drilled 590 mm, height_needed 600 mm"
    );
    let mut thin = base;
    thin.boxes[0].records[0].thickness = 16.0;
    assert!(
        the_only(&thin)
            .message
            .contains("size: what thickness, was 16 mm, is 18 mm")
    );
}

#[test]
fn a_drilled_door_takes_its_bores_along() {
    let job = recorded(job(wall_box(), card()), LEAF, Drilled);
    let BoreReference::AsDrilled(bores) = &job.boxes[0].body.door.as_ref().unwrap().bores_follow
    else {
        panic!("the door's bores are not those of an existing door")
    };
    assert_eq!(bores.len(), 4);
}

#[test]
fn refitting_the_opening_gives_back_the_reveals_that_the_door_was_drilled_for() {
    let drilled = recorded(job(wall_box(), with_hinges(card())), LEAF, Drilled);
    // Every reveal is off: the door is 4 too narrow and 1 too high, and its bores stand elsewhere.
    let mut off = drilled.clone();
    for (edge, to) in [
        (Edge::Left, 8.0),
        (Edge::Right, 2.0),
        (Edge::Top, -2.0),
        (Edge::Bottom, 7.0),
    ] {
        off = with_reveal(off, edge, to);
    }
    let findings = told(&off);
    let found = findings
        .iter()
        .find(|it| it.check == "drilled-panel-differs")
        .expect("the door differs");
    assert!(!findings.iter().any(|it| it.check == "bores-off-fitting"));
    assert_eq!(found.severity, Severity::Stop);
    let refit = &found.remedies[0];
    assert_eq!(refit.kind, "remedy.refit");
    assert!(refit.safe);
    let mut after = off.clone();
    let undo = apply(&mut after, refit.edit.clone()).unwrap();
    assert_eq!(inspect(&after).findings, []);
    let edges = |job: &Job| the_door(&inspect(job).boxes[0], 0).edges;
    for edge in Edge::ALL {
        assert_close(edges(&after).at(edge), edges(&drilled).at(edge));
    }
    apply(&mut after, undo).unwrap();
    assert_eq!(after, off);
}

#[test]
fn refitting_shares_out_what_the_adjustment_has_to_take_up() {
    // The bores of the left fitting were drilled 2 further in: -1 and +1 is the best there is, and
    // the fitting adjusts by 2 sideways.
    let mut job = recorded(job(wall_box(), card()), LEAF, Drilled);
    let BoreReference::AsDrilled(bores) = &mut the_job_door(&mut job, 0).bores_follow else {
        unreachable!("drilled already")
    };
    for bore in bores
        .iter_mut()
        .filter(|it| it.from_side == flapwright_model::door::Side::Left)
    {
        bore.across += 2.0;
    }
    for bore in &mut job.boxes[0].records[0].bores {
        if bore.u > 400.0 {
            bore.u -= 2.0;
        }
    }
    let found = the_only(&job);
    assert_eq!(found.severity, Severity::Caution, "{}", found.message);
    let mut after = job.clone();
    apply(&mut after, found.remedies[0].edit.clone()).unwrap();
    for offset in &the_door(&inspect(&after).boxes[0], 0).offsets {
        assert_close(offset.across.abs(), 1.0);
        assert_close(offset.up, 0.0);
    }
}

#[test]
fn a_stale_sheet_says_which_bores_moved_and_an_undo_makes_it_good_again() {
    let before = recorded(
        job(wall_box(), three_sizes()),
        Part::RightSide,
        SheetExported,
    );
    let mut after = with_size(before.clone(), "2");
    let found = the_only(&after);
    assert_eq!(
        (found.check, found.severity),
        ("stale-sheet", Severity::Caution)
    );
    assert_eq!(found.remedies, []);
    assert_close(number(&found, "largest_move_of_a_bore"), 13.0);
    assert_close(number(&found, "bores_moved"), 1.0);
    assert_eq!(
        found.message,
        "stale-sheet.out-of-date: first (panel-differs.moved: bores 1, furthest 2, way [(step.down: by 13 mm)]), largest_move_of_a_bore 13 mm, bores_moved 1"
    );
    after = recorded(after, Part::RightSide, SheetExported);
    assert_eq!(inspect(&after).findings, []);
}

#[test]
fn a_sheet_is_stale_from_just_past_half_of_what_it_is_printed_to() {
    for (by, expected) in [(0.04, 0), (0.06, 1), (-0.04, 0), (-0.06, 1)] {
        let mut job = recorded(job(wall_box(), card()), Part::LeftSide, SheetExported);
        job.boxes[0].records[0].bores[1].v += by;
        assert_eq!(inspect(&job).findings.len(), expected, "{by}");
    }
}

#[test]
fn a_door_that_was_exported_is_stale_when_its_reveal_changes() {
    // The door is lower by 2, and seen from its own top edge every bore lies 2 higher.
    let before = recorded(job(wall_box(), card()), LEAF, SheetExported);
    let found = the_only(&with_reveal(before, Edge::Top, 5.0));
    assert_eq!(found.check, "stale-sheet");
    assert_eq!(
        found.message,
        "stale-sheet.out-of-date: first (panel-differs.size: what height, was 594 mm, is 592 mm), largest_move_of_a_bore 2 mm, bores_moved 4"
    );
    assert_eq!(
        found.message,
        "stale-sheet.out-of-date: first (panel-differs.size: what height, was 594 mm, is 592 mm), largest_move_of_a_bore 2 mm, bores_moved 4"
    );
}

#[test]
fn a_drilled_panel_that_the_box_has_no_longer_is_a_caution() {
    let mut it = wall_box();
    split(&mut it, fixed_shelf(300.0, 18.0, 3.0), None);
    let mut job = recorded(job(it, card()), Part::Shelf(SHELF), Drilled);
    unsplit(&mut job.boxes[0]);
    let found = the_only(&job);
    assert_eq!(
        (found.check, found.severity),
        ("drilled-panel-differs", Severity::Caution)
    );
}

#[test]
fn moves_are_told_in_the_words_of_each_face() {
    // A drilled bore that lies 3 nearer u = 0 and 4 further along v than needed has to go 3 along u
    // and 4 against v. On a side u runs back and v down; under a top u runs to box-right and v back;
    // on the back of a door u runs to box-left and v down.
    for (part, expected) in [
        (Part::LeftSide, "[(step.back: by 3 mm); (step.up: by 4 mm)]"),
        (
            Part::Top,
            "[(step.right: by 3 mm); (step.forward: by 4 mm)]",
        ),
        (LEAF, "[(step.left: by 3 mm); (step.up: by 4 mm)]"),
    ] {
        let mut job = recorded(job(wall_box(), with_hinges(card())), part, Drilled);
        let bore = &mut job.boxes[0].records[0].bores[0];
        bore.u -= 3.0;
        bore.v += 4.0;
        let found = the_only(&job);
        assert!(found.message.contains(expected), "{}", found.message);
        // 3, 4, 5.
        assert_close(number(&found, "largest_move_of_a_bore"), 5.0);
    }
}

#[test]
fn a_drilled_row_that_is_off_by_one_pitch_is_off_as_a_whole() {
    let mut it = wall_box();
    it.system_rows = Some(flapwright_model::cabinet::SystemRows {
        front: 70.0,
        rear: 70.0,
        first: 50.0,
        last: 50.0,
        diameter: 5.0,
        depth: 12.0,
    });
    let mut job = recorded(job(it, card()), Part::LeftSide, Drilled);
    for bore in &mut job.boxes[0].records[0].bores {
        if bore.drill.purpose == "shelf pin" {
            bore.v += 32.0;
        }
    }
    // 50 to 550 in steps of 32: 16 bores in each of two rows.
    let found = the_only(&job);
    assert_eq!(
        found.message,
        "drilled-panel-differs.differs: first (panel-differs.moved: bores 32, furthest 3, way [(step.up: by 32 mm)]), largest_move_of_a_bore 32 mm"
    );
}

proptest! {
    #[test]
    fn a_drilled_box_keeps_its_bores_and_raises_nothing(
        width in 400.0..1500.0_f64,
        thickness in 15.0..25.0_f64,
        reveal in 0.0..6.0_f64,
    ) {
        let mut it = wall_box();
        it.width = width;
        it.left = panel(thickness);
        it.top = across(thickness);
        it.body.door = Some(door(flapwright_model::edges::Edges::all(reveal)));
        let before = job(it, with_hinges(card()));
        let inspection = inspect(&before);
        let parts = [Part::LeftSide, Part::RightSide, Part::Top, LEAF].map(id);
        let mut after = before.clone();
        let edit = record(&after, &inspection, &parts, Drilled);
        apply(&mut after, edit).expect("a record is sound");
        let now = inspect(&after);
        prop_assert!(!now.findings.iter().any(|it| it.check == "drilled-panel-differs"));
        for (was, is) in inspection.boxes[0].panels.iter().zip(&now.boxes[0].panels) {
            prop_assert_eq!(was.bores.len(), is.bores.len());
            for (a, b) in was.bores.iter().zip(&is.bores) {
                prop_assert!((a.in_box - b.in_box).length() < 1e-9);
            }
        }
    }
}
