//! The date of today, for the title block.

use std::time::{SystemTime, UNIX_EPOCH};

/// Today in UTC as `2026-01-31`; empty when the clock stands before 1970.
pub(crate) fn today() -> String {
    let Ok(since) = SystemTime::now().duration_since(UNIX_EPOCH) else {
        return String::new();
    };
    date(since.as_secs() / 86_400)
}

/// The date that lies this many days after 1970-01-01, in the Gregorian calendar.
///
/// The year is counted from March, so that the leap day ends it; 400 years have 146 097 days.
fn date(days: u64) -> String {
    let days = days + 719_468; // from 0000-03-01 to 1970-01-01
    let (era, day) = (days / 146_097, days % 146_097);
    let year = (day - day / 1_460 + day / 36_524 - day / 146_096) / 365;
    let of_year = day - (365 * year + year / 4 - year / 100);
    let from_march = (5 * of_year + 2) / 153;
    let of_month = of_year - (153 * from_march + 2) / 5 + 1;
    let month = if from_march < 10 {
        from_march + 3
    } else {
        from_march - 9
    };
    let year = era * 400 + year + u64::from(month <= 2);
    format!("{year:04}-{month:02}-{of_month:02}")
}

#[cfg(test)]
mod tests {
    use super::date;

    #[test]
    fn days_count_through_leap_years() {
        for (days, expected) in [
            (0, "1970-01-01"),
            (58, "1970-02-28"),
            (59, "1970-03-01"),
            (789, "1972-02-29"),
            (11_016, "2000-02-29"),
            (20_454, "2026-01-01"),
            (47_540, "2100-02-28"),
            (47_541, "2100-03-01"),
        ] {
            assert_eq!(date(days), expected);
        }
    }
}
