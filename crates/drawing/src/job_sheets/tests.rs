//! Sets of pages as a whole: every kind of page, on every paper, on jobs as they come.

use flapwright_answer::inspect;
use flapwright_model::file::read_job;
use flapwright_model::job::{Job, PaperChoice};
use flapwright_model::part::Subject;
use flapwright_rules::fingerprint::{fingerprint, grouped};
use flapwright_rules::inspection::{Face, Inspection};

use super::{Orientation, PageKind, PageOptions, job_sheets};
use crate::fixture::{panel, with_panels};
use crate::list::{At, Shape};
use crate::overlap::{overlapping_texts, texts_on_lines, texts_outside_frame};
use crate::pen::Pen;
use crate::scale::Scale;
use crate::sheet::Sheet;

const NO_PAIRS: [(String, String); 0] = [];

fn demo() -> Job {
    let text = include_str!("../../../../assets/demo/houseboat-galley.ron");
    read_job(text).expect("the demo job is sound")
}

fn on(paper: PaperChoice, orientation: Orientation, options: PageOptions) -> PageOptions {
    PageOptions {
        paper: Some(paper),
        orientation,
        ..options
    }
}

fn texts(sheet: &Sheet) -> Vec<String> {
    let text = |item: &crate::list::Item| match &item.shape {
        Shape::Text { text, .. } => Some(text.clone()),
        _ => None,
    };
    sheet.list.items.iter().filter_map(text).collect()
}

fn says(sheet: &Sheet, words: &str) -> bool {
    texts(sheet).join(" ").contains(words)
}

/// The scale that the title block prints: the one text of the form `1:5`.
fn title_block_scale(sheet: &Sheet) -> Option<f64> {
    let ratio = |text: &String| {
        let (paper, model) = text.split_once(':')?;
        let [paper, model] = [paper, model].map(|side| side.parse::<u32>().ok());
        Some(f64::from(paper?) / f64::from(model?))
    };
    let found: Vec<f64> = texts(sheet).iter().filter_map(ratio).collect();
    assert!(found.len() <= 1, "{}: {found:?}", sheet.slug);
    found.first().copied()
}

fn assert_clean(sheet: &Sheet) {
    let name = format!("{} on {}", sheet.slug, sheet.paper.name);
    assert_eq!(overlapping_texts(&sheet.list), NO_PAIRS, "{name}");
    assert_eq!(texts_on_lines(&sheet.list), NO_PAIRS, "{name}");
    let outside = texts_outside_frame(&sheet.list, sheet.paper);
    assert!(outside.is_empty(), "{name}: {outside:?}");
}

#[test]
fn no_page_of_the_demo_has_a_text_on_another_on_a_line_or_outside_the_frame() {
    let job = demo();
    let inspection = inspect(&job);
    let all = PageOptions::of(PageKind::ALL);
    for options in [
        on(PaperChoice::A4, Orientation::Best, all.clone()),
        on(PaperChoice::Tabloid, Orientation::Best, all.clone()),
        on(PaperChoice::A3, Orientation::Lying, PageOptions::default()),
        on(
            PaperChoice::Letter,
            Orientation::Best,
            PageOptions::default(),
        ),
        on(
            PaperChoice::Letter,
            Orientation::Lying,
            PageOptions::default(),
        ),
        on(
            PaperChoice::A4,
            Orientation::Upright,
            PageOptions::default(),
        ),
    ] {
        for sheet in job_sheets(&job, &inspection, &options) {
            assert_clean(&sheet);
        }
    }
}

#[test]
fn a_set_has_the_kinds_asked_for_in_order_and_numbers_them_through() {
    let job = demo();
    let inspection = inspect(&job);
    let set = job_sheets(&job, &inspection, &PageOptions::default());
    for kind in PageKind::ALL {
        let there = set.iter().any(|sheet| sheet.kind == kind);
        assert_eq!(there, kind != PageKind::Template, "{kind:?}");
    }
    for (i, sheet) in set.iter().enumerate() {
        assert!(says(sheet, &format!("{} of {}", i + 1, set.len())));
        let about_one_box = matches!(sheet.kind, PageKind::Box | PageKind::Panel);
        assert_eq!(sheet.box_id.is_some(), about_one_box, "{}", sheet.slug);
        assert_eq!(sheet.part.is_some(), sheet.kind == PageKind::Panel);
    }
    let mut slugs: Vec<&str> = set.iter().map(|sheet| sheet.slug.as_str()).collect();
    slugs.sort_unstable();
    slugs.dedup();
    assert_eq!(slugs.len(), set.len());
    let only = job_sheets(&job, &inspection, &PageOptions::of([PageKind::CutList]));
    assert!(!only.is_empty() && only.iter().all(|sheet| sheet.kind == PageKind::CutList));
    assert_eq!(set, job_sheets(&job, &inspection, &PageOptions::default()));
}

/// Names of 300 letters, which the model allows: file names and title blocks still tell the panels
/// apart.
#[test]
fn a_long_box_name_hides_no_panels_name() {
    let mut job = demo();
    for wall_box in &mut job.boxes {
        wall_box.name = "x".repeat(300);
    }
    let set = job_sheets(&job, &inspect(&job), &PageOptions::panels_only());
    let named = |sheet: &&Sheet| sheet.slug.ends_with("-left-side");
    assert_eq!(set.iter().filter(named).count(), job.boxes.len());
    for sheet in set.iter().filter(named) {
        assert!(
            texts(sheet)
                .iter()
                .any(|text| text.ends_with("…: left side"))
        );
    }
    let longest = set
        .iter()
        .find(|sheet| sheet.slug.ends_with("-door-upper-leaf"));
    let longest = texts(longest.expect("the folding pair's upper leaf"));
    assert!(
        longest
            .iter()
            .any(|text| text.ends_with("…: door, upper leaf"))
    );
}

/// Each picture keeps the largest scale of the list that fits and is not larger than the chosen
/// one; lists have none, templates stay full size.
#[test]
fn no_picture_is_larger_than_the_chosen_scale_and_templates_stay_full_size() {
    let job = demo();
    let inspection = inspect(&job);
    let set = |largest_scale| {
        let options = PageOptions {
            largest_scale,
            ..PageOptions::of(PageKind::ALL)
        };
        job_sheets(&job, &inspection, &options)
    };
    let scales = |set: &[Sheet], kind| -> Vec<f64> {
        let of_kind = set.iter().filter(|sheet| sheet.kind == kind);
        of_kind.filter_map(title_block_scale).collect()
    };
    let free = set(Scale::FULL);
    let chosen = set(Scale::new(1, 10));
    for kind in [PageKind::Box, PageKind::Panel] {
        let found = scales(&chosen, kind);
        assert!(found.len() >= 4, "{found:?}");
        // All of the demo's boxes and panels fit on A4 at 1:10.
        assert!(found.iter().all(|ratio| *ratio == 0.1), "{found:?}");
        assert!(scales(&free, kind).iter().any(|ratio| *ratio > 0.1));
    }
    let templates = scales(&chosen, PageKind::Template);
    assert_eq!(templates, scales(&free, PageKind::Template));
    assert!(templates.len() > 10 && templates.iter().all(|ratio| *ratio == 1.0));
}

#[test]
fn no_page_at_a_small_scale_has_a_text_on_another_on_a_line_or_outside_the_frame() {
    let job = demo();
    let inspection = inspect(&job);
    for largest_scale in Scale::limits() {
        let options = PageOptions {
            largest_scale,
            ..PageOptions::of([PageKind::Box, PageKind::Panel])
        };
        for sheet in job_sheets(&job, &inspection, &options) {
            assert_clean(&sheet);
        }
    }
}

#[test]
fn paper_and_orientation_stand_over_the_jobs_paper() {
    let job = demo();
    let inspection = inspect(&job);
    let lying = on(
        PaperChoice::Letter,
        Orientation::Lying,
        PageOptions::default(),
    );
    for sheet in job_sheets(&job, &inspection, &lying) {
        assert_eq!(sheet.paper.name, "Letter");
        assert!(sheet.paper.width > sheet.paper.height);
    }
}

#[test]
fn every_panel_and_template_page_prints_revision_and_fingerprint() {
    let job = demo();
    let inspection = inspect(&job);
    let options = PageOptions::of([PageKind::Panel, PageKind::Template]);
    for sheet in job_sheets(&job, &inspection, &options) {
        let part = sheet.part.expect("a panel");
        let own = inspection.panel(part).expect("its panel");
        let words = format!("Bores {}, revision A", grouped(&fingerprint(own)));
        assert!(says(&sheet, &words), "{}: {words}", sheet.slug);
    }
}

#[test]
fn a_door_back_says_so_in_the_head_and_in_the_picture_and_shows_the_axis() {
    let job = demo();
    let inspection = inspect(&job);
    let set = job_sheets(&job, &inspection, &PageOptions::panels_only());
    // A hole table on a page of its own has the bar too.
    let backs = set
        .iter()
        .filter(|sheet| says(sheet, "THIS IS THE BACK") && !sheet.title.ends_with("hole table"));
    let backs: Vec<&Sheet> = backs.collect();
    assert_eq!(backs.len(), 6, "six leaves");
    // Narrow leaves have room for the bar in the head alone.
    let in_picture = |sheet: &&&Sheet| texts(sheet).iter().any(|text| text == "BACK");
    assert!(backs.iter().filter(in_picture).count() >= 4);
    let plates = backs.iter().find(|sheet| sheet.title == "plates: door");
    assert!(says(
        plates.expect("a sheet"),
        "Axis of the fitting, door closed"
    ));
}

#[test]
fn the_cover_lists_boxes_fittings_and_accepted_findings() {
    let job = demo();
    let mut inspection = inspect(&job);
    let finding = inspection
        .findings
        .first_mut()
        .expect("the demo has a note");
    std::sync::Arc::make_mut(finding).accepted = Some("wanted as a grip".to_owned());
    let options = PageOptions::of([PageKind::Cover]);
    let cover = job_sheets(&job, &inspection, &options);
    for words in [
        "mugs",
        "plates",
        "spices",
        "charts",
        "Wren",
        "Heron",
        "Swift",
        "Owl",
        "1 pair",
        "wanted as a grip",
        "Stored spring energy",
        "Glass pane",
        "Fix the box to the wall",
    ] {
        assert!(cover.iter().any(|page| says(page, words)), "{words}");
    }
}

#[test]
fn a_box_page_has_its_three_views_and_the_ceiling() {
    let job = demo();
    let a3 = on(
        PaperChoice::A3,
        Orientation::Best,
        PageOptions::of([PageKind::Box]),
    );
    let set = job_sheets(&job, &inspect(&job), &a3);
    for wanted in ["Front view", "Upright section", "Level section"] {
        let seen = set.iter().filter(|sheet| says(sheet, wanted)).count();
        assert_eq!(seen, 4, "{wanted}");
    }
    // The ceiling of the demo is 1 960 mm above its floor.
    assert!(set.iter().any(|sheet| says(sheet, "ceiling 1960.0")));
    assert!(set.iter().any(|sheet| says(sheet, "reach, door open")));
}

/// 330 with a band of 1 on the front edge is sawn to 329; 894 x 304 banded 1 all round to
/// 892 x 302.
#[test]
fn the_cut_list_takes_the_bands_off() {
    let job = demo();
    let set = job_sheets(&job, &inspect(&job), &PageOptions::of([PageKind::CutList]));
    let all = set.iter().flat_map(texts).collect::<Vec<_>>().join(" | ");
    assert!(all.contains("left side | 1 | 540.0 | 329.0 | 540.0 × 330.0 | 18.0"));
    assert!(all.contains("892.0 | 302.0 | 894.0 × 304.0"));
    assert!(all.contains("all round 1.0"));
}

/// Where the ring at the zero corner is, if it is on the page.
fn zero(sheet: &Sheet) -> Option<At> {
    sheet.list.items.iter().find_map(|item| match item.shape {
        Shape::Circle {
            centre,
            radius,
            pen: Pen::Outline,
            ..
        } if (radius - 2.0).abs() < 1e-9 => Some(centre),
        _ => None,
    })
}

fn templates(face: Face, size: [f64; 2], places: &[(f64, f64)]) -> Vec<Sheet> {
    let (job, inspection): (Job, Inspection) = with_panels(vec![panel(face, size, places)]);
    job_sheets(&job, &inspection, &PageOptions::of([PageKind::Template]))
}

#[test]
fn a_template_is_full_size_and_mirrored_like_its_sheet() {
    use flapwright_model::door::Side;
    let places = [(37.0, 64.0), (101.0, 96.5)];
    for (face, sign) in [
        (Face::SideInner(Side::Left), 1.0),
        (Face::SideInner(Side::Right), -1.0),
        (Face::DoorBack, 1.0),
    ] {
        let set = templates(face, [140.0, 130.0], &places);
        assert_eq!(set.len(), 1, "{face:?}");
        let zero = zero(&set[0]).expect("zero");
        let mut found = Vec::new();
        for item in &set[0].list.items {
            if let (Some(Subject::Bore(_)), Shape::Circle { centre, radius, .. }) =
                (item.of, &item.shape)
            {
                assert!((radius - 2.5).abs() < 1e-9, "5 mm bores at true size");
                found.push(*centre);
            }
        }
        assert_eq!(found.len(), 2);
        for (centre, (u, v)) in found.iter().zip(places) {
            let expected = At::new(zero.x + sign * u, zero.y - v);
            assert!((*centre - expected).length() < 1e-9, "{face:?}");
        }
    }
}

#[test]
fn every_template_page_has_the_bar_the_map_and_its_place() {
    let places = [(20.0, 20.0), (880.0, 20.0), (450.0, 690.0)];
    let set = templates(Face::DoorBack, [900.0, 700.0], &places);
    assert!(set.len() > 4);
    let mut bores = 0;
    for sheet in &set {
        assert_clean(sheet);
        assert!(says(
            sheet,
            "measure this: 100 mm; if it is not, do not drill"
        ));
        assert!(says(sheet, "not printed"), "the map tells what is left out");
        assert!(says(sheet, "Full-size template, row"));
        let bar = sheet.list.items.iter().any(|item| match &item.shape {
            Shape::Polyline { closed: true, .. } => {
                let it = item.shape.bounds();
                (it.width() - 100.0).abs() < 1e-9 && (it.height() - 2.0).abs() < 1e-9
            }
            _ => false,
        });
        assert!(bar, "{}", sheet.slug);
        let of_bore = |item: &&crate::list::Item| {
            matches!(item.of, Some(Subject::Bore(_))) && matches!(item.shape, Shape::Circle { .. })
        };
        bores += sheet.list.items.iter().filter(of_bore).count();
    }
    assert!(bores >= 3);
}

/// Names with steering marks, control characters, 300 letters, other scripts and paths.
#[test]
fn names_as_they_come_break_no_page() {
    let long = "long name ".repeat(30);
    let word = "x".repeat(300);
    for name in [
        long.as_str(),
        word.as_str(),
        "../../etc/passwd",
        "a\u{202E}gnp.b\u{0}\u{7}",
        "茶碗と皿",
        "ящик «Чайка»",
        "🚢 galley",
        "",
    ] {
        let mut job = demo();
        job.name = name.to_owned();
        job.title_block.owner = name.to_owned();
        job.boxes.truncate(2);
        for wall_box in &mut job.boxes {
            wall_box.name = name.to_owned();
        }
        let inspection = inspect(&job);
        let boxed = !crate::text::missing_glyphs(name).is_empty();
        for sheet in job_sheets(&job, &inspection, &PageOptions::default()) {
            assert_clean(&sheet);
            assert!(sheet.slug.len() < 70, "{}", sheet.slug);
            // A name of many lines leaves the picture its room.
            let scale = title_block_scale(&sheet).unwrap_or(1.0);
            assert!(scale >= 1.0 / 50.0, "{}: {scale}", sheet.slug);
            let plain = |c: char| c.is_ascii_alphanumeric() || c == '-';
            assert!(sheet.slug.chars().all(plain), "{}", sheet.slug);
            assert_eq!(says(&sheet, "a box is a sign that this font lacks"), boxed);
        }
    }
}

#[test]
fn a_job_without_boxes_has_a_cover_and_nothing_else() {
    let job = Job::empty(Vec::new(), Vec::new());
    let set = job_sheets(&job, &inspect(&job), &PageOptions::of(PageKind::ALL));
    assert_eq!(set.len(), 1);
    assert_clean(&set[0]);
}
