//! All pages of a job: cover, boxes, panels, lists, settings, templates.

mod bore_list;
mod box_heights;
mod box_page;
mod cover;
mod cut_list;
mod cut_rows;
mod fitting_page;
mod fitting_words;
mod flow;
pub(crate) mod head_foot;
mod list_table;
mod setup;
mod template;
mod template_map;
mod template_tile;
#[cfg(test)]
mod tests;

use std::collections::BTreeSet;

use flapwright_model::job::{Job, PaperChoice};
use flapwright_rules::inspection::Inspection;

use setup::{SheetSetup, drilled_of};

use crate::draft::{Draft, finish};
use crate::fit::Fit;
pub use crate::page_kind::PageKind;
use crate::panel_sheet;
use crate::paper::Paper;
use crate::scale::Scale;
use crate::sheet::Sheet;

/// Which pages are made and on what.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct PageOptions {
    /// The kinds of pages. They always come in the order of [`PageKind::ALL`], panels after the
    /// drawing of their box.
    pub kinds: BTreeSet<PageKind>,
    /// Paper in place of the one that the job names.
    pub paper: Option<PaperChoice>,
    /// Which way up the paper lies.
    pub orientation: Orientation,
    /// No picture is drawn larger than this, one of [`Scale::limits`]; [`Scale::FULL`] leaves each
    /// page the largest scale that fits. Full-size templates are full size whatever is chosen.
    pub largest_scale: Scale,
}

/// Which way up the paper lies.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Default)]
pub enum Orientation {
    /// Long side upright.
    Upright,
    /// Long side level.
    Lying,
    /// Whichever gives the larger scale; upright where both give the same, and for lists.
    #[default]
    Best,
}

impl Default for PageOptions {
    /// Everything but the full-size templates, on the job's paper.
    fn default() -> Self {
        let mut kinds = BTreeSet::from(PageKind::ALL);
        kinds.remove(&PageKind::Template);
        Self::of(kinds)
    }
}

impl PageOptions {
    /// These kinds on the job's paper.
    #[must_use]
    pub fn of(kinds: impl IntoIterator<Item = PageKind>) -> Self {
        Self {
            kinds: kinds.into_iter().collect(),
            paper: None,
            orientation: Orientation::Best,
            largest_scale: Scale::FULL,
        }
    }

    /// The drilling sheets alone.
    #[must_use]
    pub fn panels_only() -> Self {
        Self::of([PageKind::Panel])
    }

    /// What the pictures of a job have to fit into.
    fn fit(&self, job: &Job) -> Fit {
        let upright = Paper::of(self.paper.unwrap_or(job.settings.paper));
        let papers = match self.orientation {
            Orientation::Upright => vec![upright],
            Orientation::Lying => vec![upright.turned()],
            Orientation::Best => vec![upright, upright.turned()],
        };
        Fit {
            papers,
            largest: self.largest_scale,
        }
    }
}

/// The pages of a job, in the order of [`PageKind::ALL`] with each box's drawing before its
/// panels; numbered through. Kinds that have nothing to say have no page.
///
/// The same job, inspection and options give the same pages.
#[must_use]
pub fn job_sheets(job: &Job, inspection: &Inspection, options: &PageOptions) -> Vec<Sheet> {
    let setup = SheetSetup {
        job,
        inspection,
        fit: options.fit(job),
    };
    let wants = |kind| options.kinds.contains(&kind);
    let mut drafts: Vec<Draft> = Vec::new();
    if wants(PageKind::Cover) {
        drafts.extend(cover::pages(&setup));
    }
    for report in &inspection.boxes {
        if wants(PageKind::Box) {
            drafts.extend(box_page::pages(&setup, report));
        }
        if wants(PageKind::Panel) {
            for panel in drilled_of(report) {
                let pages = panel_sheet::pages(job, inspection, report, panel, &setup.fit);
                drafts.extend(pages);
            }
        }
    }
    if wants(PageKind::CutList) {
        drafts.extend(cut_list::pages(&setup));
    }
    if wants(PageKind::BoreList) {
        drafts.extend(bore_list::pages(&setup));
    }
    if wants(PageKind::FittingSettings) {
        drafts.extend(fitting_page::pages(&setup));
    }
    if wants(PageKind::Template) {
        for (report, panel) in setup.drilled() {
            drafts.extend(template::pages(&setup, report, panel));
        }
    }
    finish(job, drafts)
}
