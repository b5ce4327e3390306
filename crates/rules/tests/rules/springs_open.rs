//! The check `springs-open`.
//!
//! The plain box's door of 6 kg hangs on an axis 278 mm above and 13.5 mm behind its middle: its
//! axis is 4 below the underside at 582 and 2 behind the front edges, its middle 300 above the
//! floor of the box and, 19 thick on 2 mm bumpers, 11.5 before the edges. Its lift moment is
//! m g (0.278 sin q + 0.0135 cos q), the moment of a weight about an axis (OpenStax University
//! Physics, 12.1): 15.971 N·m open at 100 degrees, at most 16.377, closed 0.794. A spring that
//! gives the same moment everywhere makes every limit a sum of two numbers.
//!
//! Worked by hand on the plain box: door 794 by 594, sides 322 by 600, bores of the fitting 82 below
//! the top end of the side, 29 in from the door's sides.

use crate::common::*;
use crate::findings::*;
use crate::worked::spring_card;
use flapwright_model::lift::{Carries, Lift, SpringRow};
use flapwright_rules::finding::Severity;

#[test]
fn a_light_door_stays_shut_within_friction() {
    // 0.794 + 0.5 = 1.294 N·m.
    for (moment, expected) in [
        (1.29, vec![]),
        (1.30, vec![Severity::Caution]),
        (5.0, vec![Severity::Caution]),
    ] {
        let job = weighed(6.0, 0.0, spring_card(moment));
        assert_eq!(severities(&job, "springs-open"), expected, "{moment} N·m");
    }
    let mut card = spring_card(5.0);
    card.sizes[0].carries = Carries::Mass {
        min: 7.0,
        max: 20.0,
    };
    let job = weighed(6.0, 0.0, card);
    assert_eq!(severities(&job, "springs-open"), []);
    assert_eq!(severities(&job, "door-too-light"), [Severity::Stop]);
}

#[test]
fn a_door_that_springs_open_says_by_how_much() {
    let mut card = card();
    card.sizes[0].lift = Lift::Spring {
        table: vec![SpringRow {
            degrees: 0.0,
            weakest: 5.0,
            strongest: 5.0,
        }],
        turns: 10.0,
        friction: 0.5,
    };
    // Closed, 6 kg pull by 0.794 N·m: 5 - 0.794 = 4.206 push, 0.5 of friction hold.
    let it = the_only(&weighed(6.0, 0.0, card), "springs-open");
    says(&it, "springs-open.rises: celsius 40 °C, ");
    says(&it, "springs-open.moments: push 4.2 N·m, friction 0.5 N·m");
    let beyond = number(&it, "push_beyond_friction");
    assert!((beyond - 3.706).abs() < 1e-3, "{beyond}");
}
