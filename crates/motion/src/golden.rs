//! Golden-section search for the extreme of a measure on a short piece of the way.

const GOLDEN: f64 = 0.618_033_988_749_895;

/// Where on the piece a measure with a single largest value there is largest, and that value.
///
/// 24 steps leave 1e-5 of the piece; near a smooth extreme the value is then off by the square of
/// that.
pub(crate) fn largest_between(
    mut low: f64,
    mut high: f64,
    measure: impl Fn(f64) -> f64,
) -> (f64, f64) {
    let (mut left, mut right) = (high - GOLDEN * (high - low), low + GOLDEN * (high - low));
    let (mut at_left, mut at_right) = (measure(left), measure(right));
    for _ in 0..24 {
        if at_left < at_right {
            (low, left, at_left) = (left, right, at_right);
            right = low + GOLDEN * (high - low);
            at_right = measure(right);
        } else {
            (high, right, at_right) = (right, left, at_left);
            left = high - GOLDEN * (high - low);
            at_left = measure(left);
        }
    }
    if at_left > at_right {
        (left, at_left)
    } else {
        (right, at_right)
    }
}
