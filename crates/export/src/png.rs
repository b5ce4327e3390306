//! PNG: one page as a picture that knows its physical size.

use std::ops::RangeInclusive;

use ::png::{BitDepth, ColorType, DeflateCompression, Encoder, Filter, PixelDimensions, Unit};
use flapwright_drawing::sheet::Sheet;
use resvg::tiny_skia::{Color, Pixmap, Transform};
use resvg::usvg::Tree;

use crate::error::ExportError;
use crate::page::tree;

/// Resolutions a picture can have, dots per inch.
pub const DPI_LIMITS: RangeInclusive<u32> = 150..=600;

/// CSS pixels to the inch: the unit of the parsed page.
const TREE_DPI: f64 = 96.0;

/// Greatest number of pixels rendered at a time: 72 MB at four bytes each, enough for an A3 page
/// at 300 dpi in one go.
const BAND_PIXELS: u32 = 18_000_000;

/// How a page is made into a picture.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct PngOptions {
    /// Dots per inch, within [`DPI_LIMITS`].
    pub dpi: u32,
}

impl Default for PngOptions {
    fn default() -> Self {
        Self { dpi: 300 }
    }
}

/// The sheet as a PNG file, eight bits each of red, green and blue on white paper. Its size in
/// pixels is the paper's, rounded; the drawing itself is to scale at exactly `dpi`, and the file
/// says so (`pHYs`).
///
/// Large pages are rendered in bands, so memory stays below some 100 MB whatever the paper and the
/// resolution. The outline of a curve that crosses from one band to the next may differ there by a
/// fraction of a pixel's shade from that of the curve in one go.
///
/// # Errors
/// [`ExportError::Resolution`] when `dpi` is out of bounds, whatever [`crate::check`] finds, and
/// [`ExportError::Page`] when memory is short or a library gives up.
pub fn png(sheet: &Sheet, options: &PngOptions) -> Result<Vec<u8>, ExportError> {
    render(sheet, options.dpi, BAND_PIXELS)
}

fn render(sheet: &Sheet, dpi: u32, band_pixels: u32) -> Result<Vec<u8>, ExportError> {
    if !DPI_LIMITS.contains(&dpi) {
        return Err(ExportError::Resolution {
            dpi,
            limits: DPI_LIMITS,
        });
    }
    let tree = tree(sheet)?;
    let pixels = |mm: f64| ((mm / 25.4 * f64::from(dpi)).round() as u32).max(1);
    let (width, height) = (pixels(sheet.paper.width), pixels(sheet.paper.height));
    encode(
        &tree,
        width,
        height,
        dpi,
        (band_pixels / width).clamp(1, height),
    )
    .map_err(|cause| ExportError::Page {
        sheet: sheet.slug.clone(),
        cause,
    })
}

/// Renders the page from top to bottom, `band` rows at a time, straight into the file.
fn encode(tree: &Tree, width: u32, height: u32, dpi: u32, band: u32) -> Result<Vec<u8>, String> {
    let failed = |error: ::png::EncodingError| error.to_string();
    let mut file = Vec::new();
    let mut encoder = Encoder::new(&mut file, width, height);
    encoder.set_color(ColorType::Rgb);
    encoder.set_depth(BitDepth::Eight);
    // Line drawings are long white runs: without a filter and at a middling level they get a third
    // as large as with the library's fast setting, in half the time of its balanced one.
    encoder.set_filter(Filter::NoFilter);
    encoder.set_deflate_compression(DeflateCompression::Level(4));
    let per_metre = (f64::from(dpi) / 0.0254).round() as u32;
    let physical = PixelDimensions {
        xppu: per_metre,
        yppu: per_metre,
        unit: Unit::Meter,
    };
    encoder.set_pixel_dims(Some(physical));
    let mut writer = encoder.write_header().map_err(failed)?;
    let mut stream = writer.stream_writer().map_err(failed)?;

    let mut pixmap = Pixmap::new(width, band)
        .ok_or_else(|| format!("a picture {width} pixels wide does not fit into memory"))?;
    let scale = (f64::from(dpi) / TREE_DPI) as f32;
    let mut top = 0;
    while top < height {
        pixmap.fill(Color::WHITE);
        let place = Transform::from_scale(scale, scale).post_translate(0.0, -(top as f32));
        resvg::render(tree, place, &mut pixmap.as_mut());
        let rows = (height - top).min(band);
        for row in pixmap
            .data()
            .chunks_exact(4 * width as usize)
            .take(rows as usize)
        {
            let opaque: Vec<u8> = row
                .chunks_exact(4)
                .flat_map(|p| [p[0], p[1], p[2]])
                .collect();
            std::io::Write::write_all(&mut stream, &opaque).map_err(|error| error.to_string())?;
        }
        top += rows;
    }
    stream.finish().map_err(failed)?;
    writer.finish().map_err(failed)?;
    Ok(file)
}

#[cfg(test)]
mod tests {
    use std::io::Cursor;

    use flapwright_drawing::list::At;
    use flapwright_drawing::paper::Paper;

    use super::*;
    use crate::sample;

    struct Picture {
        width: usize,
        height: usize,
        dims: Option<PixelDimensions>,
        rgb: Vec<u8>,
    }

    impl Picture {
        /// How dark each pixel of a row is, 0 to 1.
        fn row(&self, y: usize) -> Vec<f64> {
            let row = &self.rgb[y * self.width * 3..(y + 1) * self.width * 3];
            row.chunks(3)
                .map(|pixel| 1.0 - f64::from(pixel[1]) / 255.0)
                .collect()
        }
    }

    fn decoded(file: &[u8]) -> Picture {
        let mut reader = ::png::Decoder::new(Cursor::new(file))
            .read_info()
            .expect("header");
        let dims = reader.info().pixel_dims;
        let mut rgb = vec![0; reader.output_buffer_size().expect("size")];
        let info = reader.next_frame(&mut rgb).expect("pixels");
        assert_eq!(
            (info.color_type, info.bit_depth),
            (ColorType::Rgb, BitDepth::Eight)
        );
        Picture {
            width: info.width as usize,
            height: info.height as usize,
            dims,
            rgb,
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
                picture.rgb == vec![255; picture.rgb.len()],
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
        let whole = decoded(&render(&sheet, 150, u32::MAX).expect("png"));
        let bands = decoded(&render(&sheet, 150, 1240 * 97).expect("png"));
        let differences = || {
            whole
                .rgb
                .iter()
                .zip(&bands.rgb)
                .map(|(a, b)| a.abs_diff(*b))
        };
        let worst = differences().max();
        assert!(
            worst <= Some(64),
            "a pixel differs by {worst:?}, more than a quarter of its shade"
        );
        let share = differences().filter(|d| *d > 0).count() as f64 / whole.rgb.len() as f64;
        assert!(share < 0.001, "{share:.5} of the pixels differ");
        assert!(
            whole.rgb.iter().any(|level| *level < 64),
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
}
