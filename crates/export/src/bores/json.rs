//! The bore list as JSON, after the schema in `assets/schema/bore-list.schema.json`.

use serde::Serialize;

use super::list::BoreList;
use crate::error::ExportError;

/// What the file says it is.
pub const BORE_LIST_FORMAT: &str = "flapwright-bore-list";

/// Version of the form; it changes whenever a reader of the last one would be misled.
pub const BORE_LIST_VERSION: u32 = 1;

#[derive(Serialize)]
struct Document<'a> {
    format: &'static str,
    version: u32,
    #[serde(flatten)]
    list: &'a BoreList,
}

/// The list as JSON in UTF-8 with a line end at the end. Lengths in mm.
///
/// # Errors
/// [`ExportError::List`] when the library gives up, which is a fault of the program.
pub fn bores_json(list: &BoreList) -> Result<Vec<u8>, ExportError> {
    let document = Document {
        format: BORE_LIST_FORMAT,
        version: BORE_LIST_VERSION,
        list,
    };
    let mut bytes = serde_json::to_vec_pretty(&document).map_err(|error| ExportError::List {
        format: "JSON",
        cause: error.to_string(),
    })?;
    bytes.push(b'\n');
    Ok(bytes)
}
