//! How drilled panels lie on the bench: design.md's frames and the amendments' band test, by hand.

use crate::common::*;
use flapwright_model::cabinet::{Drilled, PanelBands};
use flapwright_model::door::{Handle, HandleScrews};
use flapwright_model::edges::Edges;
use flapwright_model::id::{BoxId, DoorId};
use flapwright_model::job::Job;
use flapwright_model::part::{BoreId, LeafId, Part, Subject};
use flapwright_rules::finding::Severity;
use flapwright_rules::inspection::{FaceBands, PanelReport};
use flapwright_rules::machine_frame::{
    BenchEdge, bands_to_come, edge_name, fitted_doors, is_cut, is_invented, is_open_for,
    open_findings, size, u_runs_left, uv, xy,
};

/// The plain box with sides banded 1 at the front, 2 at the back, 3 at the top end and 4 at the
/// bottom end, drilled before or after banding.
fn banded(drilled: Drilled) -> Job {
    let mut wall_box = wall_box();
    for side in [&mut wall_box.left, &mut wall_box.right] {
        side.bands = PanelBands {
            front: 1.0,
            back: 2.0,
            top_or_left: 3.0,
            bottom_or_right: 4.0,
        };
        side.drilled = drilled;
    }
    job(wall_box, card())
}

fn side(job: &Job, part: Part) -> PanelReport {
    the_panel(&inspect(job).boxes[0], part).clone()
}

#[test]
fn a_panel_drilled_before_banding_is_measured_from_its_cut_edges() {
    // The card's first bore: 41 behind the front, 64 below the underside at 582, so 82 below the
    // top end. The side is 322 deep (330 less the back that
    // is laid on) and 600 high. Amendment: 37.0 after, 36.0 before a band of 1.
    let after = side(&banded(Drilled::AfterBanding), Part::LeftSide);
    assert!(!is_cut(&after));
    assert_eq!(bands_to_come(&after), FaceBands::default());
    assert_eq!(size(&after), [322.0, 600.0]);
    assert_eq!(uv(&after, &after.bores[0]), [41.0, 82.0]);
    assert_eq!(xy(&after, &after.bores[0]), [41.0, 600.0 - 82.0]);

    let before = side(&banded(Drilled::BeforeBanding), Part::LeftSide);
    assert!(is_cut(&before));
    assert_eq!(
        bands_to_come(&before),
        FaceBands {
            u_start: 1.0,
            u_end: 2.0,
            v_start: 3.0,
            v_end: 4.0
        }
    );
    assert_eq!(size(&before), [319.0, 593.0]);
    assert_eq!(uv(&before, &before.bores[0]), [40.0, 79.0]);
    assert_eq!(xy(&before, &before.bores[0]), [40.0, 593.0 - 79.0]);
}

#[test]
fn only_a_right_side_lies_with_its_front_edge_at_the_right() {
    let job = banded(Drilled::BeforeBanding);
    let right = side(&job, Part::RightSide);
    assert!(u_runs_left(&right));
    assert_eq!(uv(&right, &right.bores[0]), [40.0, 79.0]);
    assert_eq!(xy(&right, &right.bores[0]), [319.0 - 40.0, 593.0 - 79.0]);
    let report = &inspect(&job).boxes[0];
    assert!(!u_runs_left(the_panel(report, Part::LeftSide)));
    assert!(!u_runs_left(the_leaf(report, 0)));
    assert!(!u_runs_left(the_panel(report, Part::Top)));
}

#[test]
fn every_edge_on_the_bench_has_the_name_that_it_has_on_the_box() {
    use BenchEdge::{Far, Left, Near, Right};
    let job = job(wall_box(), with_hinges(card()));
    let report = &inspect(&job).boxes[0];
    let names = |part: Part| {
        let panel = the_panel(report, part);
        [Left, Right, Far, Near].map(|edge| edge_name(panel, edge))
    };
    assert_eq!(
        names(Part::LeftSide),
        ["front edge", "back edge", "top end", "bottom end"]
    );
    assert_eq!(
        names(Part::RightSide),
        ["back edge", "front edge", "top end", "bottom end"]
    );
    assert_eq!(
        names(Part::Top),
        ["box-left end", "box-right end", "front edge", "back edge"]
    );
    assert_eq!(
        names(LEAF),
        ["box-right edge", "box-left edge", "top edge", "bottom edge"]
    );
    assert_eq!(names(Part::Back), ["left", "right", "top", "bottom"]);
}

#[test]
fn a_panel_is_invented_when_its_job_or_a_card_that_it_is_drilled_for_is() {
    let mut job = job(wall_box(), card());
    let invented = |job: &Job, part: Part| {
        let answer = inspect(job);
        is_invented(job, &answer.boxes[0], the_panel(&answer.boxes[0], part))
    };
    job.invented = false;
    assert!(invented(&job, Part::LeftSide), "the card is invented");
    assert!(
        !invented(&job, Part::Bottom),
        "nothing of the card is in it"
    );
    job.cards[0].card.invented = false;
    assert!(!invented(&job, Part::LeftSide));
    job.invented = true;
    assert!(invented(&job, Part::Bottom));
}

/// A box with a shelf between two fitted doors; only the lower door has a handle.
fn two_doors() -> Job {
    let mut wall_box = wall_box();
    let mut lower = door(Edges::all(3.0));
    lower.handle = Some(Handle {
        mass: 0.1,
        up: 40.0,
        right_of_middle: 0.0,
        projection: 20.0,
        length: 160.0,
        screws: Some(HandleScrews {
            spacing: 128.0,
            diameter: 5.0,
        }),
    });
    split(&mut wall_box, fixed_shelf(250.0, 19.0, 3.0), Some(lower));
    job(wall_box, card())
}

#[test]
fn a_panel_knows_the_doors_whose_fittings_it_carries() {
    let answer = inspect(&two_doors());
    let report = &answer.boxes[0];
    // Two bores in each side for each opening; handle screws are none of the fitting's.
    let of = |panel: &PanelReport| fitted_doors(panel).collect::<Vec<_>>();
    let [a, b] = [0, 1].map(|opening| the_door(report, opening).id);
    assert_eq!(of(the_panel(report, Part::LeftSide)), [a, a, b, b]);
    assert_eq!(of(the_leaf(report, 1)), [b, b, b, b]);
    assert_eq!(the_leaf(report, 1).bores.len(), 6);
    assert!(of(the_panel(report, Part::Top)).is_empty());
}

#[test]
fn a_finding_is_about_the_panels_that_carry_its_fitting() {
    let answer = inspect(&two_doors());
    let report = &answer.boxes[0];
    let part = |part| part_id(part);
    let leaf = |opening| Part::Leaf {
        door: the_door(report, opening).id,
        leaf: LeafId::Only,
    };
    let about = |subject: Subject, of: Part| {
        let mut finding = flapwright_rules::finding::Finding::clone(&answer.findings[0]);
        finding.accepted = None;
        finding.subjects = vec![subject];
        is_open_for(&finding, the_panel(report, of))
    };
    let left = Subject::Part(part(Part::LeftSide));
    assert!(about(left, Part::LeftSide));
    assert!(!about(left, Part::RightSide));
    let bore = Subject::Bore(BoreId {
        part: part(leaf(0)),
        number: 1,
    });
    assert!(about(bore, leaf(0)));
    assert!(!about(bore, leaf(1)));
    let door = Subject::Door(report.id, the_door(report, 1).id);
    assert!(about(door, leaf(1)), "the door itself");
    assert!(!about(door, leaf(0)), "the other door");
    assert!(about(door, Part::LeftSide), "its fitting is on the side");
    assert!(!about(door, Part::Top), "nothing of its fitting is in it");
    let elsewhere = Subject::Door(BoxId::new(99), DoorId::new(98));
    assert!(!about(elsewhere, leaf(1)), "another box");
    assert!(!about(elsewhere, Part::LeftSide), "another box");
    assert!(!about(Subject::Box(report.id), Part::LeftSide));
}

#[test]
fn open_findings_of_a_panel_are_counted_by_severity() {
    // A side so thin that both bores of 12 come through: one stop, about the side.
    let mut job = job(wall_box(), card());
    job.boxes[0].left.thickness = 12.0;
    let count = |job: &Job, severity| {
        let answer = inspect(job);
        let panel = the_panel(&answer.boxes[0], Part::LeftSide);
        open_findings(&answer, panel, severity)
    };
    let stops = |job: &Job| {
        let findings = inspect(job).findings;
        findings
            .iter()
            .filter(|it| it.check == "bore-breaks-through")
            .count()
    };
    let before = count(&job, Severity::Stop);
    assert_eq!((before, stops(&job)), (1, 1));
    assert_eq!(count(&job, Severity::Caution), 0);
    let finding = inspect(&job)
        .findings
        .into_iter()
        .find(|it| it.check == "bore-breaks-through")
        .expect("it is there");
    let edit = flapwright_rules::accept::accept(&job, &finding, "a scrap side");
    flapwright_model::edit::apply(&mut job, edit).expect("it fits");
    assert_eq!(count(&job, Severity::Stop), 0);
}
