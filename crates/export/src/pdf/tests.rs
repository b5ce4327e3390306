//! PDF files read back by poppler.

use std::path::Path;

use flapwright_drawing::list::{At, Turn, Weight};
use flapwright_drawing::paper::Paper;

use super::*;
use crate::sample::{self, poppler};

fn saved(sheets: &[Sheet], options: &PdfOptions) -> (tempfile::TempDir, String) {
    let folder = tempfile::tempdir().expect("folder");
    let path = folder.path().join("sheets.pdf");
    std::fs::write(&path, pdf(sheets, options).expect("pdf")).expect("written");
    let path = path.to_str().expect("plain path").to_owned();
    (folder, path)
}

fn named() -> PdfOptions {
    PdfOptions {
        title: "Kitchen <1> & more".to_owned(),
        author: "Ann Ö.".to_owned(),
        ..PdfOptions::default()
    }
}

#[test]
fn pages_have_their_exact_size_and_the_file_its_metadata() {
    let mut wide = sample::full_sheet();
    wide.paper = Paper::A3.turned();
    let (_folder, path) = saved(&[sample::full_sheet(), wide], &named());
    let info = poppler("pdfinfo", &["-f", "1", "-l", "2", &path]);
    // 210 and 297 mm at exactly 72/25.4 points to the millimetre.
    assert!(
        info.contains("Page    1 size:  595.276 x 841.89 pts (A4)"),
        "{info}"
    );
    assert!(
        info.contains("Page    2 size:  1190.55 x 841.89 pts (A3)"),
        "{info}"
    );
    assert!(
        info.contains("Title:           Kitchen <1> & more"),
        "{info}"
    );
    assert!(info.contains("Author:          Ann Ö."), "{info}");
    assert!(info.contains("Pages:           2"), "{info}");
    assert!(!info.contains("Date:"), "{info}");
}

#[test]
fn a_date_is_written_only_when_given() {
    let created = UtcTime {
        year: 2026,
        month: 2,
        day: 3,
        hour: 4,
        minute: 5,
        second: 6,
    };
    let options = PdfOptions {
        created: Some(created),
        ..named()
    };
    let (_folder, path) = saved(&[sample::full_sheet()], &options);
    let info = poppler("pdfinfo", &["-rawdates", &path]);
    assert!(info.contains("CreationDate:    D:20260203040506"), "{info}");
}

#[test]
fn both_fonts_are_embedded_once_and_cut_down() {
    let sheets = vec![sample::full_sheet(); 3];
    let (_folder, path) = saved(&sheets, &PdfOptions::default());
    let fonts = poppler("pdffonts", &[&path]);
    let rows: Vec<_> = fonts.lines().skip(2).collect();
    assert_eq!(rows.len(), 2, "{fonts}");
    for name in ["NotoSans-Regular", "NotoSans-Bold"] {
        let row = rows.iter().find(|row| row.contains(name)).expect(name);
        let columns: Vec<_> = row.split_whitespace().rev().collect();
        // From the right: object id (two columns), unicode, subset, embedded.
        assert_eq!(columns[2..5], ["yes", "yes", "yes"], "{row}");
    }
}

#[test]
fn every_page_has_a_bookmark() {
    let mut second = sample::full_sheet();
    second.title = "mugs: right side & Ø".to_owned();
    let (folder, path) = saved(&[sample::full_sheet(), second], &PdfOptions::default());
    let out = folder
        .path()
        .join("out")
        .to_str()
        .expect("plain path")
        .to_owned();
    poppler("pdftohtml", &["-xml", "-i", &path, &out]);
    let xml = std::fs::read_to_string(Path::new(&out).with_extension("xml")).expect("xml");
    assert!(
        xml.contains("<item page=\"1\">Sample sheet</item>"),
        "{xml}"
    );
    assert!(
        xml.contains("<item page=\"2\">mugs: right side &amp; Ø</item>"),
        "{xml}"
    );
}

#[test]
fn two_hundred_sheets_go_into_one_file() {
    let sheets: Vec<_> = (1..=200)
        .map(|number| {
            let mut sheet = sample::full_sheet();
            sheet.title = format!("sheet {number}");
            sheet
        })
        .collect();
    let (_folder, path) = saved(&sheets, &named());
    let info = poppler("pdfinfo", &[&path]);
    assert!(info.contains("Pages:           200"), "{info}");
    // The fonts are shared: some 10 kB a page, not a font's size.
    let size = std::fs::metadata(&path).expect("file").len();
    assert!(size < 200 * 40_000, "{size} bytes");
}

/// Words found by `pdftotext`, as (text, x, baseline y, end x) in millimetres, y up.
fn words(path: &str, page_height: f64, size: f64) -> Vec<(String, f64, f64, f64)> {
    let html = poppler("pdftotext", &["-bbox", path, "-"]);
    let value = |line: &str, name: &str| -> f64 {
        let rest = line.split(&format!("{name}=\"")).nth(1).expect(name);
        rest.split('"')
            .next()
            .and_then(|v| v.parse().ok())
            .expect(name)
    };
    let mm = |points: f64| points / POINTS_PER_MM;
    html.lines()
        .filter(|line| line.contains("<word"))
        .map(|line| {
            let word = line
                .split('>')
                .nth(1)
                .and_then(|rest| rest.split('<').next());
            // The box reaches down to the font's descender, 0.293 em below the baseline.
            let baseline = page_height - mm(value(line, "yMax")) + 0.293 * text::em_size(size);
            let (start, end) = (mm(value(line, "xMin")), mm(value(line, "xMax")));
            (word.expect("word").to_owned(), start, baseline, end)
        })
        .collect()
}

#[test]
fn texts_stand_where_the_list_says_within_two_hundredths() {
    let shapes = ["17.5", "AVATAR", "Ø35"]
        .into_iter()
        .enumerate()
        .map(|(index, word)| {
            sample::text_at(
                20.0 + 31.7 * index as f64,
                250.0 - 40.3 * index as f64,
                word,
            )
        });
    let sheet = sample::sheet(shapes);
    let (_folder, path) = saved(std::slice::from_ref(&sheet), &PdfOptions::default());
    let words = words(&path, sheet.paper.height, 5.0);
    assert_eq!(words.len(), 3, "{words:?}");
    for (item, (word, x, y, end)) in sheet.list.items.iter().zip(words) {
        let Shape::Text {
            at,
            text,
            height,
            anchor,
            turn,
            weight,
        } = &item.shape
        else {
            panic!("only texts");
        };
        assert_eq!(&word, text);
        let origin = text::baseline_origin(*at, text, *height, *anchor, *turn, *weight);
        let width = text::width(text, *height, *weight);
        for (name, found, wanted) in [
            ("x", x, origin.x),
            ("baseline", y, origin.y),
            ("end", end, origin.x + width),
        ] {
            assert!(
                (found - wanted).abs() < 0.02,
                "{word}: {name} {found:.4}, not {wanted:.4}"
            );
        }
    }
}

#[test]
fn odd_and_turned_texts_can_be_read_back() {
    let mut up = sample::weighted(150.0, 100.0, "upright 560", Weight::Bold);
    if let Shape::Text { turn, .. } = &mut up {
        *turn = Turn::Up;
    }
    let sheet = sample::sheet([sample::text_at(20.0, 200.0, "a <b> & \"c\" × 2"), up]);
    let (_folder, path) = saved(&[sheet], &PdfOptions::default());
    let read = poppler("pdftotext", &[&path, "-"]);
    assert!(
        read.contains("a <b> & \"c\" × 2") && read.contains("upright 560"),
        "{read}"
    );
}

/// The length and place of a scale bar, measured by another renderer.
#[test]
fn a_scale_bar_of_100_mm_prints_100_mm_long() {
    let sheet = sample::sheet([sample::scale_bar(At::new(20.0, 40.0))]);
    let (_folder, path) = saved(&[sheet], &PdfOptions::default());
    let folder = tempfile::tempdir().expect("folder");
    let out = folder.path().join("bar");
    let out = out.to_str().expect("plain path");
    // A strip of the page around the bar, fine enough for hundredths.
    let (dpi, top) = (2400.0, 24_000.0);
    let strip = [
        "-r", "2400", "-x", "0", "-y", "24000", "-W", "12000", "-H", "600",
    ];
    let output = ["-gray", "-singlefile", &path, out];
    poppler("pdftoppm", &[strip.as_slice(), output.as_slice()].concat());
    let (width, pixels) = sample::read_pgm(&folder.path().join("bar.pgm"));
    let mm = 25.4 / dpi;
    let shades = |pixels: &[u8]| -> Vec<f64> {
        pixels
            .iter()
            .map(|level| 1.0 - f64::from(*level) / 255.0)
            .collect()
    };
    // Length and middle of the dark stretch of a row or column, mm.
    let measure = |shades: &[f64]| {
        let dark: f64 = shades.iter().sum();
        let places = shades
            .iter()
            .enumerate()
            .map(|(at, shade)| (at as f64 + 0.5) * shade);
        (dark * mm, places.sum::<f64>() / dark * mm)
    };
    let row = ((297.0 - 40.0) / mm - top) as usize;
    let (length, middle) = measure(&shades(&pixels[row * width..(row + 1) * width]));
    assert!((length - 100.0).abs() < 0.02, "bar is {length:.3} mm long");
    assert!(
        (middle - 70.0).abs() < 0.02,
        "middle of the bar is at {middle:.3} mm"
    );
    let column: Vec<u8> = pixels
        .chunks(width)
        .map(|row| row[(70.0 / mm) as usize])
        .collect();
    let (thick, middle) = measure(&shades(&column));
    let height = 297.0 - top * mm - middle;
    assert!((thick - 0.5).abs() < 0.02, "bar is {thick:.3} mm thick");
    assert!(
        (height - 40.0).abs() < 0.02,
        "bar is {height:.3} mm above the lower edge"
    );
}

#[test]
fn the_same_sheets_give_the_same_bytes() {
    let sheets = [sample::full_sheet(), sample::full_sheet()];
    assert_eq!(
        pdf(&sheets, &named()).expect("pdf"),
        pdf(&sheets, &named()).expect("pdf")
    );
}

/// That the file is what it says is tried by a reader outside (`check_files.py`); here that it
/// says so, has its texts, and is the same twice.
#[test]
fn an_archive_file_says_what_it_is_and_needs_a_date() {
    let options = PdfOptions {
        created: Some(UtcTime {
            year: 2026,
            month: 1,
            day: 31,
            hour: 0,
            minute: 0,
            second: 0,
        }),
        archive: true,
        ..named()
    };
    let sheets = [sample::full_sheet(), sample::full_sheet()];
    let (_folder, path) = saved(&sheets, &options);
    let info = poppler("pdfinfo", &["-meta", &path]);
    let compact: String = info.split_whitespace().collect();
    assert!(compact.contains("<pdfaid:part>1</pdfaid:part>"), "{info}");
    assert!(
        compact.contains("<pdfaid:conformance>B</pdfaid:conformance>"),
        "{info}"
    );
    let version = poppler("pdfinfo", &[&path]);
    assert!(version.contains("PDF version:     1.4"), "{version}");
    assert!(
        version.contains("Title:           Kitchen <1> & more"),
        "{version}"
    );
    assert_eq!(
        pdf(&sheets, &options).expect("pdf"),
        pdf(&sheets, &options).expect("pdf")
    );
    let dateless = PdfOptions {
        created: None,
        ..options
    };
    assert!(matches!(pdf(&sheets, &dateless), Err(ExportError::NoDate)));
}

#[test]
fn what_an_archive_file_cannot_hold_is_told() {
    let created = UtcTime {
        year: 2026,
        month: 1,
        day: 31,
        hour: 0,
        minute: 0,
        second: 0,
    };
    // A string of PDF 1.4 has at most 32 767 bytes (PDF Reference 1.4, appendix C).
    let options = PdfOptions {
        title: "long ".repeat(8_000),
        created: Some(created),
        archive: true,
        ..PdfOptions::default()
    };
    let error = pdf(&[sample::full_sheet()], &options).expect_err("refused");
    assert!(matches!(error, ExportError::Archive { .. }), "{error}");
    assert!(error.to_string().contains("a text is too long"), "{error}");
    let ship = sample::sheet([sample::text_at(20.0, 200.0, "boat \u{1F6A2}")]);
    let options = PdfOptions {
        title: String::new(),
        ..options
    };
    let error = pdf(&[ship], &options).expect_err("refused");
    assert!(
        error.to_string().contains("lacks the signs \u{1F6A2}"),
        "{error}"
    );
}

#[test]
fn a_set_without_sheets_is_refused() {
    assert!(matches!(pdf(&[], &named()), Err(ExportError::NoSheets)));
}
