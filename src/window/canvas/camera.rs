//! Where a drawing lies in its part of the window, and how large it is.

use egui::{Pos2, Rect, Vec2};

use crate::window::tokens::POINTS_PER_MM;

/// Least and greatest size: screen points for one millimetre of the job.
const LIMITS: std::ops::RangeInclusive<f64> = 0.02..=20.0;

/// Whether the drawing keeps itself fitted, or stays where it was put.
#[derive(Debug, Clone, Copy, PartialEq, Default)]
pub(crate) enum Camera {
    /// As large as the room allows.
    #[default]
    Fitted,
    /// As the user left it.
    Placed(Placement),
}

/// A size and a place.
#[derive(Debug, Clone, Copy, PartialEq)]
pub(crate) struct Placement {
    /// Screen points for one millimetre of the job.
    pub(crate) zoom: f64,
    /// Where the drawing's origin lies, from the upper left corner of its room.
    pub(crate) origin: Vec2,
}

impl Placement {
    /// Millimetres of paper for one millimetre of the job at this size.
    pub(crate) fn scale(self) -> f64 {
        self.zoom / f64::from(POINTS_PER_MM)
    }

    /// The same, larger by `factor`, with the point under `at` kept where it is; `at` counts from
    /// the upper left corner of the room.
    #[must_use]
    pub(crate) fn zoomed(self, factor: f64, at: Vec2) -> Self {
        let zoom = (self.zoom * factor).clamp(*LIMITS.start(), *LIMITS.end());
        #[expect(
            clippy::cast_possible_truncation,
            reason = "a ratio of sizes on the screen"
        )]
        let grown = (zoom / self.zoom) as f32;
        Self {
            zoom,
            origin: at - (at - self.origin) * grown,
        }
    }

    /// The same, moved.
    #[must_use]
    pub(crate) fn moved(self, by: Vec2) -> Self {
        Self {
            origin: self.origin + by,
            ..self
        }
    }
}

/// From millimetres of paper, y up, to screen points, y down, and back.
#[derive(Debug, Clone, Copy)]
pub(crate) struct ToScreen {
    origin: Pos2,
    points_per_mm: f32,
}

impl ToScreen {
    /// For a drawing placed in `room`.
    pub(crate) fn new(placement: Placement, room: Rect) -> Self {
        Self::at(room.min + placement.origin, POINTS_PER_MM)
    }

    /// For a list whose origin is at a point of the screen, at that many points for one millimetre
    /// of paper.
    pub(crate) const fn at(origin: Pos2, points_per_mm: f32) -> Self {
        Self {
            origin,
            points_per_mm,
        }
    }

    /// A length of the list on the screen, points.
    #[expect(clippy::cast_possible_truncation, reason = "screen points")]
    pub(crate) fn length(self, mm: f64) -> f32 {
        mm as f32 * self.points_per_mm
    }

    /// Where a place of the list is on the screen.
    #[expect(clippy::cast_possible_truncation, reason = "screen points")]
    pub(crate) fn point(self, at: flapwright_drawing::list::At) -> Pos2 {
        self.origin + Vec2::new(at.x as f32, -at.y as f32) * self.points_per_mm
    }

    /// What place of the list is at a point of the screen.
    pub(crate) fn back(self, at: Pos2) -> flapwright_drawing::list::At {
        let offset = (at - self.origin) / self.points_per_mm;
        flapwright_drawing::list::At::new(f64::from(offset.x), f64::from(-offset.y))
    }
}

/// The placement that shows all of a drawing in a room.
///
/// `bounds` gives the list's bounds, mm of paper, at a scale. Texts keep their size whatever the
/// scale, so the largest scale that fits is found by trying.
pub(crate) fn fit(
    room: Vec2,
    mut bounds: impl FnMut(f64) -> Option<euclid::default::Rect<f64>>,
) -> Placement {
    const MARGIN: f32 = 10.0;
    let points = f64::from(POINTS_PER_MM);
    let wide = f64::from((room.x - 2.0 * MARGIN).max(20.0));
    let high = f64::from((room.y - 2.0 * MARGIN).max(20.0));
    let (mut low, mut high_zoom) = (*LIMITS.start(), *LIMITS.end());
    for _ in 0..14 {
        let zoom = (low * high_zoom).sqrt();
        let fits = bounds(zoom / points)
            .is_none_or(|b| b.size.width * points <= wide && b.size.height * points <= high);
        if fits {
            low = zoom;
        } else {
            high_zoom = zoom;
        }
    }
    let middle = bounds(low / points).map_or(Vec2::ZERO, |b| {
        let centre = b.center();
        #[expect(clippy::cast_possible_truncation, reason = "screen points")]
        Vec2::new(centre.x as f32, -centre.y as f32)
    });
    Placement {
        zoom: low,
        origin: room / 2.0 - middle * POINTS_PER_MM,
    }
}

#[cfg(test)]
mod tests {
    use euclid::default::{Point2D, Rect as List, Size2D};

    use super::*;

    const START: Placement = Placement {
        zoom: 0.5,
        origin: Vec2::new(30.0, 200.0),
    };

    #[test]
    fn what_is_under_the_pointer_stays_there_while_zooming() {
        let room = Rect::from_min_size(Pos2::new(100.0, 50.0), Vec2::new(400.0, 300.0));
        let pointer = Pos2::new(260.0, 190.0);
        let before = ToScreen::new(START, room).back(pointer);
        let zoomed = START.zoomed(1.7, pointer - room.min);
        let factor = zoomed.zoom / START.zoom;
        let now = ToScreen::new(zoomed, room).point(before * factor);
        assert!((now - pointer).length() < 0.01, "{now:?}");
    }

    #[test]
    fn zooming_stops_at_its_limits_without_drifting() {
        let mut there = START;
        for _ in 0..100 {
            there = there.zoomed(2.0, Vec2::new(10.0, 10.0));
        }
        assert!((there.zoom - LIMITS.end()).abs() < 1e-9);
        assert_eq!(there.zoomed(2.0, Vec2::ZERO), there);
    }

    #[test]
    fn fitting_counts_texts_that_keep_their_size() {
        // A body of 800 x 400 mm with 20 mm of paper for dimensions on two sides.
        let bounds = |scale: f64| {
            let body = Size2D::new(800.0 * scale + 20.0, 400.0 * scale + 20.0);
            Some(List::new(Point2D::new(-20.0, -20.0), body))
        };
        let room = Vec2::new(600.0, 400.0);
        let placement = fit(room, bounds);
        let b = bounds(placement.scale()).unwrap();
        let wide = b.size.width * f64::from(POINTS_PER_MM);
        assert!((570.0..=580.1).contains(&wide), "{wide}");
        let screen = ToScreen::new(placement, Rect::from_min_size(Pos2::ZERO, room));
        let centre = screen.point(b.center());
        assert!(
            (centre - Pos2::new(300.0, 200.0)).length() < 0.1,
            "{centre:?}"
        );
    }
}
