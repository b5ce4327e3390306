//! Drilling sheets: one page for each drilled panel.

mod edges;
mod facts;
mod foot;
mod header;
mod holes;
mod key;
mod numbers;
mod page;
mod picture;
mod table;
mod table_rows;
#[cfg(test)]
mod tests;

use flapwright_model::job::Job;
use flapwright_rules::inspection::{BoxReport, Face, Inspection, PanelReport};

use crate::sheet::Sheet;
use crate::title_block::{self, Fields};
use facts::Facts;
use page::Page;

/// The drilling sheets of a job, box by box, in the order of the box's panels; a panel without
/// bores has none. A hole table too long for its sheet runs on to a further page.
///
/// Every distance on a sheet is in mm from the one zero corner of the panel's drawn outline:
/// finished edges, or cut edges where the panel is drilled before it is banded.
#[must_use]
pub fn sheets(job: &Job, inspection: &Inspection) -> Vec<Sheet> {
    let pages: Vec<(&BoxReport, &PanelReport, Page)> = inspection
        .boxes
        .iter()
        .map(AsRef::as_ref)
        .flat_map(|report: &BoxReport| report.panels.iter().map(move |panel| (report, panel)))
        .filter(|(_, panel)| !panel.bores.is_empty() && panel.face != Face::Plain)
        .flat_map(|(report, panel)| {
            let facts = Facts::new(job, inspection, report, panel);
            page::pages(&facts)
                .into_iter()
                .map(move |page| (report, panel, page))
        })
        .collect();
    let count = pages.len();
    pages
        .into_iter()
        .enumerate()
        .map(|(i, (report, panel, page))| finish(job, report, panel, page, i + 1, count))
        .collect()
}

fn finish(
    job: &Job,
    report: &BoxReport,
    panel: &PanelReport,
    page: Page,
    number: usize,
    count: usize,
) -> Sheet {
    let mut list = page.list;
    let texts = &job.title_block;
    let continued = if page.continued { ", hole table" } else { "" };
    let title = format!("{}: {}{continued}", report.name, panel.name);
    let fields = Fields {
        owner: texts.owner.clone(),
        title: job.name.clone(),
        subtitle: title.clone(),
        number: texts.number.clone(),
        date_of_issue: texts.date_of_issue.clone(),
        creator: texts.creator.clone(),
        approver: texts.approver.clone(),
        revision: texts.revision.clone(),
        document: "Drilling sheet".to_owned(),
        scale: page
            .scale
            .map_or_else(|| "none".to_owned(), crate::scale::Scale::words),
        sheet: number,
        sheets: count,
    };
    title_block::draw(&mut list, page.paper, &fields);
    title_block::frame(&mut list, page.paper);
    Sheet {
        slug: slug(number, &title),
        title,
        paper: page.paper,
        list,
    }
}

/// Number and title in plain letters, digits and hyphens.
fn slug(number: usize, title: &str) -> String {
    let mut slug = format!("{number:02}");
    for word in title
        .split(|c: char| !c.is_ascii_alphanumeric())
        .filter(|word| !word.is_empty())
    {
        slug.push('-');
        slug.push_str(&word.to_ascii_lowercase());
    }
    slug
}
