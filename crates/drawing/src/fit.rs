//! What a picture has to fit into: papers, and scales no larger than a chosen one.

use crate::paper::Paper;
use crate::scale::Scale;

/// Papers that a picture may be put on, the preferred one first, and how large it may be drawn.
#[derive(Debug, Clone, PartialEq)]
pub(crate) struct Fit {
    pub(crate) papers: Vec<Paper>,
    /// No picture is drawn larger than this.
    pub(crate) largest: Scale,
}

impl Fit {
    /// The paper of what has no picture.
    pub(crate) fn first_paper(&self) -> Paper {
        self.papers.first().copied().unwrap_or(Paper::A4)
    }

    /// The scales that a picture may have, largest first.
    pub(crate) fn scales(&self) -> impl Iterator<Item = Scale> + use<> {
        let most = self.largest.ratio();
        Scale::reductions().filter(move |scale| scale.ratio() <= most)
    }
}
