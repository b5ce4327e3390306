//! What the bores of a door hang on, and the check `bores-off-fitting`.

use crate::common::*;
use crate::findings::{Told, told};
use flapwright_model::door::{BoreReference, DrilledBore, End, Side};
use flapwright_model::edges::{Edge, Edges};
use flapwright_model::edit::apply;
use flapwright_model::job::Job;
use flapwright_model::part::LeafId;
use flapwright_rules::finding::Severity;

const NAME: &str = "bores-off-fitting";

fn on_edges(vertical: End) -> Job {
    let mut job = job(wall_box(), card());
    the_job_door(&mut job, 0).bores_follow = BoreReference::Edges { vertical };
    job
}

/// The card's four door bores as a door has them that was drilled for reveals of 3: overlay 15,
/// so 15 + 14 = 29 in from each side, 15 + 90 = 105 and 15 + 122 = 137 down.
fn as_drilled() -> Job {
    let mut job = job(wall_box(), card());
    let bore = |from_side, along| DrilledBore {
        leaf: LeafId::Only,
        from_side,
        across: 29.0,
        from_end: End::Top,
        along,
        diameter: 4.0,
        depth: 12.0,
        purpose: "arm screw".to_owned(),
    };
    the_job_door(&mut job, 0).bores_follow = BoreReference::AsDrilled(vec![
        bore(Side::Left, 105.0),
        bore(Side::Left, 137.0),
        bore(Side::Right, 105.0),
        bore(Side::Right, 137.0),
    ]);
    job
}

fn tweaked(mut job: Job, edge: Edge, by: f64) -> Job {
    *the_job_door(&mut job, 0).tweaks.at_mut(edge) += by;
    job
}

fn with_reveal(mut job: Job, edge: Edge, by: f64) -> Job {
    let flapwright_model::door::DoorFit::Overlay { reveals } = &mut the_job_door(&mut job, 0).fit
    else {
        unreachable!("the test's door is an overlay door")
    };
    *reveals.at_mut(edge) += by;
    job
}

fn bores(job: &Job) -> Vec<(f64, f64)> {
    door_bores_in_box(&inspect(job).boxes[0], 0)
}

/// How far each bore of the first job has moved in the second.
fn moves(a: &Job, b: &Job) -> Vec<(f64, f64)> {
    bores(a)
        .iter()
        .zip(bores(b))
        .map(|(a, b)| (b.0 - a.0, b.1 - a.1))
        .collect()
}

fn off_fitting(job: &Job) -> Option<Told> {
    told(job).into_iter().find(|it| it.check == NAME)
}

/// 3 in, exactly.
const THREE_INCHES: f64 = 76.2;

#[test]
fn a_top_tweak_carries_the_bores_of_a_door_drilled_from_its_edges() {
    let before = on_edges(End::Top);
    let after = tweaked(before.clone(), Edge::Top, THREE_INCHES);
    assert_places(&moves(&before, &after), &[(0.0, THREE_INCHES); 4]);
    // A bottom tweak moves none of them.
    let after = tweaked(before.clone(), Edge::Bottom, THREE_INCHES);
    assert_places(&moves(&before, &after), &[(0.0, 0.0); 4]);
    // A left tweak moves those of the left fitting only, outward: to the left. The card's order is
    // left fitting first.
    let after = tweaked(before.clone(), Edge::Left, 5.0);
    assert_places(
        &moves(&before, &after),
        &[(-5.0, 0.0), (-5.0, 0.0), (0.0, 0.0), (0.0, 0.0)],
    );
}

#[test]
fn bores_tied_to_the_bottom_edge_follow_that_one() {
    let before = on_edges(End::Bottom);
    let after = tweaked(before.clone(), Edge::Bottom, 6.0);
    assert_places(&moves(&before, &after), &[(0.0, -6.0); 4]);
    let after = tweaked(before.clone(), Edge::Top, 6.0);
    assert_places(&moves(&before, &after), &[(0.0, 0.0); 4]);
}

#[test]
fn the_same_change_as_a_reveal_moves_none_on_edges_and_does_move_them_as_drilled() {
    // A reveal less by 76.2 moves the top edge up by as much.
    let before = on_edges(End::Top);
    let after = with_reveal(before.clone(), Edge::Top, -THREE_INCHES);
    assert_places(&moves(&before, &after), &[(0.0, 0.0); 4]);
    let before = as_drilled();
    let after = with_reveal(before.clone(), Edge::Top, -THREE_INCHES);
    assert_places(&moves(&before, &after), &[(0.0, THREE_INCHES); 4]);
    let after = with_reveal(before.clone(), Edge::Left, -5.0);
    assert_places(
        &moves(&before, &after),
        &[(-5.0, 0.0), (-5.0, 0.0), (0.0, 0.0), (0.0, 0.0)],
    );
}

#[test]
fn on_the_fitting_neither_tweak_nor_reveal_moves_a_bore() {
    let before = job(wall_box(), card());
    for edge in Edge::ALL {
        let after = tweaked(before.clone(), edge, 9.0);
        assert_places(&moves(&before, &after), &[(0.0, 0.0); 4]);
        assert_eq!(off_fitting(&after), None);
    }
}

#[test]
fn a_door_drilled_for_these_reveals_holds() {
    assert_eq!(off_fitting(&as_drilled()), None);
    assert_eq!(off_fitting(&on_edges(End::Top)), None);
}

#[test]
fn severity_follows_the_adjustment() {
    // The card adjusts by 3 up and 3 down; up to 0.2 is no finding.
    for (by, expected) in [
        (0.2, None),
        (0.21, Some(Severity::Caution)),
        (3.0, Some(Severity::Caution)),
        (3.01, Some(Severity::Stop)),
        (-0.2, None),
        (-3.0, Some(Severity::Caution)),
        (-3.01, Some(Severity::Stop)),
    ] {
        let found = off_fitting(&tweaked(on_edges(End::Top), Edge::Top, by));
        assert_eq!(found.map(|it| it.severity), expected, "tweak {by}");
    }
}

#[test]
fn the_numbers_name_the_largest_offset_and_the_share_of_the_adjustment() {
    let found = off_fitting(&tweaked(on_edges(End::Top), Edge::Top, 1.5)).unwrap();
    let number = |label: &str| {
        found
            .numbers
            .iter()
            .find(|it| it.name == label)
            .map(|it| it.value)
            .unwrap()
    };
    assert_close(number("largest_offset"), 1.5);
    assert_close(number("largest_offset_up"), 1.5);
    assert_close(number("largest_offset_across"), 0.0);
    assert_close(number("share_of_the_adjustment"), 0.5);
    assert_eq!(
        found.reasons.len(),
        1 + 4 + 2,
        "what the adjustment makes of it, one line a bore and two more: {:?}",
        found.reasons
    );
}

#[test]
fn bores_of_one_fitting_that_are_off_by_different_amounts_are_a_stop() {
    let mut job = as_drilled();
    let BoreReference::AsDrilled(bores) = &mut the_job_door(&mut job, 0).bores_follow else {
        unreachable!("drilled already")
    };
    bores[1].along += 1.0;
    let found = off_fitting(&job).unwrap();
    assert_eq!(found.severity, Severity::Stop, "{}", found.message);
}

#[test]
fn a_bore_that_the_door_lacks_is_a_stop() {
    let mut job = as_drilled();
    let BoreReference::AsDrilled(bores) = &mut the_job_door(&mut job, 0).bores_follow else {
        unreachable!("drilled already")
    };
    bores.pop();
    let found = off_fitting(&job).unwrap();
    assert_eq!(found.severity, Severity::Stop);
    assert_eq!(
        found.message,
        "bores-off-fitting.missing: missing 1, all 4, share_of_the_adjustment 0 %, adjustment_sideways_least -2 mm, adjustment_sideways_greatest 2 mm, adjustment_up_least -3 mm, adjustment_up_greatest 3 mm"
    );
}

#[test]
fn a_shift_by_one_pitch_of_the_pattern_is_seen_as_a_shift() {
    // The two bores of each fitting stand 32 apart; a reveal that carries them down by just 32
    // puts one of them where the other should be.
    let found = off_fitting(&with_reveal(as_drilled(), Edge::Top, 32.0)).unwrap();
    let largest = found
        .numbers
        .iter()
        .find(|it| it.name == "largest_offset")
        .unwrap();
    assert_close(largest.value, 32.0);
}

#[test]
fn each_remedy_clears_the_finding_and_undo_restores_the_job() {
    let before = tweaked(on_edges(End::Top), Edge::Top, THREE_INCHES);
    let found = off_fitting(&before).unwrap();
    assert_eq!(found.severity, Severity::Stop);
    let titles: Vec<&str> = found.remedies.iter().map(|it| it.kind.as_str()).collect();
    assert_eq!(
        titles,
        [
            "remedy.make-reveal",
            "remedy.bores-to-fitting",
            "remedy.undo-tweak"
        ]
    );
    for remedy in found.remedies {
        assert!(
            remedy
                .effects
                .contains("effect.largest-offset: was 76.2 mm, is 0 mm"),
            "{}",
            remedy.effects
        );
        let mut job = before.clone();
        let undo = apply(&mut job, remedy.edit).unwrap();
        assert_eq!(off_fitting(&job), None, "{}", remedy.kind);
        apply(&mut job, undo).unwrap();
        assert_eq!(job, before, "{}", remedy.kind);
    }
}

#[test]
fn turning_a_tweak_into_a_reveal_leaves_the_edges_of_the_door_where_they_are() {
    let mut before = on_edges(End::Top);
    the_job_door(&mut before, 0).tweaks = Edges {
        left: 4.0,
        right: -1.5,
        top: 7.0,
        bottom: 2.0,
    };
    let found = off_fitting(&before).unwrap();
    let mut after = before.clone();
    apply(&mut after, found.remedies[0].edit.clone()).unwrap();
    let edges = |job: &Job| the_door(&inspect(job).boxes[0], 0).edges;
    for edge in Edge::ALL {
        assert_close(edges(&after).at(edge), edges(&before).at(edge));
    }
}

#[test]
fn at_a_shared_shelf_the_tweak_goes_into_gap_and_split() {
    let mut before = on_edges(End::Bottom);
    split(
        &mut before.boxes[0],
        fixed_shelf(250.0, 19.0, 3.0),
        Some(door(Edges::all(3.0))),
    );
    before.give_ids();
    the_job_door(&mut before, 0).tweaks.bottom = 1.0;
    let found = off_fitting(&before).unwrap();
    let mut after = before.clone();
    apply(&mut after, found.remedies[0].edit.clone()).unwrap();
    assert_eq!(off_fitting(&after), None);
    let overlays = |job: &Job, opening| the_door(&inspect(job).boxes[0], opening).overlays;
    // 8 + 1 above, gap 2, 8 below as before: 9 + 2 + 8 = 19.
    assert_close(overlays(&after, 0).bottom, 9.0);
    assert_close(overlays(&after, 1).top, 8.0);
}

#[test]
fn a_door_drilled_already_is_offered_no_reveal() {
    let found = off_fitting(&tweaked(as_drilled(), Edge::Top, 10.0)).unwrap();
    assert!(
        found
            .remedies
            .iter()
            .all(|it| it.kind != "Turn the tweak into a reveal")
    );
    assert!(!found.remedies.is_empty());
}

#[test]
fn bores_taken_over_as_drilled_stay_where_they_are() {
    let before = job(wall_box(), with_hinges(card()));
    let report = inspect(&before);
    let taken = flapwright_rules::placement::taken_over::bores_now(&report.boxes[0], DOOR);
    // Four arm screws and three hinge cups.
    assert_eq!(taken.len(), 7);
    let mut after = before.clone();
    the_job_door(&mut after, 0).bores_follow = BoreReference::AsDrilled(taken);
    assert_eq!(off_fitting(&after), None);
    let mut places_before = places(the_leaf(&report.boxes[0], 0));
    let mut places_after = places(the_leaf(&inspect(&after).boxes[0], 0));
    for all in [&mut places_before, &mut places_after] {
        all.sort_by(|a, b| a.1.total_cmp(&b.1).then(a.0.total_cmp(&b.0)));
    }
    assert_places(&places_after, &places_before);
}

#[test]
fn both_screws_beside_a_cup_in_the_middle_are_found_again() {
    // The middle cup of three has a screw on either side of the door's middle; all three bores count
    // with one side's.
    let mut card = with_hinges(card());
    for by in [-21.5, 21.5] {
        let mut screw = card.door_bores[1].bores[0].clone();
        screw.across.by = flapwright_model::card::PerSize::All(by);
        screw.drill.diameter = 2.5;
        card.door_bores[1].bores.push(screw);
    }
    let mut job = job(wall_box(), card);
    let taken = flapwright_rules::placement::taken_over::bores_now(&inspect(&job).boxes[0], DOOR);
    assert_eq!(taken.len(), 4 + 3 * 3);
    the_job_door(&mut job, 0).bores_follow = BoreReference::AsDrilled(taken);
    assert_eq!(off_fitting(&job), None);
}

/// On the top and left edges, with these adjustments sideways and up.
fn adjusted_by(sideways: (f64, f64), upward: (f64, f64)) -> Job {
    let mut job = on_edges(End::Top);
    let travel = |(min, max)| flapwright_model::card::AdjustmentRange { min, max };
    job.cards[0].card.adjustment.sideways = travel(sideways);
    job.cards[0].card.adjustment.upward = travel(upward);
    job
}

#[test]
fn the_message_says_which_way_and_what_the_adjustment_makes_of_it() {
    let job = adjusted_by((-2.0, 4.0), (-1.0, 3.0));
    let says = |edge, by: f64, words: &str, reason: &str| {
        let found = off_fitting(&tweaked(job.clone(), edge, by)).unwrap();
        assert!(found.message.contains(words), "{by}: {}", found.message);
        assert_eq!(found.reasons[0], format!("bores-off-fitting.{reason}"));
        found.severity
    };
    // A tweak is + outward: the top edge up, the left edge to the left, and only the two bores at
    // the left hang on that.
    let half = "within-adjustment: share 50 %";
    let all = "within-adjustment: share 100 %";
    let up = "off 4, all 4, worst [(step.up: by 1.5 mm)], ";
    assert_eq!(says(Edge::Top, 1.5, up, half), Severity::Caution);
    let down = "worst [(step.down: by 1 mm)], ";
    assert_eq!(says(Edge::Top, -1.0, down, all), Severity::Caution);
    let down = "worst [(step.down: by 2 mm)], ";
    let twice = "beyond-adjustment: times 2.0";
    assert_eq!(says(Edge::Top, -2.0, down, twice), Severity::Stop);
    let left = "off 2, all 4, worst [(step.left: by 2 mm)], ";
    assert_eq!(says(Edge::Left, 2.0, left, all), Severity::Caution);
    let right = "worst [(step.right: by 2 mm)], ";
    assert_eq!(says(Edge::Left, -2.0, right, half), Severity::Caution);
}

#[test]
fn without_adjustment_that_way_any_offset_is_a_stop() {
    let job = adjusted_by((0.0, 0.0), (-1.0, 0.0));
    let up = off_fitting(&tweaked(job.clone(), Edge::Top, 0.5)).unwrap();
    assert_eq!(up.severity, Severity::Stop);
    assert_eq!(
        up.message,
        "bores-off-fitting.off: off 4, all 4, worst [(step.up: by 0.5 mm)], largest_offset 0.5 mm, largest_offset_across 0 mm, largest_offset_up 0.5 mm, adjustment_sideways_least 0 mm, adjustment_sideways_greatest 0 mm, adjustment_up_least -1 mm, adjustment_up_greatest 0 mm"
    );
    assert!(
        up.numbers
            .iter()
            .all(|it| it.name != "share_of_the_adjustment"),
        "no share of nothing: {:?}",
        up.numbers
    );
    let down = off_fitting(&tweaked(job, Edge::Top, -0.5)).unwrap();
    assert_eq!(down.severity, Severity::Caution, "{}", down.message);
}

#[test]
fn both_ways_of_an_offset_are_said_and_the_larger_share_counts() {
    let mut job = tweaked(adjusted_by((-2.0, 2.0), (-3.0, 3.0)), Edge::Top, 0.3);
    job = tweaked(job, Edge::Left, 1.0);
    let found = off_fitting(&job).unwrap();
    // 1 of 2 to the left and 0.3 of 3 up.
    assert!(
        found
            .message
            .contains("worst [(step.left: by 1 mm); (step.up: by 0.3 mm)]"),
        "{}",
        found.message
    );
    assert_eq!(
        found.reasons[0],
        "bores-off-fitting.within-adjustment: share 50 %"
    );
    assert_eq!(found.subjects.len(), 4 + 1, "four bores and the opening");
    let right: Vec<&String> = found
        .reasons
        .iter()
        .filter(|it| it.contains("side right"))
        .collect();
    assert_eq!(right.len(), 2, "{:?}", found.reasons);
    assert!(
        right
            .iter()
            .all(|it| it.ends_with("way [(step.up: by 0.3 mm)]")),
        "{right:?}"
    );
    assert!(
        found.reasons.contains(
            &"bores-off-fitting.adjusts: sideways_least -2 mm, sideways_greatest 2 mm, up_least -3 mm, \
              up_greatest 3 mm"
                .to_owned()
        ),
        "{:?}",
        found.reasons
    );
}

#[test]
fn bores_of_one_fitting_that_differ_say_by_how_much() {
    let mut job = as_drilled();
    let BoreReference::AsDrilled(bores) = &mut the_job_door(&mut job, 0).bores_follow else {
        unreachable!("drilled already")
    };
    // 0.3 further along and 0.4 further across: 0.5 off, and as much apart from its neighbour.
    bores[1].along += 0.3;
    bores[1].across += 0.4;
    let found = off_fitting(&job).unwrap();
    assert!(
        found
            .message
            .starts_with("bores-off-fitting.off: off 1, all 4, "),
        "{}",
        found.message
    );
    assert_eq!(found.reasons[0], "bores-off-fitting.uneven: by 0.5 mm");
    // All of one fitting off alike is no difference.
    let mut alike = as_drilled();
    let BoreReference::AsDrilled(bores) = &mut the_job_door(&mut alike, 0).bores_follow else {
        unreachable!("drilled already")
    };
    for bore in bores.iter_mut().filter(|it| it.from_side == Side::Left) {
        bore.along += 0.5;
    }
    let found = off_fitting(&alike).unwrap();
    assert_eq!(found.severity, Severity::Caution, "{}", found.message);
}

#[test]
fn a_missing_bore_is_counted_beside_those_that_are_off() {
    let mut job = tweaked(as_drilled(), Edge::Top, 0.0);
    let BoreReference::AsDrilled(bores) = &mut the_job_door(&mut job, 0).bores_follow else {
        unreachable!("drilled already")
    };
    bores.pop();
    for bore in bores.iter_mut() {
        bore.along += 1.0;
    }
    let found = off_fitting(&job).unwrap();
    assert_eq!(found.severity, Severity::Stop);
    assert_eq!(
        found.message,
        "bores-off-fitting.off: off 3, all 4, worst [(step.down: by 1 mm)], largest_offset 1 mm, largest_offset_across 0 mm, largest_offset_up -1 mm, share_of_the_adjustment 33 %, adjustment_sideways_least -2 mm, adjustment_sideways_greatest 2 mm, adjustment_up_least -3 mm, adjustment_up_greatest 3 mm"
    );
    assert!(
        found
            .reasons
            .iter()
            .any(|it| it.starts_with("bores-off-fitting.no-bore: ")),
        "{:?}",
        found.reasons
    );
}

/// Title, effect and safety of each remedy.
fn offers(job: &Job) -> Vec<(String, String, bool)> {
    let remedies = off_fitting(job).expect("off its fitting").remedies;
    remedies
        .into_iter()
        .map(|it| (it.kind, it.effects, it.safe))
        .collect()
}

#[test]
fn each_remedy_says_what_becomes_of_door_overlay_and_bores() {
    // The furthest bores are 137 below the top edge; the edge goes 76.2 up and they with it. As a
    // reveal (3 - 76.2) the same edge leaves them on the fitting, 137 + 76.2 below the edge.
    let job = tweaked(on_edges(End::Top), Edge::Top, THREE_INCHES);
    let back = "effect.bores-move: by 76.2 mm, was 137 mm, is 213.2 mm";
    assert_eq!(
        offers(&job),
        [
            (
                "remedy.make-reveal".to_owned(),
                format!(
                    "effect.largest-offset: was 76.2 mm, is 0 mm; effect.same-size; effect.overlay: \
                     edge top, was 15 mm, is 91.2 mm; {back}"
                ),
                true
            ),
            (
                "remedy.bores-to-fitting".to_owned(),
                format!("effect.largest-offset: was 76.2 mm, is 0 mm; effect.same-size; {back}"),
                false
            ),
            (
                "remedy.undo-tweak".to_owned(),
                "effect.largest-offset: was 76.2 mm, is 0 mm; effect.door-height: was 670.2 mm, \
                 is 594 mm; effect.bores-move: by 76.2 mm, was 137 mm, is 137 mm"
                    .to_owned(),
                false
            ),
        ]
    );
    let job = tweaked(on_edges(End::Top), Edge::Left, 2.0);
    let effects: Vec<String> = offers(&job).into_iter().map(|it| it.1).collect();
    assert!(
        effects[0].starts_with(
            "effect.largest-offset: was 2 mm, is 0 mm; effect.same-size; effect.overlay: edge left, was 15 mm, \
             is 17 mm; "
        ),
        "{effects:?}"
    );
    assert!(
        effects[2].starts_with(
            "effect.largest-offset: was 2 mm, is 0 mm; effect.door-width: was 796 mm, is 794 mm; \
             effect.bores-move: by 2 mm"
        ),
        "{effects:?}"
    );
}

#[test]
fn a_door_without_tweak_is_offered_the_fitting_only() {
    // Drilled for reveals of 3 and hung with 5 at the top: 2 off.
    let job = with_reveal(as_drilled(), Edge::Top, 2.0);
    let titles: Vec<String> = offers(&job).into_iter().map(|it| it.0).collect();
    assert_eq!(titles, ["remedy.bores-to-fitting"]);
}

#[test]
fn an_adjustment_of_a_hundred_percent_is_enough_and_no_more() {
    for (by, reason) in [
        (
            2.999_999,
            "bores-off-fitting.within-adjustment: share 100 %",
        ),
        (3.3, "bores-off-fitting.beyond-adjustment: times 1.1"),
    ] {
        let found = off_fitting(&tweaked(on_edges(End::Top), Edge::Top, by)).unwrap();
        assert_eq!(found.reasons[0], reason);
    }
}
