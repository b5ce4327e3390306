//! Prints made readings of a hand scale with noise and the curve that is fitted to them, one JSON
//! object a line. `tests/outside/python/check_fit.py` fits them again by other means.
//!
//! The cases are the same every time: the chance is a linear congruential generator of its own.
#![expect(
    clippy::expect_used,
    reason = "a case that cannot be printed is a failure"
)]

use flapwright_motion::measured::{ScaleReading, fit_spring};
use serde_json::json;

/// How many cases are printed.
const CASES: usize = 60;

fn main() {
    let mut state = 20_261_126_u64;
    // Knuth's MMIX constants.
    let mut between = |low: f64, high: f64| {
        state = state
            .wrapping_mul(6_364_136_223_846_793_005)
            .wrapping_add(1_442_695_040_888_963_407);
        let share = f64::from(u32::try_from(state >> 32).unwrap_or(0)) / 4_294_967_296.0;
        low + (high - low) * share
    };
    for case in 0..CASES {
        let terms = 1 + case % 5;
        let count = terms + 2 + case % 7;
        let known: Vec<f64> = (0..terms).map(|_| between(-6.0, 6.0)).collect();
        let mut readings = Vec::new();
        for place in 0..count {
            let degrees = 110.0 * (place as f64 + between(0.1, 0.9)) / count as f64;
            let angle = degrees.to_radians();
            let shapes = [
                1.0,
                angle.cos(),
                angle.sin(),
                (2.0 * angle).cos(),
                (2.0 * angle).sin(),
            ];
            let spring: f64 = known.iter().zip(shapes).map(|(c, shape)| c * shape).sum();
            let weight_moment = between(5.0, 9.0) * angle.sin();
            let lever = between(250.0, 420.0);
            let friction = 0.8 + between(-0.1, 0.1);
            let balance = weight_moment - spring + between(-0.3, 0.3);
            readings.push(ScaleReading {
                degrees,
                raising: (balance + friction) / lever * 1e3,
                lowering: (balance - friction) / lever * 1e3,
                lever,
                weight_moment,
            });
        }
        let fit = fit_spring(&readings, terms).expect("a fit");
        let at_50 = fit.at(50.0);
        println!(
            "{}",
            json!({
                "terms": terms,
                "readings": readings.iter().map(|it| json!({
                    "degrees": it.degrees,
                    "raising": it.raising,
                    "lowering": it.lowering,
                    "lever": it.lever,
                    "weight_moment": it.weight_moment,
                })).collect::<Vec<_>>(),
                "coefficients": fit.coefficients,
                "covariance": fit.covariance.expect("more readings than terms"),
                "rank": fit.rank,
                "friction": fit.friction,
                "friction_uncertainty": fit.friction_uncertainty,
                "at_50": at_50.0,
                "at_50_uncertainty": at_50.1,
            })
        );
    }
}
