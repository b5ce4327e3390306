//! How long the pages of the demo job take: layout, and each back-end on its own.

#![expect(clippy::expect_used, reason = "a bench without its job is to fail")]

use divan::{Bencher, black_box};
use flapwright_answer::inspect;
use flapwright_drawing::job_sheets::{PageOptions, job_sheets};
use flapwright_drawing::sheet::Sheet;
use flapwright_export::{PdfOptions, PngOptions, SvgOptions, pdf, png, svg};
use flapwright_model::file::read_job;
use flapwright_model::job::Job;

fn main() {
    let job = demo_job();
    let sheets = demo_sheets(&job);
    let file = pdf(&sheets, &PdfOptions::default()).expect("the demo can be written");
    println!("{} pages, {} bytes of PDF", sheets.len(), file.len());
    divan::main();
}

fn demo_job() -> Job {
    let path = format!(
        "{}/../../assets/demo/houseboat-galley.ron",
        env!("CARGO_MANIFEST_DIR")
    );
    let text = std::fs::read_to_string(path).expect("the demo ships with the program");
    read_job(&text).expect("the demo is sound")
}

fn demo_sheets(job: &Job) -> Vec<Sheet> {
    job_sheets(job, &inspect(job), &PageOptions::default())
}

/// All pages of the demo but its templates, laid out.
#[divan::bench]
fn layout(bencher: Bencher<'_, '_>) {
    let job = demo_job();
    let inspection = inspect(&job);
    bencher.bench_local(|| job_sheets(black_box(&job), &inspection, &PageOptions::default()));
}

/// Those pages as one PDF.
#[divan::bench]
fn all_as_pdf(bencher: Bencher<'_, '_>) {
    let sheets = demo_sheets(&demo_job());
    bencher.bench_local(|| pdf(black_box(&sheets), &PdfOptions::default()));
}

/// Those pages as pictures at 150 dots per inch, one after another.
#[divan::bench]
fn all_as_png(bencher: Bencher<'_, '_>) {
    let sheets = demo_sheets(&demo_job());
    let options = PngOptions { dpi: 150 };
    let draw = |sheet| png(sheet, &options).map(|file| file.len());
    bencher.bench_local(|| black_box(&sheets).iter().map(draw).collect::<Vec<_>>());
}

/// Those pages as SVG.
#[divan::bench]
fn all_as_svg(bencher: Bencher<'_, '_>) {
    let sheets = demo_sheets(&demo_job());
    let options = SvgOptions::default();
    let draw = |sheet| svg(sheet, &options).len();
    bencher.bench_local(|| black_box(&sheets).iter().map(draw).collect::<Vec<_>>());
}
