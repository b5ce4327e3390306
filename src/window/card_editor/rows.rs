//! Parts of a draft as rows of a table: each column is a field of the part.

use std::borrow::Cow;

use flapwright_model::card_draft::Grid;
use flapwright_model::field::{Fields, Kind, Value};

/// The cells of a part.
pub(super) fn cells<F: Fields>(part: &F::Part, columns: &[F]) -> Vec<String> {
    let cell = |field: &F| match field.get(part) {
        Some(Value::Text(text)) => text.into_owned(),
        Some(Value::Count(count)) => count.to_string(),
        Some(Value::Number(_) | Value::Flag(_) | Value::Choice(_) | Value::Unset) | None => {
            String::new()
        }
    };
    columns.iter().map(cell).collect()
}

/// Takes a row of cells over into a part. A count that cannot be read stays as it was.
pub(super) fn take_cells<F: Fields>(part: &mut F::Part, columns: &[F], grid: &Grid, row: usize) {
    for (column, field) in columns.iter().enumerate() {
        let text = grid.cell(row, column);
        let value = match field.info().kind {
            Kind::Count(_) => match text.trim().parse() {
                Ok(count) => Value::Count(count),
                Err(_) => continue,
            },
            _ => Value::Text(Cow::Borrowed(text)),
        };
        // A count that the part cannot hold stays as it was, too.
        let _set = field.set(part, &value);
    }
}
