//! Pictures of the pages of a job, to be looked at.
//!
//! ```sh
//! cargo run -p flapwright-export --example page_pictures -- JOB.ron DIR [PAPER] [DPI] [KIND...] [only:WORDS]
//! ```
//!
//! Paper: `a4`, `a3`, `letter` or `tabloid`, with `-lying` or `-upright`
//! behind it for pages that lie or stand; kinds as `PageKind::name` has them, all without one. With `only:WORDS` no page
//! but those whose slug has these words in it.

use std::error::Error;
use std::path::Path;

use flapwright_answer::inspect;
use flapwright_drawing::job_sheets::{Orientation, PageKind, PageOptions, job_sheets};
use flapwright_export::{PngOptions, png};
use flapwright_files::write_files;
use flapwright_model::job::PaperChoice;

fn main() -> Result<(), Box<dyn Error>> {
    let mut arguments = std::env::args().skip(1);
    let job = arguments.next().ok_or("name a job file")?;
    let folder = arguments.next().ok_or("name a folder")?;
    let paper = arguments.next().unwrap_or_else(|| "a4".to_owned());
    let dpi: u32 = arguments.next().map_or(Ok(150), |dpi| dpi.parse())?;
    let mut kinds = Vec::new();
    let mut only = String::new();
    for name in arguments {
        if let Some(words) = name.strip_prefix("only:") {
            words.clone_into(&mut only);
            continue;
        }
        kinds.push(PageKind::from_name(&name).ok_or("no such kind of page")?);
    }
    if kinds.is_empty() {
        kinds = PageKind::ALL.to_vec();
    }
    let job = flapwright_model::file::read_job(&std::fs::read_to_string(job)?)?;
    let mut options = PageOptions::of(kinds);
    let (name, way) = paper.split_once('-').unwrap_or((&paper, "best"));
    options.orientation = match way {
        "lying" => Orientation::Lying,
        "upright" => Orientation::Upright,
        "best" => Orientation::Best,
        _ => return Err("no such way up".into()),
    };
    options.paper = Some(match name {
        "a4" => PaperChoice::A4,
        "a3" => PaperChoice::A3,
        "letter" => PaperChoice::Letter,
        "tabloid" => PaperChoice::Tabloid,
        _ => return Err("no such paper".into()),
    });
    let sheets = job_sheets(&job, &inspect(&job), &options);
    let mut files = Vec::new();
    for sheet in sheets.iter().filter(|sheet| sheet.slug.contains(&only)) {
        let picture = png(sheet, &PngOptions { dpi })?;
        files.push((format!("{paper}-{}.png", sheet.slug), picture));
    }
    write_files(Path::new(&folder), files)?;
    Ok(())
}
