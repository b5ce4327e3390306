//! Pictures of sheets at 150 dots per inch by three ways, and how far two of them differ.

use std::io::Cursor;
use std::process::Command;

use flapwright_drawing::list::Weight;
use flapwright_drawing::sheet::Sheet;
use flapwright_drawing::text;
use flapwright_export::{PdfOptions, PngOptions, SvgOptions, pdf, png, svg};
use resvg::tiny_skia::{Color, Pixmap, Transform};
use resvg::usvg;

const DPI: u32 = 150;
/// Poppler's pictures are this much finer, and then brought down by the mean.
const FINER: usize = 2;

/// Red, green and blue of each pixel.
pub(crate) struct Picture {
    pub(crate) width: usize,
    pub(crate) height: usize,
    rgb: Vec<u8>,
}

/// How far two pictures differ, in 255ths of a channel.
#[derive(Debug, Clone, Copy)]
pub(crate) struct Difference {
    /// Where they differ most.
    pub(crate) worst: u8,
    /// Over the whole picture.
    pub(crate) mean: f64,
}

impl Difference {
    pub(crate) fn is_within(self, limit: Self) -> bool {
        self.worst <= limit.worst && self.mean <= limit.mean
    }
}

impl Picture {
    pub(crate) fn difference(&self, other: &Self) -> Difference {
        assert_eq!((self.width, self.height), (other.width, other.height));
        let each = || self.rgb.iter().zip(&other.rgb).map(|(a, b)| a.abs_diff(*b));
        let sum: u64 = each().map(u64::from).sum();
        Difference {
            worst: each().max().unwrap_or_default(),
            mean: sum as f64 / self.rgb.len() as f64,
        }
    }

    /// Each pixel as the mean of those in the square of three around it, so that the shading of edges
    /// counts little and their place much.
    pub(crate) fn blurred(&self) -> Self {
        let (width, height) = (self.width, self.height);
        let wide = 3 * width;
        let mut rgb = self.rgb.clone();
        for y in 1..height - 1 {
            let row = |y: usize| &self.rgb[wide * y..wide * (y + 1)];
            let three = [row(y - 1), row(y), row(y + 1)];
            let inner = &mut rgb[wide * y + 3..wide * (y + 1) - 3];
            for (x, blurred) in inner.iter_mut().enumerate() {
                // One channel of three pixels side by side, in each row.
                let side_by_side = |row: &&[u8]| [x, x + 3, x + 6].map(|i| u16::from(row[i]));
                let sum: u16 = three.iter().flat_map(side_by_side).sum();
                *blurred = (sum / 9) as u8;
            }
        }
        Self { width, height, rgb }
    }

    /// The samples in the upper left corner of white paper; poppler leaves out pixels beyond the
    /// page's edge or adds one.
    fn on_paper(&self, wide: usize, high: usize) -> Vec<u8> {
        assert!(self.width.abs_diff(wide) <= FINER && self.height.abs_diff(high) <= FINER);
        let mut samples = vec![255; 3 * wide * high];
        let rows = samples.chunks_mut(3 * wide);
        for (row, line) in rows.zip(self.rgb.chunks(3 * self.width)) {
            let both = row.len().min(line.len());
            row[..both].copy_from_slice(&line[..both]);
        }
        samples
    }

    /// A picture `FINER` times as fine, brought down to the mean of its pixels.
    fn coarser(fine: &[u8], wide: usize, width: usize, height: usize) -> Self {
        let mut rgb = Vec::with_capacity(3 * width * height);
        for y in 0..height {
            for x in 0..width {
                for channel in 0..3 {
                    let mut sum = 0;
                    for row in 0..FINER {
                        let start = 3 * ((FINER * y + row) * wide + FINER * x) + channel;
                        let samples = fine[start..].iter().step_by(3).take(FINER);
                        sum += samples.map(|sample| usize::from(*sample)).sum::<usize>();
                    }
                    rgb.push((sum / (FINER * FINER)) as u8);
                }
            }
        }
        Self { width, height, rgb }
    }
}

/// Pixels of a sheet's paper at [`DPI`].
fn size(sheet: &Sheet) -> (usize, usize) {
    let pixels = |mm: f64| (mm / 25.4 * f64::from(DPI)).round() as usize;
    (pixels(sheet.paper.width), pixels(sheet.paper.height))
}

/// What `resvg` makes of the SVG.
pub(crate) fn of_svg(sheet: &Sheet) -> Picture {
    let mut fonts = usvg::fontdb::Database::new();
    for weight in [Weight::Plain, Weight::Bold] {
        fonts.load_font_data(text::font(weight).to_vec());
    }
    let options = usvg::Options {
        fontdb: fonts.into(),
        ..usvg::Options::default()
    };
    let plain = SvgOptions {
        paper: false,
        hold_width: false,
    };
    let tree = usvg::Tree::from_str(&svg(sheet, &plain), &options).expect("SVG");
    let (width, height) = size(sheet);
    let mut pixmap = Pixmap::new(width as u32, height as u32).expect("memory");
    pixmap.fill(Color::WHITE);
    // CSS has 96 pixels to the inch.
    let scale = DPI as f32 / 96.0;
    resvg::render(
        &tree,
        Transform::from_scale(scale, scale),
        &mut pixmap.as_mut(),
    );
    let rgb = pixmap.data().chunks(4).flat_map(|p| [p[0], p[1], p[2]]);
    Picture {
        width,
        height,
        rgb: rgb.collect(),
    }
}

/// Our own PNG.
pub(crate) fn of_png(sheet: &Sheet) -> Picture {
    decoded(png(sheet, &PngOptions { dpi: DPI }).expect("PNG"))
}

fn decoded(file: Vec<u8>) -> Picture {
    let mut reader = png::Decoder::new(Cursor::new(file))
        .read_info()
        .expect("header");
    let mut samples = vec![0; reader.output_buffer_size().expect("size")];
    let info = reader.next_frame(&mut samples).expect("pixels");
    let rgb = if info.color_type == png::ColorType::Grayscale {
        samples.iter().flat_map(|grey| [*grey; 3]).collect()
    } else {
        assert_eq!(info.color_type, png::ColorType::Rgb);
        samples
    };
    let (width, height) = (info.width as usize, info.height as usize);
    Picture { width, height, rgb }
}

/// What poppler makes of each page of one PDF of all sheets.
pub(crate) fn of_pdf(sheets: &[Sheet]) -> Vec<Picture> {
    let folder = tempfile::tempdir().expect("folder");
    let path = folder.path().join("sheets.pdf");
    std::fs::write(&path, pdf(sheets, &PdfOptions::default()).expect("PDF")).expect("written");
    let page = |(index, sheet): (usize, &Sheet)| {
        let (width, height) = size(sheet);
        let (wide, high) = (FINER * width, FINER * height);
        let number = (index + 1).to_string();
        let dpi = (FINER * DPI as usize).to_string();
        let output = Command::new("pdftocairo")
            .args([
                "-png",
                "-singlefile",
                "-f",
                &number,
                "-l",
                &number,
                "-r",
                &dpi,
            ])
            .arg(&path)
            .arg("-")
            .output()
            .expect("pdftocairo of the Debian package poppler-utils");
        assert!(
            output.status.success(),
            "{}",
            String::from_utf8_lossy(&output.stderr)
        );
        let fine = decoded(output.stdout).on_paper(wide, high);
        Picture::coarser(&fine, wide, width, height)
    };
    sheets.iter().enumerate().map(page).collect()
}
