//! Where a view can be taken hold of, and which numbers of the job a drag there sets.
//!
//! A drag is a hit test ([`DisplayList::handle_at`]) and a `Set` of each field that
//! [`Handle::drag`] names. Nothing of it is drawn: back-ends pass over it.

use euclid::default::{Rect, Vector2D};
use flapwright_model::field::FieldRef;

use crate::list::{At, DisplayList};

/// A number that follows a drag.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Pull {
    /// The number.
    pub field: FieldRef,
    /// How far what is dragged goes in the list's frame, list mm, for each mm by which the number
    /// rises; never nothing.
    pub step: Vector2D<f64>,
}

impl Pull {
    /// By how much the number rises when what is dragged goes by `by`, list mm: only the way along
    /// [`Pull::step`] counts.
    #[must_use]
    pub fn rise(&self, by: Vector2D<f64>) -> f64 {
        by.dot(self.step) / self.step.square_length()
    }
}

/// What can be dragged somewhere.
#[derive(Debug, Clone, PartialEq)]
pub struct Handle {
    /// The numbers that a drag sets, all of them.
    pub pulls: Vec<Pull>,
    /// The edge tweak that a drag of an edge of a door can set in their place; whoever drags is to
    /// be asked which is meant.
    pub tweak: Option<Pull>,
}

impl Handle {
    /// One number.
    #[must_use]
    pub fn of(field: FieldRef, step: Vector2D<f64>) -> Self {
        Self {
            pulls: vec![Pull { field, step }],
            tweak: None,
        }
    }

    /// What a drag by `by`, list mm, sets: each number and by how much it rises, mm. `as_tweak` takes
    /// the edge tweak instead, where there is one.
    #[must_use]
    pub fn drag(&self, by: Vector2D<f64>, as_tweak: bool) -> Vec<(FieldRef, f64)> {
        let pulls = match &self.tweak {
            Some(tweak) if as_tweak => std::slice::from_ref(tweak),
            _ => &self.pulls,
        };
        let rise = |pull: &Pull| (pull.field, pull.rise(by));
        pulls.iter().map(rise).collect()
    }
}

/// A handle and where it is.
#[derive(Debug, Clone, PartialEq)]
pub struct Grip {
    /// Where it can be taken hold of, list mm; an edge has no width.
    pub place: Rect<f64>,
    /// What a drag sets.
    pub handle: Handle,
}

impl Grip {
    /// Whether it is an edge, and no area.
    fn is_edge(&self) -> bool {
        self.place.size.width == 0.0 || self.place.size.height == 0.0
    }

    /// From a place to it, list mm; 0 inside.
    fn distance(&self, at: At) -> f64 {
        let place = self.place;
        let x = (place.min_x() - at.x).max(at.x - place.max_x()).max(0.0);
        let y = (place.min_y() - at.y).max(at.y - place.max_y()).max(0.0);
        x.hypot(y)
    }
}

impl DisplayList {
    /// Makes a place of the list one to take hold of, over those that are there.
    pub fn grip(&mut self, place: Rect<f64>, handle: Handle) {
        self.grips.push(Grip { place, handle });
    }

    /// What can be dragged at `at` (list mm) or within `tolerance` (mm) of it: the nearest edge, else
    /// the topmost area. So an edge is never lost in the areas that meet there.
    #[must_use]
    pub fn handle_at(&self, at: At, tolerance: f64) -> Option<&Handle> {
        let near = || {
            let all = self.grips.iter().rev();
            all.filter(move |grip| grip.distance(at) <= tolerance)
        };
        let edges = near().filter(|grip| grip.is_edge());
        let edge = edges.min_by(|a, b| a.distance(at).total_cmp(&b.distance(at)));
        let area = || near().find(|grip| !grip.is_edge());
        edge.or_else(area).map(|grip| &grip.handle)
    }
}

#[cfg(test)]
mod tests {
    use flapwright_model::field::BoxField;
    use flapwright_model::id::BoxId;

    use super::*;

    fn handle(field: BoxField) -> Handle {
        Handle::of(
            FieldRef::Box(BoxId::new(1), field),
            Vector2D::new(0.0, -0.2),
        )
    }

    fn rect(x: [f64; 2], y: [f64; 2]) -> Rect<f64> {
        Rect::from_points([At::new(x[0], y[0]), At::new(x[1], y[1])])
    }

    #[test]
    fn an_edge_comes_before_the_areas_and_the_topmost_area_before_those_below() {
        let mut list = DisplayList::new();
        let (low, high, edge) = (BoxField::Width, BoxField::Height, BoxField::Depth);
        list.grip(rect([0.0, 100.0], [0.0, 100.0]), handle(low));
        list.grip(rect([0.0, 100.0], [50.0, 50.0]), handle(edge));
        list.grip(rect([20.0, 40.0], [20.0, 60.0]), handle(high));
        for (at, found) in [
            (At::new(30.0, 51.0), Some(edge)),
            (At::new(30.0, 58.0), Some(high)),
            (At::new(80.0, 80.0), Some(low)),
            (At::new(101.5, 80.0), Some(low)),
            (At::new(103.0, 80.0), None),
        ] {
            let found = found.map(handle);
            assert_eq!(list.handle_at(at, 2.0), found.as_ref(), "{at:?}");
        }
        // The nearer of two edges.
        list.grip(rect([0.0, 100.0], [53.0, 53.0]), handle(high));
        assert_eq!(list.handle_at(At::new(5.0, 51.0), 2.0), Some(&handle(edge)));
        assert_eq!(list.handle_at(At::new(5.0, 52.0), 2.0), Some(&handle(high)));
    }

    /// Arithmetic: at 0.2 list mm for each mm, downwards, 3 list mm down are 15 mm.
    #[test]
    fn only_the_way_along_the_step_counts() {
        let found = handle(BoxField::Width).drag(Vector2D::new(40.0, -3.0), true);
        let [(field, rise)] = found.as_slice() else {
            panic!("one number");
        };
        assert_eq!(*field, FieldRef::Box(BoxId::new(1), BoxField::Width));
        assert!((rise - 15.0).abs() < 1e-9, "{rise}");
    }

    #[test]
    fn a_list_that_is_put_into_another_takes_its_grips_along() {
        let mut small = DisplayList::new();
        small.grip(rect([0.0, 10.0], [0.0, 0.0]), handle(BoxField::Width));
        let mut list = DisplayList::new();
        list.append_shifted(&small, Vector2D::new(100.0, 50.0));
        assert!(list.handle_at(At::new(105.0, 50.0), 0.5).is_some());
        assert!(list.handle_at(At::new(5.0, 0.0), 0.5).is_none());
        assert_eq!(list.bounds(), None, "nothing of it is drawn");
    }
}
