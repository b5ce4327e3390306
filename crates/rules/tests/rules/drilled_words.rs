//! What is said of panels that were drilled or exported and are not what is needed now, which bore
//! stands for which, and what can be done. The test card's side bores are 64 below the underside of
//! an 18 mm top, so at v 82, and 41 and 137 back; on the door's back its bores are 29 in and 105 and
//! 137 down.

use crate::common::*;
use crate::findings::*;
use flapwright_model::cabinet::SystemRows;
use flapwright_model::card::Depth;
use flapwright_model::edit::apply;
use flapwright_model::job::Job;
use flapwright_model::part::{LeafId, Part, PartId, Subject};
use flapwright_model::record::RecordState::{self, Drilled, SheetExported};
use flapwright_model::record::RecordedBore;
use flapwright_rules::finding::{Finding, Severity, Worse};
use flapwright_rules::records::record;

pub(crate) const NAME: &str = "drilled-panel-differs";

/// A leaf of the door of a test's box.
pub(crate) const fn leaf_of(leaf: LeafId) -> Part {
    Part::Leaf { door: DOOR, leaf }
}

pub(crate) const fn id(part: Part) -> PartId {
    part_id(part)
}

pub(crate) fn recorded(mut job: Job, parts: &[Part], state: RecordState) -> Job {
    let ids: Vec<PartId> = parts.iter().map(|part| id(*part)).collect();
    let edit = record(&job, &inspect(&job), &ids, state);
    apply(&mut job, edit).expect("a record is sound");
    job
}

pub(crate) fn plain(part: Part) -> Job {
    recorded(job(wall_box(), card()), &[part], Drilled)
}

pub(crate) fn bores(job: &mut Job) -> &mut Vec<RecordedBore> {
    &mut job.boxes[0].records[0].bores
}

#[track_caller]
pub(crate) fn difference(job: &Job) -> Finding {
    the_only(job, NAME)
}

#[track_caller]
pub(crate) fn ends(job: &Job, end: &str) {
    let it = difference(job);
    assert!(it.message.ends_with(end), "{}", it.message);
}

#[test]
fn a_bore_that_is_needed_elsewhere_is_plugged_and_drilled_by_its_line() {
    let mut job = plain(Part::LeftSide);
    bores(&mut job)[1].u -= 6.0;
    bores(&mut job)[1].v += 2.5;
    let it = difference(&job);
    assert_eq!(it.severity, Severity::Stop);
    assert_eq!(
        it.message,
        "\"test box\", left side is drilled and is not what is needed now: 1 bore is needed \
         elsewhere, bore 2 6 mm back and 2.5 mm up"
    );
    assert_eq!(
        it.details,
        [
            "bore 2 (body screw): needed 6 mm back and 2.5 mm up; plug 5 mm 12 mm deep at u 131 mm, \
             v 84.5 mm, drill 5 mm 12 mm deep at u 137 mm, v 82 mm"
        ]
    );
    // 6 and 2.5: 6.5.
    assert_numbers(
        &it,
        &[("largest move of a bore", 6.5, "mm", Worse::Greater)],
    );
    assert_eq!(it.subjects, [Subject::Part(id(Part::LeftSide))]);
    let plug = it.remedies.last().expect("it can always be drilled again");
    assert_eq!(plug.title, "Plug and drill again");
    assert_eq!(
        plug.effect,
        "plug 1 bore and drill 1 bore after the list; then the panel counts as not drilled"
    );
    assert!(!plug.safe);
}

#[test]
fn the_other_way_has_the_other_words() {
    for (part, expected) in [
        (Part::LeftSide, "bore 1 3 mm forward and 4 mm down"),
        (Part::Top, "bore 1 3 mm to the left and 4 mm back"),
        (LEAF, "bore 1 3 mm to the right and 4 mm down"),
    ] {
        let mut job = recorded(job(wall_box(), with_hinges(card())), &[part], Drilled);
        bores(&mut job)[0].u += 3.0;
        bores(&mut job)[0].v -= 4.0;
        ends(&job, expected);
    }
}

#[test]
fn a_bore_that_is_needed_no_more_is_plugged_by_its_line() {
    let mut job = plain(Part::LeftSide);
    let mut extra = bores(&mut job)[0].clone();
    extra.v = 300.0;
    extra.drill.depth = Depth::Through;
    bores(&mut job).insert(0, extra);
    let it = difference(&job);
    assert_eq!(it.severity, Severity::Caution);
    assert_eq!(
        it.details,
        ["bore 1 (body screw): needed no more; plug 5 mm through at u 41 mm, v 300 mm"]
    );
    assert_eq!(
        it.remedies[0].effect,
        "plug 1 bore after the list; then the panel counts as not drilled"
    );
}

#[test]
fn what_is_missing_what_moved_and_what_is_too_many_are_told_together() {
    let mut job = plain(Part::LeftSide);
    // Of another diameter: another drill, so that one is missing and one is too many.
    bores(&mut job)[0].drill.diameter = 5.4;
    bores(&mut job)[1].u += 1.0;
    let it = difference(&job);
    assert_eq!(it.severity, Severity::Stop);
    assert!(
        it.message.ends_with(
            "1 bore is needed elsewhere, bore 2 1 mm forward; 1 bore is missing; 1 bore is needed no \
             more"
        ),
        "{}",
        it.message
    );
    assert_eq!(
        it.remedies[0].effect,
        "plug 2 bores and drill 2 bores after the list; then the panel counts as not drilled"
    );
    bores(&mut job).clear();
    let it = difference(&job);
    assert!(
        it.message.ends_with("needed now: 2 bores are missing"),
        "{}",
        it.message
    );
    assert_eq!(
        it.remedies[0].effect,
        "drill 2 bores after the list; then the panel counts as not drilled"
    );
    assert_numbers(
        &it,
        &[("largest move of a bore", 0.0, "mm", Worse::Greater)],
    );
}

#[test]
fn bores_are_alike_to_a_hundredth_of_their_diameter_and_by_purpose_and_pass() {
    let with = |change: fn(&mut RecordedBore)| {
        let mut job = plain(Part::LeftSide);
        change(&mut bores(&mut job)[0]);
        found(&job, NAME).len()
    };
    assert_eq!(with(|bore| bore.drill.diameter = 5.004), 0);
    assert_eq!(with(|bore| bore.drill.diameter = 5.01), 1);
    assert_eq!(with(|bore| bore.drill.purpose = "pin".to_owned()), 1);
    assert_eq!(with(|bore| bore.drill.pass = 2), 1);
}

#[test]
fn what_the_setting_lets_pass_is_passed_up_to_that_very_figure() {
    let with = |change: fn(&mut Job)| {
        let mut job = plain(Part::LeftSide);
        job.settings.off_fitting_ignored = 0.5;
        change(&mut job);
        found(&job, NAME).len()
    };
    assert_eq!(with(|job| bores(job)[0].u = 41.5), 0);
    assert_eq!(with(|job| bores(job)[0].u = 41.75), 1);
    assert_eq!(
        with(|job| bores(job)[0].drill.depth = Depth::Blind(12.5)),
        0
    );
    assert_eq!(
        with(|job| bores(job)[0].drill.depth = Depth::Blind(12.75)),
        1
    );
    assert_eq!(with(|job| job.boxes[0].records[0].size[0] = 322.5), 0);
    assert_eq!(with(|job| job.boxes[0].records[0].size[0] = 322.75), 1);
    assert_eq!(with(|job| job.boxes[0].records[0].thickness = 17.5), 0);
}

#[test]
fn a_through_bore_is_as_deep_as_its_panel() {
    // Needed 12 deep, drilled through 18.
    let mut job = plain(Part::LeftSide);
    bores(&mut job)[0].drill.depth = Depth::Through;
    ends(
        &job,
        "1 bore is needed at another depth, bore 1 12 mm deep, not 18 mm",
    );
    // Through is through, whatever the thickness.
    let mut card = card();
    card.side_bores[0].drill.depth = Depth::Through;
    let mut through = recorded(self::job(wall_box(), card), &[Part::LeftSide], Drilled);
    through.boxes[0].records[0].thickness = 16.0;
    ends(
        &through,
        "needed now: its thickness is 16 mm, 18 mm is needed",
    );
    // 12 deep and through 18 is 6 more.
    bores(&mut through)[0].drill.depth = Depth::Blind(12.0);
    through.boxes[0].records[0].thickness = 18.0;
    ends(&through, "at another depth, bore 1 18 mm deep, not 12 mm");
    // Both at once are told as another place.
    bores(&mut through)[0].u += 2.0;
    ends(
        &through,
        "1 bore is needed elsewhere, bore 1 2 mm forward and 18 mm deep, not 12 mm",
    );
}

#[test]
fn a_door_s_bore_that_is_not_deep_enough_is_a_stop_for_no_adjustment_deepens_it() {
    let mut job = plain(LEAF);
    bores(&mut job)[0].drill.depth = Depth::Blind(10.0);
    let it = difference(&job);
    assert_eq!(it.severity, Severity::Stop);
    assert!(
        it.message.ends_with("bore 1 12 mm deep, not 10 mm"),
        "{}",
        it.message
    );
    // No reveal deepens it either.
    let titles: Vec<&str> = it.remedies.iter().map(|it| it.title.as_str()).collect();
    assert_eq!(titles, ["Plug and drill again"]);
}

#[test]
fn each_measure_of_a_panel_has_the_name_that_it_has_on_its_sheet() {
    for (part, words) in [
        (Part::LeftSide, ["depth", "height"]),
        (Part::Top, ["width", "depth"]),
        (Part::Bottom, ["width", "depth"]),
        (Part::Back, ["width", "height"]),
        (LEAF, ["width", "height"]),
    ] {
        for (axis, word) in words.into_iter().enumerate() {
            let mut job = plain(part);
            let now = job.boxes[0].records[0].size[axis];
            job.boxes[0].records[0].size[axis] = now + 5.0;
            let it = difference(&job);
            assert_eq!(it.severity, Severity::Stop);
            let end = format!("its {word} is {} mm, {now} mm is needed", now + 5.0);
            assert!(it.message.ends_with(&end), "{part:?}: {}", it.message);
            assert_numbers(
                &it,
                &[
                    ("largest move of a bore", 0.0, "mm", Worse::Greater),
                    (&format!("{word}, drilled"), now + 5.0, "mm", Worse::Either),
                    (&format!("{word}, needed"), now, "mm", Worse::Either),
                ],
            );
            let plug = it.remedies.last().expect("a remedy");
            assert_eq!(
                plug.effect,
                "cut the panel again, or make it anew; then the panel counts as not drilled"
            );
        }
    }
}

#[test]
fn the_furthest_of_several_bores_is_told_and_the_first_of_those_alike() {
    let mut job = plain(Part::LeftSide);
    bores(&mut job)[0].v += 1.0;
    bores(&mut job)[1].v += 2.0;
    ends(&job, "2 bores are needed elsewhere, bore 2 2 mm up");
    bores(&mut job)[1].v -= 1.0;
    ends(&job, "2 bores are needed elsewhere, bore 1 1 mm up");
}

#[test]
fn a_group_that_is_off_by_a_pitch_along_either_way_is_off_as_a_whole() {
    // 96 from one side bore to the other: the first stands where the second should be.
    let mut job = plain(Part::LeftSide);
    for bore in bores(&mut job) {
        bore.u += 96.0;
    }
    ends(&job, "2 bores are needed elsewhere, bore 1 96 mm forward");
    // 32 from one door bore to the next.
    let mut job = plain(LEAF);
    for bore in bores(&mut job) {
        bore.v += 32.0;
    }
    ends(&job, "4 bores are needed elsewhere, bore 1 32 mm up");
}

#[test]
fn where_the_counts_differ_each_bore_stands_for_the_nearest() {
    let mut job = plain(Part::LeftSide);
    bores(&mut job).remove(0);
    bores(&mut job)[0].u += 5.0;
    let it = difference(&job);
    assert!(
        it.message
            .ends_with("1 bore is needed elsewhere, bore 1 5 mm forward; 1 bore is missing"),
        "{}",
        it.message
    );
    assert!(
        it.details[1].ends_with("drill 5 mm 12 mm deep at u 41 mm, v 82 mm"),
        "{:?}",
        it.details
    );
    // The same along v, in a column of the door's bores.
    let mut job = plain(LEAF);
    bores(&mut job).retain(|bore| (bore.v - 105.0).abs() > 1.0);
    for bore in bores(&mut job) {
        bore.v += 5.0;
    }
    ends(
        &job,
        "2 bores are needed elsewhere, bore 1 5 mm up; 2 bores are missing",
    );
}

#[test]
fn a_stale_sheet_compares_what_it_says_with_what_it_is_now() {
    let mut before = job(wall_box(), card());
    before.title_block.revision = "B".to_owned();
    let mut job = recorded(before, &[Part::LeftSide], SheetExported);
    assert_eq!(job.boxes[0].records[0].revision, "B");
    bores(&mut job)[0].u += 2.0;
    let mut all = found(&job, "stale-sheet");
    assert_eq!(all.len(), 1);
    let it = all.remove(0);
    assert_eq!(
        it.message,
        "\"test box\", left side: its sheet was exported at revision B and is out of date: 1 bore \
         is needed elsewhere, bore 1 2 mm forward; export it again"
    );
    assert_eq!(
        it.details,
        [
            "bore 1 (body screw): needed 2 mm forward; the sheet says 5 mm 12 mm deep at u 43 mm, v \
             82 mm, now it is 5 mm 12 mm deep at u 41 mm, v 82 mm"
        ]
    );
}

#[test]
fn a_panel_that_is_gone_says_how_many_bores_went_with_it() {
    let mut it = wall_box();
    split(&mut it, fixed_shelf(300.0, 18.0, 3.0), None);
    let mut job = recorded(job(it, card()), &[Part::Shelf(SHELF)], Drilled);
    job.boxes[0].records[0].bores = vec![RecordedBore {
        u: 50.0,
        v: 50.0,
        drill: side_bore(64.0, 41.0).drill,
    }];
    unsplit(&mut job.boxes[0]);
    let it = difference(&job);
    assert_eq!(
        it.message,
        "\"test box\": a panel with 1 bore is marked as drilled and the box has it no longer"
    );
    assert_eq!(it.severity, Severity::Caution);
    assert_eq!(it.subjects, [Subject::Box(FIRST_BOX)]);
}

#[test]
fn rows_beside_a_fitting_are_told_by_their_own_numbers() {
    // The fitting's two bores come first, so the first of the rows is bore 3.
    let mut it = wall_box();
    it.system_rows = Some(SystemRows {
        front: 70.0,
        rear: 70.0,
        first: 50.0,
        last: 50.0,
        diameter: 5.0,
        depth: 12.0,
    });
    let mut job = recorded(job(it, card()), &[Part::LeftSide], Drilled);
    bores(&mut job)[2].u += 1.0;
    ends(&job, "1 bore is needed elsewhere, bore 3 1 mm forward");
}
