//! Linear least squares for a few unknowns, by singular values.
//!
//! The singular values come from Hestenes' one-sided Jacobi rotations: columns are turned in pairs
//! until all stand square to each other (Golub and Van Loan, *Matrix Computations*, 4th edition,
//! section 8.6.3). For five unknowns that is a page, and small singular values keep their digits.

/// Singular values below this share of the largest count as 0.
const NO_RANK: f64 = 1e-9;
/// An unknown with more than this share in a direction that is not determined is not determined.
const NOT_SEEN: f64 = 1e-6;
/// Sweeps over all pairs; a handful suffices, the rest is for the last digits.
const MOST_SWEEPS: usize = 60;

/// What least squares say.
#[derive(Debug, Clone, PartialEq)]
pub(crate) struct Solved {
    /// One number for each unknown; where not all are determined, those of least size.
    pub(crate) coefficients: Vec<f64>,
    /// (AᵀA)⁻¹, in the directions that are determined.
    pub(crate) inverse_normal: Vec<Vec<f64>>,
    /// How many directions are determined.
    pub(crate) rank: usize,
    /// Which unknowns are not determined, counted from 0.
    pub(crate) not_determined: Vec<usize>,
    /// Sum of the squares that are left.
    pub(crate) residual: f64,
}

/// Least squares of the columns' sum, each times its unknown, against what was observed. All columns
/// are as long as `observed`; the numbers are finite.
pub(crate) fn solve(columns: &[Vec<f64>], observed: &[f64]) -> Solved {
    let count = columns.len();
    let (turned, directions) = turned_square(columns);
    let values: Vec<f64> = turned
        .iter()
        .map(|column| dot(column, column).sqrt())
        .collect();
    let floor = values.iter().copied().fold(0.0, f64::max) * NO_RANK;
    let mut solved = Solved {
        coefficients: vec![0.0; count],
        inverse_normal: vec![vec![0.0; count]; count],
        rank: 0,
        not_determined: Vec::new(),
        residual: 0.0,
    };
    let mut unseen = vec![0.0; count];
    for ((column, direction), value) in turned.iter().zip(&directions).zip(&values) {
        if *value <= floor {
            unseen
                .iter_mut()
                .zip(direction)
                .for_each(|(share, part)| *share += part * part);
            continue;
        }
        solved.rank += 1;
        let along = dot(column, observed) / value / value;
        add(&mut solved.coefficients, direction, along);
        for (line, part) in solved.inverse_normal.iter_mut().zip(direction) {
            add(line, direction, part / value / value);
        }
    }
    let is_unseen = |(_, share): &(usize, &f64)| **share > NOT_SEEN;
    solved.not_determined = unseen
        .iter()
        .enumerate()
        .filter(is_unseen)
        .map(|(at, _)| at)
        .collect();
    let mut left = observed.to_vec();
    for (column, coefficient) in columns.iter().zip(&solved.coefficients) {
        add(&mut left, column, -coefficient);
    }
    solved.residual = dot(&left, &left);
    solved
}

/// The columns turned among each other until all stand square, and the turns: column j of the
/// answer is the sum of the given columns, each times its number in direction j.
fn turned_square(columns: &[Vec<f64>]) -> (Vec<Vec<f64>>, Vec<Vec<f64>>) {
    let count = columns.len();
    let mut turned = columns.to_vec();
    let unit = |own: usize| {
        (0..count)
            .map(|at| f64::from(u8::from(at == own)))
            .collect()
    };
    let mut directions: Vec<Vec<f64>> = (0..count).map(unit).collect();
    let largest = columns
        .iter()
        .map(|column| dot(column, column))
        .fold(0.0, f64::max);
    for _ in 0..MOST_SWEEPS {
        let mut still = true;
        for second in 1..count {
            for first in 0..second {
                let (one, other) = (&turned[first], &turned[second]);
                let (a, b, between) = (dot(one, one), dot(other, other), dot(one, other));
                // Square to each other, or one of them is nothing but rounding.
                let nothing = a.min(b) <= largest * f64::EPSILON * f64::EPSILON;
                if nothing || between.abs() <= f64::EPSILON * (a * b).sqrt() {
                    continue;
                }
                still = false;
                let slope = (b - a) / (2.0 * between);
                let tan = slope.signum() / (slope.abs() + slope.hypot(1.0));
                turn(&mut turned, (first, second), tan);
                turn(&mut directions, (first, second), tan);
            }
        }
        if still {
            break;
        }
    }
    (turned, directions)
}

/// Turns two columns towards each other by the angle with this tangent.
fn turn(columns: &mut [Vec<f64>], (first, second): (usize, usize), tan: f64) {
    let (head, tail) = columns.split_at_mut(second);
    let cos = 1.0 / tan.hypot(1.0);
    for (one, other) in head[first].iter_mut().zip(&mut tail[0]) {
        (*one, *other) = (cos * (*one - tan * *other), cos * (*other + tan * *one));
    }
}

fn dot(one: &[f64], other: &[f64]) -> f64 {
    one.iter().zip(other).map(|(a, b)| a * b).sum()
}

/// Adds a multiple of one list to another.
fn add(to: &mut [f64], what: &[f64], times: f64) {
    to.iter_mut()
        .zip(what)
        .for_each(|(sum, part)| *sum += part * times);
}

#[cfg(test)]
mod tests {
    use super::*;

    fn near(found: &[f64], known: &[f64], by: f64) {
        assert_eq!(found.len(), known.len());
        for (a, b) in found.iter().zip(known) {
            assert!(
                (a - b).abs() <= by * b.abs().max(1.0),
                "{found:?}, not {known:?}"
            );
        }
    }

    /// The NIST Statistical Reference Dataset `Norris` (linear, 36 observations of ozone
    /// monitors): certified coefficients, their standard deviations, residual standard deviation.
    #[test]
    fn norris_of_the_nist_reference_datasets_comes_out_as_certified() {
        let y = [
            0.1, 338.8, 118.1, 888.0, 9.2, 228.1, 668.5, 998.5, 449.1, 778.9, 559.2, 0.3, 0.1,
            778.1, 668.8, 339.3, 448.9, 10.8, 557.7, 228.3, 998.0, 888.8, 119.6, 0.3, 0.6, 557.6,
            339.3, 888.0, 998.5, 778.9, 10.2, 117.6, 228.9, 668.4, 449.2, 0.2,
        ];
        let x = [
            0.2, 337.4, 118.2, 884.6, 10.1, 226.5, 666.3, 996.3, 448.6, 777.0, 558.2, 0.4, 0.6,
            775.5, 666.9, 338.0, 447.5, 11.6, 556.0, 228.1, 995.8, 887.6, 120.2, 0.3, 0.3, 556.8,
            339.1, 887.2, 999.0, 779.0, 11.1, 118.3, 229.2, 669.1, 448.9, 0.5,
        ];
        let solved = solve(&[vec![1.0; x.len()], x.to_vec()], &y);
        near(
            &solved.coefficients,
            &[-0.262323073774029, 1.00211681802045],
            1e-12,
        );
        let variance = solved.residual / 34.0;
        near(&[variance.sqrt()], &[0.884796396144373], 1e-12);
        let deviations = [0, 1].map(|at| (variance * solved.inverse_normal[at][at]).sqrt());
        near(
            &deviations,
            &[0.232818234301152, 0.000429796848199937],
            1e-12,
        );
        assert_eq!((solved.rank, solved.not_determined.len()), (2, 0));
    }

    /// Läuchli's matrix, the textbook case in which AᵀA loses what A has: columns (1, e, 0) and
    /// (1, 0, e) with e² below the last digit of 1. With (2, e, e) observed both unknowns are 1.
    #[test]
    fn laeuchlis_matrix_keeps_its_digits() {
        let e = 2e-9;
        let solved = solve(&[vec![1.0, e, 0.0], vec![1.0, 0.0, e]], &[2.0, e, e]);
        near(&solved.coefficients, &[1.0, 1.0], 1e-7);
        assert_eq!(solved.rank, 2);
    }

    #[test]
    fn a_column_twice_is_one_direction_shared() {
        let column = vec![1.0, 2.0, 3.0];
        let solved = solve(&[column.clone(), column.clone()], &[2.0, 4.0, 6.0]);
        near(&solved.coefficients, &[1.0, 1.0], 1e-14);
        assert_eq!((solved.rank, solved.not_determined), (1, vec![0, 1]));
        // Fewer observations than unknowns.
        let solved = solve(&[vec![1.0], vec![0.0]], &[3.0]);
        assert_eq!(
            (solved.coefficients, solved.rank, solved.not_determined),
            (vec![3.0, 0.0], 1, vec![1])
        );
    }
}
