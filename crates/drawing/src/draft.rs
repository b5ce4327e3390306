//! Pages before they are numbered: number, title block, frame and slug come last.

use flapwright_model::id::BoxId;
use flapwright_model::job::Job;
use flapwright_model::part::PartId;

use crate::list::{DisplayList, Shape};
use crate::page_kind::PageKind;
use crate::paper::Paper;
use crate::paper_frame;
use crate::scale::Scale;
use crate::sheet::Sheet;
use crate::text::missing_glyphs;
use crate::title_block::{self, Fields};

/// A slug is cut to so many letters before its number.
const LONGEST_SLUG: usize = 60;
/// A title is cut to so many letters: bookmarks and window lists are narrow.
const LONGEST_TITLE: usize = 120;

/// A box's name is cut to so many letters in a title and in the findings on a drilling sheet, so that
/// what follows it is kept whole in file names and in the title block too, and the picture has room.
const LONGEST_NAME: usize = 28;

/// The name of a box, cut short with an ellipsis where it is long; `None` where it is not.
pub(crate) fn short_name(name: &str) -> Option<String> {
    if name.chars().count() <= LONGEST_NAME {
        return None;
    }
    let short: String = name.chars().take(LONGEST_NAME - 1).collect();
    Some(format!("{}…", short.trim_end()))
}

/// Title of a page about a part of a box: its name, cut short, and what the page shows of it.
pub(crate) fn box_title(name: &str, what: &str) -> String {
    match short_name(name) {
        Some(short) => format!("{short}: {what}"),
        None => format!("{name}: {what}"),
    }
}

/// A page without frame and title block.
pub(crate) struct Draft {
    pub(crate) kind: PageKind,
    pub(crate) box_id: Option<BoxId>,
    pub(crate) part: Option<PartId>,
    /// Title without a number, e.g. `mugs: right side`.
    pub(crate) title: String,
    pub(crate) paper: Paper,
    pub(crate) list: DisplayList,
    /// Scale of the picture; `None` on a page without one.
    pub(crate) scale: Option<Scale>,
}

impl Draft {
    /// A page about the whole job.
    pub(crate) fn of_job(kind: PageKind, title: String, paper: Paper, list: DisplayList) -> Self {
        Self {
            kind,
            box_id: None,
            part: None,
            title,
            paper,
            list,
            scale: None,
        }
    }
}

/// Numbers the pages and gives each its title block and frame.
pub(crate) fn finish(job: &Job, drafts: Vec<Draft>) -> Vec<Sheet> {
    let count = drafts.len();
    let digits = count.to_string().len().max(2);
    drafts
        .into_iter()
        .enumerate()
        .map(|(i, draft)| finish_one(job, draft, i + 1, count, digits))
        .collect()
}

fn finish_one(job: &Job, draft: Draft, number: usize, count: usize, digits: usize) -> Sheet {
    let mut list = draft.list;
    let texts = &job.title_block;
    let mut fields = Fields {
        owner: texts.owner.clone(),
        title: job.name.clone(),
        subtitle: draft.title.clone(),
        number: texts.number.clone(),
        date_of_issue: texts.date_of_issue.clone(),
        creator: texts.creator.clone(),
        approver: texts.approver.clone(),
        revision: texts.revision.clone(),
        document: draft.kind.words().to_owned(),
        scale: draft
            .scale
            .map_or_else(|| "none".to_owned(), crate::scale::Scale::words),
        sheet: number,
        sheets: count,
        boxed_signs: false,
    };
    fields.boxed_signs = has_boxed_signs(&list) || fields.has_boxed_signs();
    title_block::draw(&mut list, draft.paper, &fields);
    paper_frame::draw(&mut list, draft.paper);
    Sheet {
        slug: slug(number, digits, &draft.title),
        title: draft.title.chars().take(LONGEST_TITLE).collect(),
        kind: draft.kind,
        box_id: draft.box_id,
        part: draft.part,
        paper: draft.paper,
        list,
    }
}

/// Whether a text on the page has a sign that the embedded font lacks.
fn has_boxed_signs(list: &DisplayList) -> bool {
    list.items.iter().any(|item| match &item.shape {
        Shape::Text { text, .. } => !missing_glyphs(text).is_empty(),
        Shape::Line { .. }
        | Shape::Polyline { .. }
        | Shape::Area { .. }
        | Shape::Circle { .. }
        | Shape::Arc { .. } => false,
    })
}

/// Number and title in plain letters, digits and hyphens.
fn slug(number: usize, digits: usize, title: &str) -> String {
    let mut words = String::new();
    for word in title
        .split(|c: char| !c.is_ascii_alphanumeric())
        .filter(|word| !word.is_empty())
    {
        words.push('-');
        words.push_str(&word.to_ascii_lowercase());
    }
    words.truncate(LONGEST_SLUG);
    format!("{number:0digits$}{}", words.trim_end_matches('-'))
}
