//! Hatching of cut material: strokes clipped to a polygon, one pattern for each class of material.

use euclid::default::{Rotation2D, Vector2D};
use flapwright_model::material::MaterialClass;

use crate::list::At;

/// The most strokes of one family in one polygon; a larger polygon gets a wider pitch.
const MOST_STROKES: f64 = 240.0;

/// A stroke that is no longer than this only touches a corner, mm on paper.
const NO_STROKE: f64 = 1e-6;

/// How the grain of a material lies to the plane of the drawing.
#[derive(Debug, Clone, Copy, PartialEq)]
pub enum Lie {
    /// It crosses the plane: a cut shows end grain.
    Crossing,
    /// It runs in the plane, so many degrees counter-clockwise from +x: a cut or a face shows it
    /// lengthwise.
    Along(f64),
}

/// A material as the drawing shows it. Only solid wood is told apart by its grain.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Stuff {
    /// Class of the material.
    pub class: MaterialClass,
    /// How its grain lies.
    pub lie: Lie,
}

/// One family of parallel strokes, mm on paper.
#[derive(Debug, Clone, Copy, PartialEq)]
struct Family {
    /// Slope, degrees counter-clockwise from +x.
    degrees: f64,
    /// From stroke to stroke.
    pitch: f64,
    /// Where the strokes lie.
    place: Place,
    /// Drawn and skipped lengths; none when continuous.
    dash: Option<(f64, f64)>,
}

/// Where the strokes of a family lie.
#[derive(Debug, Clone, Copy, PartialEq)]
enum Place {
    /// On one grid for the whole list, shifted by this across the strokes, mm.
    Grid(f64),
    /// Spread over each piece, with half a pitch at either edge: strokes that run with an edge must
    /// not come so near that they thicken it.
    Spread,
}

const fn family(degrees: f64, pitch: f64, offset: f64, dash: Option<(f64, f64)>) -> Family {
    Family {
        degrees,
        pitch,
        place: Place::Grid(offset),
        dash,
    }
}

/// The pattern of a material. ISO 128 leaves the patterns of special materials to a legend:
/// [`words`].
fn pattern(stuff: Stuff) -> Vec<Family> {
    match stuff.class {
        MaterialClass::Board => vec![family(45.0, 1.6, 0.0, None)],
        MaterialClass::SolidWood => match stuff.lie {
            Lie::Crossing => {
                vec![family(-45.0, 3.2, 0.0, None), family(-45.0, 3.2, 0.8, None)]
            }
            // Broken, so that no stroke is taken for the edge of a plate.
            Lie::Along(degrees) => vec![Family {
                degrees,
                pitch: 1.6,
                place: Place::Spread,
                dash: Some((9.0, 1.6)),
            }],
        },
        MaterialClass::Glass => vec![
            family(45.0, 6.0, 0.0, Some((3.0, 4.0))),
            family(45.0, 6.0, 1.0, Some((3.0, 4.0))),
            family(45.0, 6.0, 2.0, Some((3.0, 4.0))),
        ],
        MaterialClass::Metal => vec![family(45.0, 0.8, 0.0, None)],
        MaterialClass::Plastic => vec![family(45.0, 2.2, 0.0, None), family(-45.0, 2.2, 0.0, None)],
    }
}

/// What the pattern of a material means, for legends.
#[must_use]
pub const fn words(stuff: Stuff) -> &'static str {
    match stuff.class {
        MaterialClass::Board => "board: single strokes",
        MaterialClass::SolidWood => match stuff.lie {
            Lie::Crossing => {
                "solid wood cut across the grain: pairs of strokes, falling to the right"
            }
            Lie::Along(_) => "solid wood along the grain: long broken strokes, as the grain runs",
        },
        MaterialClass::Glass => "glass: broken strokes in threes",
        MaterialClass::Metal => "metal: narrow strokes",
        MaterialClass::Plastic => "plastic: crossed strokes",
    }
}

/// The legend of these materials, each pattern named once in the order of its first use.
#[must_use]
pub fn legend(stuffs: impl IntoIterator<Item = Stuff>) -> Vec<&'static str> {
    let mut found = Vec::new();
    for stuff in stuffs {
        if !found.contains(&words(stuff)) {
            found.push(words(stuff));
        }
    }
    found
}

/// The strokes that hatch a simple polygon (list mm, either sense of turning) of this material.
/// Strokes lie on one grid for the whole list, so that neighbouring pieces of one panel match;
/// those along a grain are spread over each piece.
#[must_use]
pub fn hatch(polygon: &[At], stuff: Stuff) -> Vec<(At, At)> {
    pattern(stuff)
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
    let (pitch, offset) = rows(low, high, family);
    let mut found = Vec::new();
    let mut step = ((low - offset) / pitch).ceil();
    loop {
        let y = step * pitch + offset;
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

/// Distance of the strokes of a piece from `low` to `high`, and the shift of their grid, mm.
fn rows(low: f64, high: f64, family: Family) -> (f64, f64) {
    let depth = high - low;
    match family.place {
        Place::Grid(offset) => {
            let widened = (depth / (MOST_STROKES * family.pitch)).ceil().max(1.0);
            (family.pitch * widened, offset)
        }
        Place::Spread => {
            let pitch = depth / (depth / family.pitch).round().clamp(1.0, MOST_STROKES);
            (pitch, low + 0.5 * pitch)
        }
    }
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
        .filter(|(from, to)| to - from > NO_STROKE)
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

    const fn stuff(class: MaterialClass) -> Stuff {
        let lie = Lie::Crossing;
        Stuff { class, lie }
    }

    const fn wood(lie: Lie) -> Stuff {
        let class = MaterialClass::SolidWood;
        Stuff { class, lie }
    }

    const ALL: [Stuff; 7] = [
        stuff(MaterialClass::Board),
        wood(Lie::Crossing),
        wood(Lie::Along(0.0)),
        wood(Lie::Along(90.0)),
        stuff(MaterialClass::Glass),
        stuff(MaterialClass::Metal),
        stuff(MaterialClass::Plastic),
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
        for stuff in ALL {
            let strokes = hatch(&bent, stuff);
            assert!(!strokes.is_empty(), "{stuff:?}");
            for (from, to) in strokes {
                let middle = from.lerp(to, 0.5);
                assert!(is_inside(&bent, middle), "{stuff:?}: {from:?} to {to:?}");
                assert!(distance_to_run(from, &bent, true) < 1e-9 || is_inside(&bent, from));
            }
        }
    }

    /// A 45 degree family at pitch p covers a square of side a with a^2 / p of stroke length, as
    /// far as the grid allows: 40 x 40 at 1.6 gives 1000 mm.
    #[test]
    fn stroke_length_is_area_over_pitch() {
        let strokes = hatch(&square(40.0), stuff(MaterialClass::Board));
        let length: f64 = strokes.iter().map(|(a, b)| (*b - *a).length()).sum();
        assert!((length - 1000.0).abs() < 10.0, "{length}");
    }

    #[test]
    fn every_class_and_direction_has_its_own_pattern_and_words() {
        for (i, a) in ALL.iter().enumerate() {
            for b in &ALL[i + 1..] {
                assert_ne!(hatch(&square(20.0), *a), hatch(&square(20.0), *b));
                let both_along = matches!((a.lie, b.lie), (Lie::Along(_), Lie::Along(_)));
                assert_eq!(words(*a) == words(*b), both_along, "{a:?} {b:?}");
            }
        }
        let [crossing, along] = [Lie::Crossing, Lie::Along(30.0)].map(wood);
        let named = legend([along, crossing, along]);
        assert_eq!(named, [words(along), words(crossing)]);
    }

    /// A rail of 18 x 60 mm at 1:5 is 3.6 mm thick on paper; one of 15 mm at 1:10 is 1.5 mm. A
    /// stroke that comes nearer than twice the outline's pen (0.5 mm) to the edge thickens it.
    #[test]
    fn strokes_along_the_grain_run_with_it_clear_of_the_edges() {
        for (degrees, thick) in [(0.0_f64, 3.6), (90.0, 3.6), (27.0, 3.6), (90.0, 1.5)] {
            let turn = Rotation2D::radians(degrees.to_radians());
            let long = 60.0;
            let corners = [
                (5.0, 2.0),
                (long, 2.0),
                (long, 2.0 + thick),
                (5.0, 2.0 + thick),
            ];
            let strip = corners.map(|(x, y)| turn.transform_point(At::new(x, y)));
            let strokes = hatch(&strip, wood(Lie::Along(degrees)));
            assert!(strokes.len() >= 5, "{degrees}: {strokes:?}");
            let (s, c) = degrees.to_radians().sin_cos();
            for (from, to) in strokes {
                let stroke = to - from;
                assert!((stroke.x * s - stroke.y * c).abs() < 1e-9, "{stroke:?}");
                let middle = from.lerp(to, 0.5);
                let sides = [(strip[0], strip[1]), (strip[2], strip[3])];
                for (a, b) in sides {
                    assert!(distance_to_stroke(middle, a, b) >= 0.5, "{middle:?}");
                }
                // No stroke runs the whole length: the edges do.
                assert!(stroke.length() < 0.5 * long);
            }
        }
    }

    #[test]
    fn a_huge_or_flat_polygon_stays_cheap() {
        assert!(hatch(&square(1e6), stuff(MaterialClass::Metal)).len() < 500);
        assert!(hatch(&square(1e6), wood(Lie::Along(0.0))).len() < 500);
        assert!(hatch(&square(0.0), stuff(MaterialClass::Board)).is_empty());
        assert!(hatch(&square(0.0), wood(Lie::Along(90.0))).is_empty());
    }
}
