//! The picture of a panel: outline, edges, holes, running dimensions.

use euclid::default::Rect;
use flapwright_model::length::show_mm_tenth;
use flapwright_rules::inspection::{Face, InfillReport};

use super::facts::{FaceEdge, Facts};
use super::frame::{ABOVE, BELOW, FAR_SIDE, Picture, RING, ZERO_SIDE};
use super::holes::Hole;
use super::{edges, numbers};
use crate::brush::{Brush, Lettering, corners};
use crate::dimension::Axis;
use crate::grain::infill_stuff;
use crate::hatch::hatch;
use crate::layout::{Crowd, around};
use crate::list::{Across, Along, At, DisplayList};
use crate::pen::{Ink, Layer, Pen};
use crate::running::{Running, Stop, running};
use crate::scale::Scale;
use crate::views::severity_ink;

/// From the outline to the dimension line, paper mm.
const LINE_AT: f64 = 5.5;
/// From the outline to the figures, paper mm.
const FIGURES_AT: f64 = 10.0;
/// Size of the whole picture with its surroundings, and the outline's upper left corner from the
/// upper left corner of the whole, paper mm.
pub(super) fn extent(facts: &Facts<'_>, scale: Scale) -> ([f64; 2], [f64; 2]) {
    let outline = facts.size.map(|length| length * scale.ratio());
    let room = edges::room(facts, outline);
    let zero_side = ZERO_SIDE + room.zero_side;
    let far_side = FAR_SIDE + room.far_side + (room.width - outline[0]).max(0.0);
    let size = [
        outline[0] + zero_side + far_side,
        outline[1].max(room.height) + ABOVE + BELOW,
    ];
    let left = if facts.u_runs_left() {
        far_side
    } else {
        zero_side
    };
    (size, [left, ABOVE])
}

impl Picture<'_> {
    /// Draws everything; gives back what the reader must be told because there was no room for it.
    pub(super) fn draw(&self, list: &mut DisplayList) -> Vec<&'static str> {
        let panel = Brush::new(Layer::Panels, Ink::Plain);
        let mut crowd = Crowd::new();
        self.framing(list);
        for edge in FaceEdge::ALL {
            if self.facts.break_at(edge).is_none() {
                let [from, to] = self.edge_ends(edge);
                panel.line(list, from, to, Pen::Outline);
            }
        }
        edges::draw(list, self);
        let all_u = self.running_u(list, &mut crowd);
        let all_v = self.running_v(list, &mut crowd);
        for hole in self.shown() {
            let ring = if hole.severity.is_some() { RING } else { 0.0 };
            let reach = self.radius(hole) + 1.15 + ring;
            crowd.take(around(self.at(hole.u, hole.v), [2.0 * reach, 2.0 * reach]));
        }
        if self.facts.has_zero() {
            crowd.take(edges::ring_room(self));
        }
        for edge in FaceEdge::ALL {
            if self.facts.break_at(edge).is_some() {
                crowd.take(Rect::from_points(self.edge_ends(edge)).inflate(1.8, 1.8));
            }
        }
        self.axis(list, &mut crowd);
        for hole in self.shown() {
            self.hole(list, hole);
        }
        let all_numbers = numbers::draw(list, self, &mut crowd);
        self.infill_words(list, &mut crowd);
        self.axis_words(list, &mut crowd);
        self.grain(list, &mut crowd);
        self.back_words(list, &mut crowd);
        if self.facts.has_zero() {
            edges::zero(list, self);
        }
        let mut notes = Vec::new();
        if !(all_u && all_v) {
            notes.push("Distances that do not stand at the edges are in the hole table.");
        }
        if !all_numbers {
            notes.push("Holes without a number: find them by u and v.");
        }
        notes
    }

    fn hole(&self, list: &mut DisplayList, hole: &Hole) {
        let centre = self.at(hole.u, hole.v);
        let radius = self.radius(hole);
        let brush = Brush::new(Layer::Bores, Ink::Bore).of(self.subject(hole));
        brush.circle(list, centre, radius, Pen::Outline);
        brush.cross(list, centre, radius + 1.0, Pen::Centre);
        if let Some(severity) = hole.severity {
            let ring = Brush {
                layer: Layer::Findings,
                ink: severity_ink(severity),
                of: brush.of,
            };
            ring.circle(list, centre, radius + RING, Pen::Outline);
        }
    }

    /// What is seen between the stiles and rails, on paper.
    fn light(&self, infill: &InfillReport) -> Rect<f64> {
        let members = infill.members;
        let bands = self.facts.removed();
        let [width, height] = self.facts.size;
        Rect::from_points([
            self.at(
                members.u_start - bands.u_start,
                members.v_start - bands.v_start,
            ),
            self.at(
                width - members.u_end + bands.u_end,
                height - members.v_end + bands.v_end,
            ),
        ])
    }

    /// Stiles, rails and what they hold.
    fn framing(&self, list: &mut DisplayList) {
        let panel = self.facts.panel;
        let Some(infill) = &panel.infill else { return };
        let light = self.light(infill);
        let soft = Brush::new(Layer::Hatching, Ink::Soft);
        for (from, to) in hatch(&corners(light), infill_stuff(panel, infill)) {
            soft.line(list, from, to, Pen::Thin);
        }
        let brush = Brush::new(Layer::Panels, Ink::Plain);
        brush.rect(list, light, Pen::Thin);
        // Stiles run through, rails stand between them.
        let outline = self.outline();
        for x in [light.min_x(), light.max_x()] {
            for (from, to) in [
                (outline.min_y(), light.min_y()),
                (light.max_y(), outline.max_y()),
            ] {
                brush.line(list, At::new(x, from), At::new(x, to), Pen::Thin);
            }
        }
    }

    /// What the frame holds, in the middle of it where there is room.
    fn infill_words(&self, list: &mut DisplayList, crowd: &mut Crowd) {
        let Some(infill) = &self.facts.panel.infill else {
            return;
        };
        let light = self.light(infill);
        let words = format!(
            "{}, {} thick",
            infill.material,
            show_mm_tenth(infill.thickness)
        );
        let how = Lettering::new(2.5).held(Along::Middle, Across::Middle);
        let size = [how.width(&words) + 2.0, 5.0];
        let radii = [0.0, 4.0, 10.0, 20.0];
        if let Some(at) = crowd.place_near(light.center(), size, &radii, light) {
            let blank = corners(around(at, size));
            Brush::new(Layer::Notes, Ink::Paper).area(list, blank);
            Brush::new(Layer::Notes, Ink::Plain).text(list, at, words, how);
        }
    }

    /// The fitting's axis where it crosses the leaf.
    fn axis(&self, list: &mut DisplayList, crowd: &mut Crowd) {
        let Some([from, to]) = self.axis_ends() else {
            return;
        };
        Brush::new(Layer::Fitting, Ink::Fitting).line(list, from, to, Pen::Centre);
        crowd.take(Rect::from_points([from, to]).inflate(0.0, 0.3));
    }

    fn axis_ends(&self) -> Option<[At; 2]> {
        let axis = self.facts.axis.filter(|_| self.facts.shows_axis())?;
        let [start, end] = [self.facts.start[0], self.ends()[0]];
        Some([self.at(start, axis.v), self.at(end, axis.v)])
    }

    fn axis_words(&self, list: &mut DisplayList, crowd: &mut Crowd) {
        let (Some([from, to]), Some(axis)) = (self.axis_ends(), self.facts.axis) else {
            return;
        };
        let words = format!("axis of the fitting, {}", show_mm_tenth(axis.v));
        let how = Lettering::new(2.5).held(Along::Middle, Across::Middle);
        let size = [how.width(&words) + 1.0, 3.8];
        let within = self.outline().inflate(-1.0, -1.0);
        for share in [0.5, 0.35, 0.65, 0.2, 0.8] {
            let near = from.lerp(to, share);
            if let Some(at) = crowd.place_near(near, size, &[0.4, 2.0, 4.0], within) {
                Brush::new(Layer::Notes, Ink::Plain).text(list, at, words, how);
                return;
            }
        }
    }

    /// `BACK` across the middle of a leaf, where there is room.
    fn back_words(&self, list: &mut DisplayList, crowd: &mut Crowd) {
        if self.facts.panel.face != Face::DoorBack {
            return;
        }
        for height in [10.0, 7.0, 5.0, 3.5] {
            let how = Lettering::new(height)
                .bold()
                .held(Along::Middle, Across::Middle);
            // The box of a text reaches as far below its middle as descenders go.
            let size = [how.width("BACK") + 2.0, 1.75 * height];
            let within = self.outline().inflate(-2.0, -2.0);
            if let Some(at) = crowd.place_in(within, size, 3.0) {
                Brush::new(Layer::Notes, Ink::Soft).text(list, at, "BACK", how);
                return;
            }
        }
    }

    /// Direction of the grain: a double arrow in the middle, if there is room.
    fn grain(&self, list: &mut DisplayList, crowd: &mut Crowd) {
        use flapwright_model::door::Grain;
        let upright = match self.facts.panel.grain {
            Grain::None => return,
            Grain::Upright => true,
            Grain::Across => false,
        };
        if let Some(infill) = &self.facts.panel.infill {
            crowd.take(self.light(infill));
        }
        let outline = self.outline();
        let size = if upright { [6.0, 20.0] } else { [20.0, 6.0] };
        let within = outline.inflate(-1.0, -1.0);
        let Some(middle) =
            crowd.place_near(outline.center(), size, &[0.0, 6.0, 14.0, 24.0], within)
        else {
            return;
        };
        let brush = Brush::new(Layer::Notes, Ink::Plain);
        let (axis, along, across) = if upright {
            (Axis::Upright, middle.y, middle.x + 1.5)
        } else {
            (Axis::Level, middle.x, middle.y - 1.5)
        };
        let ends = [
            axis.point(along - 9.0, across),
            axis.point(along + 9.0, across),
        ];
        brush.line(list, ends[0], ends[1], Pen::Thin);
        crate::dimension::arrow(list, brush, ends[0], ends[1]);
        crate::dimension::arrow(list, brush, ends[1], ends[0]);
        let how = Lettering::new(2.5).held(Along::Middle, Across::Baseline);
        let how = if upright { how.up() } else { how };
        let off = if upright { -1.0 } else { 1.0 };
        brush.text(list, axis.point(along, across + off), "grain", how);
    }

    fn running_u(&self, list: &mut DisplayList, crowd: &mut Crowd) -> bool {
        let outline = self.outline();
        let room = edges::room(self.facts, [outline.width(), outline.height()]);
        let row = |stops: Vec<Stop>| Running {
            axis: Axis::Level,
            zero: self.zero_corner().x,
            from_zero: self.facts.start[0] == 0.0,
            outline: outline.max_y(),
            line_at: outline.max_y() + LINE_AT,
            figures_at: outline.max_y() + FIGURES_AT,
            limits: self.limits(
                [outline.min_x(), outline.max_x()],
                room.width,
                self.facts.u_runs_left(),
            ),
            stops,
        };
        let place = |hole: &Hole| {
            let at = self.at(hole.u, hole.v);
            (at.x, at.y + self.radius(hole), hole.u)
        };
        let u = self.ends()[0];
        let end = (self.at(u, 0.0).x, u);
        let end = self.facts.break_at(FaceEdge::UEnd).is_none().then_some(end);
        self.run(list, crowd, outline.max_y(), &place, end, &row)
    }

    fn running_v(&self, list: &mut DisplayList, crowd: &mut Crowd) -> bool {
        let outline = self.outline();
        let room = edges::room(self.facts, [outline.width(), outline.height()]);
        let left = self.facts.u_runs_left();
        let (edge, out) = if left {
            (outline.max_x(), 1.0)
        } else {
            (outline.min_x(), -1.0)
        };
        let row = |stops: Vec<Stop>| Running {
            axis: Axis::Upright,
            zero: outline.max_y(),
            from_zero: self.facts.start[1] == 0.0,
            outline: edge,
            line_at: edge + out * LINE_AT,
            figures_at: edge + out * FIGURES_AT,
            limits: self.limits([outline.min_y(), outline.max_y()], room.height, true),
            stops,
        };
        let place = |hole: &Hole| {
            let at = self.at(hole.u, hole.v);
            (at.y, at.x + out * self.radius(hole), hole.v)
        };
        let v = self.ends()[1];
        let end = (self.at(0.0, v).y, v);
        let end = self.facts.break_at(FaceEdge::VEnd).is_none().then_some(end);
        self.run(list, crowd, edge, &place, end, &row)
    }

    /// Figures may stand past the far end of the edge, never past the zero corner.
    fn limits(&self, [low, high]: [f64; 2], needed: f64, zero_is_high: bool) -> [f64; 2] {
        let past = (FAR_SIDE - 2.5).max(needed - (high - low));
        if zero_is_high {
            [low - past, high]
        } else {
            [low, high + past]
        }
    }

    /// One running dimension: all distances; else without shelf rows; else the size alone.
    fn run(
        &self,
        list: &mut DisplayList,
        crowd: &mut Crowd,
        edge: f64,
        place: &dyn Fn(&Hole) -> (f64, f64, f64),
        end: Option<(f64, f64)>,
        row: &dyn Fn(Vec<Stop>) -> Running,
    ) -> bool {
        let brush = Brush::new(Layer::Dimensions, Ink::Plain);
        let light = Brush::new(Layer::Dimensions, Ink::Soft);
        let wanted: [&dyn Fn(&&Hole) -> bool; 3] = [&|_| true, &|hole| !hole.in_row, &|_| false];
        for (i, keep) in wanted.into_iter().enumerate() {
            let mut stops: Vec<Stop> = Vec::new();
            for (at, reach, distance) in self.shown().filter(keep).map(place) {
                let figure = show_mm_tenth(distance);
                match stops.iter_mut().find(|stop| stop.figure == figure) {
                    Some(stop) if (reach - edge).abs() < (stop.reach - edge).abs() => {
                        stop.reach = reach;
                    }
                    Some(_) => {}
                    None => stops.push(Stop {
                        at,
                        reach,
                        figure,
                        bold: false,
                    }),
                }
            }
            stops.extend(end.map(|(at, size)| Stop {
                at,
                reach: edge,
                figure: show_mm_tenth(size),
                bold: true,
            }));
            if stops.is_empty() {
                return i == 0;
            }
            let row = row(stops);
            if running(list, brush, light, &row) {
                for stop in &row.stops {
                    let ends = [
                        row.axis.point(stop.at, edge),
                        row.axis.point(stop.at, stop.reach),
                    ];
                    crowd.take(Rect::from_points(ends).inflate(0.15, 0.15));
                }
                return i == 0;
            }
        }
        false
    }

    /// The four edges with the corners that bound them.
    pub(super) fn edge_ends(&self, edge: FaceEdge) -> [At; 2] {
        let [left, top] = self.facts.start;
        let [right, low] = self.ends();
        match edge {
            FaceEdge::UStart => [self.at(left, low), self.at(left, top)],
            FaceEdge::UEnd => [self.at(right, low), self.at(right, top)],
            FaceEdge::VStart => [self.at(left, top), self.at(right, top)],
            FaceEdge::VEnd => [self.at(left, low), self.at(right, low)],
        }
    }
}
