//! The bore list as CSV, one row for each bore.

use super::list::{BoreList, BorePanel, BoreRow};
use super::options::FaceUp;
use crate::error::ExportError;

/// A column and what stands in it.
type Column = (&'static str, fn(&BoreList, &BorePanel, &BoreRow) -> String);

const COLUMNS: [Column; 31] = [
    ("job", |list, _, _| guarded(&list.job)),
    ("drawing_number", |list, _, _| guarded(&list.drawing_number)),
    ("revision", |list, _, _| guarded(&list.revision)),
    ("invented", |_, panel, _| yes_no(panel.invented)),
    ("open_stops", |_, panel, _| panel.open_stops.to_string()),
    ("fingerprint", |_, panel, _| panel.fingerprint.clone()),
    ("file", |_, panel, _| guarded(&panel.file)),
    ("box", |_, panel, _| guarded(&panel.box_name)),
    ("box_number", |_, panel, _| panel.box_number.to_string()),
    ("quantity", |_, panel, _| panel.quantity.to_string()),
    ("panel", |_, panel, _| guarded(&panel.panel)),
    ("hand", |_, panel, _| {
        panel.hand.unwrap_or_default().to_owned()
    }),
    ("face", |_, panel, _| panel.face.to_owned()),
    ("face_up", |list, _, _| match list.face_up {
        FaceUp::Inner => "inner".to_owned(),
        FaceUp::Outer => "outer".to_owned(),
    }),
    ("width", |_, panel, _| panel.width.to_string()),
    ("height", |_, panel, _| panel.height.to_string()),
    ("thickness", |_, panel, _| panel.thickness.to_string()),
    ("material", |_, panel, _| guarded(&panel.material)),
    ("edges", |_, panel, _| panel.edges.to_owned()),
    ("zero", |_, panel, _| panel.zero.clone()),
    ("sheet_zero", |_, panel, _| panel.sheet_zero.clone()),
    ("number", |_, _, bore| bore.number.to_string()),
    ("u", |_, _, bore| bore.u.to_string()),
    ("v", |_, _, bore| bore.v.to_string()),
    ("x", |_, _, bore| bore.x.to_string()),
    ("y", |_, _, bore| bore.y.to_string()),
    ("diameter", |_, _, bore| bore.diameter.to_string()),
    ("depth", |_, _, bore| {
        bore.depth
            .map_or_else(|| "through".to_owned(), |depth| depth.to_string())
    }),
    ("purpose", |_, _, bore| guarded(&bore.purpose)),
    ("pass", |_, _, bore| bore.pass.to_string()),
    ("layer", |_, _, bore| guarded(&bore.layer)),
];

/// The list as CSV (RFC 4180): UTF-8, commas, a head row, lines ended by CR LF, a full stop for
/// the decimal mark. Lengths in mm.
///
/// A text that a spreadsheet would take for a formula (it starts with `=`, `+`, `-` or `@`, plain or
/// full-width, blanks not counted) gets an apostrophe before it; so does one that starts with an apostrophe, so that the first one can
/// always be taken off again. Numbers are never guarded.
///
/// # Errors
/// [`ExportError::List`] when the library gives up, which is a fault of the program.
pub fn bores_csv(list: &BoreList) -> Result<Vec<u8>, ExportError> {
    let failed = |error: csv::Error| ExportError::List {
        format: "CSV",
        cause: error.to_string(),
    };
    let mut writer = csv::WriterBuilder::new()
        .terminator(csv::Terminator::CRLF)
        .from_writer(Vec::new());
    writer
        .write_record(COLUMNS.iter().map(|(name, _)| name))
        .map_err(failed)?;
    for panel in &list.panels {
        for bore in &panel.bores {
            let cells = COLUMNS.iter().map(|(_, cell)| cell(list, panel, bore));
            writer.write_record(cells).map_err(failed)?;
        }
    }
    writer.into_inner().map_err(|error| ExportError::List {
        format: "CSV",
        cause: error.to_string(),
    })
}

fn yes_no(yes: bool) -> String {
    if yes { "yes" } else { "no" }.to_owned()
}

/// A text that no spreadsheet takes for a formula.
fn guarded(text: &str) -> String {
    let signs = ['=', '+', '-', '@', '\'', '＝', '＋', '－', '＠'];
    if text.trim_start().starts_with(signs) {
        format!("'{text}")
    } else {
        text.to_owned()
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn formulas_are_guarded_and_others_left_alone() {
        for (text, cell) in [
            ("=1+1", "'=1+1"),
            ("+1", "'+1"),
            ("-1", "'-1"),
            ("@SUM(A1)", "'@SUM(A1)"),
            (" =1+1", "' =1+1"),
            ("＝1+1", "'＝1+1"),
            ("'quoted", "''quoted"),
            ("mugs = plates", "mugs = plates"),
            ("", ""),
        ] {
            assert_eq!(guarded(text), cell);
        }
    }
}
