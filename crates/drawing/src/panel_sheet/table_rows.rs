//! What stands in the rows of a hole table.

use flapwright_model::length::{show_inch_64, show_mm_tenth};

use super::holes::Hole;
use super::table_section::{Row, Section, Style};
use crate::list::Weight;
use crate::pen::Ink;
use crate::text::set_fractions;
use crate::views::severity_ink;
use crate::words::wrap;

/// Shelf bores with the same diameter, depth and purpose belong together.
pub(super) fn groups<'a>(rows: &[&'a Hole]) -> Vec<Vec<&'a Hole>> {
    let mut groups: Vec<Vec<&Hole>> = Vec::new();
    for hole in rows {
        let alike = |group: &&mut Vec<&Hole>| {
            group.first().is_some_and(|first| {
                first.diameter == hole.diameter
                    && first.depth == hole.depth
                    && first.purpose == hole.purpose
            })
        };
        match groups.iter_mut().find(alike) {
            Some(group) => group.push(hole),
            None => groups.push(vec![hole]),
        }
    }
    groups
}

fn place_cells(hole: &Hole, inches: bool) -> Vec<String> {
    let mut cells = vec![
        hole.number.to_string(),
        show_mm_tenth(hole.u),
        show_mm_tenth(hole.v),
    ];
    if inches {
        cells.extend([hole.u, hole.v].map(|it| set_fractions(&show_inch_64(it))));
    }
    cells
}

fn place_heads(inches: bool) -> Vec<&'static str> {
    if inches {
        vec!["No", "u", "v", "u in", "v in"]
    } else {
        vec!["No", "u", "v"]
    }
}

fn ink_of(hole: &Hole) -> Ink {
    hole.severity.map_or(Ink::Plain, severity_ink)
}

/// Holes listed in full.
pub(super) fn full(holes: &[&Hole], inches: bool, style: Style) -> Section {
    let mut heads = place_heads(inches);
    heads.extend(["Ø", "depth", "for"]);
    let rows = holes
        .iter()
        .map(|hole| {
            let mut cells = place_cells(hole, inches);
            cells.extend([show_mm_tenth(hole.diameter), hole.depth_words()]);
            let said = hole
                .severity
                .map(|severity| format!("{}: ", severity.word().to_uppercase()));
            let purpose = format!("{}{}", said.unwrap_or_default(), hole.purpose);
            let lines = wrap(&purpose, style.height, Weight::Plain, style.purpose_room);
            Row {
                cells,
                purpose: lines,
                ink: ink_of(hole),
            }
        })
        .collect();
    Section::new("Holes: mm from zero".to_owned(), style, heads, rows)
}

/// Shelf bores that have all but their place in common.
pub(super) fn compact_rows(holes: &[&Hole], inches: bool, style: Style) -> Section {
    let rows = holes
        .iter()
        .map(|hole| Row {
            cells: place_cells(hole, inches),
            purpose: Vec::new(),
            ink: ink_of(hole),
        })
        .collect();
    let caption = holes.first().map(|first| {
        format!(
            "{} holes Ø{}, depth {}: {}",
            holes.len(),
            show_mm_tenth(first.diameter),
            first.depth_words(),
            first.purpose
        )
    });
    Section::new(
        caption.unwrap_or_default(),
        style,
        place_heads(inches),
        rows,
    )
}
