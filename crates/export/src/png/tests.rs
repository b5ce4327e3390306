//! Pictures read back by a decoder.

use std::io::Cursor;

use flapwright_drawing::list::At;
use flapwright_drawing::paper::Paper;
use flapwright_drawing::pen::{Ink, Layer};

use super::*;
use crate::sample;

struct Picture {
    width: usize,
    height: usize,
    dims: Option<PixelDimensions>,
    colour: ColorType,
    /// Samples of all pixels, row by row.
    samples: Vec<u8>,
}

impl Picture {
    /// How dark each pixel of a row of a grey picture is, 0 to 1.
    fn row(&self, y: usize) -> Vec<f64> {
        let row = &self.samples[y * self.width..(y + 1) * self.width];
        let dark = |sample: &u8| 1.0 - f64::from(*sample) / 255.0;
        row.iter().map(dark).collect()
    }
}

fn decoded(file: &[u8]) -> Picture {
    let mut reader = ::png::Decoder::new(Cursor::new(file))
        .read_info()
        .expect("header");
    let dims = reader.info().pixel_dims;
    let mut samples = vec![0; reader.output_buffer_size().expect("size")];
    let info = reader.next_frame(&mut samples).expect("pixels");
    assert_eq!(info.bit_depth, BitDepth::Eight);
    Picture {
        width: info.width as usize,
        height: info.height as usize,
        dims,
        colour: info.color_type,
        samples,
    }
}

#[test]
fn a_picture_has_the_size_of_its_paper() {
    // Pixels: mm / 25.4 * dpi; pixels per metre: dpi / 0.0254; both rounded.
    let small = Paper {
        name: "small",
        width: 50.0,
        height: 100.0,
    };
    let cases = [
        (Paper::A4, 150, (1240, 1754), 5906),
        (Paper::A4, 300, (2480, 3508), 11811),
        (Paper::LETTER.turned(), 300, (3300, 2550), 11811),
        (small, 600, (1181, 2362), 23622),
    ];
    for (paper, dpi, size, per_metre) in cases {
        let mut sheet = sample::sheet([]);
        sheet.paper = paper;
        let picture = decoded(&png(&sheet, &PngOptions { dpi }).expect("png"));
        assert_eq!(
            (picture.width, picture.height),
            size,
            "{} at {dpi} dpi",
            paper.name
        );
        let dims = picture.dims.expect("pHYs");
        assert_eq!((dims.xppu, dims.yppu), (per_metre, per_metre));
        assert_eq!(dims.unit, Unit::Meter);
        assert!(
            picture.samples == vec![255; size.0 * size.1],
            "the paper is white"
        );
    }
}

#[test]
fn a_scale_bar_of_100_mm_is_as_many_pixels_long() {
    let sheet = sample::sheet([sample::scale_bar(At::new(20.0, 40.0))]);
    let picture = decoded(&png(&sheet, &PngOptions { dpi: 300 }).expect("png"));
    let row = picture.row(((297.0 - 40.0) / 25.4 * 300.0) as usize);
    let length: f64 = row.iter().sum();
    // 100 mm at 300 dpi.
    assert!(
        (length - 1181.10).abs() < 0.1,
        "bar is {length:.2} pixels long"
    );
    let first = row.iter().position(|dark| *dark > 0.5).expect("bar");
    assert_eq!(first, 236, "20 mm are 236.2 pixels");
}

#[test]
fn bands_leave_no_seams() {
    let sheet = sample::full_sheet();
    let whole = decoded(&super::picture(&sheet, 150, u32::MAX).expect("png"));
    let bands = decoded(&super::picture(&sheet, 150, 1240 * 97).expect("png"));
    let differences = || {
        whole
            .samples
            .iter()
            .zip(&bands.samples)
            .map(|(a, b)| a.abs_diff(*b))
    };
    let worst = differences().max();
    assert!(
        worst <= Some(64),
        "a pixel differs by {worst:?}, more than a quarter of its shade"
    );
    let share = differences().filter(|d| *d > 0).count() as f64 / whole.samples.len() as f64;
    assert!(share < 0.001, "{share:.5} of the pixels differ");
    assert!(
        whole.samples.iter().any(|level| *level < 64),
        "something is drawn"
    );
}

#[test]
fn a_resolution_out_of_bounds_is_refused_with_its_limits() {
    for dpi in [0, 72, 149, 601, u32::MAX] {
        let error = png(&sample::sheet([]), &PngOptions { dpi }).expect_err("out of bounds");
        assert!(error.to_string().contains("from 150 to 600 dpi"), "{error}");
    }
}

#[test]
fn the_same_sheet_gives_the_same_bytes() {
    let sheet = sample::full_sheet();
    let options = PngOptions { dpi: 150 };
    assert_eq!(
        png(&sheet, &options).expect("png"),
        png(&sheet, &options).expect("png")
    );
}

#[test]
fn only_a_page_with_colour_is_written_in_colour() {
    let grey = sample::sheet([sample::scale_bar(At::new(20.0, 40.0))]);
    let mut red = grey.clone();
    let dot = sample::dot(At::new(100.0, 100.0));
    red.list.push(Layer::Findings, Ink::Stop, None, dot);
    let options = PngOptions { dpi: 150 };
    let read = |sheet: &Sheet| decoded(&png(sheet, &options).expect("png"));
    assert_eq!(read(&grey).colour, ColorType::Grayscale);
    let picture = read(&red);
    assert_eq!(picture.colour, ColorType::Rgb);
    // The middle of the dot, in pixels at 150 dpi from the upper left corner of A4.
    let (x, y) = (100.0 / 25.4 * 150.0, (297.0 - 100.0) / 25.4 * 150.0);
    let at = 3 * (y as usize * picture.width + x as usize);
    // The colour of a stop: `colour.rs`.
    assert_eq!(picture.samples[at..at + 3], [0xC0, 0x00, 0x00]);
}

#[test]
fn pictures_made_side_by_side_come_in_order_and_are_the_same_as_alone() {
    let bar = |place: u32| {
        let mut sheet = sample::sheet([sample::scale_bar(At::new(20.0, 5.0 * f64::from(place)))]);
        sheet.slug = format!("{place:02}");
        sheet
    };
    let sheets: Vec<Sheet> = (1..=9).map(bar).collect();
    let options = PngOptions { dpi: 150 };
    let mut found = Vec::new();
    let taken: Result<(), ExportError> = pictures(&sheets, &options, |sheet, file| {
        assert!(file == png(sheet, &options)?, "sheet {}", sheet.slug);
        found.push(sheet.slug.clone());
        Ok(())
    });
    taken.expect("pictures");
    let slugs: Vec<&str> = sheets.iter().map(|sheet| sheet.slug.as_str()).collect();
    assert_eq!(found, slugs);
}

#[test]
fn the_first_picture_that_fails_or_is_refused_ends_the_row() {
    let mut sheets = vec![sample::sheet([]); 5];
    sheets[3] = sample::sheet([sample::text_at(f64::NAN, 1.0, "nowhere")]);
    let options = PngOptions { dpi: 150 };
    let mut taken = 0;
    let error = pictures(&sheets, &options, |_, _| {
        taken += 1;
        Ok::<(), ExportError>(())
    });
    assert!(
        matches!(error, Err(ExportError::NotFinite { .. })),
        "{error:?}"
    );
    assert_eq!(taken, 3);
    let error = pictures(&sheets, &options, |_, _| Err(ExportError::NoSheets));
    assert!(matches!(error, Err(ExportError::NoSheets)), "{error:?}");
}
