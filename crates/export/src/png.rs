//! PNG: one page as a picture that knows its physical size.

mod painter;

use std::io::Write as _;
use std::ops::RangeInclusive;
use std::panic::resume_unwind;
use std::thread::ScopedJoinHandle;

use ::png::{BitDepth, ColorType, DeflateCompression, Encoder, Filter, PixelDimensions, Unit};
use flapwright_drawing::sheet::Sheet;
use tiny_skia::{Color, Pixmap};

use crate::colour::ink_colour;
use crate::error::ExportError;
use crate::lettering::Typefaces;
use crate::page::check;
use crate::png::painter::paint;

/// Resolutions a picture can have, dots per inch.
pub const DPI_LIMITS: RangeInclusive<u32> = 150..=600;

/// Greatest number of pixels painted at a time: 72 MB at four bytes each, enough for an A3 page
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

/// The sheet as a PNG file on white paper, eight bits each of red, green and blue, or of grey alone
/// where the page has no colour. Its size in pixels is the paper's, rounded; the drawing itself is
/// to scale at exactly `dpi`, and the file says so (`pHYs`).
///
/// Large pages are painted in bands, so memory stays below some 100 MB whatever the paper and the
/// resolution. The outline of a curve that crosses from one band to the next may differ there by a
/// fraction of a pixel's shade from that of the curve in one go.
///
/// # Errors
/// [`ExportError::Resolution`] when `dpi` is out of bounds, whatever [`crate::check`] finds, and
/// [`ExportError::Page`] when memory is short or a library gives up.
pub fn png(sheet: &Sheet, options: &PngOptions) -> Result<Vec<u8>, ExportError> {
    picture(sheet, options.dpi, BAND_PIXELS)
}

/// Makes a PNG file of each sheet, several at a time on the processors that there are, and hands
/// each to `take` in the order of the sheets as soon as it is its turn. No more pictures are in
/// memory than are made at a time; their bytes are the same however many that is.
///
/// # Errors
/// As for [`png()`], and whatever `take` gives back; then no further picture is handed over.
pub fn pictures<E: From<ExportError>>(
    sheets: &[Sheet],
    options: &PngOptions,
    mut take: impl FnMut(&Sheet, Vec<u8>) -> Result<(), E>,
) -> Result<(), E> {
    let at_a_time = std::thread::available_parallelism().map_or(1, std::num::NonZero::get);
    for few in sheets.chunks(at_a_time) {
        for (sheet, file) in few.iter().zip(side_by_side(few, options)) {
            take(sheet, file?)?;
        }
    }
    Ok(())
}

/// A picture of each of a few sheets, each on a thread of its own.
fn side_by_side(sheets: &[Sheet], options: &PngOptions) -> Vec<Result<Vec<u8>, ExportError>> {
    std::thread::scope(|scope| {
        let draw = |sheet| scope.spawn(move || png(sheet, options));
        let threads: Vec<_> = sheets.iter().map(draw).collect();
        let join = |thread: ScopedJoinHandle<'_, _>| {
            thread.join().unwrap_or_else(|panic| resume_unwind(panic))
        };
        threads.into_iter().map(join).collect()
    })
}

fn picture(sheet: &Sheet, dpi: u32, band_pixels: u32) -> Result<Vec<u8>, ExportError> {
    if !DPI_LIMITS.contains(&dpi) {
        return Err(ExportError::Resolution {
            dpi,
            limits: DPI_LIMITS,
        });
    }
    check(sheet)?;
    let pixels = |mm: f64| ((mm / 25.4 * f64::from(dpi)).round() as u32).max(1);
    let (width, height) = (pixels(sheet.paper.width), pixels(sheet.paper.height));
    let size = Size {
        width,
        height,
        band: (band_pixels / width).clamp(1, height),
        dpi,
    };
    encode(sheet, size).map_err(|cause| ExportError::Page {
        sheet: sheet.slug.clone(),
        cause,
    })
}

/// The size of a picture in pixels.
#[derive(Debug, Clone, Copy)]
struct Size {
    width: u32,
    height: u32,
    /// Rows that are painted at a time.
    band: u32,
    dpi: u32,
}

/// Paints the page from top to bottom, a band at a time, straight into the file.
fn encode(sheet: &Sheet, size: Size) -> Result<Vec<u8>, String> {
    let failed = |error: ::png::EncodingError| error.to_string();
    let typefaces = Typefaces::open().ok_or("the embedded font cannot be read")?;
    let coloured = has_colour(sheet);
    let mut file = Vec::new();
    let mut writer = encoder(&mut file, size, coloured)
        .write_header()
        .map_err(failed)?;
    let mut stream = writer.stream_writer().map_err(failed)?;
    let mut pixmap = Pixmap::new(size.width, size.band).ok_or_else(|| {
        format!(
            "a picture {} pixels wide does not fit into memory",
            size.width
        )
    })?;
    let mut samples = Vec::new();
    let mut top = 0;
    while top < size.height {
        pixmap.fill(Color::WHITE);
        paint(&mut pixmap, sheet, typefaces, size.dpi, top);
        let rows = (size.height - top).min(size.band);
        for row in pixmap
            .data()
            .chunks_exact(4 * size.width as usize)
            .take(rows as usize)
        {
            samples.clear();
            // The paper is opaque, and so is all that is painted on it.
            if coloured {
                samples.extend(row.chunks_exact(4).flat_map(|p| [p[0], p[1], p[2]]));
            } else {
                samples.extend(row.iter().step_by(4));
            }
            stream
                .write_all(&samples)
                .map_err(|error| error.to_string())?;
        }
        top += rows;
    }
    stream.finish().map_err(failed)?;
    writer.finish().map_err(failed)?;
    Ok(file)
}

fn has_colour(sheet: &Sheet) -> bool {
    let mut inks = sheet.list.items.iter().map(|item| ink_colour(item.ink));
    inks.any(|colour| !colour.is_grey())
}

fn encoder(file: &mut Vec<u8>, size: Size, coloured: bool) -> Encoder<'_, &mut Vec<u8>> {
    let mut encoder = Encoder::new(file, size.width, size.height);
    encoder.set_color(if coloured {
        ColorType::Rgb
    } else {
        ColorType::Grayscale
    });
    encoder.set_depth(BitDepth::Eight);
    // Line drawings are long white runs: without a filter and at a middling level they get a third
    // as large as with the library's fast setting, in half the time of its balanced one.
    encoder.set_filter(Filter::NoFilter);
    encoder.set_deflate_compression(DeflateCompression::Level(4));
    let per_metre = (f64::from(size.dpi) / 0.0254).round() as u32;
    encoder.set_pixel_dims(Some(PixelDimensions {
        xppu: per_metre,
        yppu: per_metre,
        unit: Unit::Meter,
    }));
    encoder
}

#[cfg(test)]
mod tests;
