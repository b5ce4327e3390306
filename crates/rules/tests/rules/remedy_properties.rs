//! What holds of findings, remedies and acceptances over generated jobs: the invented galley after
//! a few changes of its boxes, doors and fittings. Nothing is expected in numbers; each property
//! compares two answers with each other.

use std::collections::BTreeSet;
use std::sync::Arc;

use flapwright_answer::{Answer, apply_safe_remedies, judged as inspect};
use flapwright_model::acceptance::Topic;
use flapwright_model::cabinet::WallBox;
use flapwright_model::door::{BoreReference, BuildUp, DoorFit, End, Leaves, TypedMass};
use flapwright_model::edges::Edge;
use flapwright_model::edit::{Edit, JobHead, apply};
use flapwright_model::file::read_job;
use flapwright_model::job::Job;
use flapwright_model::length::Unit;
use flapwright_rules::accept::accept;
use flapwright_rules::finding::{Finding, Severity, Worse};
use flapwright_rules::inspection::Inspection;
use proptest::prelude::*;

/// A change of one box; what does not fit its box is left out.
#[derive(Debug, Clone)]
enum Change {
    Outer(usize, f64),
    Reveal(usize, f64),
    Tweak(usize, f64),
    OnEdges(bool),
    Mass(f64, f64),
    Thickness(f64),
    Fitting(usize, usize, f64),
    Shelf(f64),
    Joint(f64),
}

fn change() -> impl Strategy<Value = Change> {
    prop_oneof![
        (0..3_usize, 0.6..1.6_f64).prop_map(|(which, by)| Change::Outer(which, by)),
        (0..4_usize, -10.0..15.0_f64).prop_map(|(edge, by)| Change::Reveal(edge, by)),
        (0..4_usize, -8.0..8.0_f64).prop_map(|(edge, by)| Change::Tweak(edge, by)),
        any::<bool>().prop_map(Change::OnEdges),
        (0.5..15.0_f64, 0.0..0.4_f64).prop_map(|(mass, share)| Change::Mass(mass, share)),
        (10.0..30.0_f64).prop_map(Change::Thickness),
        (0..5_usize, 0..4_usize, 0.0..4.0_f64)
            .prop_map(|(card, size, packing)| Change::Fitting(card, size, packing)),
        (60.0..400.0_f64).prop_map(Change::Shelf),
        (120.0..300.0_f64).prop_map(Change::Joint),
    ]
}

impl Change {
    fn of(&self, job: &Job, opening: usize, it: &mut WallBox) {
        match self {
            Self::Outer(0, by) => it.width *= by,
            Self::Outer(1, by) => it.height *= by,
            Self::Outer(_, by) => it.depth *= by,
            Self::Shelf(up) => {
                let first = it.shelves().first().map(|shelf| shelf.id());
                if let Some(shelf) = first.and_then(|id| it.shelf_mut(id)) {
                    *shelf.up() = *up;
                }
            }
            _ => self.of_door(job, opening, it),
        }
    }

    fn of_door(&self, job: &Job, opening: usize, it: &mut WallBox) {
        let openings = it.openings();
        let chosen = openings[opening % openings.len()].door.as_ref();
        let Some(door) = chosen.map(|door| door.id).and_then(|id| it.door_mut(id)) else {
            return;
        };
        match self {
            Self::Reveal(edge, by) => {
                if let DoorFit::Overlay { reveals } = &mut door.fit {
                    *reveals.at_mut(Edge::ALL[*edge]) = *by;
                }
            }
            Self::Tweak(edge, by) => *door.tweaks.at_mut(Edge::ALL[*edge]) = *by,
            Self::OnEdges(true) => {
                door.bores_follow = BoreReference::Edges { vertical: End::Top };
            }
            Self::OnEdges(false) => door.bores_follow = BoreReference::Fitting,
            Self::Mass(kilograms, share) => {
                door.typed_mass = Some(TypedMass {
                    kilograms: *kilograms,
                    plus_minus: kilograms * share,
                });
            }
            Self::Thickness(to) => {
                if let Leaves::One(leaf) = &mut door.leaves
                    && let BuildUp::Plain { thickness, .. } = &mut leaf.build
                {
                    *thickness = *to;
                }
            }
            Self::Fitting(card, size, packing) => {
                let used = &job.cards[card % job.cards.len()];
                if let Some(choice) = &mut door.fitting {
                    choice.card = used.id;
                    let size = &used.card.sizes[size % used.card.sizes.len()];
                    choice.size.clone_from(&size.name);
                    choice.packing = *packing;
                }
            }
            Self::Joint(down) => {
                if let Leaves::Two { joint_down, .. } = &mut door.leaves {
                    *joint_down = *down;
                }
            }
            Self::Outer(..) | Self::Shelf(_) => {}
        }
    }
}

/// Which box, which opening, what.
type Step = (usize, usize, Change);

fn step() -> impl Strategy<Value = Step> {
    (0..4_usize, 0..2_usize, change())
}

/// The edit of a step, for the job as it is.
fn edit_of(job: &Job, (index, opening, change): &Step) -> Edit {
    let index = index % job.boxes.len();
    let mut it = job.boxes[index].clone();
    change.of(job, *opening, &mut it);
    Edit::replace_box(it)
}

fn galley() -> Job {
    read_job(include_str!("../../../../assets/demo/houseboat-galley.ron")).expect("the demo job")
}

/// The galley after some steps; those that make no sound job are not taken.
fn changed(steps: &[Step]) -> Job {
    let mut job = galley();
    for step in steps {
        let edit = edit_of(&job, step);
        let _refused = apply(&mut job, edit);
    }
    job
}

fn jobs() -> impl Strategy<Value = Job> {
    prop::collection::vec(step(), 1..6).prop_map(|steps| changed(&steps))
}

fn key(finding: &Arc<Finding>) -> (String, Vec<Topic>) {
    (finding.check.to_owned(), finding.about.clone())
}

fn stops(inspection: &Inspection) -> BTreeSet<(String, Vec<Topic>)> {
    inspection
        .findings
        .iter()
        .filter(|it| it.severity == Severity::Stop)
        .map(key)
        .collect()
}

/// A finding without what its remedies are called.
fn without_words(it: &Arc<Finding>) -> impl PartialEq + std::fmt::Debug + use<> {
    let edits: Vec<(bool, Edit)> = it
        .remedies
        .iter()
        .map(|remedy| (remedy.claims_safe(), remedy.edit.clone()))
        .collect();
    (key(it), it.severity, it.numbers.clone(), edits)
}

proptest! {
    #![proptest_config(ProptestConfig::with_cases(24))]

    #[test]
    fn a_safe_remedy_removes_its_finding_and_adds_no_stop(job in jobs()) {
        let before = inspect(&job);
        for finding in &before.findings {
            for remedy in finding.remedies.iter().filter(|it| it.claims_safe()) {
                let mut after = job.clone();
                let undo = apply(&mut after, remedy.edit.clone()).expect("a sound job");
                let answer = inspect(&after);
                let left = answer.findings.iter().any(|it| key(it) == key(finding));
                prop_assert!(!left, "{:?} does not clear {:?}", remedy.kind, key(finding));
                let stops_before = stops(&before);
                let new: Vec<_> = stops(&answer).difference(&stops_before).cloned().collect();
                prop_assert!(new.is_empty(), "{:?} makes {new:?}", remedy.kind);
                apply(&mut after, undo).expect("undone");
                prop_assert_eq!(&after, &job);
            }
        }
    }

    #[test]
    fn every_remedy_can_be_applied_or_is_refused_and_undone(job in jobs()) {
        for remedy in inspect(&job).findings.iter().flat_map(|it| &it.remedies) {
            let mut after = job.clone();
            if let Ok(undo) = apply(&mut after, remedy.edit.clone()) {
                prop_assert!(after != job, "{:?} changes nothing", remedy.kind);
                apply(&mut after, undo).expect("undone");
            }
            prop_assert_eq!(&after, &job);
        }
    }

    #[test]
    fn another_unit_changes_nothing_but_words(job in jobs()) {
        let metric = inspect(&job);
        let mut imperial = job.clone();
        imperial.unit = Unit::Inch;
        let imperial = inspect(&imperial);
        for (a, b) in metric.boxes.iter().zip(&imperial.boxes) {
            for (a, b) in a.panels.iter().zip(&b.panels) {
                prop_assert_eq!(&a.bores, &b.bores);
            }
        }
        let plain = |answer: &Inspection| -> Vec<_> {
            // Only inches are rounded to fractions.
            let both = answer.findings.iter().filter(|it| it.check != "rounding-drift");
            both.map(without_words).collect()
        };
        prop_assert_eq!(plain(&metric), plain(&imperial));
    }

    #[test]
    fn a_box_that_is_moved_keeps_its_bores(
        job in jobs(),
        index in 0..4_usize,
        along_wall in -3000.0..3000.0_f64,
        above_floor in 0.0..2000.0_f64,
    ) {
        let before = inspect(&job);
        let mut moved = job;
        moved.boxes[index].place = flapwright_model::cabinet::Place { along_wall, above_floor };
        let after = inspect(&moved);
        for (a, b) in before.boxes.iter().zip(&after.boxes) {
            for (a, b) in a.panels.iter().zip(&b.panels) {
                prop_assert_eq!(&a.bores, &b.bores);
                prop_assert_eq!(a.solid, b.solid);
            }
        }
    }

    #[test]
    fn safe_remedies_come_to_an_end(job in jobs()) {
        let before = inspect(&job);
        let run = apply_safe_remedies(&job);
        let again = apply_safe_remedies(&run.job);
        prop_assert!(again.applied.is_empty() && again.edit.is_none(), "{:?}", again.applied);
        prop_assert_eq!(format!("{:?}", run.inspection), format!("{:?}", flapwright_answer::inspect(&run.job)));
        let before_stops = stops(&before);
        let new: Vec<_> = stops(&run.inspection).difference(&before_stops).cloned().collect();
        prop_assert!(new.is_empty(), "{new:?}");
        prop_assert_eq!(run.applied.is_empty(), run.edit.is_none());
        let open = |answer: &Inspection| (answer.open(Severity::Stop), answer.open(Severity::Caution));
        if let Some(edit) = run.edit {
            prop_assert!(open(&run.inspection) < open(&before));
            let mut at_once = job.clone();
            let undo = apply(&mut at_once, edit).expect("a sound job");
            prop_assert_eq!(&at_once, &run.job);
            apply(&mut at_once, undo).expect("undone");
            prop_assert_eq!(&at_once, &job);
        } else {
            prop_assert_eq!(&run.job, &job);
        }
    }

    #[test]
    fn inspecting_again_gives_the_answer_of_inspecting_anew(
        edits in prop::collection::vec((0..8_u8, step()), 1..12),
    ) {
        let mut job = galley();
        let mut answer = Answer::of(&job);
        for (kind, step) in edits {
            let edit = other_edit(&job, kind, &step);
            let _refused = apply(&mut job, edit);
            answer.update(&job);
            prop_assert_eq!(format!("{:?}", answer.judged()), format!("{:?}", inspect(&job)));
        }
    }

    #[test]
    fn an_accepted_finding_comes_back_when_its_numbers_get_worse(job in jobs()) {
        let before = inspect(&job).findings;
        // One acceptance stands for one finding.
        let keys: BTreeSet<_> = before.iter().map(key).collect();
        prop_assert_eq!(keys.len(), before.len(), "two findings have one key");
        let mut accepted = job.clone();
        for finding in &before {
            let edit = accept(&accepted, finding, " seen ");
            apply(&mut accepted, edit).expect("a sound job");
        }
        for finding in &inspect(&accepted).findings {
            prop_assert_eq!(finding.accepted.as_deref(), Some("seen"), "{:?}", key(finding));
        }
        let most = before.iter().map(|it| it.numbers.len()).max().unwrap_or(0);
        for (place, by) in (0..most).flat_map(|place| [(place, 1.0), (place, -1.0)]) {
            let mut changed = accepted.clone();
            for number in changed.accepted.iter_mut().filter_map(|it| it.numbers.get_mut(place)) {
                number.value += by;
            }
            for finding in &inspect(&changed).findings {
                // Accepted at a worse number than it has now, it stays accepted.
                let stays = finding.numbers.get(place).is_none_or(|number| match number.worse {
                    Worse::Either => false,
                    Worse::Greater => by > 0.0,
                    Worse::Smaller => by < 0.0,
                });
                prop_assert_eq!(finding.accepted.is_some(), stays, "{:?} {}", key(finding), place);
            }
        }
    }
}

/// A step, or one of the rarer changes of a job.
fn other_edit(job: &Job, kind: u8, step: &Step) -> Edit {
    let index = step.0 % job.boxes.len();
    let mut head = JobHead::of(job);
    match kind {
        0 => {
            head.unit = Unit::Inch;
            Edit::ReplaceHead(Box::new(head))
        }
        1 => {
            head.settings.most_hand_force = 5.0;
            head.settings.sag_ratio = 5000.0;
            Edit::ReplaceHead(Box::new(head))
        }
        2 => {
            let mut materials = job.materials.clone();
            for material in &mut materials {
                material.density.high *= 1.2;
            }
            Edit::ReplaceMaterials(materials)
        }
        3 => {
            let mut cards = job.cards.clone();
            cards[0].card.example = None;
            cards[1].card.adjustment.upward.max = 0.5;
            Edit::ReplaceCards(cards)
        }
        4 if job.boxes.len() > 1 => Edit::RemoveBox {
            id: job.boxes[index].id,
        },
        5 => {
            let mut with = job.boxes[index].clone();
            with.forget_ids();
            Edit::InsertBox {
                after: (step.1 > 0).then_some(job.boxes[index].id),
                with: Box::new(with),
            }
        }
        6 => {
            let findings = inspect(job).findings;
            let reason = "looked at";
            findings
                .get(step.0)
                .map_or_else(|| edit_of(job, step), |it| accept(job, it, reason))
        }
        _ => edit_of(job, step),
    }
}
