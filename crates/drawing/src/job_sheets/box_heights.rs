//! Ceiling and heights above the floor beside the upright section.

use euclid::default::Rect;
use flapwright_model::job::Job;
use flapwright_model::length::show_mm_tenth;
use flapwright_model::space::SectionPoint;
use flapwright_motion::motion::Pose;
use flapwright_motion::statics::Grip;
use flapwright_rules::inspection::{BoxReport, DoorReport};

use crate::brush::{Brush, Lettering};
use crate::dimension::FIGURE;
use crate::layout::spread;
use crate::list::{Across, Along, At, DisplayList};
use crate::pen::{Ink, Layer, Pen};

/// From the drawn section to the ends of the height lines, mm.
const LEAD: f64 = 3.0;
/// A ceiling farther above everything than this is said and not drawn, workshop mm.
const NEAR: f64 = 450.0;
/// From line to line of the heights, mm.
const PITCH: f64 = 4.2;

/// One height.
struct Height {
    /// Above the underside of the box, workshop mm.
    y: f64,
    /// How far its line runs, paper mm from the section's origin.
    to: f64,
    words: String,
}

/// Draws ceiling and heights at the left of a section at this scale, whose bounds are `section`.
/// Gives back what could not be drawn, in words.
pub(super) fn draw(
    list: &mut DisplayList,
    job: &Job,
    report: &BoxReport,
    scale: f64,
    section: Rect<f64>,
) -> Option<String> {
    let above_floor = job
        .box_by_id(report.id)
        .map_or(0.0, |it| it.place.above_floor);
    let mut heights = Vec::new();
    let ceiling = job.room.ceiling - above_floor;
    let depth = report.outer[2] * scale;
    let say = |what: &str, y: f64| format!("{what} {}", show_mm_tenth(y + above_floor));
    let top = section.max_y() / scale;
    let mut far = None;
    if ceiling <= top + NEAR {
        let brush = Brush::new(Layer::Panels, Ink::Plain);
        let y = ceiling * scale;
        brush.line(
            list,
            At::new(section.min_x() - LEAD, y),
            At::new(depth, y),
            Pen::Outline,
        );
        heights.push(Height {
            y: ceiling,
            to: section.min_x() - LEAD,
            words: say("ceiling", ceiling),
        });
    } else {
        far = Some(format!(
            "The ceiling is {} above the floor, {} above the box.",
            show_mm_tenth(job.room.ceiling),
            show_mm_tenth(ceiling - report.outer[1])
        ));
    }
    for door in report.doors() {
        heights.extend(door_heights(door, scale, &say));
    }
    heights.push(Height {
        y: 0.0,
        to: -1.0,
        words: say("underside", 0.0),
    });
    labels(list, heights, scale, section);
    far
}

fn door_heights(door: &DoorReport, scale: f64, say: &dyn Fn(&str, f64) -> String) -> Vec<Height> {
    let Some(motion) = door.working_motion() else {
        return Vec::new();
    };
    let open = motion.pose(1.0);
    let corners: Vec<SectionPoint> = door
        .closed
        .leaves
        .iter()
        .flat_map(|leaf| {
            let pose = open.leaf(leaf.id).unwrap_or(Pose::CLOSED);
            [
                (leaf.back_o, leaf.bottom),
                (leaf.front_o, leaf.bottom),
                (leaf.back_o, leaf.top),
                (leaf.front_o, leaf.top),
            ]
            .map(|(o, y)| pose.apply(SectionPoint::new(o, y)))
        })
        .collect();
    let grip = Grip::of(&door.closed).place;
    let posed = door
        .closed
        .leaves
        .last()
        .and_then(|leaf| open.leaf(leaf.id))
        .map(|pose| pose.apply(grip));
    let mut heights = Vec::new();
    let mut add = |what: &str, place: SectionPoint| {
        heights.push(Height {
            y: place.y,
            to: -place.x * scale,
            words: say(what, place.y),
        });
    };
    let highest = corners.iter().max_by(|a, b| a.y.total_cmp(&b.y));
    let lowest = corners.iter().min_by(|a, b| a.y.total_cmp(&b.y));
    if let (Some(highest), Some(lowest)) = (highest, lowest) {
        add("open door, top", *highest);
        add("open door, head room", *lowest);
    }
    if let Some(posed) = posed {
        add("reach, door open", posed);
    }
    add("reach, door closed", grip);
    heights
}

fn labels(list: &mut DisplayList, mut heights: Vec<Height>, scale: f64, section: Rect<f64>) {
    heights.sort_by(|a, b| a.y.total_cmp(&b.y));
    let wanted: Vec<f64> = heights.iter().map(|it| it.y * scale).collect();
    let Some(places) = spread(&wanted, PITCH, f64::MIN / 4.0, f64::MAX / 4.0) else {
        return;
    };
    let brush = Brush::new(Layer::Dimensions, Ink::Plain);
    let light = Brush::new(Layer::Dimensions, Ink::Soft);
    let start = section.min_x() - LEAD;
    let how = Lettering::new(FIGURE).held(Along::End, Across::Middle);
    for (height, place) in heights.iter().zip(places) {
        let y = height.y * scale;
        let knee = At::new(start, y);
        let end = At::new(start - 5.0, place);
        brush.line(list, knee, end, Pen::Thin);
        if height.to > start {
            light.line(list, knee, At::new(height.to, y), Pen::Thin);
        }
        let at = At::new(end.x - 0.8, place);
        brush.text(list, at, height.words.clone(), how);
    }
}
