//! Regions of the size chart against the limits on the card, by hand.

use crate::common::{COLD_AND_HOT, card, one_leaf, pivot, plates};
use flapwright_model::card::{Card, Span};
use flapwright_model::lift::{Carries, MassRow, PieceCount};
use flapwright_model::linkage::Bodies;
use flapwright_motion::size_chart::{Region, regions};
use flapwright_motion::sizes::{Judged, Offer, verdicts};

fn flap(carries: Carries) -> Card {
    let mut card = card(
        Bodies::FixedAxis {
            axis: pivot(0.0, 0.0),
        },
        100.0,
    );
    card.sizes.truncate(1);
    card.per = PieceCount::PerPair;
    card.sizes[0].carries = carries;
    card.sizes[0].door_height = Span {
        min: 200.0,
        max: 600.0,
    };
    card
}

fn only_region(card: &Card, pieces: u8) -> Region {
    let door = one_leaf(400.0, 18.0);
    let mass = plates(&door, 5.0);
    let offer = Offer {
        door_width: 600.0,
        box_height: 410.0,
        depth_from_side: 500.0,
        depth_from_frame: 500.0,
        opening_height: 400.0,
        clear_down: 400.0,
        to_adjust: [0.0; 3],
    };
    let judged = Judged {
        door: &door,
        mass: &mass,
        offer: &offer,
        cold_and_hot: COLD_AND_HOT,
    };
    let cards = std::slice::from_ref(card);
    let found = verdicts(cards, card.kind, &judged, Some(pieces));
    regions(cards, &found, &judged).remove(0)
}

#[test]
fn a_mass_range_is_a_rectangle_over_the_door_heights() {
    let region = only_region(&flap(Carries::Mass { min: 2.0, max: 6.0 }), 2);
    assert!(region.as_given);
    assert_eq!(
        region.outline,
        [(200.0, 2.0), (600.0, 2.0), (600.0, 6.0), (200.0, 6.0)]
    );
    // One piece of a pair carries half.
    let region = only_region(&flap(Carries::Mass { min: 2.0, max: 6.0 }), 1);
    assert_eq!(
        region.outline,
        [(200.0, 1.0), (600.0, 1.0), (600.0, 3.0), (200.0, 3.0)]
    );
}

#[test]
fn a_table_runs_from_row_to_row_and_back() {
    let row = |height, min, max| MassRow { height, min, max };
    let rows = vec![row(200.0, 3.0, 9.0), row(600.0, 1.0, 3.0)];
    let region = only_region(&flap(Carries::MassByDoorHeight(rows)), 2);
    assert_eq!(
        region.outline,
        [(200.0, 3.0), (600.0, 1.0), (600.0, 3.0), (200.0, 9.0)]
    );
}

#[test]
fn a_moment_carries_half_the_mass_on_a_door_twice_as_high() {
    let carries = Carries::Moment {
        min: 4.0,
        max: 8.0,
        at_degrees: 90.0,
    };
    let region = only_region(&flap(carries), 2);
    assert!(!region.as_given);
    let at = |height: f64| {
        let masses: Vec<f64> = region
            .outline
            .iter()
            .filter(|corner| (corner.0 - height).abs() < 1e-9)
            .map(|corner| corner.1)
            .collect();
        (masses[0], masses[masses.len() - 1])
    };
    let (low, high) = (at(300.0), at(600.0));
    assert!((low.0 - 2.0 * high.0).abs() < 1e-9, "{low:?} {high:?}");
    assert!(
        (low.1 / low.0 - 2.0).abs() < 1e-9,
        "twice the moment, twice the mass"
    );
}
