//! Shapes as paths: the same places and curves for every back-end that has no circles or arcs of
//! its own.
//!
//! Paths are in millimetres on paper, origin at the **upper left** corner, y **down**: the frame of
//! SVG, PDF surfaces and pictures alike.

use std::f64::consts::{FRAC_PI_2, SQRT_2, TAU};

use flapwright_drawing::list::At;

/// Greatest angle of one Bézier curve, radians: at a quarter turn it leaves the circle by less than
/// 0.03 % of the radius.
const CURVE_STEP: f64 = FRAC_PI_2;

/// Corners of strokes are pointed up to this ratio of the point's length to the pen's width, that
/// is to 60 degrees, and cut off beyond.
pub(crate) const MITER_LIMIT: f32 = 2.0;

/// Numbers in files have four decimals of a millimetre, see [`crate::number::number`].
const DECIMALS: f64 = 1e4;

/// A place in the frame of a path, mm.
pub(crate) type Place = (f32, f32);

/// What a back-end builds its paths with.
pub(crate) trait Pencil {
    /// Begins a stretch.
    fn move_to(&mut self, to: Place);
    /// A straight stroke.
    fn line_to(&mut self, to: Place);
    /// A quadratic Bézier curve with its control point.
    fn bend_to(&mut self, control: Place, to: Place);
    /// A cubic Bézier curve with its two control points.
    fn curve_to(&mut self, first: Place, second: Place, to: Place);
    /// Joins the end of the stretch to its beginning.
    fn close(&mut self);
}

/// A page's frame: turns places of the display list (y up) into those of paths.
#[derive(Debug, Clone, Copy)]
pub(crate) struct Frame {
    height: f64,
}

impl Frame {
    /// The frame of paper `height` mm high.
    pub(crate) const fn new(height: f64) -> Self {
        Self { height }
    }

    /// A place in the frame of paths, with as many decimals as in files.
    pub(crate) fn place(self, at: At) -> Place {
        (length(at.x), length(self.height - at.y))
    }

    /// Traces straight strokes from corner to corner.
    pub(crate) fn polyline(self, pencil: &mut impl Pencil, points: &[At], closed: bool) {
        let mut corners = points.iter().map(|point| self.place(*point));
        if let Some(first) = corners.next() {
            pencil.move_to(first);
            corners.for_each(|corner| pencil.line_to(corner));
            if closed {
                pencil.close();
            }
        }
    }

    /// Traces a full circle **clockwise** on paper from its rightmost point, as SVG does, so that
    /// dashes fall on the same places. One without a radius has no path.
    pub(crate) fn circle(self, pencil: &mut impl Pencil, centre: At, radius: f64) {
        if radius > 0.0 {
            self.quarters(pencil, centre, radius);
            pencil.close();
        }
    }

    fn quarters(self, pencil: &mut impl Pencil, centre: At, radius: f64) {
        let corner =
            |x: f64, y: f64| self.place(At::new(centre.x + radius * x, centre.y + radius * y));
        // The control points of a quarter turn: 4/3 tan(90°/4).
        let k = 4.0 / 3.0 * (SQRT_2 - 1.0);
        pencil.move_to(corner(1.0, 0.0));
        for (x, y) in [(1.0, 0.0), (0.0, -1.0), (-1.0, 0.0), (0.0, 1.0)] {
            // A quarter turn clockwise.
            let (to_x, to_y) = (y, -x);
            let first = corner(x + k * to_x, y + k * to_y);
            let second = corner(to_x + k * x, to_y + k * y);
            pencil.curve_to(first, second, corner(to_x, to_y));
        }
    }

    /// Traces part of a circle, counter-clockwise on paper from the angle `from` by `sweep`
    /// (radians, negative runs clockwise); the whole circle from a full turn on. One without a radius has no
    /// path.
    pub(crate) fn arc(
        self,
        pencil: &mut impl Pencil,
        centre: At,
        radius: f64,
        from: f64,
        sweep: f64,
    ) {
        if radius <= 0.0 {
            return;
        }
        if sweep.abs() >= TAU {
            return self.circle(pencil, centre, radius);
        }
        let steps = (sweep.abs() / CURVE_STEP).ceil().max(1.0);
        let step = sweep / steps;
        let k = 4.0 / 3.0 * (0.25 * step).tan();
        // A place beside the circle: along its radius at `angle`, and along its tangent there.
        let beside = |angle: f64, along: f64| {
            let (sin, cos) = angle.sin_cos();
            let x = centre.x + radius * (cos - along * sin);
            let y = centre.y + radius * (sin + along * cos);
            self.place(At::new(x, y))
        };
        pencil.move_to(beside(from, 0.0));
        let mut done = 0.0;
        while done < steps {
            let start = from + step * done;
            done += 1.0;
            let end = from + step * done;
            pencil.curve_to(beside(start, k), beside(end, -k), beside(end, 0.0));
        }
    }
}

/// A length as it is written into files, mm.
pub(crate) fn length(mm: f64) -> f32 {
    ((mm * DECIMALS).round() / DECIMALS) as f32
}

#[cfg(test)]
mod tests {
    use super::*;

    /// Ends and control points of curves, from each start.
    #[derive(Default)]
    struct Curves {
        at: Place,
        all: Vec<[Place; 4]>,
        closed: bool,
    }

    impl Pencil for Curves {
        fn move_to(&mut self, to: Place) {
            self.at = to;
        }
        fn line_to(&mut self, to: Place) {
            self.at = to;
        }
        fn bend_to(&mut self, _control: Place, to: Place) {
            self.at = to;
        }
        fn curve_to(&mut self, first: Place, second: Place, to: Place) {
            self.all.push([self.at, first, second, to]);
            self.at = to;
        }
        fn close(&mut self) {
            self.closed = true;
        }
    }

    /// A point of a Bézier curve by Bernstein's polynomials, in f64.
    fn on_curve(curve: &[Place; 4], t: f64) -> (f64, f64) {
        let s = 1.0 - t;
        let weights = [s * s * s, 3.0 * s * s * t, 3.0 * s * t * t, t * t * t];
        let sum = |pick: fn(&Place) -> f32| {
            let parts = curve.iter().zip(weights);
            parts
                .map(|(point, weight)| f64::from(pick(point)) * weight)
                .sum()
        };
        (sum(|point| point.0), sum(|point| point.1))
    }

    /// The distance to a circle's centre all along it: sqrt(x² + y²) = r.
    fn worst_distance(curves: &Curves, centre: (f64, f64), radius: f64) -> f64 {
        let distances = curves.all.iter().flat_map(|curve| {
            (0..=20).map(move |step| {
                let (x, y) = on_curve(curve, f64::from(step) / 20.0);
                ((x - centre.0).hypot(y - centre.1) - radius).abs()
            })
        });
        distances.fold(0.0, f64::max)
    }

    #[test]
    fn circles_and_arcs_stay_on_their_circle() {
        let (frame, centre) = (Frame::new(297.0), At::new(60.0, 197.0));
        let mut circle = Curves::default();
        frame.circle(&mut circle, centre, 35.0);
        assert!(circle.closed && circle.all.len() == 4);
        let off = worst_distance(&circle, (60.0, 100.0), 35.0);
        assert!(off < 35.0 * 3e-4, "a circle is {off:.5} mm off");
        for (from, sweep) in [(0.3, 0.2), (0.3, 4.4), (2.0, -5.9), (-1.0, TAU - 0.01)] {
            let mut arc = Curves::default();
            frame.arc(&mut arc, centre, 35.0, from, sweep);
            let off = worst_distance(&arc, (60.0, 100.0), 35.0);
            assert!(off < 35.0 * 3e-4, "an arc of {sweep} is {off:.5} mm off");
        }
    }

    #[test]
    fn arcs_begin_and_end_where_they_should_and_turn_the_right_way() {
        let (frame, centre) = (Frame::new(100.0), At::new(50.0, 50.0));
        let mut quarter = Curves::default();
        frame.arc(&mut quarter, centre, 10.0, 0.0, TAU / 4.0);
        // From the right to the top: up is less in a frame with y down.
        assert_eq!(quarter.all[0][0], (60.0, 50.0));
        assert_eq!(quarter.at, (50.0, 40.0));
        let mut back = Curves::default();
        frame.arc(&mut back, centre, 10.0, 0.0, -TAU / 4.0);
        assert_eq!(back.at, (50.0, 60.0));
        let mut circle = Curves::default();
        frame.circle(&mut circle, centre, 10.0);
        let ends: Vec<Place> = circle.all.iter().map(|curve| curve[3]).collect();
        assert_eq!(
            ends,
            [(50.0, 60.0), (40.0, 50.0), (50.0, 40.0), (60.0, 50.0)]
        );
    }

    #[test]
    fn what_has_no_radius_has_no_path() {
        let frame = Frame::new(100.0);
        for radius in [0.0, -3.0] {
            let mut curves = Curves::default();
            frame.circle(&mut curves, At::new(5.0, 5.0), radius);
            frame.arc(&mut curves, At::new(5.0, 5.0), radius, 0.0, 1.0);
            assert!(curves.all.is_empty() && !curves.closed, "{radius}");
        }
    }
}
