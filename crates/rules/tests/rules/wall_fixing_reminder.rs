//! The check `wall-fixing-reminder`.
//!
//! Worked by hand on the plain box: door 794 by 594, sides 322 by 600, bores of the fitting 82 below
//! the top end of the side, 29 in from the door's sides.

use crate::common::*;
use crate::findings::*;
use flapwright_rules::finding::Severity;

#[test]
fn the_wall_is_told_what_it_has_to_hold() {
    let mut job = weighed(6.0, 0.5, card());
    job.settings.weights.clear();
    // Sides 2 x 600 x 322 x 18, top and bottom 2 x 764 x 322 x 18, back 800 x 600 x 8: together
    // 19 651 488 mm3, at 720 kg/m3 14.149 kg. Door 6.5 kg. Bottom 0.764 m x 0.322 m at 195 kg/m2:
    // 47.972 kg.
    let it = found(&job, "wall-fixing-reminder").remove(0);
    assert_eq!(it.severity, Severity::Note);
    assert!(
        (it.numbers[0].value - 68.621).abs() < 1e-3,
        "{:?}",
        it.numbers
    );
    assert!(it.message.contains("68.62 kg"), "{}", it.message);
    // A shelf of 18 mm between the sides: 764 x 322 more of wood and of load.
    lay(&mut job.boxes[0], 300.0, across(18.0));
    let more = found(&job, "wall-fixing-reminder")[0].numbers[0].value;
    let by = more - it.numbers[0].value;
    // 764 x 322 x 18 mm3 at 720 kg/m3 = 3.188 kg, and 47.972 kg on it.
    assert!((by - 51.160).abs() < 1e-3, "{by}");
}

#[test]
fn the_wall_is_told_part_by_part() {
    let mut job = weighed(6.0, 0.5, card());
    let it = the_only(&job, "wall-fixing-reminder");
    // See the test of the sum: 14.149 kg, 6.5 kg, 47.972 kg.
    says(&it, "wall-fixing-reminder.loaded: loaded_mass 68.62 kg");
    says(
        &it,
        "wall-fixing-reminder.parts: body 14.15 kg, doors 6.50 kg, load 47.97 kg",
    );
    // A frame 20 thick, its members 30 wide and flush with the panels' inner faces (764 by 564): two
    // stiles of 564 + 60 and two rails of 764. 2 x (624 + 764) x 30 x 20 mm3 at 720 kg/m3 = 1.199 kg.
    job.boxes[0].frame = Some(face_frame(20.0, 30.0, 0.0));
    let framed = the_only(&job, "wall-fixing-reminder");
    let more = number(&framed, "loaded_mass") - number(&it, "loaded_mass");
    assert!((more - 1.199_232).abs() < 1e-6, "{more}");
}
