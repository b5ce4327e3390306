//! Many panels, and extreme ones.

use euclid::default::Rect;
use flapwright_model::job::PaperChoice;
use flapwright_model::part::Subject;
use flapwright_rules::inspection::Face;

use super::{LEFT, RIGHT, centres, one, scale, sheets, texts};
use crate::fixture::{Lcg, panel, with_panels};
use crate::list::Shape;
use crate::overlap::{overlapping_texts, texts_on_lines};
use crate::pen::Layer;
use crate::sheet::Sheet;

#[test]
fn no_text_lies_on_another_or_leaves_the_frame_on_a_thousand_panels() {
    let mut lcg = Lcg(20_260_717);
    let faces = [LEFT, RIGHT, Face::DoorBack, Face::Underside];
    let papers = [
        PaperChoice::A4,
        PaperChoice::A3,
        PaperChoice::Letter,
        PaperChoice::Tabloid,
    ];
    for round in 0..1000 {
        let size = [lcg.between(40.0, 3000.0), lcg.between(40.0, 3000.0)];
        let size = if round % 3 == 0 {
            [size[0].min(600.0), size[1].min(800.0)]
        } else {
            size
        };
        let face = faces[lcg.below(4)];
        let count = 1 + lcg.below(if round % 10 == 0 { 60 } else { 16 });
        let mut places: Vec<(f64, f64)> = Vec::new();
        for _ in 0..count {
            let near = places.last().copied().filter(|_| lcg.below(3) == 0);
            let (u, v) = near.map_or_else(
                || {
                    (
                        lcg.between(3.0, size[0] - 3.0),
                        lcg.between(3.0, size[1] - 3.0),
                    )
                },
                |(u, v)| ((u + 5.0).min(size[0] - 3.0), v),
            );
            places.push((u, v));
        }
        let mut panel = panel(face, size, &places);
        panel.bands.u_start = if lcg.below(2) == 0 { 1.0 } else { 0.0 };
        let (mut job, inspection) = with_panels(vec![panel]);
        job.settings.paper = papers[lcg.below(4)];
        job.settings.inches_on_sheets = lcg.below(4) == 0;
        for sheet in sheets(&job, &inspection) {
            let overlaps = overlapping_texts(&sheet.list);
            assert!(
                overlaps.is_empty(),
                "round {round}, {face:?} {size:?} {count}: {overlaps:?}"
            );
            let struck = texts_on_lines(&sheet.list);
            assert!(
                struck.is_empty(),
                "round {round}, {face:?} {size:?} {count}: {struck:?}"
            );
            let frame = sheet.paper.drawing_space().inflate(0.01, 0.01);
            for item in sheet
                .list
                .items
                .iter()
                .filter(|it| it.layer != Layer::Border)
            {
                let bounds: Rect<f64> = item.shape.bounds();
                assert!(
                    frame.contains_rect(&bounds),
                    "round {round}: {bounds:?} in {frame:?}"
                );
            }
        }
    }
}

#[test]
fn every_hole_of_a_fitting_has_its_number_beside_it() {
    let mut lcg = Lcg(5);
    for round in 0..60 {
        let size = [lcg.between(250.0, 1200.0), lcg.between(250.0, 800.0)];
        let places: Vec<(f64, f64)> = (0..12)
            .map(|_| {
                (
                    lcg.between(8.0, size[0] - 8.0),
                    lcg.between(8.0, size[1] - 8.0),
                )
            })
            .collect();
        let sheet = one(panel(Face::DoorBack, size, &places));
        for number in 1..=12 {
            let words = number.to_string();
            let of = |item: &&crate::list::Item| {
                matches!(item.of, Some(Subject::Bore(id)) if id.number == number)
                    && matches!(&item.shape, Shape::Text { text, .. } if *text == words)
            };
            assert_eq!(
                sheet.list.items.iter().filter(of).count(),
                1,
                "round {round}, {number}"
            );
        }
    }
}

/// 3 m long, 40 mm wide, sixty bores: all holes drawn, all in the table, nothing on each other.
#[test]
fn extreme_panels_are_complete() {
    for paper in [PaperChoice::A4, PaperChoice::Tabloid] {
        for size in [
            [3000.0, 40.0],
            [40.0, 3000.0],
            [40.0, 40.0],
            [3000.0, 3000.0],
        ] {
            let set = sixty_bores(Face::DoorBack, size, paper);
            let holes: usize = set.iter().map(|sheet| centres(sheet).len()).sum();
            assert_eq!(holes, 60, "{size:?}");
            let rows = |sheet: &Sheet| {
                texts(sheet)
                    .iter()
                    .filter(|(text, _)| text == "fitting screw")
                    .count()
            };
            assert_eq!(set.iter().map(rows).sum::<usize>(), 60, "{size:?}");
            for sheet in &set {
                assert_eq!(overlapping_texts(&sheet.list), [], "{size:?}");
                assert_eq!(texts_on_lines(&sheet.list), [], "{size:?}");
            }
        }
    }
}

fn sixty_bores(face: Face, size: [f64; 2], paper: PaperChoice) -> Vec<Sheet> {
    let places: Vec<(f64, f64)> = (0..60)
        .map(|i| {
            (
                size[0] * (f64::from(i) + 0.5) / 60.0,
                size[1] * (f64::from(i) + 0.5) / 60.0,
            )
        })
        .collect();
    let (mut job, inspection) = with_panels(vec![panel(face, size, &places)]);
    job.settings.paper = paper;
    sheets(&job, &inspection)
}

/// A strip of 3 m by 40 mm is drawn in parts: within a part neighbouring holes keep their true
/// distance at the scale, every number is there, and each break has its mark on both sides.
#[test]
fn a_long_strip_is_broken_at_marks_and_stays_true() {
    for (face, size) in [
        (LEFT, [3000.0, 40.0]),
        (RIGHT, [3000.0, 40.0]),
        (Face::DoorBack, [40.0, 3000.0]),
    ] {
        let set = sixty_bores(face, size, PaperChoice::A4);
        let all: Vec<String> = set.iter().flat_map(texts).map(|(text, _)| text).collect();
        let told = |words: &str| all.iter().filter(|text| text.contains(words)).count();
        assert!(told("drawn in parts") > 0, "{face:?}");
        assert_eq!(told("break, mark A"), 2, "{face:?}");
        assert_eq!(all.iter().filter(|text| *text == "zero").count(), 1);
        let step = 3000.0 / 60.0;
        let mut breaks = 0;
        for sheet in set.iter().filter(|sheet| !centres(sheet).is_empty()) {
            let ratio = scale(sheet);
            assert!(40.0 * ratio >= 8.0, "the strip is {} mm wide", 40.0 * ratio);
            let places = centres(sheet);
            for pair in places.windows(2) {
                let along = if size[0] > size[1] {
                    (pair[1].x - pair[0].x).abs()
                } else {
                    pair[0].y - pair[1].y
                };
                if (along - step * ratio).abs() > 1e-9 {
                    breaks += 1;
                }
            }
        }
        assert!(breaks < 12, "{breaks} jumps between parts");
        for number in 1..=60 {
            assert!(all.contains(&number.to_string()), "{face:?}: hole {number}");
        }
    }
}
