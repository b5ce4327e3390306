//! A finished page: paper size and display list.

use flapwright_model::id::BoxId;
use flapwright_model::part::PartId;

use crate::list::DisplayList;
use crate::page_kind::PageKind;
use crate::paper::Paper;

/// One page, ready for any back-end. The list's frame is the paper itself: millimetres, origin at
/// the lower left corner of the paper, y up.
#[derive(Debug, Clone, PartialEq)]
pub struct Sheet {
    /// Short, unique within one set of sheets; plain letters, digits and hyphens, fit for a file
    /// name, e.g. `02-mugs-right-side`.
    pub slug: String,
    /// Title for bookmarks and window lists, e.g. `mugs: right side`.
    pub title: String,
    /// What kind of page it is.
    pub kind: PageKind,
    /// The box that it is about; `None` where it is about more.
    pub box_id: Option<BoxId>,
    /// The panel that it is about.
    pub part: Option<PartId>,
    /// Paper size and which way up it lies.
    pub paper: Paper,
    /// What is printed.
    pub list: DisplayList,
}
