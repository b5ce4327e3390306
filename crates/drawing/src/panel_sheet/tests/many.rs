//! Many panels, and extreme ones.

use euclid::default::Rect;
use flapwright_model::job::PaperChoice;
use flapwright_model::part::Subject;
use flapwright_rules::inspection::Face;

use super::{LEFT, RIGHT, centres, one, sheets, texts};
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
            for item in sheet.list.items.iter().filter(|it| it.layer != Layer::Border) {
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

/// 3 m long, 40 mm wide, sixty bores: one scale, all holes drawn, all in the table.
#[test]
fn extreme_panels_are_complete() {
    for size in [
        [3000.0, 40.0],
        [40.0, 3000.0],
        [40.0, 40.0],
        [3000.0, 3000.0],
    ] {
        let places: Vec<(f64, f64)> = (0..60)
            .map(|i| {
                (
                    size[0] * (f64::from(i) + 0.5) / 60.0,
                    size[1] * (f64::from(i) + 0.5) / 60.0,
                )
            })
            .collect();
        let (job, inspection) = with_panels(vec![panel(Face::DoorBack, size, &places)]);
        let set = sheets(&job, &inspection);
        assert_eq!(centres(&set[0]).len(), 60, "{size:?}");
        let rows = |sheet: &Sheet| {
            texts(sheet)
                .iter()
                .filter(|(text, _)| text == "fitting screw")
                .count()
        };
        assert_eq!(set.iter().map(rows).sum::<usize>(), 60, "{size:?}");
        assert!(
            set.iter()
                .all(|sheet| overlapping_texts(&sheet.list).is_empty()),
            "{size:?}"
        );
    }
}
