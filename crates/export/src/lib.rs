//! Finished sheets as SVG, PDF and PNG, bores as DXF, CSV and JSON: bytes, which `flapwright-files`
//! puts in their places.
//!
//! ```
//! use flapwright_drawing::list::DisplayList;
//! use flapwright_drawing::page_kind::PageKind;
//! use flapwright_drawing::paper::Paper;
//! use flapwright_drawing::sheet::Sheet;
//! use flapwright_export::{PdfOptions, pdf};
//!
//! let sheet = Sheet {
//!     slug: "01-cover".to_owned(),
//!     title: "Cover".to_owned(),
//!     kind: PageKind::Cover,
//!     box_id: None,
//!     part: None,
//!     paper: Paper::A4,
//!     list: DisplayList::new(),
//! };
//! let file = pdf(&[sheet], &PdfOptions::default())?;
//! assert!(file.starts_with(b"%PDF-"));
//! # Ok::<(), flapwright_export::ExportError>(())
//! ```
//!
//! | how do I… | |
//! | --- | --- |
//! | make one page as SVG | [`svg`] |
//! | make a set of pages as PDF | [`pdf`], or page by page [`PdfFile`] |
//! | make one page as a picture | [`png`] |
//! | make many pictures on all processors | [`pictures`] |
//! | list a job's bores for a machine | [`bores::bore_list`], then [`bores::bores_dxf`], [`bores::bores_csv`], [`bores::bores_json`] |
//! | know beforehand whether a page can be exported | [`check`] |
//!
//! **Invariants.** This crate decides no layout: it paints the display list in its order, with the
//! pens' own widths. The same input gives the same bytes: no clock, no randomness, no system
//! fonts. SVG, PDF and PNG are each painted straight from the list, and `tests/back_ends.rs` compares
//! their pictures.

pub mod bores;
mod colour;
mod error;
mod lettering;
mod number;
mod outline;
mod page;
mod pdf;
mod png;
#[cfg(test)]
mod sample;
mod svg;

pub use crate::colour::{Rgb, ink_colour};
pub use crate::error::ExportError;
pub use crate::page::check;
pub use crate::pdf::{PdfFile, PdfOptions, UtcTime, pdf};
pub use crate::png::{DPI_LIMITS, PngOptions, pictures, png};
pub use crate::svg::{SvgOptions, svg};
