//! What is around the box: the ceiling and what stands in the way of doors.

use euclid::default::Rect;
use flapwright_model::cabinet::Place;
use flapwright_model::part::Subject;
use flapwright_model::room::{Extent, Obstacle, Room};
use flapwright_rules::inspection::BoxReport;

use super::{ViewOptions, grips};
use crate::brush::{Brush, Lettering, corners};
use crate::list::{Across, Along, At, DisplayList};
use crate::pen::{Ink, Layer, Pen};

/// How far beside, above and below the box its surroundings are shown in the front view, share of
/// its height.
const FRONT_REACH: f64 = 0.3;
/// The same in the section, where doors swing out.
const SECTION_REACH: f64 = 0.9;
/// How far the ceiling line runs past the sides of the box in the front view, mm.
const CEILING_PAST: f64 = 30.0;
/// Height of the names, paper mm.
const LETTERS: f64 = 2.0;
/// Length of the strokes over the ceiling line and their distance, paper mm.
const STROKE: f64 = 1.6;
const STROKES_APART: f64 = 4.0;

/// The room and where the box hangs in it.
#[derive(Debug, Clone, PartialEq)]
pub struct Around {
    /// The room.
    pub room: Room,
    /// Where the box hangs.
    pub place: Place,
}

/// Ceiling and obstacles in the front view: what of them lies near the box.
///
/// Frame: that of the elevation.
pub(super) fn in_elevation(list: &mut DisplayList, report: &BoxReport, options: &ViewOptions) {
    let Some(around) = &options.around else {
        return;
    };
    let [width, height, _] = report.outer;
    let reach = FRONT_REACH * height;
    let near = rect([-reach, width + reach], [-reach, height + reach]);
    let over = rect(
        [-CEILING_PAST, width + CEILING_PAST],
        [-reach, height + reach],
    );
    ceiling(list, around, over, options.scale);
    for obstacle in &around.room.obstacles {
        let shape = rect(
            moved(obstacle.along_wall, around.place.along_wall),
            moved(obstacle.above_floor, around.place.above_floor),
        );
        let how = (Pen::Outline, false);
        block(
            list,
            obstacle,
            shape.intersection(&near),
            how,
            options.scale,
        );
        if let Some(seen) = shape.intersection(&near) {
            let seen = seen.scale(options.scale, options.scale);
            grips::obstacle(list, obstacle.id, seen, options.scale);
        }
    }
}

/// Ceiling and obstacles in the section: those that lie before or over the width of the box,
/// continuous where the section plane cuts them, dashed where they lie beside it.
///
/// Frame: that of the section; the wall is at the rearmost face of the box.
pub(super) fn in_section(list: &mut DisplayList, report: &BoxReport, options: &ViewOptions) {
    let Some(around) = &options.around else {
        return;
    };
    let [width, height, depth] = report.outer;
    let reach = SECTION_REACH * height;
    let near = rect([-reach, depth], [-reach, height + reach]);
    ceiling(list, around, near, options.scale);
    for obstacle in &around.room.obstacles {
        let [left, right] = moved(obstacle.along_wall, around.place.along_wall);
        if right <= 0.0 || left >= width {
            continue;
        }
        let middle = 0.5 * width;
        let cut = left <= middle && middle <= right;
        let how = (if cut { Pen::Outline } else { Pen::Hidden }, cut);
        let out = obstacle.from_wall;
        let shape = rect(
            [depth - out.to, depth - out.from],
            moved(obstacle.above_floor, around.place.above_floor),
        );
        block(
            list,
            obstacle,
            shape.intersection(&near),
            how,
            options.scale,
        );
    }
}

fn moved(extent: Extent, by: f64) -> [f64; 2] {
    [extent.from - by, extent.to - by]
}

fn rect(x: [f64; 2], y: [f64; 2]) -> Rect<f64> {
    Rect::from_points([At::new(x[0], y[0]), At::new(x[1], y[1])])
}

/// The ceiling as the edge of a solid: a line with short strokes above it.
fn ceiling(list: &mut DisplayList, around: &Around, near: Rect<f64>, scale: f64) {
    let y = around.room.ceiling - around.place.above_floor;
    if y < near.min_y() || y > near.max_y() {
        return;
    }
    let brush = Brush::new(Layer::Room, Ink::Room);
    let (left, right, y) = (near.min_x() * scale, near.max_x() * scale, y * scale);
    brush.line(list, At::new(left, y), At::new(right, y), Pen::Outline);
    let mut x = left + STROKE;
    while x + STROKE <= right {
        let foot = At::new(x, y);
        brush.line(list, foot, At::new(x + STROKE, y + STROKE), Pen::Thin);
        x += STROKES_APART;
    }
    let how = Lettering::new(LETTERS).held(Along::Start, Across::Top);
    brush.text(list, At::new(left, y - 0.8), "ceiling", how);
}

/// The part of an obstacle that lies near the box, with its name; crossed where it is cut.
fn block(
    list: &mut DisplayList,
    obstacle: &Obstacle,
    seen: Option<Rect<f64>>,
    (pen, cut): (Pen, bool),
    scale: f64,
) {
    let Some(seen) = seen else { return };
    let seen = seen.scale(scale, scale);
    let of = Subject::Obstacle(obstacle.id);
    let brush = Brush::new(Layer::Room, Ink::Room).of(of);
    let paper = Brush::new(Layer::Room, Ink::Paper).of(of);
    paper.area(list, corners(seen));
    brush.rect(list, seen, pen);
    if cut {
        let (low, high) = (seen.min(), seen.max());
        brush.line(list, low, high, Pen::Thin);
        brush.line(
            list,
            At::new(low.x, high.y),
            At::new(high.x, low.y),
            Pen::Thin,
        );
    }
    let how = Lettering::new(LETTERS);
    let fits = how.width(&obstacle.name) + 1.0 < seen.width() && 2.0 * LETTERS < seen.height();
    let (at, how) = if fits {
        // At the foot: rows of dimensions rather cross the block higher up.
        let blank = how.held(Along::Middle, Across::Baseline);
        let middle = At::new(seen.center().x, seen.min_y() + 0.8);
        let behind = blank.bounds(middle, &obstacle.name).inflate(0.5, 0.3);
        paper.area(list, corners(behind));
        (middle, blank)
    } else {
        let above = At::new(seen.min_x(), seen.max_y() + 0.8);
        (above, how)
    };
    brush.text(list, at, obstacle.name.as_str(), how);
}

#[cfg(test)]
mod tests {
    use flapwright_model::id::ObstacleId;

    use super::*;
    use crate::list::Shape;
    use crate::views::tests::demo;
    use crate::views::{elevation, hit, section};

    fn options(room: Room) -> ViewOptions {
        ViewOptions {
            scale: 0.2,
            show_dimensions: false,
            around: Some(Around {
                room,
                place: Place {
                    along_wall: 1000.0,
                    above_floor: 1280.0,
                },
            }),
            ..ViewOptions::default()
        }
    }

    fn pipe() -> Obstacle {
        let extent = |from, to| Extent { from, to };
        Obstacle {
            id: ObstacleId::new(1),
            name: "pipe".to_owned(),
            along_wall: extent(1100.0, 1200.0),
            above_floor: extent(1260.0, 1310.0),
            from_wall: extent(50.0, 80.0),
        }
    }

    fn rects(list: &DisplayList) -> Vec<Rect<f64>> {
        list.items
            .iter()
            .filter(|item| item.layer == Layer::Room && item.ink == Ink::Room)
            .filter(|item| matches!(item.shape, Shape::Polyline { closed: true, .. }))
            .map(|item| item.shape.bounds())
            .collect()
    }

    #[test]
    fn an_obstacle_stands_where_its_extents_say() {
        let inspection = demo();
        let report = &inspection.boxes[0];
        let room = Room {
            ceiling: 5000.0,
            obstacles: vec![pipe()],
        };
        // Box at 1000 along the wall, 1280 above the floor: 100 to 200 and -20 to 30 of the box.
        let front = rects(&elevation(report, &options(room.clone())));
        let is = |rect: &Rect<f64>, want: [f64; 4]| {
            let got = [rect.min_x(), rect.max_x(), rect.min_y(), rect.max_y()];
            got.iter()
                .zip(want)
                .all(|(a, b)| (a - 0.2 * b).abs() < 1e-9)
        };
        assert!(
            front.len() == 1 && is(&front[0], [100.0, 200.0, -20.0, 30.0]),
            "{front:?}"
        );
        let list = elevation(report, &options(room.clone()));
        let pipe = Subject::Obstacle(ObstacleId::new(1));
        // Below the underside of the box, which stands before it.
        let below = At::new(0.2 * 150.0, 0.2 * -15.0);
        assert_eq!(hit(&list, below, 0.1), Some(pipe));
        // From the wall counts forward from the rearmost face.
        let cut = rects(&section(report, &options(room)));
        let depth = report.outer[2];
        let want = [depth - 80.0, depth - 50.0, -20.0, 30.0];
        assert!(cut.len() == 1 && is(&cut[0], want), "{cut:?}");
    }

    #[test]
    fn what_is_far_from_the_box_is_not_drawn() {
        let inspection = demo();
        let report = &inspection.boxes[0];
        let mut far = pipe();
        far.along_wall = Extent {
            from: 9000.0,
            to: 9100.0,
        };
        let room = Room {
            ceiling: 5000.0,
            obstacles: vec![far],
        };
        for list in [
            elevation(report, &options(room.clone())),
            section(report, &options(room)),
        ] {
            assert!(list.items.iter().all(|item| item.layer != Layer::Room));
        }
    }

    #[test]
    fn a_low_ceiling_is_drawn_at_its_height() {
        let inspection = demo();
        let report = &inspection.boxes[0];
        let list = elevation(
            report,
            &options(Room::under(1280.0 + report.outer[1] + 50.0)),
        );
        let y = 0.2 * (report.outer[1] + 50.0);
        let found = list.items.iter().any(|item| {
            item.layer == Layer::Room
                && matches!(&item.shape, Shape::Line { from, to, pen: Pen::Outline }
                    if (from.y - y).abs() < 1e-9 && (to.y - y).abs() < 1e-9)
        });
        assert!(found);
    }
}
