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
use flapwright_rules::finding::{Severity, Worse};
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
pub(crate) fn difference(job: &Job) -> Told {
    the_only(job, NAME)
}

#[track_caller]
pub(crate) fn differs(job: &Job, how: &str) {
    says(&difference(job), &format!("panel-differs.{how}"));
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
        "drilled-panel-differs.differs: first (panel-differs.moved: bores 1, furthest 2, way [(step.back: by 6 mm); (step.up: by 2.5 mm)]), largest_move_of_a_bore 6.5 mm"
    );
    assert_eq!(
        it.reasons,
        [
            "panel-differs.redrill: bore 2, purpose \"body screw\", way [(step.back: by 6 mm); (step.up: by 2.5 mm)], was (bore-place.blind: diameter 5 mm, depth 12 mm, u 131 mm, v 84.5 mm), is (bore-place.blind: diameter 5 mm, depth 12 mm, u 137 mm, v 82 mm)"
        ]
    );
    // 6 and 2.5: 6.5.
    assert_numbers(
        &it,
        &[("largest_move_of_a_bore", 6.5, "mm", Worse::Greater)],
    );
    assert_eq!(it.subjects, [Subject::Part(id(Part::LeftSide))]);
    let plug = it.remedies.last().expect("it can always be drilled again");
    assert_eq!(plug.kind, "remedy.plug-and-redrill");
    assert_eq!(
        plug.effects,
        "effect.plug: bores 1; effect.drill: bores 1; effect.not-drilled"
    );
    assert!(!plug.safe);
}

#[test]
fn the_other_way_has_the_other_words() {
    for (part, expected) in [
        (
            Part::LeftSide,
            "moved: bores 1, furthest 1, way [(step.forward: by 3 mm); (step.down: by 4 mm)]",
        ),
        (
            Part::Top,
            "moved: bores 1, furthest 1, way [(step.left: by 3 mm); (step.back: by 4 mm)]",
        ),
        (
            LEAF,
            "moved: bores 1, furthest 1, way [(step.right: by 3 mm); (step.down: by 4 mm)]",
        ),
    ] {
        let mut job = recorded(job(wall_box(), with_hinges(card())), &[part], Drilled);
        bores(&mut job)[0].u += 3.0;
        bores(&mut job)[0].v -= 4.0;
        differs(&job, expected);
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
        it.reasons,
        [
            "panel-differs.plug: bore 1, purpose \"body screw\", was (bore-place.through: diameter 5 mm, u 41 mm, v 300 mm)"
        ]
    );
    assert_eq!(
        it.remedies[0].effects,
        "effect.plug: bores 1; effect.not-drilled"
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
    assert_eq!(
        it.message,
        "drilled-panel-differs.differs: first (panel-differs.moved: bores 1, furthest 2, way [(step.forward: by 1 mm)]), largest_move_of_a_bore 1 mm"
    );
    assert_eq!(
        it.remedies[0].effects,
        "effect.plug: bores 2; effect.drill: bores 2; effect.not-drilled"
    );
    bores(&mut job).clear();
    let it = difference(&job);
    assert_eq!(
        it.message,
        "drilled-panel-differs.differs: first (panel-differs.missing: bores 2), largest_move_of_a_bore 0 mm"
    );
    assert_eq!(
        it.remedies[0].effects,
        "effect.drill: bores 2; effect.not-drilled"
    );
    assert_numbers(
        &it,
        &[("largest_move_of_a_bore", 0.0, "mm", Worse::Greater)],
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
    differs(
        &job,
        "deeper: bores 1, furthest 1, way [(step.depth: is 12 mm, was 18 mm)]",
    );
    // Through is through, whatever the thickness.
    let mut card = card();
    card.side_bores[0].drill.depth = Depth::Through;
    let mut through = recorded(self::job(wall_box(), card), &[Part::LeftSide], Drilled);
    through.boxes[0].records[0].thickness = 16.0;
    differs(&through, "size: what thickness, was 16 mm, is 18 mm");
    // 12 deep and through 18 is 6 more.
    bores(&mut through)[0].drill.depth = Depth::Blind(12.0);
    through.boxes[0].records[0].thickness = 18.0;
    differs(
        &through,
        "deeper: bores 1, furthest 1, way [(step.depth: is 18 mm, was 12 mm)]",
    );
    // Both at once are told as another place.
    bores(&mut through)[0].u += 2.0;
    differs(
        &through,
        "moved: bores 1, furthest 1, way [(step.forward: by 2 mm); (step.depth: is 18 mm, was 12 mm)]",
    );
}

#[test]
fn a_door_s_bore_that_is_not_deep_enough_is_a_stop_for_no_adjustment_deepens_it() {
    let mut job = plain(LEAF);
    bores(&mut job)[0].drill.depth = Depth::Blind(10.0);
    let it = difference(&job);
    assert_eq!(it.severity, Severity::Stop);
    assert_eq!(
        it.message,
        "drilled-panel-differs.differs: first (panel-differs.deeper: bores 1, furthest 1, way [(step.depth: is 12 mm, was 10 mm)]), largest_move_of_a_bore 0 mm"
    );
    // No reveal deepens it either.
    let titles: Vec<&str> = it.remedies.iter().map(|it| it.kind.as_str()).collect();
    assert_eq!(titles, ["remedy.plug-and-redrill"]);
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
            let how = format!(
                "panel-differs.size: what {word}, was {} mm, is {now} mm",
                now + 5.0
            );
            assert!(it.message.contains(&how), "{part:?}: {}", it.message);
            assert_numbers(
                &it,
                &[
                    ("largest_move_of_a_bore", 0.0, "mm", Worse::Greater),
                    (&format!("{word}_drilled"), now + 5.0, "mm", Worse::Either),
                    (&format!("{word}_needed"), now, "mm", Worse::Either),
                ],
            );
            let plug = it.remedies.last().expect("a remedy");
            assert_eq!(plug.effects, "effect.cut-again; effect.not-drilled");
        }
    }
}

#[test]
fn the_furthest_of_several_bores_is_told_and_the_first_of_those_alike() {
    let mut job = plain(Part::LeftSide);
    bores(&mut job)[0].v += 1.0;
    bores(&mut job)[1].v += 2.0;
    differs(&job, "moved: bores 2, furthest 2, way [(step.up: by 2 mm)]");
    bores(&mut job)[1].v -= 1.0;
    differs(&job, "moved: bores 2, furthest 1, way [(step.up: by 1 mm)]");
}

#[test]
fn a_group_that_is_off_by_a_pitch_along_either_way_is_off_as_a_whole() {
    // 96 from one side bore to the other: the first stands where the second should be.
    let mut job = plain(Part::LeftSide);
    for bore in bores(&mut job) {
        bore.u += 96.0;
    }
    differs(
        &job,
        "moved: bores 2, furthest 1, way [(step.forward: by 96 mm)]",
    );
    // 32 from one door bore to the next.
    let mut job = plain(LEAF);
    for bore in bores(&mut job) {
        bore.v += 32.0;
    }
    differs(
        &job,
        "moved: bores 4, furthest 1, way [(step.up: by 32 mm)]",
    );
}

#[test]
fn where_the_counts_differ_each_bore_stands_for_the_nearest() {
    let mut job = plain(Part::LeftSide);
    bores(&mut job).remove(0);
    bores(&mut job)[0].u += 5.0;
    let it = difference(&job);
    assert_eq!(
        it.message,
        "drilled-panel-differs.differs: first (panel-differs.moved: bores 1, furthest 1, way [(step.forward: by 5 mm)]), largest_move_of_a_bore 5 mm"
    );
    assert_eq!(
        it.reasons[2],
        "panel-differs.drill: purpose \"body screw\", is (bore-place.blind: diameter 5 mm, depth 12 mm, \
         u 41 mm, v 82 mm)"
    );
    // The same along v, in a column of the door's bores.
    let mut job = plain(LEAF);
    bores(&mut job).retain(|bore| (bore.v - 105.0).abs() > 1.0);
    for bore in bores(&mut job) {
        bore.v += 5.0;
    }
    differs(&job, "moved: bores 2, furthest 1, way [(step.up: by 5 mm)]");
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
        "stale-sheet.out-of-date: first (panel-differs.moved: bores 1, furthest 1, way [(step.forward: by 2 mm)]), largest_move_of_a_bore 2 mm, bores_moved 1"
    );
    assert_eq!(
        it.reasons,
        [
            "stale-sheet.revision: revision \"B\"",
            "panel-differs.sheet-moved: bore 1, purpose \"body screw\", way [(step.forward: by 2 mm)], \
             was (bore-place.blind: diameter 5 mm, depth 12 mm, u 43 mm, v 82 mm), \
             is (bore-place.blind: diameter 5 mm, depth 12 mm, u 41 mm, v 82 mm)",
            "stale-sheet.export-again"
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
    assert_eq!(it.message, "drilled-panel-differs.gone: bores 1");
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
    differs(
        &job,
        "moved: bores 1, furthest 3, way [(step.forward: by 1 mm)]",
    );
}
