//! What can be done about a drilled panel that differs: other sizes, the opening refitted, plugs. See
//! `drilled_panel_differs` for the places of the bores.

use crate::common::*;
use crate::drilled_panel_differs::{NAME, bores, difference, id, leaf_of, plain, recorded};
use crate::findings::*;
use flapwright_model::card::{Card, PerSize};
use flapwright_model::door::{BoreReference, DoorFit, Leaves};
use flapwright_model::edges::{Edge, Edges};
use flapwright_model::edit::apply;
use flapwright_model::job::Job;
use flapwright_model::part::{LeafId, Part, Subject};
use flapwright_model::record::RecordState::Drilled;

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

fn titles(finding: &Told) -> Vec<&str> {
    finding.remedies.iter().map(|it| it.kind.as_str()).collect()
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
            "remedy.take-size: fitting (fitting-name.size: card \"Plover\", size \"1\")",
            "remedy.take-size: fitting (fitting-name.size: card \"Plover\", size \"3\")",
            "remedy.take-size: fitting (fitting-name.size: card \"Plover\", size \"4\")",
            "remedy.plug-and-redrill"
        ]
    );
    assert_eq!(
        it.remedies[0].effects,
        "effect.in-place-of: fitting (fitting-name.size: card \"Plover\", size \"2\"); effect.bores-agree: bores 2; effect.all-agree; effect.see-sizes"
    );
    assert!(!it.remedies[0].safe, "it may have to be bought");
    // A panel that agrees with no size is counted beside.
    let mut odd = drilled;
    odd.boxes[0].records[1].bores[0].u += 1.0;
    let it = found(&with_size(odd.clone(), 0, "2"), NAME).remove(0);
    assert_eq!(it.subjects, [Subject::Part(id(Part::LeftSide))]);
    assert_eq!(
        it.remedies[0].effects,
        "effect.in-place-of: fitting (fitting-name.size: card \"Plover\", size \"2\"); effect.bores-agree: bores 2; effect.others-differ: panels 1; effect.see-sizes"
    );
    let mut two = recorded(odd, &[Part::Bottom], Drilled);
    let bottom = two.boxes[0].records.iter_mut();
    for record in bottom.filter(|it| it.part == Part::Bottom) {
        record.size[0] += 3.0;
    }
    let it = found(&with_size(two, 0, "2"), NAME).remove(0);
    assert_eq!(
        it.remedies[0].effects,
        "effect.in-place-of: fitting (fitting-name.size: card \"Plover\", size \"2\"); effect.bores-agree: bores 2; effect.others-differ: panels 2; effect.see-sizes"
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
    add_card(&mut job, same);
    add_card(&mut job, other);
    assert_eq!(
        titles(&difference(&with_size(job, 0, "2"))),
        [
            "remedy.take-size: fitting (fitting-name.size: card \"Plover\", size \"1\")",
            "remedy.take-size: fitting (fitting-name.size: card \"Dunlin\", size \"1\")",
            "remedy.plug-and-redrill"
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
    split(
        &mut wall_box,
        fixed_shelf(300.0, 18.0, 3.0),
        Some(door(Edges::all(3.0))),
    );
    let before = job(wall_box, card);
    let part = Part::Leaf {
        door: door_id(&before.boxes[0], 1),
        leaf: LeafId::Only,
    };
    let drilled = recorded(before, &[part], Drilled);
    assert_eq!(found(&with_size(drilled.clone(), 0, "2"), NAME), []);
    let off = with_size(drilled, 1, "2");
    let it = difference(&off);
    assert_eq!(it.subjects, [Subject::Part(id(part))]);
    let take = it.remedies.iter().filter(|it| {
        it.kind == "remedy.take-size: fitting (fitting-name.size: card \"Plover\", size \"1\")"
    });
    let edits: Vec<&ToldRemedy> = take.collect();
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

fn refit(job: &Job) -> Option<ToldRemedy> {
    let all = found(job, NAME);
    let mut remedies = all.into_iter().flat_map(|it| it.remedies);
    remedies.find(|it| it.kind == "remedy.refit")
}

#[test]
fn refitting_says_what_becomes_of_each_edge_that_moves() {
    // Panels of 18: reveals of 8 and 5 are overlays of 10 and 13, the door was drilled for 15.
    for (edge, to, said) in [
        (Edge::Left, 8.0, "edge left, was 10 mm, is 15 mm"),
        (Edge::Right, 8.0, "edge right, was 10 mm, is 15 mm"),
        (Edge::Top, 5.0, "edge top, was 13 mm, is 15 mm"),
        (Edge::Bottom, 5.0, "edge bottom, was 13 mm, is 15 mm"),
        (Edge::Bottom, 0.0, "edge bottom, was 18 mm, is 15 mm"),
    ] {
        let remedy = refit(&with_reveal(plain(LEAF), edge, to)).expect("it can be refitted");
        assert_eq!(
            remedy.effects,
            format!("effect.overlay: {said}; effect.drilled-size: off 0 mm")
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
        remedy
            .effects
            .starts_with("effect.overlay: edge left, was 19 mm, is 15 mm; "),
        "{}",
        remedy.effects
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
        remedy
            .effects
            .starts_with("effect.gap: edge left, was 5 mm, is 2 mm; "),
        "{}",
        remedy.effects
    );
}

/// The left fitting's bores drilled so much further in, in the record and in the door.
fn left_bores_in(by: f64) -> Job {
    let mut job = plain(LEAF);
    let BoreReference::AsDrilled(drilled) = &mut the_job_door(&mut job, 0).bores_follow else {
        panic!("drilled already")
    };
    for bore in drilled {
        if bore.from_side == flapwright_model::door::Side::Left {
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
        remedy.effects,
        "effect.overlay: edge left, was 15 mm, is 16 mm; effect.overlay: edge right, was 15 mm, is 14 mm; \
         effect.drilled-size: off 1 mm"
    );
}

#[test]
fn a_door_is_not_refitted_where_it_hangs_askew_however_it_sits() {
    // The card adjusts by 2 sideways: of 3.9 half is within that, of 4.1 not.
    assert!(refit(&left_bores_in(3.9)).is_some());
    assert!(refit(&left_bores_in(4.1)).is_none());
}

pub(crate) fn pair(card: Card) -> Job {
    let mut wall_box = wall_box();
    wall_box.body.door.as_mut().expect("a door").leaves = Leaves::Two {
        upper: leaf(19.0),
        lower: leaf(19.0),
        joint_down: 275.0,
        joint_gap: 3.0,
    };
    job(wall_box, card)
}

#[test]
fn the_joint_of_a_folding_pair_stays_where_it_is_when_a_leaf_is_refitted() {
    let upper = recorded(pair(folding_card(4.0)), &[leaf_of(LeafId::Upper)], Drilled);
    let remedy = refit(&with_reveal(upper, Edge::Top, 5.0)).expect("it can be refitted");
    assert!(
        remedy
            .effects
            .starts_with("effect.overlay: edge top, was 13 mm, is 15 mm; effect.drilled-size"),
        "{}",
        remedy.effects
    );
    let mut card = folding_card(4.0);
    card.door_bores[0].leaf = LeafId::Lower;
    let lower = recorded(pair(card), &[leaf_of(LeafId::Lower)], Drilled);
    let remedy = refit(&with_reveal(lower, Edge::Bottom, 7.0)).expect("it can be refitted");
    assert!(
        remedy
            .effects
            .starts_with("effect.overlay: edge bottom, was 11 mm, is 15 mm; effect.drilled-size"),
        "{}",
        remedy.effects
    );
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
    let mut job = recorded(pair(card), &[leaf_of(LeafId::Upper)], Drilled);
    let BoreReference::AsDrilled(drilled) = &mut the_job_door(&mut job, 0).bores_follow else {
        panic!("drilled already")
    };
    for bore in drilled.iter_mut().filter(|it| it.leaf == LeafId::Lower) {
        bore.across += match bore.from_side {
            flapwright_model::door::Side::Left => 1.0,
            flapwright_model::door::Side::Right => -1.0,
        };
    }
    let remedy = refit(&with_reveal(job, Edge::Top, 5.0)).expect("it can be refitted");
    assert_eq!(
        remedy.effects,
        "effect.overlay: edge top, was 13 mm, is 15 mm; effect.drilled-size: off 1 mm"
    );
}
