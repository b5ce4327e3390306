//! Drilling sheets read back by poppler, which had no part in writing them.

use std::path::{Path, PathBuf};
use std::process::Command;

use flapwright_answer::inspect;
use flapwright_drawing::job_sheets::{PageOptions, job_sheets};
use flapwright_model::length::show_mm_tenth;
use flapwright_rules::inspection::BoreSource;
use flapwright_session::sheet_files::{Formats, sheet_files};

/// Millimetres in a point: 25.4 / 72.
const MM_PER_POINT: f64 = 25.4 / 72.0;

struct Pdf {
    _folder: tempfile::TempDir,
    path: PathBuf,
}

fn demo_pdf() -> Pdf {
    let job = flapwright_session::shipped::demo_job().unwrap();
    let files = sheet_files(
        &job,
        Some("demo"),
        Formats {
            pdf: true,
            archive: false,
            png_dpi: None,
            svg: false,
        },
        &PageOptions::panels_only(),
    )
    .unwrap();
    let folder = tempfile::tempdir().unwrap();
    let path = folder.path().join("demo.pdf");
    std::fs::write(&path, &files[0].1).unwrap();
    Pdf {
        _folder: folder,
        path,
    }
}

fn poppler(tool: &str, arguments: &[&str], path: &Path) -> String {
    let output = Command::new(tool)
        .args(arguments)
        .arg(path)
        .arg(if tool == "pdftotext" { "-" } else { "--" })
        .output()
        .unwrap_or_else(|error| panic!("{tool} does not run ({error}); install poppler-utils"));
    assert!(
        output.status.success(),
        "{tool}: {}",
        String::from_utf8_lossy(&output.stderr)
    );
    String::from_utf8(output.stdout).unwrap()
}

/// Words of a page with their boxes in points, from the upper left corner.
struct Word {
    text: String,
    x: (f64, f64),
    y: (f64, f64),
}

fn words(pdf: &Pdf, page: usize) -> Vec<Word> {
    let page = page.to_string();
    let html = poppler("pdftotext", &["-bbox", "-f", &page, "-l", &page], &pdf.path);
    html.lines()
        .filter(|line| line.trim_start().starts_with("<word "))
        .map(|line| {
            let number = |name: &str| -> f64 {
                let start = line.find(&format!("{name}=\"")).unwrap() + name.len() + 2;
                line[start..].split('"').next().unwrap().parse().unwrap()
            };
            let text = line.split('>').nth(1).unwrap().split('<').next().unwrap();
            Word {
                text: text.replace("&quot;", "\"").replace("&amp;", "&"),
                x: (number("xMin"), number("xMax")),
                y: (number("yMin"), number("yMax")),
            }
        })
        .collect()
}

#[test]
fn every_sheet_is_a_page_of_its_papers_size() {
    let job = flapwright_session::shipped::demo_job().unwrap();
    let sheets = job_sheets(&job, &inspect(&job), &PageOptions::panels_only());
    let pdf = demo_pdf();
    let info = poppler("pdfinfo", &["-f", "1", "-l", "999"], &pdf.path);
    let pages: Vec<&str> = info.lines().filter(|line| line.contains("size:")).collect();
    let pages: Vec<&&str> = pages
        .iter()
        .filter(|line| line.starts_with("Page "))
        .collect();
    assert_eq!(pages.len(), sheets.len(), "{info}");
    for (page, sheet) in pages.iter().zip(&sheets) {
        let numbers: Vec<f64> = page
            .split("size:")
            .nth(1)
            .unwrap()
            .split_whitespace()
            .filter_map(|word| word.parse().ok())
            .collect();
        // 1 mm = 72 / 25.4 points; A4 is 595.276 by 841.890.
        assert!(
            (numbers[0] * MM_PER_POINT - sheet.paper.width).abs() < 0.01,
            "{page}"
        );
        assert!(
            (numbers[1] * MM_PER_POINT - sheet.paper.height).abs() < 0.01,
            "{page}"
        );
    }
}

#[test]
fn fonts_are_embedded_and_subset() {
    let pdf = demo_pdf();
    let fonts = poppler("pdffonts", &[], &pdf.path);
    let rows: Vec<&str> = fonts.lines().skip(2).collect();
    assert!(!rows.is_empty(), "{fonts}");
    for row in rows {
        // Columns: emb sub uni, before object number and generation.
        let words: Vec<&str> = row.split_whitespace().collect();
        let flags = &words[words.len() - 5..words.len() - 2];
        assert_eq!(flags, ["yes", "yes", "yes"], "{row}");
    }
}

#[test]
fn every_fitting_bore_is_in_the_text_of_its_hole_table() {
    let job = flapwright_session::shipped::demo_job().unwrap();
    let inspection = inspect(&job);
    let pdf = demo_pdf();
    // The frame of an A4 page alone, in points: the grid letters outside of it would stand among
    // the rows.
    let inside = "-layout -x 57 -y 29 -W 509 -H 784";
    let inside: Vec<&str> = inside.split(' ').collect();
    let all = poppler("pdftotext", &inside, &pdf.path);
    let rows: Vec<Vec<&str>> = all
        .lines()
        .map(|line| line.split_whitespace().collect())
        .collect();
    let mut looked_at = 0;
    for panel in inspection.boxes.iter().flat_map(|it| &it.panels) {
        for bore in panel
            .bores
            .iter()
            .filter(|bore| bore.source != BoreSource::SystemRow)
        {
            let (u, v) = bore.at.uv();
            // Drilled before banding, distances count from the cut edge.
            let cut = panel.drilled == flapwright_model::cabinet::Drilled::BeforeBanding;
            let (u, v) = if cut {
                (u - panel.bands.u_start, v - panel.bands.v_start)
            } else {
                (u, v)
            };
            let (number, u, v) = (bore.number.to_string(), show_mm_tenth(u), show_mm_tenth(v));
            let wanted = [number.as_str(), u.as_str(), v.as_str()];
            assert!(
                rows.iter()
                    .any(|row| row.windows(3).any(|three| three == wanted)),
                "{}: no row {wanted:?}",
                panel.name
            );
            looked_at += 1;
        }
    }
    assert!(looked_at > 80, "{looked_at} bores");
}

#[test]
fn every_page_says_that_the_demo_is_invented_and_which_face_is_seen() {
    let job = flapwright_session::shipped::demo_job().unwrap();
    let count = job_sheets(&job, &inspect(&job), &PageOptions::panels_only()).len();
    let pdf = demo_pdf();
    for page in 1..=count {
        let text: Vec<String> = words(&pdf, page)
            .into_iter()
            .map(|word| word.text)
            .collect();
        let text = text.join(" ").to_lowercase();
        for wanted in ["invented", "zero"] {
            assert!(
                text.contains(wanted),
                "page {page} lacks {wanted:?}: {text}"
            );
        }
        let faces = ["inner face up", "underside up", "back up"];
        let named = faces.iter().filter(|face| text.contains(**face)).count();
        assert_eq!(named, 1, "page {page} names {named} faces: {text}");
    }
}

#[test]
fn words_stand_inside_the_frame() {
    let job = flapwright_session::shipped::demo_job().unwrap();
    let sheets = job_sheets(&job, &inspect(&job), &PageOptions::panels_only());
    let pdf = demo_pdf();
    for (index, sheet) in sheets.iter().enumerate() {
        let space = sheet.paper.drawing_space();
        for word in words(&pdf, index + 1) {
            // Grid references stand around the frame.
            let middle = 0.5 * (word.x.0 + word.x.1) * MM_PER_POINT;
            let down = 0.5 * (word.y.0 + word.y.1) * MM_PER_POINT;
            let outside = middle > space.max_x() || down < sheet.paper.height - space.max_y();
            if word.text.len() == 1 && outside {
                continue;
            }
            // Boxes include the font's ascent above the capitals: 1.5 mm of it may reach out.
            let (left, right) = (word.x.0 * MM_PER_POINT, word.x.1 * MM_PER_POINT);
            let (top, bottom) = (word.y.0 * MM_PER_POINT, word.y.1 * MM_PER_POINT);
            assert!(
                left >= space.min_x() - 0.1,
                "page {}: {}",
                index + 1,
                word.text
            );
            assert!(
                right <= space.max_x() + 0.1,
                "page {}: {}",
                index + 1,
                word.text
            );
            assert!(
                top >= sheet.paper.height - space.max_y() - 1.5,
                "{}",
                word.text
            );
            assert!(
                bottom <= sheet.paper.height - space.min_y() + 1.5,
                "{}",
                word.text
            );
        }
    }
}
