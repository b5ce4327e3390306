//! The answer that is kept from edit to edit is the answer of the whole, and little is worked out
//! anew. The reference of each comparison is an answer that knows nothing from before.

#![expect(clippy::expect_used, reason = "a test without its job is to fail")]

use std::collections::BTreeSet;
use std::fmt::Write;

use flapwright_answer::{Answer, Work, apply_safe_remedies, inspect};
use flapwright_model::change::{duplicate_box, long_wall};
use flapwright_model::edit::{Edit, JobHead, apply};
use flapwright_model::file::read_job;
use flapwright_model::job::Job;
use flapwright_model::length::Unit;
use flapwright_model::severity::{Severity, SeveritySetting};
use flapwright_model::validate::validate;
use flapwright_rules::accept::accept;
use flapwright_rules::checks::{CHECKS, LooksAt, Seen, check, look_at_box};
use flapwright_rules::inspection::Inspection;
use flapwright_rules::placement::door_motions::DoorMotions;
use flapwright_rules::placement::place_box;

const GALLEY: &str = include_str!("../../../assets/demo/houseboat-galley.ron");
const TROUBLES: &str = include_str!("../../../assets/demo/houseboat-galley-troubles.ron");

fn job(text: &str) -> Job {
    read_job(text).expect("the demo is sound")
}

/// Numbers by chance, the same ones for the same seed: xorshift, 64 bit (Marsaglia 2003).
struct Chance(u64);

impl Chance {
    fn next(&mut self) -> u64 {
        self.0 ^= self.0 << 13;
        self.0 ^= self.0 >> 7;
        self.0 ^= self.0 << 17;
        self.0
    }

    fn below(&mut self, most: usize) -> usize {
        let most = u64::try_from(most.max(1)).expect("a small number");
        usize::try_from(self.next() % most).expect("a small number")
    }

    /// From -1 to 1 in steps of a hundredth.
    fn share(&mut self) -> f64 {
        let step = u8::try_from(self.below(201)).expect("below 201");
        f64::from(step) / 100.0 - 1.0
    }
}

/// Some edit of a job, which may be refused.
fn some_edit(job: &Job, answer: &Answer, chance: &mut Chance) -> Edit {
    let index = chance.below(job.boxes.len());
    let mut it = job.boxes[index].clone();
    let by = chance.share();
    match chance.below(17) {
        0 => it.width += 40.0 * by,
        16 => it.depth += 40.0 * by,
        1 => it.place.along_wall += 900.0 * by,
        2 => it.place.above_floor += 300.0 * by,
        3 => it.name.push('x'),
        4..=6 => {
            let doors: Vec<_> = it.doors().iter().map(|door| door.id).collect();
            let id = doors.get(chance.below(doors.len())).copied();
            if let Some(door) = id.and_then(|id| it.door_mut(id)) {
                match chance.below(3) {
                    0 => door.tweaks.top += 20.0 * by,
                    1 => door.tweaks.left += 20.0 * by,
                    _ => door.fitting = None,
                }
            }
        }
        7 => return duplicate_box(job, it.id).unwrap_or(Edit::Together(Vec::new())),
        8 if job.boxes.len() > 3 => return Edit::RemoveBox { id: it.id },
        9 => {
            let moved = it.id;
            let after = job.boxes[chance.below(job.boxes.len())].id;
            let after = (after != moved && chance.below(2) == 0).then_some(after);
            let with = Box::new(it);
            return Edit::Together(vec![
                Edit::RemoveBox { id: moved },
                Edit::InsertBox { after, with },
            ]);
        }
        10..=12 => return some_head(job, chance),
        13 => {
            let mut cards = job.cards.clone();
            let card = chance.below(cards.len());
            let name = &mut cards[card].card.name;
            name.push('x');
            name.truncate(40);
            return Edit::ReplaceCards(cards);
        }
        14 => {
            let findings = &answer.inspection().findings;
            if let Some(finding) = findings.get(chance.below(findings.len())) {
                return accept(job, finding, "seen");
            }
        }
        _ => {
            let mut materials = job.materials.clone();
            let index = chance.below(materials.len());
            materials[index].density.likely += by;
            return Edit::ReplaceMaterials(materials);
        }
    }
    Edit::replace_box(it)
}

/// Some change of head, settings or room.
fn some_head(job: &Job, chance: &mut Chance) -> Edit {
    let mut head = JobHead::of(job);
    let by = chance.share();
    let settings = &mut head.settings;
    match chance.below(24) {
        0 => head.title_block.revision.push('x'),
        1 => head.name.push('x'),
        2 => {
            head.unit = match head.unit {
                Unit::Millimetre => Unit::Inch,
                Unit::Inch => Unit::Millimetre,
            }
        }
        3 => head.room.ceiling += 100.0 * by,
        4 => settings.bumper_gap += by,
        5 => settings.off_fitting_ignored += 0.1 * by,
        6 => settings.point_lead += by,
        7 => settings.least_wood_behind += by,
        8 => settings.least_edge_web += 2.0 * by,
        9 => settings.least_bore_web += 2.0 * by,
        10 => settings.least_clearance += 2.0 * by,
        11 => settings.most_hand_force += 20.0 * by,
        12 => settings.highest_reach += 200.0 * by,
        13 => settings.head_height += 200.0 * by,
        14 => settings.head_allowance += 50.0 * by,
        15 => settings.finger_gap.max += 5.0 * by,
        16 => settings.most_uneven += by,
        17 => settings.sag_ratio += 50.0 * by,
        18 => settings.shelf_load += 20.0 * by,
        19 => settings.coldest += 5.0 * by,
        20 => settings.hottest += 5.0 * by,
        21 => settings.holds_above += 10.0 * by,
        22 => settings.grid_step += 8.0 * by,
        _ => {
            let check = CHECKS[chance.below(CHECKS.len())].name.to_owned();
            let weight = [
                SeveritySetting::Off,
                SeveritySetting::Stop,
                SeveritySetting::Note,
            ][chance.below(3)];
            if settings.weights.remove(&check).is_none() {
                settings.weights.insert(check, weight);
            }
        }
    }
    Edit::ReplaceHead(Box::new(head))
}

/// All that an answer says, as one text.
fn told(inspection: &Inspection) -> String {
    let mut told = String::new();
    for report in &inspection.boxes {
        // What a door sweeps over follows from its motion, and is reckoned when somebody asks.
        let doors: Vec<_> = report
            .doors()
            .map(|it| (it.id, it.closed.clone()))
            .collect();
        writeln!(
            told,
            "{:?} {} {:?} {doors:?}",
            report.id, report.name, report.panels
        )
        .expect("a text");
    }
    for finding in &inspection.findings {
        writeln!(told, "{finding:?}").expect("a text");
    }
    told
}

/// So many edits by chance, each compared; one in four takes an earlier one back.
fn run(text: &str, seed: u64, edits: usize) -> usize {
    let mut job = job(text);
    let mut chance = Chance(seed);
    let mut answer = Answer::of(&job);
    let mut back: Vec<Edit> = Vec::new();
    let mut taken = 0;
    for _ in 0..edits {
        let undo = chance.below(4) == 0;
        let edit = match back.pop().filter(|_| undo) {
            Some(edit) => edit,
            None => some_edit(&job, &answer, &mut chance),
        };
        let Ok(inverse) = apply(&mut job, edit) else {
            continue;
        };
        taken += 1;
        if chance.below(2) == 0 {
            answer.after(&job, &inverse.boxes());
        } else {
            answer.update(&job);
        }
        if !undo {
            back.push(inverse);
        }
        assert_eq!(
            told(answer.inspection()),
            told(&inspect(&job)),
            "edit {taken} of {seed}"
        );
        let keys = answer.inspection().findings.iter();
        let distinct: BTreeSet<_> = keys.map(|it| (it.check, &it.about)).collect();
        assert_eq!(distinct.len(), answer.inspection().findings.len());
    }
    taken
}

#[test]
fn the_kept_answer_is_the_whole_one_after_any_edit() {
    let taken: usize = (1..=4)
        .map(|seed| run(GALLEY, 0x9e37_79b9 * seed, 60))
        .sum();
    assert!(taken > 150, "only {taken} edits were taken");
}

#[test]
fn the_kept_answer_is_the_whole_one_in_a_job_with_troubles() {
    let taken = run(TROUBLES, 0x51ed_270b, 25);
    assert!(taken > 15, "only {taken} edits were taken");
}

#[test]
#[ignore = "ten thousand edits take minutes; run in release"]
fn ten_thousand_edits() {
    let mut taken = 0;
    for seed in 1..=40 {
        taken += run(GALLEY, 0x2545_f491 * seed, 360);
    }
    assert!(taken > 10_000, "only {taken} edits were taken");
}

/// A wall of galleys, sound and answered.
fn wall(boxes: usize) -> (Job, Answer) {
    let job = long_wall(&job(GALLEY), boxes, 5);
    assert_eq!(validate(&job), []);
    let answer = Answer::of(&job);
    (job, answer)
}

fn worked(job: &mut Job, answer: &mut Answer, edit: Edit) -> Work {
    apply(job, edit).expect("a sound job");
    answer.update(job);
    answer.work()
}

#[test]
fn doors_that_are_alike_are_reckoned_once() {
    let (_, few) = wall(40);
    let (_, many) = wall(120);
    assert_eq!(few.work().placed, 40);
    assert!(few.distinct_doors() <= 10, "{}", few.distinct_doors());
    assert_eq!(few.distinct_doors(), many.distinct_doors());
}

#[test]
fn an_edit_of_one_box_costs_the_box_and_its_neighbours() {
    let (mut job, mut answer) = wall(120);
    let mut it = job.boxes[60].clone();
    it.width -= 1.0;
    let work = worked(&mut job, &mut answer, Edit::replace_box(it));
    assert_eq!((work.placed, work.looked_at, work.cards), (1, 1, 0));
    assert!(work.pairs <= 9, "{work:?}");
    assert!(work.alike <= 2, "{work:?}");
}

#[test]
fn a_box_at_the_front_costs_no_other_box() {
    let (mut job, mut answer) = wall(120);
    let Some(Edit::InsertBox { mut with, .. }) = duplicate_box(&job, job.boxes[0].id) else {
        panic!("a copy");
    };
    with.place.above_floor = 12_000.0;
    with.place.along_wall = 0.0;
    let insert = Edit::InsertBox { after: None, with };
    let work = worked(&mut job, &mut answer, insert);
    assert_eq!((work.placed, work.looked_at, work.pairs), (1, 1, 1));
    let first = job.boxes[0].id;
    let work = worked(&mut job, &mut answer, Edit::RemoveBox { id: first });
    assert_eq!((work.placed, work.looked_at, work.pairs), (0, 0, 0));
}

#[test]
fn what_no_check_reads_costs_nothing() {
    let (mut job, mut answer) = wall(40);
    let edits: [fn(&mut JobHead); 4] = [
        |head| head.title_block.revision.push('B'),
        |head| head.name.push('B'),
        |head| head.title_block.creator.push('B'),
        |head| head.settings.inches_on_sheets = true,
    ];
    for change in edits {
        let mut head = JobHead::of(&job);
        change(&mut head);
        let work = worked(&mut job, &mut answer, Edit::ReplaceHead(Box::new(head)));
        assert_eq!(work, Work::default());
    }
    let mut head = JobHead::of(&job);
    head.settings.least_edge_web += 1.0;
    let work = worked(&mut job, &mut answer, Edit::ReplaceHead(Box::new(head)));
    assert_eq!((work.placed, work.looked_at, work.pairs), (0, 40, 0));
}

#[test]
fn boxes_in_one_place_are_not_compared_each_with_all() {
    let mut job = job(GALLEY);
    let one = job.boxes[1].clone();
    job.boxes.retain(|it| it.id == one.id);
    for _ in 0..99 {
        let Some(Edit::InsertBox { after, mut with }) = duplicate_box(&job, one.id) else {
            panic!("a copy");
        };
        with.place = one.place;
        apply(&mut job, Edit::InsertBox { after, with }).expect("a sound job");
    }
    let mut answer = Answer::of(&job);
    assert!(answer.work().pairs <= 100 * 17, "{:?}", answer.work());
    let findings = &answer.inspection().findings;
    let crowds = findings.iter().filter(|it| {
        it.check == "doors-overlap" && it.severity == Severity::Stop && it.subjects.len() == 1
    });
    // All but the last seventeen have more than sixteen of later identity beside them.
    assert_eq!(crowds.count(), 83);
    let mut moved = job.boxes[50].clone();
    moved.place.along_wall += 5000.0;
    apply(&mut job, Edit::replace_box(moved)).expect("a sound job");
    answer.update(&job);
    assert_eq!(told(answer.inspection()), told(&inspect(&job)));
}

#[test]
fn a_verdict_on_a_remedy_is_the_one_of_a_fresh_answer() {
    let mut job = job(TROUBLES);
    let mut chance = Chance(0x1234_5678_9abc);
    let mut answer = Answer::of(&job);
    for _ in 0..12 {
        let edit = some_edit(&job, &answer, &mut chance);
        let Ok(inverse) = apply(&mut job, edit) else {
            continue;
        };
        answer.after(&job, &inverse.boxes());
        let kept = format!("{:?}", answer.judged().findings);
        assert_eq!(
            kept,
            format!("{:?}", flapwright_answer::judged(&job).findings)
        );
    }
}

#[test]
fn a_check_of_one_box_goes_by_no_other_box() {
    // Doors alike in boxes that are not.
    let mut wall = long_wall(&job(TROUBLES), 36, 3);
    for (wall_box, by) in wall.boxes.iter_mut().zip([0.0, 15.0, -40.0].iter().cycle()) {
        wall_box.depth += by;
    }
    for job in [job(GALLEY), job(TROUBLES), wall] {
        let inspection = inspect(&job);
        let kept = inspection.findings.iter();
        let of_boxes =
            kept.filter(|it| check(it.check).is_some_and(|it| it.looks_at() == LooksAt::Box));
        let mut left = of_boxes.count();
        for wall_box in &job.boxes {
            // Nothing is shared here.
            let report = &place_box(&job, wall_box);
            let seen = Seen { wall_box, report };
            for mut found in look_at_box(&job, seen, &DoorMotions::default(), |_| true) {
                left -= 1;
                let kept = inspection.findings.iter();
                let mut kept = kept.filter(|it| it.check == found.check && it.about == found.about);
                let kept = kept.next().expect("the same finding");
                // Who accepted it is no affair of the check.
                found.accepted.clone_from(&kept.accepted);
                assert_eq!(found, **kept);
            }
        }
        assert_eq!(left, 0);
    }
}

#[test]
fn safe_remedies_of_a_long_wall_leave_none() {
    let mut pattern = job(GALLEY);
    // Reveals of the last box a step off those beside it: each neighbour is to follow.
    for wall_box in pattern.boxes.iter_mut().skip(1) {
        wall_box.height = 540.0;
    }
    let job = long_wall(&pattern, 24, 3);
    let run = apply_safe_remedies(&job);
    let again = apply_safe_remedies(&run.job);
    assert_eq!(again.applied, []);
    assert_eq!(told(&run.inspection), told(&inspect(&run.job)));
    if let Some(edit) = run.edit {
        let mut at_once = job.clone();
        apply(&mut at_once, edit).expect("a sound job");
        assert_eq!(at_once, run.job);
    }
}
