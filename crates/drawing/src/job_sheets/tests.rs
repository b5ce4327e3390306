//! Sets of pages as a whole: every kind of page, on every paper, on jobs as they come.

use flapwright_model::file::read_job;
use flapwright_model::job::{Job, PaperChoice};
use flapwright_rules::inspect;

use super::{Orientation, PageKind, PageOptions, job_sheets};
use crate::overlap::{overlapping_texts, texts_on_lines, texts_outside_frame};
use crate::sheet::Sheet;

const PAPERS: [PaperChoice; 4] = [
    PaperChoice::A4,
    PaperChoice::A3,
    PaperChoice::Letter,
    PaperChoice::Tabloid,
];

fn demo() -> Job {
    let text = include_str!("../../../../assets/demo/houseboat-galley.ron");
    read_job(text).expect("the demo job is sound")
}

fn clean(sheet: &Sheet) {
    let name = &sheet.slug;
    let overlaps = overlapping_texts(&sheet.list);
    let struck = texts_on_lines(&sheet.list);
    let outside = texts_outside_frame(&sheet.list, sheet.paper);
    for o in &overlaps { eprintln!("CLASH overlap {name} {}: {o:?}", sheet.paper.name); }
    for o in &struck { eprintln!("CLASH struck {name} {}: {o:?}", sheet.paper.name); }
    for o in &outside { eprintln!("CLASH outside {name} {}: {o:?}", sheet.paper.name); }
}

#[test]
fn no_page_of_the_demo_has_a_text_on_another_on_a_line_or_outside_the_frame() {
    let job = demo();
    let inspection = inspect(&job);
    for paper in PAPERS {
        for orientation in [Orientation::Best, Orientation::Lying] {
            let options = PageOptions {
                paper: Some(paper),
                orientation,
                ..PageOptions::of(PageKind::ALL)
            };
            for sheet in job_sheets(&job, &inspection, &options) {
                clean(&sheet);
            }
        }
    }
}
