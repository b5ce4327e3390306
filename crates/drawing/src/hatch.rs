//! Hatching of cut material: strokes clipped to a polygon, one pattern for each class of material.

use euclid::default::{Rotation2D, Vector2D};
use flapwright_model::material::MaterialClass;

use crate::list::At;

/// The most strokes of one family in one polygon; a larger polygon gets a wider pitch.
const MOST_STROKES: f64 = 240.0;

/// One family of parallel strokes, mm on paper.
#[derive(Debug, Clone, Copy, PartialEq)]
struct Family {
    /// Slope, degrees counter-clockwise from +x.
    degrees: f64,
    /// From stroke to stroke.
    pitch: f64,
    /// Shift of the whole family across its strokes.
    offset: f64,
    /// Drawn and skipped lengths; none when continuous.
    dash: Option<(f64, f64)>,
}

const fn family(degrees: f64, pitch: f64, offset: f64, dash: Option<(f64, f64)>) -> Family {
    Family {
        degrees,
        pitch,
        offset,
        dash,
    }
}

/// The pattern of a class. ISO 128 leaves the patterns of special materials to a legend: [`words`].
fn pattern(class: MaterialClass) -> Vec<Family> {
    match class {
        MaterialClass::Board => vec![family(45.0, 1.6, 0.0, None)],
        MaterialClass::SolidWood => {
            vec![family(-45.0, 3.2, 0.0, None), family(-45.0, 3.2, 0.8, None)]
        }
        MaterialClass::Glass => vec![
            family(45.0, 6.0, 0.0, Some((3.0, 4.0))),
            family(45.0, 6.0, 1.0, Some((3.0, 4.0))),
            family(45.0, 6.0, 2.0, Some((3.0, 4.0))),
        ],
        MaterialClass::Metal => vec![family(45.0, 0.8, 0.0, None)],
        MaterialClass::Plastic => vec![family(45.0, 2.2, 0.0, None), family(-45.0, 2.2, 0.0, None)],
    }
}

/// What the pattern of a class means, for legends.
#[must_use]
pub const fn words(class: MaterialClass) -> &'static str {
    match class {
        MaterialClass::Board => "board: single strokes",
        MaterialClass::SolidWood => "solid wood: pairs of strokes, falling to the right",
        MaterialClass::Glass => "glass: broken strokes in threes",
        MaterialClass::Metal => "metal: narrow strokes",
        MaterialClass::Plastic => "plastic: crossed strokes",
    }
}

/// The strokes that hatch a simple polygon (list mm, either sense of turning) cut from a material
/// of this class. Strokes lie on one grid for the whole list, so that neighbouring pieces of one
/// panel match.
#[must_use]
pub fn hatch(polygon: &[At], class: MaterialClass) -> Vec<(At, At)> {
    pattern(class)
        .into_iter()
        .flat_map(|family| strokes(polygon, family))
        .collect()
}

fn strokes(polygon: &[At], family: Family) -> Vec<(At, At)> {
    let turn = Rotation2D::radians(-family.degrees.to_radians());
    let back = Rotation2D::radians(family.degrees.to_radians());
    let turned: Vec<At> = polygon
        .iter()
        .map(|point| turn.transform_point(*point))
        .collect();
    let low = turned
        .iter()
        .fold(f64::INFINITY, |low, point| low.min(point.y));
    let high = turned
        .iter()
        .fold(f64::NEG_INFINITY, |high, point| high.max(point.y));
    if !(high - low).is_finite() || high <= low {
        return Vec::new();
    }
    let widened = ((high - low) / (MOST_STROKES * family.pitch))
        .ceil()
        .max(1.0);
    let pitch = family.pitch * widened;
    let mut found = Vec::new();
    let mut step = ((low - family.offset) / pitch).ceil();
    loop {
        let y = step * pitch + family.offset;
        if y >= high {
            break;
        }
        for (from, to) in spans(&turned, y) {
            for (a, b) in dashes(from, to, family.dash, step) {
                let stroke = (
                    back.transform_point(At::new(a, y)),
                    back.transform_point(At::new(b, y)),
                );
                found.push(stroke);
            }
        }
        step += 1.0;
    }
    found
}

/// Where the level line at `y` is inside the polygon: from and to, left to right.
fn spans(polygon: &[At], y: f64) -> Vec<(f64, f64)> {
    let mut crossings: Vec<f64> = edges(polygon)
        .filter(|(a, b)| (a.y <= y) != (b.y <= y))
        .map(|(a, b)| a.x + (y - a.y) / (b.y - a.y) * (b.x - a.x))
        .collect();
    crossings.sort_by(f64::total_cmp);
    crossings
        .chunks_exact(2)
        .map(|pair| (pair[0], pair[1]))
        .collect()
}

fn edges(polygon: &[At]) -> impl Iterator<Item = (At, At)> + '_ {
    let next = polygon.iter().cycle().skip(1);
    polygon.iter().zip(next).map(|(a, b)| (*a, *b))
}

/// A stroke cut into dashes on a fixed grid, every other stroke shifted by half.
fn dashes(from: f64, to: f64, dash: Option<(f64, f64)>, step: f64) -> Vec<(f64, f64)> {
    let Some((on, off)) = dash else {
        return vec![(from, to)];
    };
    let period = on + off;
    let count = ((to - from) / period).ceil();
    if count > MOST_STROKES {
        return vec![(from, to)];
    }
    let shift = if step.rem_euclid(2.0) < 0.5 {
        0.0
    } else {
        0.5 * period
    };
    let mut found = Vec::new();
    let mut start = ((from - shift) / period).floor() * period + shift;
    while start < to {
        let (a, b) = (start.max(from), (start + on).min(to));
        if b > a {
            found.push((a, b));
        }
        start += period;
    }
    found
}

/// Whether a place lies inside a polygon.
#[must_use]
pub fn is_inside(polygon: &[At], place: At) -> bool {
    edges(polygon)
        .filter(|(a, b)| (a.y <= place.y) != (b.y <= place.y))
        .filter(|(a, b)| a.x + (place.y - a.y) / (b.y - a.y) * (b.x - a.x) > place.x)
        .count()
        % 2
        == 1
}

/// The place of a straight stroke that is nearest to `place`.
fn nearest_on_stroke(place: At, from: At, to: At) -> At {
    let along: Vector2D<f64> = to - from;
    let length = along.square_length();
    let share = if length > 0.0 {
        ((place - from).dot(along) / length).clamp(0.0, 1.0)
    } else {
        0.0
    };
    from + along * share
}

/// The place of a closed outline that is nearest to `place`; `None` without corners.
#[must_use]
pub fn nearest_on_run(place: At, points: &[At]) -> Option<At> {
    edges(points)
        .map(|(a, b)| nearest_on_stroke(place, a, b))
        .min_by(|a, b| (*a - place).length().total_cmp(&(*b - place).length()))
}

/// Distance of a place from a straight stroke, mm.
#[must_use]
pub fn distance_to_stroke(place: At, from: At, to: At) -> f64 {
    (place - nearest_on_stroke(place, from, to)).length()
}

/// Distance of a place from the outline of a polygon (closed) or a run of strokes, mm.
#[must_use]
pub fn distance_to_run(place: At, points: &[At], closed: bool) -> f64 {
    let count = if closed {
        points.len()
    } else {
        points.len().saturating_sub(1)
    };
    edges(points)
        .take(count)
        .map(|(a, b)| distance_to_stroke(place, a, b))
        .fold(f64::INFINITY, f64::min)
}

#[cfg(test)]
mod tests {
    use super::*;

    fn square(side: f64) -> Vec<At> {
        vec![
            At::new(0.0, 0.0),
            At::new(side, 0.0),
            At::new(side, side),
            At::new(0.0, side),
        ]
    }

    const ALL: [MaterialClass; 5] = [
        MaterialClass::Board,
        MaterialClass::SolidWood,
        MaterialClass::Glass,
        MaterialClass::Metal,
        MaterialClass::Plastic,
    ];

    #[test]
    fn strokes_stay_inside() {
        let bent = vec![
            At::new(0.0, 0.0),
            At::new(30.0, 0.0),
            At::new(30.0, 5.0),
            At::new(5.0, 5.0),
            At::new(5.0, 30.0),
            At::new(0.0, 30.0),
        ];
        for class in ALL {
            let strokes = hatch(&bent, class);
            assert!(!strokes.is_empty(), "{class:?}");
            for (from, to) in strokes {
                let middle = from.lerp(to, 0.5);
                assert!(is_inside(&bent, middle), "{class:?}: {from:?} to {to:?}");
                assert!(distance_to_run(from, &bent, true) < 1e-9 || is_inside(&bent, from));
            }
        }
    }

    /// A 45 degree family at pitch p covers a square of side a with a^2 / p of stroke length, as
    /// far as the grid allows: 40 x 40 at 1.6 gives 1000 mm.
    #[test]
    fn stroke_length_is_area_over_pitch() {
        let strokes = hatch(&square(40.0), MaterialClass::Board);
        let length: f64 = strokes.iter().map(|(a, b)| (*b - *a).length()).sum();
        assert!((length - 1000.0).abs() < 10.0, "{length}");
    }

    #[test]
    fn every_class_has_its_own_pattern_and_words() {
        for (i, a) in ALL.iter().enumerate() {
            for b in &ALL[i + 1..] {
                assert_ne!(hatch(&square(20.0), *a), hatch(&square(20.0), *b));
                assert_ne!(words(*a), words(*b));
            }
        }
    }

    #[test]
    fn a_huge_or_flat_polygon_stays_cheap() {
        assert!(hatch(&square(1e6), MaterialClass::Metal).len() < 500);
        assert!(hatch(&square(0.0), MaterialClass::Board).is_empty());
    }
}
