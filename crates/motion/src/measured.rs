//! The spring of a fitting whose paper is lost, from readings of a hand scale.
//!
//! At each opening angle the scale is read while the door is slowly raised and slowly lowered. Half
//! the sum is balance, half the difference friction ([`crate::statics::scale_readings`]); times the
//! scale's lever these are moments. With the door's own moment W the spring's is S = W - balance.
//!
//! Through the spring's moments goes, by linear least squares,
//! S(q) = c0 + c1 cos q + c2 sin q + c3 cos 2q + c4 sin 2q, cut off after as many terms as are
//! asked for: one and two suffice for a spring on a lever, the others for a shaped one. The
//! uncertainty is the usual one: covariance s² (AᵀA)⁻¹ with s² the sum of squares over (readings -
//! terms). Singular values below 1e-9 of the largest count as 0; a term with a part in such a
//! direction is not determined by the readings.

use flapwright_model::lift::SpringRow;
use nalgebra::{DMatrix, DVector};

use crate::gravity::METRE;
use crate::statics::scale_readings;

/// Names of the terms, in order.
pub const TERMS: [&str; 5] = ["constant", "cos q", "sin q", "cos 2q", "sin 2q"];
/// Singular values below this share of the largest count as 0.
const NO_RANK: f64 = 1e-9;
/// A term with more than this share in a direction that is not determined is not determined.
const NOT_SEEN: f64 = 1e-6;

/// One place at which the scale was read both ways.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct ScaleReading {
    /// Opening angle, degrees.
    pub degrees: f64,
    /// While slowly raising, N, + lifts.
    pub raising: f64,
    /// While slowly lowering, N, + lifts.
    pub lowering: f64,
    /// Distance of the scale's line from the axis, mm.
    pub lever: f64,
    /// Moment of the weight of what hangs on the fitting there, N·m, + pulls shut; 0 for a bare
    /// arm.
    pub weight_moment: f64,
}

/// What the readings say of the spring.
#[derive(Debug, Clone, PartialEq)]
pub struct SpringFit {
    /// Coefficients of [`TERMS`], N·m, as many as were asked for. Where the readings do not
    /// determine all, those of least size.
    pub coefficients: Vec<f64>,
    /// Covariance of the coefficients, (N·m)²; `None` where there are no more readings than terms,
    /// or some are not determined.
    pub covariance: Option<Vec<Vec<f64>>>,
    /// How many terms the readings determine.
    pub rank: usize,
    /// Names of the terms that they do not.
    pub not_determined: Vec<&'static str>,
    /// Standard deviation of the readings about the curve, N·m; `None` where there are no more
    /// readings than terms.
    pub scatter: Option<f64>,
    /// Friction, N·m: the middle of all readings.
    pub friction: f64,
    /// Standard uncertainty of that, N·m; `None` for a single reading.
    pub friction_uncertainty: Option<f64>,
    /// Spring moment at each reading, N·m, in their order.
    pub moments: Vec<f64>,
    /// Least and greatest angle that was read, degrees: beyond them the curve is a guess.
    pub read_degrees: (f64, f64),
}

/// Why readings give no curve.
#[derive(Debug, Clone, PartialEq, thiserror::Error)]
pub enum FitError {
    /// No readings, or a number of terms that is not there.
    #[error(
        "{readings} readings for {terms} terms; read the scale at one place or more, and ask for 1 \
         to 5 terms"
    )]
    Count {
        /// Readings.
        readings: usize,
        /// Terms asked for.
        terms: usize,
    },
    /// A number of a reading that cannot be.
    #[error("reading {number}: {what} is {value}; {remedy}")]
    Reading {
        /// Number of the reading, from 1.
        number: usize,
        /// Which number of it.
        what: &'static str,
        /// Its value.
        value: f64,
        /// What to do.
        remedy: &'static str,
    },
    /// The fit itself failed.
    #[error("the readings cannot be fitted; look for one that is far off the others")]
    NoFit,
}

/// How many terms suit so many different angles: never more than there are angles less one, so
/// that an uncertainty is left.
#[must_use]
pub fn suitable_terms(readings: &[ScaleReading]) -> usize {
    let mut angles: Vec<f64> = readings.iter().map(|it| it.degrees).collect();
    angles.sort_by(f64::total_cmp);
    angles.dedup();
    angles.len().saturating_sub(1).clamp(1, 3)
}

/// Fits the spring's curve with the first `terms` of [`TERMS`].
///
/// # Errors
/// [`FitError`] names the reading and the number that cannot be used.
pub fn fit_spring(readings: &[ScaleReading], terms: usize) -> Result<SpringFit, FitError> {
    if readings.is_empty() || terms == 0 || terms > TERMS.len() {
        let readings = readings.len();
        return Err(FitError::Count { readings, terms });
    }
    for (index, reading) in readings.iter().enumerate() {
        look_at(index + 1, reading)?;
    }
    let both = |it: &ScaleReading| scale_readings(it.raising, it.lowering);
    let lever = |it: &ScaleReading| it.lever * METRE;
    let moments: Vec<f64> = readings
        .iter()
        .map(|it| it.weight_moment - both(it).0 * lever(it))
        .collect();
    let frictions: Vec<f64> = readings.iter().map(|it| both(it).1 * lever(it)).collect();
    let matrix = DMatrix::from_fn(readings.len(), terms, |row, column| {
        readings
            .get(row)
            .map_or(0.0, |it| term(column, it.degrees.to_radians()))
    });
    let observed = DVector::from_column_slice(&moments);
    let solved = solve(&matrix, &observed).ok_or(FitError::NoFit)?;
    let residual = (&matrix * &solved.coefficients - &observed).norm_squared();
    let free = readings.len().checked_sub(terms).filter(|free| *free > 0);
    let variance = free.map(|free| residual / free as f64);
    let covariance = variance
        .filter(|_| solved.rank == terms)
        .map(|variance| rows(&(solved.inverse_normal * variance)));
    let (friction, friction_uncertainty) = mean(&frictions);
    let degrees = || readings.iter().map(|it| it.degrees);
    Ok(SpringFit {
        coefficients: solved.coefficients.iter().copied().collect(),
        covariance,
        rank: solved.rank,
        not_determined: solved
            .not_determined
            .iter()
            .filter_map(|term| TERMS.get(*term).copied())
            .collect(),
        scatter: variance.map(f64::sqrt),
        friction,
        friction_uncertainty,
        moments,
        read_degrees: (
            degrees().fold(f64::INFINITY, f64::min),
            degrees().fold(f64::NEG_INFINITY, f64::max),
        ),
    })
}

impl SpringFit {
    /// The spring's moment at an opening angle, degrees: N·m and, where it is known, its standard
    /// uncertainty.
    #[must_use]
    pub fn at(&self, degrees: f64) -> (f64, Option<f64>) {
        let angle = degrees.to_radians();
        let count = self.coefficients.len();
        let row: Vec<f64> = (0..count).map(|column| term(column, angle)).collect();
        let dot = |other: &[f64]| row.iter().zip(other).map(|(a, b)| a * b).sum::<f64>();
        let uncertainty = self.covariance.as_ref().map(|covariance| {
            let through: Vec<f64> = covariance.iter().map(|line| dot(line)).collect();
            dot(&through).max(0.0).sqrt()
        });
        (dot(&self.coefficients), uncertainty)
    }

    /// Sentences on what the readings leave open; empty where they determine everything.
    #[must_use]
    pub fn open_questions(&self) -> Vec<String> {
        let mut said = Vec::new();
        if !self.not_determined.is_empty() {
            said.push(format!(
                "the readings determine {} of {} terms, and not {}; read the scale at more angles",
                self.rank,
                self.coefficients.len(),
                self.not_determined.join(", ")
            ));
        }
        if self.scatter.is_none() {
            said.push(
                "there are no more readings than terms, so that nothing says how far off they are; \
                 read the scale at more angles"
                    .to_owned(),
            );
        }
        if self.friction < 0.0 {
            said.push(format!(
                "the friction comes out as {:.2} N·m, and none is below 0; raising and lowering \
                 may be exchanged",
                self.friction
            ));
        }
        said
    }
}

/// Rows of a card's spring table at these angles, from a fit at the weakest and one at the strongest
/// setting.
#[must_use]
pub fn spring_rows(weakest: &SpringFit, strongest: &SpringFit, degrees: &[f64]) -> Vec<SpringRow> {
    degrees
        .iter()
        .map(|degrees| SpringRow {
            degrees: *degrees,
            weakest: weakest.at(*degrees).0,
            strongest: strongest.at(*degrees).0,
        })
        .collect()
}

fn look_at(number: usize, reading: &ScaleReading) -> Result<(), FitError> {
    for (what, value, least, most, remedy) in [
        (
            "the angle",
            reading.degrees,
            0.0,
            360.0,
            "give 0 to 360 degrees",
        ),
        (
            "the force while raising",
            reading.raising,
            -1e4,
            1e4,
            "read it again",
        ),
        (
            "the force while lowering",
            reading.lowering,
            -1e4,
            1e4,
            "read it again",
        ),
        ("the lever", reading.lever, 1.0, 5000.0, "give 1 to 5000 mm"),
        (
            "the weight's moment",
            reading.weight_moment,
            -1e4,
            1e4,
            "reckon it again",
        ),
    ] {
        if !(value >= least && value <= most) {
            return Err(FitError::Reading {
                number,
                what,
                value,
                remedy,
            });
        }
    }
    Ok(())
}

/// The value of a term at an angle, radians.
fn term(number: usize, angle: f64) -> f64 {
    match number {
        0 => 1.0,
        1 => angle.cos(),
        2 => angle.sin(),
        3 => (2.0 * angle).cos(),
        _ => (2.0 * angle).sin(),
    }
}

struct Solved {
    coefficients: DVector<f64>,
    /// (AᵀA)⁻¹ where all is determined.
    inverse_normal: DMatrix<f64>,
    rank: usize,
    not_determined: Vec<usize>,
}

/// Least squares by singular values.
fn solve(matrix: &DMatrix<f64>, observed: &DVector<f64>) -> Option<Solved> {
    let terms = matrix.ncols();
    // Rows of 0 change no least squares and give the decomposition a direction for each term.
    let tall = matrix
        .clone()
        .resize_vertically(matrix.nrows().max(terms), 0.0);
    let seen = observed.clone().resize_vertically(tall.nrows(), 0.0);
    let svd = tall.try_svd(true, true, f64::EPSILON, 1000)?;
    let floor = svd.singular_values.max() * NO_RANK;
    let coefficients = svd.solve(&seen, floor).ok()?;
    let directions = svd.v_t.as_ref()?;
    let mut inverse_normal = DMatrix::zeros(terms, terms);
    let mut rank = 0;
    let mut unseen = vec![0.0; terms];
    for (value, direction) in svd.singular_values.iter().zip(directions.row_iter()) {
        if *value > floor {
            rank += 1;
            let direction = direction.transpose();
            inverse_normal += &direction * direction.transpose() / (value * value);
        } else {
            for (share, part) in unseen.iter_mut().zip(direction.iter()) {
                *share += part * part;
            }
        }
    }
    let not_determined = (0..terms)
        .filter(|term| unseen.get(*term).is_some_and(|share| *share > NOT_SEEN))
        .collect();
    Some(Solved {
        coefficients,
        inverse_normal,
        rank,
        not_determined,
    })
}

fn rows(matrix: &DMatrix<f64>) -> Vec<Vec<f64>> {
    matrix
        .row_iter()
        .map(|row| row.iter().copied().collect())
        .collect()
}

/// Mean and its standard uncertainty.
fn mean(values: &[f64]) -> (f64, Option<f64>) {
    let count = values.len() as f64;
    let mean = values.iter().sum::<f64>() / count;
    let uncertainty = (values.len() > 1).then(|| {
        let squares: f64 = values.iter().map(|value| (value - mean).powi(2)).sum();
        (squares / (count - 1.0) / count).sqrt()
    });
    (mean, uncertainty)
}

#[cfg(test)]
mod tests {
    use super::*;

    /// A reading of a spring with S = 2 + 3 cos q + 1.5 sin q and a friction of 0.6 N·m, scale at
    /// 300 mm, door of 4 N·m when level.
    fn reading(degrees: f64) -> ScaleReading {
        let angle = degrees.to_radians();
        let weight_moment = 4.0 * angle.sin();
        let spring = 2.0 + 3.0 * angle.cos() + 1.5 * angle.sin();
        ScaleReading {
            degrees,
            raising: (weight_moment - spring + 0.6) / 0.3,
            lowering: (weight_moment - spring - 0.6) / 0.3,
            lever: 300.0,
            weight_moment,
        }
    }

    fn readings(degrees: &[f64]) -> Vec<ScaleReading> {
        degrees.iter().map(|it| reading(*it)).collect()
    }

    #[test]
    fn a_curve_is_found_again_from_its_own_readings() {
        let given = readings(&[0.0, 20.0, 45.0, 70.0, 90.0, 105.0]);
        let fit = fit_spring(&given, 3).unwrap();
        for (found, known) in fit.coefficients.iter().zip([2.0, 3.0, 1.5]) {
            assert!((found - known).abs() < 1e-12, "{fit:?}");
        }
        assert!((fit.friction - 0.6).abs() < 1e-12);
        assert_eq!((fit.rank, fit.not_determined.len()), (3, 0));
        assert!(
            fit.open_questions().is_empty(),
            "{:?}",
            fit.open_questions()
        );
        assert!(fit.at(30.0).1.unwrap() < 1e-9);
        let rows = spring_rows(&fit, &fit, &[0.0, 90.0]);
        assert!((rows[0].weakest - 5.0).abs() < 1e-12 && (rows[1].strongest - 3.5).abs() < 1e-12);
    }

    #[test]
    fn what_the_readings_do_not_determine_is_named() {
        // Two angles cannot tell three terms apart; one angle read twice not two.
        let fit = fit_spring(&readings(&[30.0, 60.0]), 3).unwrap();
        assert_eq!(fit.rank, 2);
        assert!(!fit.not_determined.is_empty());
        assert!(fit.covariance.is_none() && fit.scatter.is_none());
        assert_eq!(fit.open_questions().len(), 2);
        let fit = fit_spring(&readings(&[40.0, 40.0, 40.0]), 2).unwrap();
        assert_eq!(fit.rank, 1);
        assert_eq!(fit.not_determined, ["constant", "cos q"]);
        // At 0 and 180 degrees sin q is 0: the other two are determined.
        let fit = fit_spring(&readings(&[0.0, 180.0, 0.0, 180.0]), 3).unwrap();
        assert_eq!(fit.not_determined, ["sin q"]);
        assert!((fit.coefficients[0] - 2.0).abs() < 1e-12, "{fit:?}");
    }

    #[test]
    fn terms_follow_the_number_of_angles() {
        for (angles, terms) in [(1, 1), (2, 1), (3, 2), (4, 3), (9, 3)] {
            let degrees: Vec<f64> = (0..angles).map(|it| f64::from(it) * 11.0).collect();
            assert_eq!(suitable_terms(&readings(&degrees)), terms, "{angles}");
        }
    }

    #[test]
    fn exchanged_readings_and_impossible_ones_are_named() {
        let mut swapped = readings(&[0.0, 30.0, 60.0, 90.0]);
        for it in &mut swapped {
            (it.raising, it.lowering) = (it.lowering, it.raising);
        }
        let said = fit_spring(&swapped, 2).unwrap().open_questions().join(" ");
        assert!(said.contains("exchanged"), "{said}");
        let mut bad = readings(&[0.0, 30.0]);
        bad[1].lever = f64::NAN;
        let error = fit_spring(&bad, 1).unwrap_err().to_string();
        assert!(error.contains("reading 2: the lever is NaN"), "{error}");
        assert!(fit_spring(&[], 1).is_err() && fit_spring(&bad, 6).is_err());
    }
}
