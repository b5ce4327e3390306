//! Paper, frame and scales of published drawing standards.

use flapwright_drawing::paper::Paper;
use flapwright_drawing::scale::Scale;

#[test]
fn paper_sizes() {
    // ISO 216 (as in "Machine Drawing", table 2.1) and ASME Y14.1 A and B (8.5 x 11, 11 x 17 in).
    for (paper, width, height) in [
        (Paper::A4, 210.0, 297.0),
        (Paper::A3, 297.0, 420.0),
        (Paper::LETTER, 8.5 * 25.4, 11.0 * 25.4),
        (Paper::TABLOID, 11.0 * 25.4, 17.0 * 25.4),
    ] {
        assert!((paper.width - width).abs() < 1e-9, "{}", paper.name);
        assert!((paper.height - height).abs() < 1e-9, "{}", paper.name);
    }
}

#[test]
fn the_frame_leaves_20_at_the_left_and_10_elsewhere() {
    // ISO 5457, restated second-hand: A3 turned 390 x 277, A4 turned 267 x 190; A4 upright
    // 180 x 277 from memory of the standard.
    for (paper, x, y, width, height) in [
        (Paper::A3.turned(), 20.0, 10.0, 390.0, 277.0),
        (Paper::A4.turned(), 20.0, 10.0, 267.0, 190.0),
        (Paper::A4, 20.0, 10.0, 180.0, 277.0),
    ] {
        let space = paper.drawing_space();
        assert_eq!(
            (space.min_x(), space.min_y(), space.width(), space.height()),
            (x, y, width, height),
            "{}",
            paper.name
        );
    }
}

#[test]
fn reductions_are_those_of_the_list() {
    // ISO 5455:1979, clauses 3 and 5.1; 1:3, 1:4 and 1:8 are not in it.
    let found: Vec<f64> = Scale::reductions()
        .map(|scale| (1.0 / scale.ratio()).round())
        .collect();
    let listed = [
        1.0, 2.0, 5.0, 10.0, 20.0, 50.0, 100.0, 200.0, 500.0, 1000.0, 2000.0, 5000.0, 10000.0,
        // Extended by a power of ten, as clause 5.1 allows.
        20000.0,
    ];
    assert!(!found.is_empty());
    for reduction in found {
        assert!(
            listed.contains(&reduction),
            "1:{reduction} is not in the list"
        );
    }
}
