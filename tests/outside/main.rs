//! Checks against something outside the project: published figures, and readers that are not ours.
//! Each names its source; where a figure is second-hand or common practice, it says so.

#![expect(clippy::unwrap_used, reason = "a test whose tools fail is to fail")]

mod common_practice;
mod densities;
mod drawing_standards;
mod lengths;
mod poppler;
mod system_32;
