//! The check `off-the-grid`.
//!
//! Worked by hand on the plain box: door 794 by 594, sides 322 by 600, bores of the fitting 82 below
//! the top end of the side, 29 in from the door's sides.

use crate::common::*;
use crate::findings::*;
use crate::worked::first_clears;
use flapwright_model::card::FittedSides;
use flapwright_model::part::{Part, Subject};
use flapwright_rules::finding::Severity;

#[test]
fn rows_off_the_fitting_s_grid_are_a_note() {
    const NAME: &str = "off-the-grid";
    // The fitting's bores lie at 82: 82 - 50 = 32, 82 - 18 = 64.
    for (first, expected) in [(50.0, 0), (18.0, 0), (50.04, 0), (50.06, 1), (41.0, 1)] {
        assert_eq!(found(&with_rows(first), NAME).len(), expected, "{first}");
    }
    let it = &found(&with_rows(41.0), NAME)[0];
    assert_eq!(it.severity, Severity::Note);
    // 82 - 41 = 41 = 32 + 9.
    assert_close(it.numbers[0].value, 9.0);
    first_clears(&with_rows(41.0), NAME);
    let mut off = with_rows(41.0);
    off.settings.grid_step = 0.0;
    assert_eq!(found(&off, NAME), []);
    // Bores that are no whole steps apart fit no row.
    let mut card = card();
    card.side_bores[1] = side_bore(84.0, 137.0);
    let mut uneven = with_rows(41.0);
    uneven.cards[0].card = card;
    assert_eq!(found(&uneven, NAME), []);
}

#[test]
fn rows_off_the_grid_say_where_to_begin() {
    let it = the_only(&with_rows(41.0), "off-the-grid");
    says(&it, "off-the-grid.below: below_the_grid 9 mm");
    assert_eq!(it.subjects, [Subject::Part(part_id(Part::LeftSide))]);
    assert_eq!(it.remedies[0].kind, "remedy.move-rows");
    assert_eq!(
        it.remedies[0].effects,
        "effect.first-shelf-bore: was 41 mm, is 50 mm"
    );
    assert!(!it.remedies[0].safe, "shelves would hang elsewhere");
    clears(&with_rows(41.0), &it, 0);
    // 82 - 100 = -18 = -32 + 14.
    let above = the_only(&with_rows(100.0), "off-the-grid");
    assert_close(number(&above, "below_the_grid"), 14.0);
    clears(&with_rows(100.0), &above, 0);
    // Only the right side has bores of the fitting.
    let mut right = with_rows(41.0);
    right.cards[0].card.sides = FittedSides::RightOnly;
    assert_eq!(
        the_only(&right, "off-the-grid").subjects,
        [Subject::Part(part_id(Part::RightSide))]
    );
}
