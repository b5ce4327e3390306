//! What is under the pointer, in words.

use flapwright_model::card::Depth;
use flapwright_model::length::show_length;
use flapwright_model::part::{BoreId, Subject};

use super::Shown;

/// Name and sizes of a thing; `None` for what has none to tell.
pub(crate) fn describe(subject: Subject, shown: &Shown<'_>) -> Option<String> {
    let length = |mm: f64| show_length(mm, shown.job.unit);
    match subject {
        Subject::Box(id) => {
            let report = shown.inspection.report(id)?;
            let [w, h, d] = report.outer.map(length);
            Some(format!("{}: {w} wide, {h} high, {d} deep", report.name))
        }
        Subject::Opening(id, opening) => {
            let report = shown.inspection.report(id)?;
            let size = report.opening(opening)?.clear.size();
            Some(format!(
                "opening {}: {} wide, {} high, {} deep",
                report.number_of(opening),
                length(size.width),
                length(size.height),
                length(size.depth)
            ))
        }
        Subject::Door(_, door) => {
            let edges = shown.inspection.door(door)?.edges;
            let (width, height) = (edges.right - edges.left, edges.top - edges.bottom);
            Some(format!(
                "door: {} wide, {} high",
                length(width),
                length(height)
            ))
        }
        Subject::Obstacle(id) => Some(shown.job.room.obstacle(id)?.name.clone()),
        Subject::Card(_) => None,
        Subject::Part(part) => {
            let panel = shown.inspection.panel(part)?;
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
            let panel = shown.inspection.panel(part)?;
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
