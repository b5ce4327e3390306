//! What recording and forgetting a panel does to the job. See `drilled_panel_differs` for the places of the
//! bores.

use crate::common::*;
use crate::drilled_panel_differs::{NAME, differs, id, leaf_of, plain, recorded};
use crate::drilled_panel_remedies::pair;
use crate::findings::*;
use flapwright_model::change::{forget_records, is_drilled};
use flapwright_model::door::BoreReference;
use flapwright_model::edit::{Edit, apply};
use flapwright_model::id::{BoxId, ShelfId};
use flapwright_model::job::Job;
use flapwright_model::part::{LeafId, Part, PartId};
use flapwright_model::record::RecordState::{self, Drilled, SheetExported};
use flapwright_rules::records::{as_needed, record};

#[test]
fn the_bores_of_a_pair_hang_as_drilled_until_its_last_leaf_is_forgotten() {
    let both = [leaf_of(LeafId::Upper), leaf_of(LeafId::Lower)];
    let mut job = recorded(pair(folding_card(4.0)), &both, Drilled);
    let forgotten = |job: &mut Job, part: Part| {
        let edit = forget_records(job, &[id(part)]).expect("a record");
        apply(job, edit).expect("forgetting is sound");
        matches!(
            the_job_door(job, 0).bores_follow,
            BoreReference::AsDrilled(_)
        )
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
    let as_drilled = the_job_door(&mut job, 0).bores_follow.clone();
    job = recorded(job, &[Part::LeftSide], Drilled);
    // Marked as exported only.
    for record in &mut job.boxes[0].records {
        if record.part == LEAF {
            record.state = SheetExported;
        }
    }
    for part in [LEAF, Part::LeftSide] {
        let edit = forget_records(&job, &[id(part)]).expect("a record");
        apply(&mut job, edit).expect("forgetting is sound");
        assert_eq!(the_job_door(&mut job, 0).bores_follow, as_drilled);
    }
    assert_eq!(job.boxes[0].records, []);
}

#[test]
fn exporting_a_door_s_sheet_leaves_its_bores_on_the_fitting() {
    let mut job = recorded(job(wall_box(), card()), &[LEAF], SheetExported);
    assert_eq!(
        the_job_door(&mut job, 0).bores_follow,
        BoreReference::Fitting
    );
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
    add_box(&mut job, second);
    let ids = [
        PartId {
            box_id: job.boxes[1].id,
            part: Part::LeftSide,
        },
        // Neither this shelf nor this box is there.
        id(Part::Shelf(ShelfId::new(93))),
        PartId {
            box_id: BoxId::new(97),
            part: Part::LeftSide,
        },
    ];
    let edit = record(&job, &inspect(&job), &ids, Drilled);
    let Edit::Together(edits) = &edit else {
        panic!("one step")
    };
    assert!(
        matches!(edits[..], [Edit::ReplaceBox { id, .. }] if id == job.boxes[1].id),
        "{edits:?}"
    );
    apply(&mut job, edit).expect("a record is sound");
    assert_eq!(job.boxes[0].records, []);
    assert_eq!(job.boxes[1].records.len(), 1);
    assert_eq!(forget_records(&job, &[id(Part::LeftSide)]), None);
}

#[test]
fn a_box_as_needed_keeps_the_bores_of_a_door_that_was_there_before() {
    // The bores of an existing door that is not recorded as drilled are typed facts.
    let mut job = plain(LEAF);
    if let BoreReference::AsDrilled(drilled) = &mut the_job_door(&mut job, 0).bores_follow {
        drilled[0].along += 40.0;
    }
    let places_of = |job: &Job| places(the_leaf(&as_needed(job, &job.boxes[0]), 0));
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
fn marking_a_drilled_panel_again_takes_it_as_it_stands() {
    let mut job = plain(Part::LeftSide);
    job.boxes[0].left.thickness = 16.0;
    differs(&job, "size: what thickness, was 18 mm, is 16 mm");
    let job = recorded(job, &[Part::LeftSide], Drilled);
    assert_eq!(found(&job, NAME), []);
}
