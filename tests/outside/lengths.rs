//! Inches: 25.4 mm exactly (NIST SP 811, appendix B; restated by `scipy.constants.inch`). The
//! table is exact arithmetic after that.

use flapwright_model::length::{Unit, parse_length, show_inch_64};

#[test]
fn fractions_of_an_inch_are_exact_millimetres() {
    for (text, expected) in [
        ("1/64", 0.396_875),
        ("1/32", 0.793_75),
        ("1/16", 1.5875),
        ("1/8", 3.175),
        ("3/16", 4.7625),
        ("5/16", 7.9375),
        ("3/8", 9.525),
        ("1/2", 12.7),
        ("5/8", 15.875),
        ("11/16", 17.4625),
        ("23/32", 18.256_25),
        ("3/4", 19.05),
        ("23-5/8\"", 600.075),
        ("23 5/8", 600.075),
        ("23.625\"", 600.075),
        ("1'-11 5/8\"", 600.075),
        // Operable reach of the 2010 ADA Standards, 308.2.1, as a conversion only.
        ("48 in", 1219.2),
    ] {
        let found = parse_length(text, Unit::Millimetre).unwrap();
        assert!(
            (found - expected).abs() < 1e-12,
            "{text}: {found}, expected {expected}"
        );
    }
}

#[test]
fn metric_sizes_round_to_the_nearest_64th() {
    // Exact arithmetic: mm / 25.4 x 64, rounded, reduced.
    for (mm, expected) in [
        (5.0, "13/64\""),
        (8.0, "5/16\""),
        (13.0, "33/64\""),
        (16.0, "5/8\""),
        (18.0, "45/64\""),
        (19.0, "3/4\""),
        (32.0, "1-17/64\""),
        (35.0, "1-3/8\""),
        (37.0, "1-29/64\""),
    ] {
        assert_eq!(show_inch_64(mm), expected, "{mm} mm");
    }
}
