//! A finished page: paper size and display list.

use crate::list::DisplayList;
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
    /// Paper size and which way up it lies.
    pub paper: Paper,
    /// What is printed.
    pub list: DisplayList,
}
