//! Drilling sheets: one page for each drilled panel.

mod broken;
mod edges;
pub(crate) mod facts;
mod foot;
mod frame;
mod header;
pub(crate) mod holes;
mod key;
mod numbers;
mod page;
mod page_parts;
mod picture;
mod table;
mod table_rows;
mod table_section;
#[cfg(test)]
mod tests;

use flapwright_model::job::Job;
use flapwright_rules::inspection::{BoxReport, Inspection, PanelReport};

use crate::draft::{Draft, box_title};
use crate::fit::Fit;
use crate::page_kind::PageKind;
use facts::Facts;

/// The drilling sheet of a panel on the best of the papers it may have, and further pages where its hole
/// table is too long for the sheet.
///
/// Every distance on a sheet is in mm from the one zero corner of the panel's drawn outline:
/// finished edges, or cut edges where the panel is drilled before it is banded.
pub(crate) fn pages(
    job: &Job,
    inspection: &Inspection,
    report: &BoxReport,
    panel: &PanelReport,
    fit: &Fit,
) -> Vec<Draft> {
    let facts = Facts::new(job, inspection, report, panel);
    page::pages(&facts, fit)
        .into_iter()
        .map(|page| Draft {
            kind: PageKind::Panel,
            box_id: Some(report.id),
            part: Some(panel.id),
            title: box_title(&report.name, &format!("{}{}", panel.name, page.more)),
            paper: page.paper,
            list: page.list,
            scale: page.scale,
        })
        .collect()
}
