//! What is known of the shown door, worked out once for each state of the job.

use std::rc::Rc;

use egui_plot::PlotPoint;
use flapwright_model::id::{BoxId, DoorId};
use flapwright_model::length::{MM_PER_INCH, Unit};
use flapwright_model::measure::Measure;
use flapwright_motion::gravity::Level;
use flapwright_motion::size_chart::Region;
use flapwright_motion::sizes::Grade;
use flapwright_motion::statics::{CurvePoint, Curves, Direction, Zone};
use flapwright_rules::advice::{advice, name};
use flapwright_rules::mechanics::{LargestLift, Mechanics, largest_lift, mechanics};
use flapwright_rules::message::Advice;
use flapwright_rules::strut_places::has_strut;
use flapwright_words::Speaker;

use flapwright_session::document::Document;

/// State of the job, and the door.
type Key = (u64, DoorId);

/// What the tabs remember.
#[derive(Debug, Default)]
pub(crate) struct MechanicsView {
    /// Whether the verdicts for the other number of pieces are shown.
    pub(crate) other_count: bool,
    kept: Option<(Key, Option<Rc<Known>>)>,
}

impl MechanicsView {
    /// What is known of a door, worked out when the job or the door is another than last time.
    pub(crate) fn known(
        &mut self,
        document: &Document,
        box_id: BoxId,
        door: DoorId,
    ) -> Option<Rc<Known>> {
        let key = (document.revision(), door);
        if let Some((kept, known)) = &self.kept
            && *kept == key
        {
            return known.clone();
        }
        let known = Known::of(document, box_id, door).map(Rc::new);
        self.kept = Some((key, known.clone()));
        known
    }
}

/// What is known of one door.
#[derive(Debug)]
pub(crate) struct Known {
    /// Verdicts, regions and curves.
    pub(crate) found: Mechanics,
    /// Where the door pulls hardest.
    pub(crate) largest: Option<LargestLift>,
    /// What a colleague would say.
    pub(crate) advice: String,
    /// Whether the anchors of a strut can be searched for.
    pub(crate) has_strut: bool,
    /// The size chart in the job's unit.
    pub(crate) chart: Vec<ChartRegion>,
    /// The curves in the job's unit.
    pub(crate) lines: Option<Lines>,
}

/// A region of the size chart in the job's unit.
#[derive(Debug)]
pub(crate) struct ChartRegion {
    /// Card and size.
    pub(crate) name: String,
    /// The same without the word between.
    pub(crate) short: String,
    /// Whether its name is drawn: not for a size of another card that does not suit.
    pub(crate) named: bool,
    /// Whether its name stands at the lowest heights.
    pub(crate) at_left: bool,
    /// Whether the door has it.
    pub(crate) chosen: bool,
    /// What the verdict is.
    pub(crate) grade: Grade,
    /// Whether the size gives its limits as masses.
    pub(crate) as_given: bool,
    /// Door heights, rising.
    pub(crate) heights: Vec<f64>,
    /// Least mass at each.
    pub(crate) least: Vec<f64>,
    /// Greatest mass at each.
    pub(crate) most: Vec<f64>,
}

/// A band between two curves, without gaps.
#[derive(Debug, Default)]
pub(crate) struct Band {
    /// Percent of the way.
    pub(crate) x: Vec<f64>,
    /// Lower edge.
    pub(crate) low: Vec<f64>,
    /// Upper edge.
    pub(crate) high: Vec<f64>,
}

impl Band {
    fn put(&mut self, x: f64, (low, high): (f64, f64)) {
        self.x.push(x);
        self.low.push(low);
        self.high.push(high);
    }
}

/// Curves over the way in percent, in the job's unit.
#[derive(Debug)]
pub(crate) struct Lines {
    /// Hand force of the likely door for opening; more than one where leverage is lost between.
    pub(crate) opening: Vec<Vec<PlotPoint>>,
    /// The same for closing.
    pub(crate) closing: Vec<Vec<PlotPoint>>,
    /// From the least to the greatest hand force of all masses, both ways.
    pub(crate) hand: Vec<Band>,
    /// Lift moment of the likely door.
    pub(crate) lift: Vec<PlotPoint>,
    /// From the lightest to the heaviest.
    pub(crate) lift_band: Band,
    /// Spring moment.
    pub(crate) spring: Vec<PlotPoint>,
    /// Friction below and above it.
    pub(crate) spring_band: Band,
    /// What the door does when let go: light, likely, heavy.
    pub(crate) zones: [Vec<Zone>; 3],
    /// Stretches without leverage, in s.
    pub(crate) gaps: Vec<(f64, f64)>,
}

impl Known {
    fn of(document: &Document, box_id: BoxId, id: DoorId) -> Option<Self> {
        let job = document.job();
        let wall_box = job.box_by_id(box_id)?;
        let report = document.inspection().report(box_id)?;
        let door = report.door(id)?;
        let found = mechanics(job, wall_box, report, id)?;
        let choice = super::chosen(job, wall_box, id);
        let chart = found
            .regions
            .iter()
            .filter_map(|region| chart_region(region, &found, choice, job.unit))
            .collect();
        let lines = found
            .working
            .as_ref()
            .ok()
            .map(|working| Lines::of(&working.curves, job.unit));
        Some(Self {
            largest: largest_lift(door),
            advice: said(&advice(&found.verdicts, choice), job.unit),
            has_strut: has_strut(job, wall_box, report, id),
            chart,
            lines,
            found,
        })
    }
}

/// Advice as one paragraph.
fn said(advice: &[Advice], unit: Unit) -> String {
    let speaker = Speaker::without_names(unit);
    let sentences: Vec<String> = advice.iter().map(|it| speaker.say(it)).collect();
    sentences.join(" ")
}

/// A door height in the job's unit.
pub(super) fn height_in(unit: Unit, millimetres: f64) -> f64 {
    match unit {
        Unit::Millimetre => millimetres,
        Unit::Inch => millimetres / MM_PER_INCH,
    }
}

fn chart_region(
    region: &Region,
    found: &Mechanics,
    choice: Option<(&str, &str)>,
    unit: Unit,
) -> Option<ChartRegion> {
    let verdict = found
        .verdicts
        .iter()
        .find(|it| it.card == region.card && it.size == region.size)?;
    let limits = region.limits();
    let mass = |kilograms| Measure::Mass.number(kilograms, unit);
    Some(ChartRegion {
        name: Speaker::without_names(unit).say(&name(verdict)),
        short: format!("{} {}", region.card, region.size),
        named: verdict.grade != Grade::No || choice.is_none_or(|(card, _)| card == region.card),
        at_left: found
            .regions
            .first()
            .is_none_or(|first| first.card == region.card),
        chosen: choice == Some((&region.card, &region.size)),
        grade: verdict.grade,
        as_given: region.as_given,
        heights: limits.iter().map(|row| height_in(unit, row.0)).collect(),
        least: limits.iter().map(|row| mass(row.1)).collect(),
        most: limits.iter().map(|row| mass(row.2)).collect(),
    })
}

impl Lines {
    fn of(curves: &Curves, unit: Unit) -> Self {
        let force = |newtons| Measure::Force.number(newtons, unit);
        let moment = |value| Measure::Moment.number(value, unit);
        let runs = |of: &dyn Fn(&CurvePoint) -> Option<f64>| {
            let mut runs: Vec<Vec<PlotPoint>> = vec![Vec::new()];
            for point in &curves.points {
                match (of(point), runs.last_mut()) {
                    (Some(value), Some(run)) => {
                        run.push(PlotPoint::new(percent(point), force(value)));
                    }
                    (None, Some(run)) if !run.is_empty() => runs.push(Vec::new()),
                    _ => {}
                }
            }
            runs.retain(|run| !run.is_empty());
            runs
        };
        let mut hand = vec![Band::default()];
        for point in &curves.points {
            let both = (
                point.force_range(Direction::Opening),
                point.force_range(Direction::Closing),
            );
            match (both, hand.last_mut()) {
                ((Some(opening), Some(closing)), Some(band)) => {
                    let (low, high) = (closing.0.min(opening.0), closing.1.max(opening.1));
                    band.put(percent(point), (force(low), force(high)));
                }
                (_, Some(band)) if !band.x.is_empty() => hand.push(Band::default()),
                _ => {}
            }
        }
        hand.retain(|band| band.x.len() > 1);
        let mut lift_band = Band::default();
        let mut spring_band = Band::default();
        for point in &curves.points {
            let ends = [Level::Low, Level::High].map(|level| moment(point.lift.at(level)));
            let [a, b] = ends;
            lift_band.put(percent(point), (a.min(b), a.max(b)));
            let (spring, friction) = (point.push.moment, point.push.friction);
            spring_band.put(
                percent(point),
                (moment(spring - friction), moment(spring + friction)),
            );
        }
        let line = |of: &dyn Fn(&CurvePoint) -> f64| {
            curves
                .points
                .iter()
                .map(|point| PlotPoint::new(percent(point), moment(of(point))))
                .collect()
        };
        Self {
            opening: runs(&|point| point.opening_force(Level::Likely)),
            closing: runs(&|point| point.closing_force(Level::Likely)),
            hand,
            lift: line(&|point| point.lift.likely),
            lift_band,
            spring: line(&|point| point.push.moment),
            spring_band,
            zones: Level::ALL.map(|level| curves.zones(level)),
            gaps: curves.without_leverage(),
        }
    }
}

fn percent(point: &CurvePoint) -> f64 {
    point.s * 100.0
}
