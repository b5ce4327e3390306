//! Bore lists and machine files: what is drilled, as JSON, CSV and DXF.
//!
//! [`bore_list`] makes the one table that all three are written from, so they cannot disagree.

mod csv;
mod dxf;
mod json;
mod layers;
mod list;
mod options;
#[cfg(test)]
mod tests;

pub use self::csv::bores_csv;
pub use self::dxf::{APPLICATION, bores_dxf};
pub use self::json::{BORE_LIST_FORMAT, BORE_LIST_VERSION, bores_json};
pub use self::layers::{
    DEFAULT_LAYERS, LayerPattern, NOTES_LAYER, PLACEHOLDERS, PatternError, outline_layer,
};
pub use self::list::{BoreList, BorePanel, BoreRow, bore_list};
pub use self::options::{BoreOptions, FaceUp, ZeroCorner};
