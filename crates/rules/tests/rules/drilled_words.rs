//! What is said of panels that were drilled or exported and are not what is needed now, which bore
//! stands for which, and what can be done. The test card's side bores are 64 below the underside of
//! an 18 mm top, so at v 82, and 41 and 137 back; on the door's back its bores are 29 in and 105 and
//! 137 down.

use crate::common::*;
use crate::findings::*;
use flapwright_model::cabinet::{Opening, SystemRows};
use flapwright_model::card::{Card, Depth, PerSize};
use flapwright_model::door::{DoorFit, HangOn, Leaves};
use flapwright_model::edges::{Edge, Edges};
use flapwright_model::edit::{Edit, apply};
use flapwright_model::job::Job;
use flapwright_model::part::{LeafId, Part, PartId, Subject};
use flapwright_model::record::RecordState::{self, Drilled, SheetExported};
use flapwright_model::record::RecordedBore;
use flapwright_rules::finding::{Finding, Remedy, Severity, Worse};
use flapwright_rules::records::{as_needed, forget, is_drilled, record};

const NAME: &str = "drilled-panel-differs";

const fn leaf_of(opening: usize, leaf: LeafId) -> Part {
    Part::Leaf { opening, leaf }
}

const LEAF: Part = leaf_of(0, LeafId::Only);

const fn id(part: Part) -> PartId {
    PartId { box_index: 0, part }
}

fn recorded(mut job: Job, parts: &[Part], state: RecordState) -> Job {
    let ids: Vec<PartId> = parts.iter().map(|part| id(*part)).collect();
    let edit = record(&job, &inspect(&job), &ids, state);
    apply(&mut job, edit).expect("a record is sound");
    job
}

fn plain(part: Part) -> Job {
    recorded(job(wall_box(), card()), &[part], Drilled)
}

fn bores(job: &mut Job) -> &mut Vec<RecordedBore> {
    &mut job.boxes[0].records[0].bores
}

#[track_caller]
fn the_only(job: &Job) -> Finding {
    let mut all = found(job, NAME);
    assert_eq!(all.len(), 1, "{all:#?}");
    all.remove(0)
}

#[track_caller]
fn says(job: &Job, end: &str) {
    let it = the_only(job);
    assert!(it.message.ends_with(end), "{}", it.message);
}

#[test]
fn a_bore_that_is_needed_elsewhere_is_plugged_and_drilled_by_its_line() {
    let mut job = plain(Part::LeftSide);
    bores(&mut job)[1].u -= 6.0;
    bores(&mut job)[1].v += 2.5;
    let it = the_only(&job);
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
        says(&job, expected);
    }
}

#[test]
fn a_bore_that_is_needed_no_more_is_plugged_by_its_line() {
    let mut job = plain(Part::LeftSide);
    let mut extra = bores(&mut job)[0].clone();
    extra.v = 300.0;
    extra.drill.depth = Depth::Through;
    bores(&mut job).insert(0, extra);
    let it = the_only(&job);
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
    let it = the_only(&job);
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
    let it = the_only(&job);
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
    says(
        &job,
        "1 bore is needed at another depth, bore 1 12 mm deep, not 18 mm",
    );
    // Through is through, whatever the thickness.
    let mut card = card();
    card.side_bores[0].drill.depth = Depth::Through;
    let mut through = recorded(self::job(wall_box(), card), &[Part::LeftSide], Drilled);
    through.boxes[0].records[0].thickness = 16.0;
    says(
        &through,
        "needed now: its thickness is 16 mm, 18 mm is needed",
    );
    // 12 deep and through 18 is 6 more.
    bores(&mut through)[0].drill.depth = Depth::Blind(12.0);
    through.boxes[0].records[0].thickness = 18.0;
    says(&through, "at another depth, bore 1 18 mm deep, not 12 mm");
    // Both at once are told as another place.
    bores(&mut through)[0].u += 2.0;
    says(
        &through,
        "1 bore is needed elsewhere, bore 1 2 mm forward and 18 mm deep, not 12 mm",
    );
}

#[test]
fn a_door_s_bore_that_is_not_deep_enough_is_a_stop_for_no_adjustment_deepens_it() {
    let mut job = plain(LEAF);
    bores(&mut job)[0].drill.depth = Depth::Blind(10.0);
    let it = the_only(&job);
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
            let it = the_only(&job);
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
    says(&job, "2 bores are needed elsewhere, bore 2 2 mm up");
    bores(&mut job)[1].v -= 1.0;
    says(&job, "2 bores are needed elsewhere, bore 1 1 mm up");
}

#[test]
fn a_group_that_is_off_by_a_pitch_along_either_way_is_off_as_a_whole() {
    // 96 from one side bore to the other: the first stands where the second should be.
    let mut job = plain(Part::LeftSide);
    for bore in bores(&mut job) {
        bore.u += 96.0;
    }
    says(&job, "2 bores are needed elsewhere, bore 1 96 mm forward");
    // 32 from one door bore to the next.
    let mut job = plain(LEAF);
    for bore in bores(&mut job) {
        bore.v += 32.0;
    }
    says(&job, "4 bores are needed elsewhere, bore 1 32 mm up");
}

#[test]
fn where_the_counts_differ_each_bore_stands_for_the_nearest() {
    let mut job = plain(Part::LeftSide);
    bores(&mut job).remove(0);
    bores(&mut job)[0].u += 5.0;
    let it = the_only(&job);
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
    says(
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
    it.shelves.push(fixed_shelf(300.0, 18.0, 3.0));
    it.openings.push(Opening { door: None });
    let mut job = recorded(job(it, card()), &[Part::Shelf(0)], Drilled);
    job.boxes[0].records[0].bores = vec![RecordedBore {
        u: 50.0,
        v: 50.0,
        drill: side_bore(64.0, 41.0).drill,
    }];
    job.boxes[0].shelves.clear();
    job.boxes[0].openings.pop();
    let it = the_only(&job);
    assert_eq!(
        it.message,
        "\"test box\": a panel with 1 bore is marked as drilled and the box has it no longer"
    );
    assert_eq!(it.severity, Severity::Caution);
    assert_eq!(it.subjects, [Subject::Box(0)]);
}

/// Sizes 1 to 6: the second side bore of 2 lies 13 lower, the others are alike.
fn six_sizes() -> Card {
    let mut card = card();
    for name in ["2", "3", "4", "5", "6"] {
        let mut size = card.sizes[0].clone();
        size.name = name.to_owned();
        card.sizes.push(size);
    }
    card.side_bores[1].down.by = PerSize::BySize(
        ["1", "2", "3", "4", "5", "6"]
            .map(|name| (name.to_owned(), if name == "2" { 77.0 } else { 64.0 }))
            .into(),
    );
    card
}

fn with_size(mut job: Job, opening: usize, size: &str) -> Job {
    let fitting = the_job_door(&mut job, opening).fitting.as_mut();
    fitting.expect("a fitting").size = size.to_owned();
    job
}

fn titles(finding: &Finding) -> Vec<&str> {
    finding
        .remedies
        .iter()
        .map(|it| it.title.as_str())
        .collect()
}

#[test]
fn three_sizes_whose_bores_agree_are_offered_and_said_to_agree() {
    let drilled = recorded(
        job(wall_box(), six_sizes()),
        &[Part::LeftSide, Part::RightSide],
        Drilled,
    );
    let it = found(&with_size(drilled.clone(), 0, "2"), NAME).remove(0);
    assert_eq!(
        titles(&it),
        [
            "Take Plover, size 1",
            "Take Plover, size 3",
            "Take Plover, size 4",
            "Plug and drill again"
        ]
    );
    assert_eq!(
        it.remedies[0].effect,
        "from Plover, size 2; its 2 bores agree with the drilled panel; every drilled panel of the \
         box agrees with it; the sizes tab says what it carries"
    );
    assert!(!it.remedies[0].safe, "it may have to be bought");
    // A panel that agrees with no size is counted beside.
    let mut odd = drilled;
    odd.boxes[0].records[1].bores[0].u += 1.0;
    let it = found(&with_size(odd.clone(), 0, "2"), NAME).remove(0);
    assert_eq!(it.subjects, [Subject::Part(id(Part::LeftSide))]);
    assert!(
        it.remedies[0]
            .effect
            .contains("; 1 other drilled panel still differs; "),
        "{}",
        it.remedies[0].effect
    );
    let mut two = recorded(odd, &[Part::Bottom], Drilled);
    let bottom = two.boxes[0].records.iter_mut();
    for record in bottom.filter(|it| it.part == Part::Bottom) {
        record.size[0] += 3.0;
    }
    let it = found(&with_size(two, 0, "2"), NAME).remove(0);
    assert!(
        it.remedies[0]
            .effect
            .contains("; 2 other drilled panels still differ; "),
        "{}",
        it.remedies[0].effect
    );
}

#[test]
fn sizes_of_other_cards_are_offered_where_the_door_opens_alike() {
    let mut card = six_sizes();
    card.sizes.truncate(2);
    card.side_bores[1].down.by =
        PerSize::BySize([("1".to_owned(), 64.0), ("2".to_owned(), 77.0)].into());
    let mut job = recorded(job(wall_box(), card), &[Part::LeftSide], Drilled);
    let mut same = self::card();
    same.name = "Dunlin".to_owned();
    let mut other = folding_card(4.0);
    other.name = "Godwit".to_owned();
    job.cards.extend([same, other]);
    assert_eq!(
        titles(&the_only(&with_size(job, 0, "2"))),
        [
            "Take Plover, size 1",
            "Take Dunlin, size 1",
            "Plug and drill again"
        ]
    );
}

#[test]
fn only_the_fitting_of_its_own_opening_is_changed_for_a_drilled_door() {
    // Door bores by size: those of 2 are 10 lower.
    let mut card = six_sizes();
    card.sizes.truncate(2);
    card.side_bores[1].down.by = PerSize::All(64.0);
    for bore in &mut card.door_bores[0].bores {
        let PerSize::All(down) = bore.down.by else {
            panic!("one figure for all sizes")
        };
        bore.down.by =
            PerSize::BySize([("1".to_owned(), down), ("2".to_owned(), down + 10.0)].into());
    }
    let mut wall_box = wall_box();
    wall_box.shelves.push(fixed_shelf(300.0, 18.0, 3.0));
    wall_box.openings.push(Opening {
        door: Some(door(Edges::all(3.0))),
    });
    let part = leaf_of(1, LeafId::Only);
    let drilled = recorded(job(wall_box, card), &[part], Drilled);
    assert_eq!(found(&with_size(drilled.clone(), 0, "2"), NAME), []);
    let off = with_size(drilled, 1, "2");
    let it = the_only(&off);
    assert_eq!(it.subjects, [Subject::Part(id(part))]);
    let take = it
        .remedies
        .iter()
        .filter(|it| it.title == "Take Plover, size 1");
    let edits: Vec<&Remedy> = take.collect();
    assert_eq!(edits.len(), 1, "{:?}", titles(&it));
    let mut after = off.clone();
    let undo = apply(&mut after, edits[0].edit.clone()).expect("a sound job");
    assert_eq!(found(&after, NAME), []);
    apply(&mut after, undo).expect("undone");
    assert_eq!(after, off);
}

fn with_reveal(mut job: Job, edge: Edge, to: f64) -> Job {
    if let DoorFit::Overlay { reveals } = &mut the_job_door(&mut job, 0).fit {
        *reveals.at_mut(edge) = to;
    }
    job
}

fn refit(job: &Job) -> Option<Remedy> {
    let all = found(job, NAME);
    let mut remedies = all.into_iter().flat_map(|it| it.remedies);
    remedies.find(|it| it.title == "Refit the opening to the drilled door")
}

#[test]
fn refitting_says_what_becomes_of_each_edge_that_moves() {
    // Panels of 18: reveals of 8 and 5 are overlays of 10 and 13, the door was drilled for 15.
    for (edge, to, said) in [
        (Edge::Left, 8.0, "left overlay 10 mm to 15 mm"),
        (Edge::Right, 8.0, "right overlay 10 mm to 15 mm"),
        (Edge::Top, 5.0, "top overlay 13 mm to 15 mm"),
        (Edge::Bottom, 5.0, "bottom overlay 13 mm to 15 mm"),
        (Edge::Bottom, 0.0, "bottom overlay 18 mm to 15 mm"),
    ] {
        let remedy = refit(&with_reveal(plain(LEAF), edge, to)).expect("it can be refitted");
        assert_eq!(
            remedy.effect,
            format!(
                "{said}; the door has its drilled size and its bores are off the fitting by 0 mm at \
                 most"
            )
        );
        assert!(remedy.safe);
    }
}

#[test]
fn refitting_counts_a_tweak_into_what_is_there() {
    // 15 and 4 outward: 19.
    let mut job = plain(LEAF);
    the_job_door(&mut job, 0).tweaks.left = 4.0;
    let remedy = refit(&job).expect("it can be refitted");
    assert!(
        remedy.effect.starts_with("left overlay 19 mm to 15 mm; "),
        "{}",
        remedy.effect
    );
    apply(&mut job, remedy.edit).expect("a sound job");
    assert_eq!(the_job_door(&mut job, 0).tweaks, Edges::all(0.0));
    assert_eq!(found(&job, NAME), []);
}

#[test]
fn refitting_an_inset_door_speaks_of_its_gaps() {
    let mut before = job(wall_box(), card());
    let inset = |job: &mut Job, left: f64| {
        the_job_door(job, 0).fit = DoorFit::Inset {
            gaps: Edges {
                left,
                ..Edges::all(2.0)
            },
            set_back: 0.0,
        };
    };
    inset(&mut before, 2.0);
    let mut job = recorded(before, &[LEAF], Drilled);
    inset(&mut job, 5.0);
    let remedy = refit(&job).expect("it can be refitted");
    assert!(
        remedy.effect.starts_with("left gap 5 mm to 2 mm; "),
        "{}",
        remedy.effect
    );
}

/// The left fitting's bores drilled so much further in, in the record and in the door.
fn left_bores_in(by: f64) -> Job {
    let mut job = plain(LEAF);
    let HangOn::AsDrilled(drilled) = &mut the_job_door(&mut job, 0).bores_hang_on else {
        panic!("drilled already")
    };
    for bore in drilled {
        if bore.from_side == flapwright_model::door::SideTie::Left {
            bore.across += by;
        }
    }
    for bore in bores(&mut job) {
        // u counts from the right edge.
        if bore.u > 400.0 {
            bore.u -= by;
        }
    }
    job
}

#[test]
fn what_refitting_leaves_for_the_adjustment_is_said() {
    let remedy = refit(&left_bores_in(2.0)).expect("it can be refitted");
    assert_eq!(
        remedy.effect,
        "left overlay 15 mm to 16 mm; right overlay 15 mm to 14 mm; the door has its drilled size \
         and its bores are off the fitting by 1 mm at most"
    );
}

#[test]
fn a_door_is_not_refitted_where_it_hangs_askew_however_it_sits() {
    // The card adjusts by 2 sideways: of 3.9 half is within that, of 4.1 not.
    assert!(refit(&left_bores_in(3.9)).is_some());
    assert!(refit(&left_bores_in(4.1)).is_none());
}

fn pair(card: Card) -> Job {
    let mut wall_box = wall_box();
    wall_box.openings[0].door.as_mut().expect("a door").leaves = Leaves::Two {
        upper: leaf(19.0),
        lower: leaf(19.0),
        joint_down: 275.0,
        joint_gap: 3.0,
    };
    job(wall_box, card)
}

#[test]
fn the_joint_of_a_folding_pair_stays_where_it_is_when_a_leaf_is_refitted() {
    let upper = recorded(
        pair(folding_card(4.0)),
        &[leaf_of(0, LeafId::Upper)],
        Drilled,
    );
    let remedy = refit(&with_reveal(upper, Edge::Top, 5.0)).expect("it can be refitted");
    assert!(
        remedy
            .effect
            .starts_with("top overlay 13 mm to 15 mm; the door"),
        "{}",
        remedy.effect
    );
    let mut card = folding_card(4.0);
    card.door_bores[0].leaf = LeafId::Lower;
    let lower = recorded(pair(card), &[leaf_of(0, LeafId::Lower)], Drilled);
    let remedy = refit(&with_reveal(lower, Edge::Bottom, 7.0)).expect("it can be refitted");
    assert!(
        remedy
            .effect
            .starts_with("bottom overlay 11 mm to 15 mm; the door"),
        "{}",
        remedy.effect
    );
}

#[test]
fn the_bores_of_a_pair_hang_as_drilled_until_its_last_leaf_is_forgotten() {
    let both = [leaf_of(0, LeafId::Upper), leaf_of(0, LeafId::Lower)];
    let mut job = recorded(pair(folding_card(4.0)), &both, Drilled);
    let forgotten = |job: &mut Job, part: Part| {
        let edit = forget(job, &[id(part)]);
        apply(job, edit).expect("forgetting is sound");
        matches!(the_job_door(job, 0).bores_hang_on, HangOn::AsDrilled(_))
    };
    assert!(forgotten(&mut job, both[0]));
    assert!(!is_drilled(&job.boxes[0], both[0]));
    assert!(is_drilled(&job.boxes[0], both[1]));
    assert!(!forgotten(&mut job, both[1]));
    assert!(!is_drilled(&job.boxes[0], both[1]));
}

#[test]
fn forgetting_a_sheet_or_a_side_leaves_an_existing_door_s_bores_alone() {
    let mut job = plain(LEAF);
    let as_drilled = the_job_door(&mut job, 0).bores_hang_on.clone();
    job = recorded(job, &[Part::LeftSide], Drilled);
    // Marked as exported only.
    for record in &mut job.boxes[0].records {
        if record.part == LEAF {
            record.state = SheetExported;
        }
    }
    for part in [LEAF, Part::LeftSide] {
        let edit = forget(&job, &[id(part)]);
        apply(&mut job, edit).expect("forgetting is sound");
        assert_eq!(the_job_door(&mut job, 0).bores_hang_on, as_drilled);
    }
    assert_eq!(job.boxes[0].records, []);
}

#[test]
fn exporting_a_door_s_sheet_leaves_its_bores_on_the_fitting() {
    let mut job = recorded(job(wall_box(), card()), &[LEAF], SheetExported);
    assert_eq!(the_job_door(&mut job, 0).bores_hang_on, HangOn::Fitting);
    assert!(!is_drilled(&job.boxes[0], LEAF));
    // Drilled afterwards, it is recorded once, as drilled.
    let job = recorded(job, &[LEAF], Drilled);
    assert_eq!(job.boxes[0].records.len(), 1);
    assert!(is_drilled(&job.boxes[0], LEAF));
    assert!(!is_drilled(&job.boxes[0], Part::LeftSide));
}

#[test]
fn marking_one_panel_as_drilled_lets_others_be_exported() {
    let job = recorded(job(wall_box(), card()), &[Part::LeftSide], Drilled);
    let job = recorded(job, &[Part::RightSide, Part::LeftSide], SheetExported);
    let states: Vec<(Part, RecordState)> = job.boxes[0]
        .records
        .iter()
        .map(|it| (it.part, it.state))
        .collect();
    assert_eq!(
        states,
        [(Part::LeftSide, Drilled), (Part::RightSide, SheetExported)]
    );
}

#[test]
fn records_stand_in_the_order_of_the_parts_and_hold_the_panel() {
    let job = recorded(
        job(wall_box(), card()),
        &[LEAF, Part::Top, Part::RightSide],
        SheetExported,
    );
    let records = &job.boxes[0].records;
    let parts: Vec<Part> = records.iter().map(|it| it.part).collect();
    assert_eq!(parts, [Part::RightSide, Part::Top, LEAF]);
    // 330 less a back of 8; 800 less two sides of 18; a door of 794 by 594.
    let sizes: Vec<([f64; 2], f64)> = records.iter().map(|it| (it.size, it.thickness)).collect();
    assert_eq!(
        sizes,
        [
            ([322.0, 600.0], 18.0),
            ([764.0, 322.0], 18.0),
            ([794.0, 594.0], 19.0)
        ]
    );
    let places: Vec<(f64, f64)> = records[0].bores.iter().map(|it| (it.u, it.v)).collect();
    assert_places(&places, &[(41.0, 82.0), (137.0, 82.0)]);
}

#[test]
fn boxes_in_which_nothing_changes_take_no_part_in_the_change() {
    let mut job = job(wall_box(), card());
    let mut second = wall_box();
    second.name = "second box".to_owned();
    second.place.along_wall = 1000.0;
    job.boxes.push(second);
    let ids = [
        PartId {
            box_index: 1,
            part: Part::LeftSide,
        },
        // Neither this shelf nor this box is there.
        id(Part::Shelf(3)),
        PartId {
            box_index: 7,
            part: Part::LeftSide,
        },
    ];
    let edit = record(&job, &inspect(&job), &ids, Drilled);
    let Edit::Together(edits) = &edit else {
        panic!("one step")
    };
    assert!(
        matches!(edits[..], [Edit::ReplaceBox { index: 1, .. }]),
        "{edits:?}"
    );
    apply(&mut job, edit).expect("a record is sound");
    assert_eq!(job.boxes[0].records, []);
    assert_eq!(job.boxes[1].records.len(), 1);
    assert_eq!(forget(&job, &[id(Part::LeftSide)]), Edit::Together(vec![]));
}

#[test]
fn a_box_as_needed_keeps_the_bores_of_a_door_that_was_there_before() {
    // The bores of an existing door that is not recorded as drilled are typed facts.
    let mut job = plain(LEAF);
    if let HangOn::AsDrilled(drilled) = &mut the_job_door(&mut job, 0).bores_hang_on {
        drilled[0].along += 40.0;
    }
    let places_of = |job: &Job| places(the_leaf(&as_needed(job, 0, &job.boxes[0]), 0));
    let downs = |job: &Job| {
        let mut downs: Vec<f64> = places_of(job).iter().map(|at| at.1).collect();
        downs.sort_by(f64::total_cmp);
        downs
    };
    assert_eq!(downs(&job), [105.0, 105.0, 137.0, 137.0]);
    job.boxes[0].records.clear();
    assert_eq!(downs(&job), [105.0, 137.0, 137.0, 145.0]);
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
    says(&job, "1 bore is needed elsewhere, bore 3 1 mm forward");
}

#[test]
fn marking_a_drilled_panel_again_takes_it_as_it_stands() {
    let mut job = plain(Part::LeftSide);
    job.boxes[0].left.thickness = 16.0;
    says(&job, "its thickness is 18 mm, 16 mm is needed");
    let job = recorded(job, &[Part::LeftSide], Drilled);
    assert_eq!(found(&job, NAME), []);
}

#[test]
fn the_bores_of_the_other_leaf_do_not_move_the_edges_of_a_drilled_one() {
    // Bores in both leaves; those of the lower one were drilled 1 to the right of where they go.
    let mut card = folding_card(4.0);
    let mut lower = card.door_bores[0].clone();
    lower.leaf = LeafId::Lower;
    for bore in &mut lower.bores {
        let PerSize::All(down) = bore.down.by else {
            panic!("one figure for all sizes")
        };
        bore.down.by = PerSize::All(down + 300.0);
    }
    card.door_bores.push(lower);
    let mut job = recorded(pair(card), &[leaf_of(0, LeafId::Upper)], Drilled);
    let HangOn::AsDrilled(drilled) = &mut the_job_door(&mut job, 0).bores_hang_on else {
        panic!("drilled already")
    };
    for bore in drilled.iter_mut().filter(|it| it.leaf == LeafId::Lower) {
        bore.across += match bore.from_side {
            flapwright_model::door::SideTie::Left => 1.0,
            flapwright_model::door::SideTie::Right => -1.0,
        };
    }
    let remedy = refit(&with_reveal(job, Edge::Top, 5.0)).expect("it can be refitted");
    assert_eq!(
        remedy.effect,
        "top overlay 13 mm to 15 mm; the door has its drilled size and its bores are off the \
         fitting by 1 mm at most"
    );
}
