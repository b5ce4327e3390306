//! Every form that is read and every form that is refused.

use LengthProblem::*;

use super::*;

/// Read with the job in mm; panics with the message.
fn mm(text: &str) -> f64 {
    parse_length(text, Unit::Millimetre).unwrap_or_else(|e| panic!("{text}: {e}"))
}

/// Read with the job in inches.
fn inch(text: &str) -> f64 {
    parse_length(text, Unit::Inch).unwrap_or_else(|e| panic!("{text}: {e}"))
}

#[track_caller]
fn refused(text: &str, found: &str, problem: LengthProblem) {
    for unit in [Unit::Millimetre, Unit::Inch] {
        let error = parse_length(text, unit).expect_err(text);
        assert_eq!(
            (error.found.as_str(), error.problem),
            (found, problem),
            "{text}"
        );
    }
}

#[test]
fn every_way_to_write_a_tape_reading_is_the_same_length() {
    for text in [
        "23-5/8\"",
        "23 5/8\"",
        "23.625\"",
        "23,625\"",
        "23-5/8",
        "23 5/8",
        "23⅝\"",
        "23 ⅝",
        "23-⅝\"",
        "23⅝",
        "1'-11 5/8\"",
        "1' 11-5/8\"",
        "1'-11-5/8\"",
        "1'11 5/8\"",
        "1' 11⅝",
        "1’-11 5/8”",
        "1′ 11 5⁄8″",
        "1‘11 5∕8“",
        "1' 11 5/8''",
        "1 ft 11 5/8 in",
        "1ft-11.625in",
        "23-5/8 in",
        "23-5/8in",
        "23.625 IN",
        "23 5/8 inches",
        "23-40/64\"",
        "600.075 mm",
        "600,075mm",
        "60.0075 cm",
        "0.600075 m",
        "  23-5/8\"  ",
        "23\u{a0}5/8",
        "+23-5/8\"",
        "23‑5/8\"",
        "23–5/8\"",
        "189/8",
        "1.96875 feet",
        "1-31/32'",
    ] {
        assert_eq!(mm(text), 600.075, "{text}");
        assert_eq!(inch(text), 600.075, "{text}");
    }
}

#[test]
fn plain_lengths_in_each_unit() {
    for (text, length) in [
        ("600 mm", 600.0),
        ("600mm", 600.0),
        ("60 cm", 600.0),
        ("0.6 m", 600.0),
        ("0,6 m", 600.0),
        (".6m", 600.0),
        ("23 in", 584.2),
        ("1 inch", 25.4),
        ("2'", 609.6),
        ("2 ft", 609.6),
        ("1 foot", 304.8),
        ("2 ft 3 in", 685.8),
        ("2ft3in", 685.8),
        ("2' 3", 685.8),
        ("1/2'", 152.4),
        ("1/2 mm", 0.5),
        ("½ ", 12.7),
        ("⅛", 3.175),
        ("¾\"", 19.05),
        ("0/8", 0.0),
        ("1'-0-1/8\"", 307.975),
        ("2'-1/8\"", 612.775),
    ] {
        assert_eq!(mm(text), length, "{text}");
        assert_eq!(inch(text), length, "{text}");
    }
}

#[test]
fn a_bare_number_is_in_the_jobs_unit_and_a_bare_fraction_is_inches() {
    assert_eq!((mm("600"), inch("23.625")), (600.0, 600.075));
    assert_eq!((mm("5/8"), inch("5/8")), (15.875, 15.875));
    assert_eq!((mm("23 5/8"), inch("23 5/8")), (600.075, 600.075));
    assert_eq!((mm("600 - 1/2"), inch("2 - 1/2")), (587.3, 38.1));
}

#[test]
fn there_are_no_thousands_marks() {
    assert_eq!((mm("1,000"), mm("1.000"), inch("1,000")), (1.0, 1.0, 25.4));
    for text in ["1.000,5", "1,000.5", "1,000,000", "1.2.3", "1..5"] {
        refused(text, text, ThousandsMark);
    }
    refused("1 000", "1 000", TwoNumbers);
    for text in ["1'000", "1’000 mm", "1'200"] {
        refused(text, text, ThousandsMark);
    }
}

#[test]
fn a_minus_leads_or_has_blanks_and_a_hyphen_has_none() {
    assert_eq!(
        (mm("-3"), inch("-3"), mm("- 3"), mm("−3")),
        (-3.0, -76.2, -3.0, -3.0)
    );
    assert_eq!((mm("-1/8"), mm("−⅛\"")), (-3.175, -3.175));
    assert_eq!(
        (mm("-23-5/8\""), mm("-23 5/8"), mm("-1'-11 5/8\"")),
        (-600.075, -600.075, -600.075)
    );
    assert_eq!((mm("23 - 5/8"), inch("23 - 5/8")), (7.125, 568.325));
    assert_eq!(mm("1' - 11 5/8\""), 9.525);
    for text in [
        "600-3",
        "600 -3",
        "600- 3",
        "600+3",
        "600 +3",
        "600+ 3",
        "600-",
        "600mm-3mm",
        "23-5",
        "23-5/8-1/8",
        "23 -5/8",
        "23- 5/8",
        "1' -11 5/8\"",
        "1'-11-5",
        "1'11-5",
        "23-in",
        "5/8-1/8",
        "- -3",
        "1'-",
        "1.5-1/2",
    ] {
        refused(text, text, SignSpacing);
    }
    for text in [
        "-",
        "+",
        "--3",
        "- - 3",
        "600 -",
        "600 - - 3",
        "600 + + 3",
        "mm",
        "\"",
        "-mm",
    ] {
        refused(text, text, NoNumber);
    }
    assert!(
        parse_length("-0", Unit::Millimetre)
            .unwrap()
            .is_sign_positive()
    );
    assert!(mm("3 - 3").is_sign_positive() && mm("-3 + 3").is_sign_positive());
}

#[test]
fn sums_are_exact_and_may_mix_units() {
    for (text, length) in [
        ("600 mm - 3 mm", 597.0),
        ("23-5/8\" - 1/8\"", 596.9),
        ("600 mm + 1/2\"", 612.7),
        ("-3 mm + 1/8\"", 0.175),
        ("2' + 3 mm - 1 cm + 1/64\"", 602.996875),
        ("600.1 mm + 0.2 mm", 600.3),
        ("1/3\" + 1/3\" + 1/3\"", 25.4),
        ("1 m − 1'", 695.2),
    ] {
        assert_eq!(mm(text), length, "{text}");
        assert_eq!(inch(text), length, "{text}");
    }
    assert_eq!((mm("600 - 3"), inch("24 - 1")), (597.0, 584.2));
}

#[test]
fn fractions_that_are_none_are_refused() {
    refused("3/0", "3/0", ZeroDenominator);
    refused("23-3/00\"", "3/00", ZeroDenominator);
    for text in ["23/5/8", "/8", "5/", "/", "1.5/8", "5/8.0", "5//8"] {
        refused(text, text, BrokenFraction);
    }
    refused("5 /8", "/8", BrokenFraction);
    for text in ["2 5/4", "2-5/4\"", "2 4/4", "1' 2 5/4\"", "1'-2-8/8\""] {
        refused(text, text, ImproperFraction);
    }
    for text in [
        "23.5 5/8", "½½", "5/8 1/8", "½5", "600 mm 3", "600 3 mm", "1' 11 5",
    ] {
        refused(text, text, TwoNumbers);
    }
    refused("5.", "5.", LooseDecimalMark);
    refused(".", ".", LooseDecimalMark);
}

#[test]
fn what_is_no_number_or_unit_is_refused() {
    for blank in ["", "   ", "\t\n"] {
        refused(blank, "", Empty);
    }
    for (text, word) in [
        ("NaN", "NaN"),
        ("inf", "inf"),
        ("-inf", "inf"),
        ("infinity", "infinity"),
        ("600 furlongs", "furlongs"),
        ("600 mmm", "mmm"),
        ("0x10", "x"),
        ("1 e5", "e"),
        ("about 600", "about"),
        ("6OO", "OO"),
        ("5 µm", "µm"),
    ] {
        refused(text, word, UnknownWord);
    }
    for (text, mark) in [
        ("600%", "%"),
        ("2 * 3", "*"),
        ("(3)", "("),
        ("600 mm;", ";"),
        ("6\u{200b}00", "\\u{200b}"),
        ("6\0", "\\0"),
        ("٣", "٣"),
        ("\\", "\\"),
        ("🚪", "🚪"),
    ] {
        refused(text, mark, UnknownMark);
    }
    for text in [
        "1e999", "1e3", "1E3", "1e-3", "1e+3", "1.5e3mm", "1e−3", "2/3e4", "1e.5",
    ] {
        refused(text, text, Exponent);
    }
    for text in [
        "600 mm mm",
        "1 m 5 cm",
        "1 in 2 in",
        "2 ft 3 ft",
        "2' 3 mm",
        "1 mm\"",
        "1'\"",
    ] {
        refused(text, text, TwoUnits);
    }
    for text in ["1.5' 3\"", "1-1/2' 3\"", "1' 12\"", "1'-23-5/8\""] {
        refused(text, text, FeetAndInches);
    }
    refused("1000001 m", "1000001 m", TooLarge);
    assert_eq!(mm("1000000 m"), LONGEST);
}

#[test]
fn long_texts_are_refused_and_quoted_short() {
    let nines = "9".repeat(MOST_CHARACTERS);
    assert_eq!(
        parse_length(&nines, Unit::Inch).unwrap_err().problem,
        TooLarge
    );
    let error = parse_length(&format!("{nines}9"), Unit::Inch).unwrap_err();
    assert_eq!(error.problem, TooManyCharacters);
    assert_eq!(error.found, format!("{}…", &nines[..28]));
    let third = mm(&format!("0.{}", "3".repeat(62)));
    assert!((third - 1.0 / 3.0).abs() < 1e-15, "{third}");
}

#[test]
fn a_refusal_quotes_what_was_found_and_gives_an_example() {
    for (text, says) in [
        (
            "",
            "“” is empty; type a length such as 600, 23-5/8\" or 1'-11 5/8\"",
        ),
        (
            "600 yd",
            "“yd” is no unit; write mm, cm, m, in or ft, such as 600 mm",
        ),
        (
            "1.000,5",
            "“1.000,5” has a thousands mark or a second decimal mark; write it like \
             1000.5",
        ),
        (
            "600-3",
            "“600-3” has a sign that needs a blank on both sides; write 600 - 3, or 23-5/8\" \
             for a mixed number",
        ),
    ] {
        let error = parse_length(text, Unit::Millimetre).unwrap_err();
        assert_eq!(error.to_string(), says);
    }
}

/// Table: exact arithmetic on the inch of NIST SP 811, appendix B (25.4 mm exactly).
#[test]
fn fractions_of_an_inch_are_exact_in_mm() {
    for (text, length) in [
        ("1/64", 0.396875),
        ("1/32", 0.79375),
        ("1/16", 1.5875),
        ("1/8", 3.175),
        ("3/16", 4.7625),
        ("5/16", 7.9375),
        ("3/8", 9.525),
        ("1/2", 12.7),
        ("5/8", 15.875),
        ("11/16", 17.4625),
        ("23/32", 18.25625),
        ("3/4", 19.05),
        ("48/64", 19.05),
    ] {
        assert_eq!(mm(text), length, "{text}");
    }
    assert_eq!((inch("1"), inch("36"), mm("36 ft")), (25.4, 914.4, 10972.8));
}

#[test]
fn each_fraction_glyph_is_the_fraction_it_shows() {
    for (glyph, fraction) in "½⅓⅔¼¾⅕⅖⅗⅘⅙⅚⅐⅛⅜⅝⅞⅑⅒".chars().zip([
        "1/2", "1/3", "2/3", "1/4", "3/4", "1/5", "2/5", "3/5", "4/5", "1/6", "5/6", "1/7", "1/8",
        "3/8", "5/8", "7/8", "1/9", "1/10",
    ]) {
        assert_eq!(mm(&glyph.to_string()), mm(fraction), "{glyph}");
        assert_eq!(
            mm(&format!("7{glyph}")),
            mm(&format!("7 {fraction}")),
            "{glyph}"
        );
    }
}

/// Not a search for values: every text must be answered, soundly, without a panic.
#[test]
fn no_text_panics() {
    const PIECES: [&str; 40] = [
        " ", " ", " ", "0", "1", "2", "3", "5", "8", "9", "23", "64", "/", "/", "-", "-", "+", "−",
        "'", "\"", "’", "”", "″", ".", ",", "mm", "cm", "m", "in", "ft", "e", "NaN", "½", "⅝",
        " - ", " + ", "5/8", "\u{a0}", "\0", "🚪",
    ];
    // Linear congruential generator; numbers from Knuth's MMIX.
    let mut state: u64 = 0x5eed;
    let mut next = |below: usize| {
        state = state
            .wrapping_mul(6_364_136_223_846_793_005)
            .wrapping_add(1_442_695_040_888_963_407);
        (state >> 33) as usize % below
    };
    let mut lengths = 0;
    for round in 0..20_000 {
        let most = if round % 50 == 0 { 70 } else { 9 };
        let text: String = (0..next(most))
            .map(|_| PIECES[next(PIECES.len())])
            .collect();
        let unit = if round % 2 == 0 {
            Unit::Millimetre
        } else {
            Unit::Inch
        };
        match parse_length(&text, unit) {
            Ok(length) => {
                lengths += 1;
                assert!(
                    length.is_finite() && length.abs() <= LONGEST,
                    "{text}: {length}"
                );
                assert!(
                    length != 0.0 || length.is_sign_positive(),
                    "{text}: {length}"
                );
            }
            Err(error) => {
                assert!(error.found.chars().count() <= 2 * 28 + 1, "{text}: {error}");
                assert!(error.to_string().contains('”'), "{text}: {error}");
            }
        }
    }
    assert!(
        (1_000..10_000).contains(&lengths),
        "lopsided: {lengths} were lengths"
    );
}
