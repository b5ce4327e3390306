//! Where a panel lies on paper, and its places on it.

use euclid::default::Rect;
use flapwright_model::part::{BoreId, Subject};

use super::facts::Facts;
use super::holes::Hole;
use crate::list::At;
use crate::scale::Scale;

/// Room for running dimensions and the edge's name beside the zero end of u, paper mm.
pub(super) const ZERO_SIDE: f64 = 26.0;
/// Room beside the far end of u, paper mm.
pub(super) const FAR_SIDE: f64 = 7.0;
/// Room above, paper mm.
pub(super) const ABOVE: f64 = 28.0;
/// Room below, paper mm.
pub(super) const BELOW: f64 = 8.0;
/// Ring around a hole with a finding: so much wider than the hole, paper mm.
pub(super) const RING: f64 = 1.4;
/// Smallest radius of a hole on paper, mm.
const LEAST_RADIUS: f64 = 0.6;

/// A panel at its place on paper.
pub(super) struct Picture<'a> {
    pub(super) facts: &'a Facts<'a>,
    pub(super) scale: Scale,
    /// Upper left corner of the outline.
    pub(super) corner: At,
}

impl Picture<'_> {
    /// Where a place on the face is on paper.
    pub(super) fn at(&self, u: f64, v: f64) -> At {
        let ratio = self.scale.ratio();
        let [start_u, start_v] = self.facts.start;
        let along = if self.facts.u_runs_left() {
            self.facts.size[0] - (u - start_u)
        } else {
            u - start_u
        };
        let down = v - start_v;
        At::new(self.corner.x + along * ratio, self.corner.y - down * ratio)
    }

    /// Where distances begin on the drawn part: the zero corner, or the corner nearest to it.
    pub(super) fn zero_corner(&self) -> At {
        let [u, v] = self.facts.start;
        self.at(u, v)
    }

    /// The far ends of the drawn part, mm from zero.
    pub(super) fn ends(&self) -> [f64; 2] {
        let facts = self.facts;
        [
            facts.start[0] + facts.size[0],
            facts.start[1] + facts.size[1],
        ]
    }

    /// The outline on paper.
    pub(super) fn outline(&self) -> Rect<f64> {
        let [u, v] = self.ends();
        Rect::from_points([self.zero_corner(), self.at(u, v)])
    }

    /// Radius of a hole on paper, mm.
    pub(super) fn radius(&self, hole: &Hole) -> f64 {
        (0.5 * hole.diameter * self.scale.ratio()).max(LEAST_RADIUS)
    }

    /// The holes that lie on the drawn part. One outside would be drawn over what stands beside the
    /// panel, or past the frame; it cannot be drilled, and the table and a finding tell of it.
    pub(super) fn shown(&self) -> impl Iterator<Item = &Hole> {
        let on_it = |hole: &&Hole| self.facts.lies_on_it(hole);
        self.facts.holes.iter().filter(on_it)
    }

    /// A hole, for whoever points at it.
    pub(super) fn subject(&self, hole: &Hole) -> Subject {
        Subject::Bore(BoreId {
            part: self.facts.panel.id,
            number: hole.number,
        })
    }
}
