//! What is under the pointer, in words.

use flapwright_model::card::Depth;
use flapwright_model::length::show_length;
use flapwright_model::part::{BoreId, PartId, Subject};
use flapwright_rules::inspection::PanelReport;

use super::Shown;

/// Name and sizes of a thing; `None` for what has none to tell.
pub(crate) fn describe(subject: Subject, shown: &Shown<'_>) -> Option<String> {
    let length = |mm: f64| show_length(mm, shown.job.unit);
    match subject {
        Subject::Box(index) => {
            let report = shown.inspection.boxes.get(index)?;
            let [w, h, d] = report.outer.map(length);
            Some(format!("{}: {w} wide, {h} high, {d} deep", report.name))
        }
        Subject::Opening { box_index, opening } => {
            let report = shown
                .inspection
                .boxes
                .get(box_index)?
                .openings
                .get(opening)?;
            let size = report.clear.size();
            Some(format!(
                "opening {}: {} wide, {} high, {} deep",
                opening + 1,
                length(size.width),
                length(size.height),
                length(size.depth)
            ))
        }
        Subject::Part(part) => {
            let panel = panel(part, shown)?;
            let [u, v] = panel.size.map(length);
            let thick = length(panel.thickness);
            let bores = match panel.bores.len() {
                0 => String::new(),
                1 => "\n1 bore".to_owned(),
                n => format!("\n{n} bores"),
            };
            Some(format!(
                "{}: {u} × {v}, {thick} thick\n{}{bores}",
                panel.name, panel.material
            ))
        }
        Subject::Bore(BoreId { part, number }) => {
            let panel = panel(part, shown)?;
            let bore = panel.bores.iter().find(|bore| bore.number == number)?;
            let (u, v) = bore.at.uv();
            let depth = match bore.drill.depth {
                Depth::Blind(depth) => format!("{} deep", length(depth)),
                Depth::Through => "through".to_owned(),
            };
            Some(format!(
                "{}, bore {number}: {}\nu {}  v {}\nØ {}, {depth}",
                panel.name,
                bore.drill.purpose,
                length(u),
                length(v),
                length(bore.drill.diameter)
            ))
        }
    }
}

fn panel<'a>(id: PartId, shown: &Shown<'a>) -> Option<&'a PanelReport> {
    shown
        .inspection
        .boxes
        .get(id.box_index)?
        .panels
        .iter()
        .find(|panel| panel.id == id)
}
