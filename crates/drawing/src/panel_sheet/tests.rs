//! Sheets as a whole.

mod many;

use std::sync::Arc;

use flapwright_model::cabinet::Drilled;
use flapwright_model::door::Side;
use flapwright_model::job::Job;
use flapwright_model::length::show_mm_tenth;
use flapwright_model::message::{Count, Mm, Word};
use flapwright_model::part::{BoreId, Subject};
use flapwright_rules::finding::{Finding, Severity};
use flapwright_rules::inspection::{BoreSource, Face, FaceBands, Inspection, PanelReport};
use flapwright_rules::message::{BoreNearEdge, Message};

use crate::fixture::{FITTING, bore, panel, with_panels};
use crate::job_sheets::{Orientation, PageOptions, job_sheets};
use crate::list::{At, Shape};
use crate::overlap::overlapping_texts;
use crate::pen::{Ink, Pen};
use crate::scale::Scale;
use crate::sheet::Sheet;

/// The drilling sheets of a job alone.
pub(super) fn sheets(job: &Job, inspection: &Inspection) -> Vec<Sheet> {
    job_sheets(job, inspection, &PageOptions::panels_only())
}

fn one(panel: PanelReport) -> Sheet {
    let (job, inspection) = with_panels(vec![panel]);
    sheets(&job, &inspection).remove(0)
}

fn texts(sheet: &Sheet) -> Vec<(String, At)> {
    let text = |item: &crate::list::Item| match &item.shape {
        Shape::Text { at, text, .. } => Some((text.clone(), *at)),
        _ => None,
    };
    sheet.list.items.iter().filter_map(text).collect()
}

/// Whether the sheet says these words; a text may be broken into lines.
fn has(sheet: &Sheet, words: &str) -> bool {
    let all: Vec<String> = texts(sheet).into_iter().map(|(text, _)| text).collect();
    all.join(" ").contains(words)
}

/// Centres of the holes on paper, in the order of their numbers.
fn centres(sheet: &Sheet) -> Vec<At> {
    let mut found: Vec<(usize, At)> = Vec::new();
    for item in &sheet.list.items {
        if let (
            Some(Subject::Bore(id)),
            Shape::Circle {
                centre,
                pen: Pen::Outline,
                ..
            },
        ) = (item.of, &item.shape)
        {
            found.push((id.number, *centre));
        }
    }
    found.sort_by_key(|(number, _)| *number);
    found.into_iter().map(|(_, centre)| centre).collect()
}

/// The zero corner: centre of the ring of 2 mm radius.
fn zero(sheet: &Sheet) -> At {
    let ring = |item: &crate::list::Item| match item.shape {
        Shape::Circle {
            centre,
            radius: 2.0,
            pen: Pen::Outline,
            ..
        } => Some(centre),
        _ => None,
    };
    sheet.list.items.iter().find_map(ring).expect("zero ring")
}

fn scale(sheet: &Sheet) -> f64 {
    let words = texts(sheet);
    let found = words
        .iter()
        .find_map(|(text, _)| text.strip_prefix("1:")?.parse::<f64>().ok());
    1.0 / found.expect("a scale in the title block")
}

/// Two holes near an edge, one above the other, with all the room of the panel beside them.
#[test]
fn a_hole_with_room_beside_it_has_its_number() {
    let places = [
        (67.0, 89.0),
        (163.0, 89.0),
        (115.0, 136.0),
        (25.0, 464.0),
        (25.0, 500.0),
    ];
    let (job, inspection) = with_panels(vec![panel(LEFT, [330.0, 540.0], &places)]);
    let options = PageOptions {
        largest_scale: Scale::new(1, 20),
        ..PageOptions::panels_only()
    };
    let sheet = job_sheets(&job, &inspection, &options).remove(0);
    assert!(!has(&sheet, "Holes without a number"));
}

/// A bore that misses its panel is a stop and stands in the table; on paper it would lie over what is
/// beside the picture.
#[test]
fn a_hole_outside_the_panel_is_said_and_not_drawn() {
    let places = [(37.0, 50.0), (181.0, 60.0), (133.0, 250.0)];
    for face in [LEFT, RIGHT] {
        let (job, inspection) = with_panels(vec![panel(face, [80.0, 330.0], &places)]);
        let set = sheets(&job, &inspection);
        let space = set[0].paper.drawing_space();
        let drawn: usize = set.iter().map(|sheet| centres(sheet).len()).sum();
        assert_eq!(drawn, 1, "{face:?}");
        assert!(
            set.iter()
                .any(|sheet| has(sheet, "Holes outside the panel"))
        );
        assert!(
            set.iter()
                .any(|sheet| has(sheet, "181.0") && has(sheet, "133.0"))
        );
        for sheet in &set {
            for centre in centres(sheet) {
                assert!(space.contains(centre), "{face:?} {centre:?}");
            }
        }
    }
}

/// A door with fifteen holes on A4 lying: beside its table the picture would have no room for all
/// numbers, on a page of its own it has.
#[test]
fn a_table_moves_to_the_next_page_before_numbers_are_left_out() {
    let places: Vec<(f64, f64)> = [111.0, 447.0, 783.0]
        .into_iter()
        .flat_map(|u| {
            [
                (u, 20.0),
                (u - 21.5, 29.5),
                (u + 21.5, 29.5),
                (u, 126.0),
                (u, 167.0),
            ]
        })
        .collect();
    let (job, inspection) = with_panels(vec![panel(Face::DoorBack, [894.0, 304.0], &places)]);
    for orientation in [Orientation::Lying, Orientation::Upright] {
        let options = PageOptions {
            orientation,
            ..PageOptions::panels_only()
        };
        for sheet in job_sheets(&job, &inspection, &options) {
            assert!(!has(&sheet, "Holes without a number"), "{orientation:?}");
        }
    }
}

const LEFT: Face = Face::SideInner(Side::Left);
const RIGHT: Face = Face::SideInner(Side::Right);

#[test]
fn holes_lie_at_u_and_v_times_the_scale_from_zero_and_only_a_right_side_is_mirrored() {
    let places = [(37.0, 64.0), (229.0, 64.0), (50.5, 400.25)];
    for (face, sign) in [
        (LEFT, 1.0),
        (RIGHT, -1.0),
        (Face::DoorBack, 1.0),
        (Face::Underside, 1.0),
    ] {
        let sheet = one(panel(face, [330.0, 720.0], &places));
        let (zero, scale) = (zero(&sheet), scale(&sheet));
        for (centre, (u, v)) in centres(&sheet).iter().zip(places) {
            let expected = At::new(zero.x + sign * u * scale, zero.y - v * scale);
            assert!(
                (*centre - expected).length() < 1e-9,
                "{face:?}: {centre:?} {expected:?}"
            );
        }
        assert_eq!(centres(&sheet).len(), 3);
    }
}

#[test]
fn the_sheet_says_which_face_is_seen_and_where_its_edges_are() {
    let places = [(37.0, 64.0)];
    let left = one(panel(LEFT, [330.0, 720.0], &places));
    assert!(has(&left, "LEFT SIDE") && has(&left, "front edge at the LEFT"));
    let right = one(panel(RIGHT, [330.0, 720.0], &places));
    assert!(has(&right, "RIGHT SIDE") && has(&right, "front edge at the RIGHT"));
    let front = texts(&right)
        .into_iter()
        .find(|(text, _)| text.starts_with("FRONT EDGE"));
    assert!(
        front.expect("front edge").1.x > zero(&right).x,
        "at the right of the picture"
    );
    let door = one(panel(Face::DoorBack, [700.0, 400.0], &places));
    assert!(has(&door, "seen from the back"));
    let box_right = texts(&door)
        .into_iter()
        .find(|(text, _)| text.starts_with("BOX-RIGHT"));
    assert!(
        box_right.expect("box-right edge").1.x < zero(&door).x,
        "box-right is at the left"
    );
    let top = one(panel(Face::Underside, [700.0, 300.0], &places));
    let box_left = texts(&top)
        .into_iter()
        .find(|(text, _)| text.starts_with("BOX-LEFT"));
    assert!(box_left.expect("box-left end").1.x < zero(&top).x);
    assert!(has(&top, "Underside up: seen from below"));
}

/// A 1 mm band: 37.0 from the finished edge is 36.0 from the cut one.
#[test]
fn before_banding_distances_are_less_by_the_band() {
    let mut side = panel(LEFT, [330.0, 720.0], &[(37.0, 64.0)]);
    side.bands = FaceBands {
        u_start: 1.0,
        ..FaceBands::default()
    };
    let after = one(side.clone());
    assert!(has(&after, "FINISHED") && texts(&after).iter().any(|(text, _)| text == "37.0"));
    side.drilled = Drilled::BeforeBanding;
    let before = one(side);
    assert!(texts(&before).iter().any(|(text, _)| text == "CUT"));
    assert!(texts(&before).iter().any(|(text, _)| text == "36.0"));
    assert!(!texts(&before).iter().any(|(text, _)| text == "37.0"));
    assert!(has(&before, "329.0 × 720.0"), "the outline is the cut size");
}

#[test]
fn the_hole_table_has_a_row_for_each_bore() {
    let places = [(37.0, 64.0), (69.25, 64.0), (229.0, 131.5), (301.0, 700.0)];
    let sheet = one(panel(LEFT, [330.0, 720.0], &places));
    let words = texts(&sheet);
    for (i, (u, v)) in places.iter().enumerate() {
        // A row: its number, u and v are on one baseline, in this order from left to right.
        let row: Vec<Vec<&(String, At)>> =
            [(i + 1).to_string(), show_mm_tenth(*u), show_mm_tenth(*v)]
                .iter()
                .map(|cell| words.iter().filter(|(text, _)| text == cell).collect())
                .collect();
        let found = row[0].iter().any(|no| {
            let beside = |cell: &&&(String, At)| (cell.1.y - no.1.y).abs() < 1e-9;
            let u = row[1].iter().find(beside);
            let v = row[2].iter().rfind(beside);
            u.zip(v)
                .is_some_and(|(u, v)| no.1.x < u.1.x && u.1.x < v.1.x)
        });
        assert!(found, "bore {} at {u}, {v}", i + 1);
    }
    assert_eq!(
        words
            .iter()
            .filter(|(text, _)| text == "fitting screw")
            .count(),
        4
    );
}

#[test]
fn many_shelf_bores_are_listed_in_compact_form_and_all_drawn() {
    let mut side = panel(RIGHT, [330.0, 2000.0], &[]);
    for i in 0..60 {
        let (u, v) = if i % 2 == 0 {
            (37.0, 0.0)
        } else {
            (293.0, 0.0)
        };
        let v = v + 64.0 + 32.0 * f64::from(i / 2);
        side.bores
            .push(bore(i as usize + 1, RIGHT, u, v, BoreSource::SystemRow));
    }
    side.bores.push(bore(61, RIGHT, 50.0, 1990.0, FITTING));
    let (job, inspection) = with_panels(vec![side]);
    let set = sheets(&job, &inspection);
    let drawn: usize = set.iter().map(|sheet| centres(sheet).len()).sum();
    assert_eq!(drawn, 61);
    assert!(
        set.iter()
            .any(|sheet| has(sheet, "60 holes Ø5.0, depth 11.0"))
    );
    let last = set
        .iter()
        .flat_map(texts)
        .filter(|(text, _)| text == "992.0")
        .count();
    assert!(last >= 2, "64 + 29 x 32 stands in both rows");
    for sheet in &set {
        assert_eq!(overlapping_texts(&sheet.list), []);
    }
}

#[test]
fn a_table_too_long_for_the_sheet_runs_on_and_loses_no_row() {
    let places: Vec<(f64, f64)> = (0..300)
        .map(|i| {
            (
                20.0 + f64::from(i % 10) * 30.0,
                20.0 + f64::from(i / 10) * 24.0,
            )
        })
        .collect();
    let (job, inspection) = with_panels(vec![panel(LEFT, [330.0, 760.0], &places)]);
    let set = sheets(&job, &inspection);
    assert!(set.len() > 1);
    let rows: usize = set
        .iter()
        .map(|sheet| {
            texts(sheet)
                .iter()
                .filter(|(text, _)| text == "fitting screw")
                .count()
        })
        .sum();
    assert_eq!(rows, 300);
    assert!(has(&set[0], &format!("1 of {}", set.len())));
    assert!(has(&set[0], "Hole table: next page"));
}

#[test]
fn findings_stand_on_the_sheet_of_their_panel_and_ring_their_hole() {
    let side = panel(LEFT, [330.0, 720.0], &[(37.0, 64.0), (229.0, 64.0)]);
    let part = side.id;
    let other = panel(RIGHT, [330.0, 720.0], &[(37.0, 64.0)]);
    let (job, mut inspection) = with_panels(vec![side, other]);
    inspection.findings.push(Arc::new(Finding {
        check: "bore-near-edge",
        severity: Severity::Stop,
        message: Message::from(BoreNearEdge::Near {
            bore: Count(2),
            purpose: "arm".to_owned(),
            edge: Word("front-edge"),
            wood_to_the_edge: Mm(1.5),
            wanted: Mm(3.0),
        }),
        reasons: Vec::new(),
        about: Vec::new(),
        accepted: None,
        subjects: vec![Subject::Bore(BoreId { part, number: 2 })],
        numbers: Vec::new(),
        remedies: Vec::new(),
    }));
    let set = sheets(&job, &inspection);
    assert!(has(
        &set[0],
        "DO NOT DRILL: 1 stop open for this panel or its door"
    ));
    assert!(has(&set[0], "bore 2 (arm) leaves 1.5 mm to the front edge"));
    assert!(has(&set[0], "STOP: fitting screw"));
    let ring = set[0]
        .list
        .items
        .iter()
        .find(|item| item.ink == Ink::Stop && matches!(item.shape, Shape::Circle { .. }));
    let Some(Shape::Circle { centre, .. }) = ring.map(|item| &item.shape) else {
        panic!("no ring");
    };
    assert_eq!(*centre, centres(&set[0])[1]);
    assert!(!has(&set[1], "DO NOT DRILL") && !has(&set[1], "open for this panel or its door"));
}

#[test]
fn the_same_job_gives_the_same_sheets() {
    let make = || {
        let (job, inspection) = with_panels(vec![
            panel(LEFT, [330.0, 720.0], &[(37.0, 64.0), (42.0, 64.0)]),
            panel(
                Face::DoorBack,
                [800.0, 400.0],
                &[(20.0, 64.0), (780.0, 64.0)],
            ),
        ]);
        sheets(&job, &inspection)
    };
    assert_eq!(make(), make());
    let slugs: Vec<String> = make().into_iter().map(|sheet| sheet.slug).collect();
    assert_eq!(slugs, ["01-plates-left-side", "02-plates-door"]);
}

#[test]
fn a_panel_without_bores_has_no_sheet() {
    let (job, inspection) = with_panels(vec![panel(LEFT, [330.0, 720.0], &[])]);
    assert!(sheets(&job, &inspection).is_empty());
}
