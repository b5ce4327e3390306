//! The pictures of drilling sheets: one RON file in `screenshots-spec/sheets` for each.
//!
//! With `UPDATE_PICTURES=1` the pictures are made anew; without it they are compared with what is
//! there. Either way every text that a file names must be on the sheet.

#![expect(clippy::unwrap_used, reason = "a test whose files fail is to fail")]

use std::path::{Path, PathBuf};

use flapwright_answer::inspect;
use flapwright_drawing::job_sheets::{PageOptions, job_sheets};
use flapwright_drawing::list::Shape;
use flapwright_drawing::sheet::Sheet;
use flapwright_export::{PngOptions, png};
use flapwright_session::job_file;
use serde::Deserialize;

/// Pixels that may differ: rounding of curves and text between builds.
const MAY_DIFFER: usize = 200;

/// One picture.
#[derive(Debug, Deserialize)]
#[serde(deny_unknown_fields)]
struct Picture {
    /// Job file, from the root of the project.
    job: String,
    /// What the sheet's slug ends with.
    slug: String,
    /// Dots per inch.
    dpi: u32,
    /// Texts that must be on the sheet, each within one line.
    seen: Vec<String>,
}

fn folder() -> PathBuf {
    Path::new(env!("CARGO_MANIFEST_DIR")).join("screenshots-spec")
}

fn texts(sheet: &Sheet) -> Vec<&str> {
    sheet
        .list
        .items
        .iter()
        .filter_map(|item| match &item.shape {
            Shape::Text { text, .. } => Some(text.as_str()),
            Shape::Line { .. }
            | Shape::Polyline { .. }
            | Shape::Area { .. }
            | Shape::Circle { .. }
            | Shape::Arc { .. } => None,
        })
        .collect()
}

fn pixels_that_differ(a: &[u8], b: &[u8]) -> usize {
    let read = |bytes| image::load_from_memory(bytes).unwrap().to_rgb8();
    let (a, b) = (read(a), read(b));
    if a.dimensions() != b.dimensions() {
        return usize::MAX;
    }
    let far = |(a, b): &(&image::Rgb<u8>, &image::Rgb<u8>)| {
        a.0.iter().zip(b.0).any(|(a, b)| a.abs_diff(b) > 48)
    };
    a.pixels().zip(b.pixels()).filter(far).count()
}

#[test]
fn the_sheets_look_as_they_were_reviewed() {
    let mut files: Vec<PathBuf> = std::fs::read_dir(folder().join("sheets"))
        .unwrap()
        .map(|entry| entry.unwrap().path())
        .collect();
    files.sort();
    assert!(!files.is_empty());
    for file in files {
        let picture: Picture = ron::from_str(&std::fs::read_to_string(&file).unwrap()).unwrap();
        let job = job_file::read(&Path::new(env!("CARGO_MANIFEST_DIR")).join(&picture.job));
        let job = job.unwrap();
        let all = job_sheets(&job, &inspect(&job), &PageOptions::panels_only());
        let sheet = all
            .iter()
            .find(|sheet| sheet.slug.ends_with(&picture.slug))
            .unwrap();
        for words in &picture.seen {
            let seen = texts(sheet)
                .iter()
                .any(|text| text.contains(words.as_str()));
            assert!(
                seen,
                "{}: {words:?} is not among {:?}",
                sheet.slug,
                texts(sheet)
            );
        }
        let made = png(sheet, &PngOptions { dpi: picture.dpi }).unwrap();
        let name = file.file_stem().unwrap().to_string_lossy().into_owned();
        let path = folder().join("pictures").join(format!("{name}.png"));
        if std::env::var_os("UPDATE_PICTURES").is_some() {
            std::fs::write(&path, made).unwrap();
            continue;
        }
        let differ = pixels_that_differ(&std::fs::read(&path).unwrap(), &made);
        assert!(
            differ <= MAY_DIFFER,
            "{}: {differ} pixels differ",
            path.display()
        );
    }
}
