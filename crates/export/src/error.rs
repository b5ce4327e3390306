//! What can go wrong in an export, said so that the reader knows what to do.

use std::ops::RangeInclusive;

/// Why an export failed. Each message names the sheet or panel, the cause and the remedy; causes are part of the message and not repeated as a source.
#[derive(Debug, thiserror::Error)]
#[non_exhaustive]
pub enum ExportError {
    /// There is nothing to print.
    #[error("there is no sheet to export; choose at least one sheet")]
    NoSheets,
    /// The paper has no usable size.
    #[error(
        "sheet `{sheet}`: paper of {width} by {height} mm cannot be exported; \
         each side must be above 0 and at most {limit} mm"
    )]
    PaperSize {
        /// The sheet's slug.
        sheet: String,
        /// Width, mm.
        width: f64,
        /// Height, mm.
        height: f64,
        /// Greatest side, mm.
        limit: f64,
    },
    /// A coordinate, size or angle is infinite or not a number.
    #[error(
        "sheet `{sheet}`: item {item} on layer `{layer}` has no finite position; \
         the sheet cannot be exported, please report this"
    )]
    NotFinite {
        /// The sheet's slug.
        sheet: String,
        /// Index in the display list.
        item: usize,
        /// Name of the item's layer.
        layer: &'static str,
    },
    /// The resolution is out of bounds.
    #[error("{dpi} dpi is out of bounds; choose from {} to {} dpi", limits.start(), limits.end())]
    Resolution {
        /// What was asked for, dots per inch.
        dpi: u32,
        /// What is possible, dots per inch.
        limits: RangeInclusive<u32>,
    },
    /// The page could not be made into a PDF or a picture.
    #[error("sheet `{sheet}` cannot be exported, please report this: {cause}")]
    Page {
        /// The sheet's slug.
        sheet: String,
        /// Message of the library that gave up.
        cause: String,
    },
    /// The PDF could not be put together.
    #[error("the PDF cannot be put together, please report this: {cause}")]
    Pdf {
        /// Message of the library that gave up.
        cause: String,
    },
    /// An archive file carries a date, and there is none.
    #[error("an archive PDF carries the date of issue, and there is none; fill it in first")]
    NoDate,
    /// The sheets cannot be put into an archive file.
    #[error("these sheets cannot be written as an archive PDF: {cause}; write a plain PDF instead")]
    Archive {
        /// What its format does not allow.
        cause: String,
    },
    /// A bore has no place.
    #[error(
        "{panel}: bore {number} has no finite place; it cannot be exported, please report this"
    )]
    BoreNowhere {
        /// Box and panel.
        panel: String,
        /// Number in the hole table.
        number: usize,
    },
    /// A bore list or a machine file could not be put together.
    #[error("the {format} file cannot be put together, please report this: {cause}")]
    List {
        /// Which kind of file.
        format: &'static str,
        /// Message of the library that gave up.
        cause: String,
    },
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn messages_name_the_thing_the_cause_and_the_remedy() {
        let coarse = ExportError::Resolution {
            dpi: 72,
            limits: 150..=600,
        };
        assert_eq!(
            coarse.to_string(),
            "72 dpi is out of bounds; choose from 150 to 600 dpi"
        );
    }
}
