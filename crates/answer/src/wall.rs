//! Which boxes hang near a place on the wall.

use std::collections::{BTreeMap, BTreeSet};

use flapwright_model::id::BoxId;
use flapwright_rules::checks::Stretch;

/// The wall is cut into squares of this side, mm: about a box.
const SQUARE: f64 = 1000.0;

/// A square of the wall: counted along it and up.
type Square = (i32, i32);

/// The boxes by the squares of the wall that they, closed or open, have a part in.
#[derive(Debug, Clone, Default)]
pub(crate) struct Wall {
    squares: BTreeMap<Square, BTreeSet<BoxId>>,
    stretches: BTreeMap<BoxId, Stretch>,
}

impl Wall {
    /// Notes where a box hangs.
    pub(crate) fn hang(&mut self, id: BoxId, stretch: Stretch) {
        self.take_down(id);
        for square in squares(&stretch) {
            self.squares.entry(square).or_default().insert(id);
        }
        self.stretches.insert(id, stretch);
    }

    /// Forgets a box.
    pub(crate) fn take_down(&mut self, id: BoxId) {
        let Some(stretch) = self.stretches.remove(&id) else {
            return;
        };
        for square in squares(&stretch) {
            if let Some(boxes) = self.squares.get_mut(&square) {
                boxes.remove(&id);
                if boxes.is_empty() {
                    self.squares.remove(&square);
                }
            }
        }
    }

    /// Where a box hangs.
    pub(crate) fn stretch(&self, id: BoxId) -> Option<&Stretch> {
        self.stretches.get(&id)
    }

    /// The boxes that have to do with a stretch of the wall.
    pub(crate) fn near(&self, stretch: &Stretch) -> BTreeSet<BoxId> {
        let boxes = squares(stretch)
            .filter_map(|square| self.squares.get(&square))
            .flatten();
        boxes
            .filter(|id| self.stretches.get(id).is_some_and(|it| it.meets(stretch)))
            .copied()
            .collect()
    }
}

fn squares(stretch: &Stretch) -> impl Iterator<Item = Square> + use<> {
    let (across, up) = (range(stretch.across), range(stretch.up));
    across.flat_map(move |x| up.clone().map(move |y| (x, y)))
}

#[expect(
    clippy::cast_possible_truncation,
    reason = "a place on the wall is far below the limit, and the cast saturates"
)]
fn range((from, to): (f64, f64)) -> std::ops::RangeInclusive<i32> {
    (from / SQUARE).floor() as i32..=(to / SQUARE).floor() as i32
}
