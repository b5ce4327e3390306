//! PDF: a set of pages as vectors, with text that can be selected and searched.

mod surface;

use flapwright_drawing::list::Shape;
use flapwright_drawing::sheet::Sheet;
use flapwright_drawing::text;
use krilla::configure::ConfigurationBuilder;
use krilla::configure::validate::{Archival, ValidationError, Validators};
use krilla::destination::XyzDestination;
use krilla::error::KrillaError;
use krilla::geom::Point;
use krilla::metadata::{DateTime, Metadata};
use krilla::outline::{Outline, OutlineNode};
use krilla::page::PageSettings;
use krilla::{Document, SerializeSettings};

use crate::error::ExportError;
use crate::page::check;
use crate::pdf::surface::{Fonts, paint};

/// Points (1/72 in) to the millimetre, exactly.
const POINTS_PER_MM: f64 = 72.0 / 25.4;

/// What a PDF file says about itself.
#[derive(Debug, Clone, Default, PartialEq, Eq)]
pub struct PdfOptions {
    /// Title of the document; left out when empty.
    pub title: String,
    /// Author of the document; left out when empty.
    pub author: String,
    /// Time of creation. `None` (the default) writes none, so that the same sheets give the same
    /// bytes at any time.
    pub created: Option<UtcTime>,
    /// Whether the file is written as PDF/A-1b, the file format for keeping: nothing outside the
    /// file is needed to show it. It wants [`Self::created`] and has no bookmarks.
    pub archive: bool,
}

/// A moment in universal time. Values out of their range are brought to its nearest end.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct UtcTime {
    /// Year, 0 to 9999.
    pub year: u16,
    /// Month, 1 to 12.
    pub month: u8,
    /// Day of the month, 1 to 31.
    pub day: u8,
    /// Hour, 0 to 23.
    pub hour: u8,
    /// Minute, 0 to 59.
    pub minute: u8,
    /// Second, 0 to 59.
    pub second: u8,
}

/// The sheets as one PDF file: one page each at the paper's exact size, one bookmark each with the
/// sheet's title (an archive file has none), the embedded font cut down to the characters in use.
///
/// # Errors
/// [`ExportError::NoSheets`] without sheets, and whatever [`PdfFile`] finds.
pub fn pdf(sheets: &[Sheet], options: &PdfOptions) -> Result<Vec<u8>, ExportError> {
    let mut file = PdfFile::new(options)?;
    for sheet in sheets {
        file.add(sheet)?;
    }
    file.finish()
}

/// A PDF file in the making, to which pages are added one at a time. What it keeps of a page is
/// its compressed contents.
pub struct PdfFile {
    document: Document,
    fonts: Fonts,
    outline: Outline,
    pages: usize,
    archive: bool,
    /// Signs so far that the embedded font lacks, each once.
    boxed: String,
}

impl std::fmt::Debug for PdfFile {
    fn fmt(&self, f: &mut std::fmt::Formatter<'_>) -> std::fmt::Result {
        let mut shown = f.debug_struct("PdfFile");
        shown.field("pages", &self.pages).finish_non_exhaustive()
    }
}

impl PdfFile {
    /// A file without pages.
    ///
    /// # Errors
    /// [`ExportError::NoDate`] for an archive file without a date, and [`ExportError::Pdf`] when
    /// the embedded font cannot be read, which is a fault of the program.
    pub fn new(options: &PdfOptions) -> Result<Self, ExportError> {
        if options.archive && options.created.is_none() {
            return Err(ExportError::NoDate);
        }
        let mut document = Document::new_with(settings(options)?);
        document.set_metadata(metadata(options));
        Ok(Self {
            document,
            fonts: Fonts::open()?,
            outline: Outline::new(),
            pages: 0,
            archive: options.archive,
            boxed: String::new(),
        })
    }

    /// Adds a sheet as the next page.
    ///
    /// # Errors
    /// Whatever [`crate::check`] finds.
    pub fn add(&mut self, sheet: &Sheet) -> Result<(), ExportError> {
        check(sheet)?;
        if self.archive {
            self.note_boxed_signs(sheet);
        }
        let points = |mm: f64| (mm * POINTS_PER_MM) as f32;
        let (width, height) = (points(sheet.paper.width), points(sheet.paper.height));
        let settings = PageSettings::from_wh(width, height).ok_or_else(|| ExportError::Page {
            sheet: sheet.slug.clone(),
            cause: "the page has no size".to_owned(),
        })?;
        let mut page = self.document.start_page_with(settings);
        let mut surface = page.surface();
        paint(&mut surface, sheet, &self.fonts);
        surface.finish();
        page.finish();
        let top = XyzDestination::new(self.pages, Point::from_xy(0.0, 0.0));
        let title = text::printable(&sheet.title).into_owned();
        self.outline.push_child(OutlineNode::new(title, top));
        self.pages += 1;
        Ok(())
    }

    /// The bytes of the file.
    ///
    /// # Errors
    /// [`ExportError::NoSheets`] without pages; for an archive file [`ExportError::Archive`] where
    /// its format cannot hold what is on the sheets; [`ExportError::Pdf`] when the library gives
    /// up, which is a fault of the program.
    pub fn finish(mut self) -> Result<Vec<u8>, ExportError> {
        if self.pages == 0 {
            return Err(ExportError::NoSheets);
        }
        let boxed = self.boxed;
        if !boxed.is_empty() {
            return Err(ExportError::Archive {
                cause: format!("the embedded font lacks the signs {boxed}, and it allows no boxes"),
            });
        }
        // The reader that tries archive files (`check_files.py`) refuses places of bookmarks that
        // are objects of their own, and the library writes no others.
        if !self.archive {
            self.document.set_outline(self.outline);
        }
        self.document.finish().map_err(|error| match &error {
            KrillaError::Validation(found) => ExportError::Archive {
                cause: refusals(found),
            },
            KrillaError::Limit(limit) if self.archive => ExportError::Archive {
                cause: limit.to_string(),
            },
            _ => ExportError::Pdf {
                cause: error.to_string(),
            },
        })
    }

    /// Signs that the embedded font lacks print as boxes, which the reader of archive files
    /// refuses.
    fn note_boxed_signs(&mut self, sheet: &Sheet) {
        for item in &sheet.list.items {
            if let Shape::Text { text, .. } = &item.shape {
                for sign in text::missing_glyphs(text) {
                    if !self.boxed.contains(sign) {
                        self.boxed.push(sign);
                    }
                }
            }
        }
    }
}

fn settings(options: &PdfOptions) -> Result<SerializeSettings, ExportError> {
    let mut settings = SerializeSettings::default();
    if options.archive {
        let archive = ConfigurationBuilder::new().with_archival_validator(Archival::A1_B);
        settings.configuration = archive.finish().map_err(|error| ExportError::Archive {
            cause: format!("{error:?}"),
        })?;
        // Nothing here is tagged, and this format is where an untagged file is at home.
        settings.enable_tagging = false;
    }
    Ok(settings)
}

/// Why an archive file was refused, each reason once.
fn refusals(found: &[(ValidationError, Validators)]) -> String {
    let mut words: Vec<&str> = Vec::new();
    for (error, _) in found {
        let reason = match error {
            ValidationError::TooLongString
            | ValidationError::TooLongName
            | ValidationError::TooLongArray => "a text is too long",
            ValidationError::Transparency(_) => "something is drawn see-through",
            ValidationError::RestrictedLicense(_) => "a font may not be embedded",
            ValidationError::TooManyIndirectObjects | ValidationError::TooLongDictionary => {
                "there are too many pages"
            }
            ValidationError::TooLargeFloat => "a distance is too large",
            _ => "something on the sheets is not allowed in it",
        };
        if !words.contains(&reason) {
            words.push(reason);
        }
    }
    words.join("; ")
}

fn metadata(options: &PdfOptions) -> Metadata {
    let clean = |text: &str| text::printable(text).into_owned();
    let mut metadata = Metadata::new()
        .title(clean(&options.title))
        .creator("Flapwright".to_owned())
        .language("en".to_owned());
    if !options.author.is_empty() {
        metadata = metadata.authors(vec![clean(&options.author)]);
    }
    if let Some(UtcTime {
        year,
        month,
        day,
        hour,
        minute,
        second,
    }) = options.created
    {
        let date = DateTime::new(year)
            .month(month)
            .day(day)
            .hour(hour)
            .minute(minute);
        let date = date.second(second).utc_offset_hour(0).utc_offset_minute(0);
        metadata = metadata.creation_date(date);
    }
    metadata
}

#[cfg(test)]
mod tests;
