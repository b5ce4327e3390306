//! Numbers in files.

/// A length in millimetres as written into files: at most four decimals (0.1 µm), no trailing
/// zeros, a full stop for the decimal mark, never `-0`.
pub(crate) fn number(value: f64) -> String {
    let fixed = format!("{value:.4}");
    let trimmed = fixed.trim_end_matches('0').trim_end_matches('.');
    if trimmed == "-0" {
        "0".to_owned()
    } else {
        trimmed.to_owned()
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn numbers_are_short_and_plain() {
        let cases = [
            (0.0, "0"),
            (-0.0, "0"),
            (-0.000_04, "0"),
            (210.0, "210"),
            (100.0, "100"),
            (-17.5, "-17.5"),
            (0.25, "0.25"),
            (1.0 / 3.0, "0.3333"),
            (2.0 / 3.0, "0.6667"),
            (1e7, "10000000"),
        ];
        for (value, text) in cases {
            assert_eq!(number(value), text, "{value}");
        }
    }
}
