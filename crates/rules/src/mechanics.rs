//! What the fitting of a door makes of it: verdict on each size, and the hand's work with the
//! chosen one.
//!
//! Dearer than `answer::inspect`, so asked for door by door; pure like it.

use flapwright_model::cabinet::WallBox;
use flapwright_model::edit::Edit;
use flapwright_model::id::{CardId, DoorId};
use flapwright_model::job::Job;
use flapwright_model::part::Part;
use flapwright_motion::drive::{DriveError, DriveState};
use flapwright_motion::dynamics::{Release, release};
use flapwright_motion::gravity::{ByMass, Level, Weights, lift_moment};
use flapwright_motion::setting::Setting;
use flapwright_motion::size_chart::{Region, regions};
use flapwright_motion::sizes::{Judged, Offer, Verdict, verdicts};
use flapwright_motion::statics::{Curves, curves};

use crate::fitted::Fitted;
use crate::inspection::{BoxReport, DoorReport, OpeningReport};

/// Places of the curves.
const PLACES: u16 = 200;

/// What the fitting of one door makes of it.
#[derive(Debug, Clone)]
pub struct Mechanics {
    /// A verdict on every size of every card of the opening kind, the best first, with as many
    /// pieces as each card has.
    pub verdicts: Vec<Verdict>,
    /// The same with the other number of pieces: one where the card has a pair, two where it has
    /// one.
    pub other_count: Vec<Verdict>,
    /// What each of these sizes carries over the door's height, for the size chart.
    pub regions: Vec<Region>,
    /// Height of the door, mm.
    pub door_height: f64,
    /// How the chosen size works, or why it cannot be reckoned.
    pub working: Result<Working, DriveError>,
}

/// How the chosen size works on the door.
#[derive(Debug, Clone)]
pub struct Working {
    /// Which setting balances the door; `None` for a strut.
    pub balance: Option<Setting>,
    /// The setting that the curves are drawn for, 0 weakest to 1 strongest.
    pub setting: f64,
    /// Moments and forces over the way.
    pub curves: Curves,
    /// The heaviest door let go at half the way.
    pub let_go: Release,
}

/// What the fitting of a door makes of it; `None` without a fitting, or where the door has no mass or
/// no motion (which checks report).
#[must_use]
pub fn mechanics(
    job: &Job,
    wall_box: &WallBox,
    report: &BoxReport,
    door: DoorId,
) -> Option<Mechanics> {
    let fitted = Fitted::of(job, wall_box, report, door)?;
    let Fitted {
        place, door, mass, ..
    } = fitted;
    let kind = door.kind?;
    let offer = offer(wall_box, report, place, door);
    let judged = Judged {
        door: &door.closed,
        mass,
        offer: &offer,
        cold_and_hot: job.settings.cold_and_hot(),
    };
    let with = |pieces| verdicts(job.card_list(), kind, &judged, pieces);
    let found = with(None);
    let mut other_count: Vec<Verdict> = job
        .card_list()
        .filter(|card| card.kind == kind)
        .flat_map(|card| {
            let pieces = if card.sides.ties().len() == 1 { 2 } else { 1 };
            verdicts(std::slice::from_ref(card), kind, &judged, Some(pieces))
        })
        .collect();
    other_count.sort_by(Verdict::best_first);
    let balance = found
        .iter()
        .find(|it| it.card == fitted.card.name && it.size == fitted.size.name)
        .and_then(|verdict| verdict.setting);
    Some(Mechanics {
        regions: regions(job.card_list(), &found, &judged),
        verdicts: found,
        other_count,
        door_height: door.edges.top - door.edges.bottom,
        working: working(&fitted, balance),
    })
}

/// Verdicts on every size of every card of the opening kind for a door, the best first; none without
/// a fitting or a mass.
pub(crate) fn all_sizes(
    job: &Job,
    wall_box: &WallBox,
    report: &BoxReport,
    door: DoorId,
) -> Vec<Verdict> {
    let found = || {
        let place = report.opening_of(door)?;
        let door = place.door.as_ref()?;
        let judged = Judged {
            door: &door.closed,
            mass: door.weighed.as_ref()?,
            offer: &offer(wall_box, report, place, door),
            cold_and_hot: job.settings.cold_and_hot(),
        };
        Some(verdicts(job.card_list(), door.kind?, &judged, None))
    };
    found().unwrap_or_default()
}

/// The lift moment of a door where it is largest on the way.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct LargestLift {
    /// Where on the way, 0 closed to 1 open.
    pub s: f64,
    /// Input angle there, degrees.
    pub degrees: f64,
    /// The moment of the lightest, likely and heaviest door there, N·m.
    pub moment: ByMass<f64>,
}

/// Where the door pulls hardest, whatever lifts it; `None` without mass or motion.
#[must_use]
pub fn largest_lift(door: &DoorReport) -> Option<LargestLift> {
    let mass = door.weighed.as_ref()?;
    let motion = door.working_motion()?;
    let weights = Weights::of(&door.closed, mass);
    (0..PLACES)
        .map(|place| {
            let s = f64::from(place) / f64::from(PLACES - 1);
            LargestLift {
                s,
                degrees: motion.input(s).to_degrees(),
                moment: lift_moment(motion, &weights, s),
            }
        })
        .max_by(|a, b| a.moment.likely.total_cmp(&b.moment.likely))
}

fn working(fitted: &Fitted<'_>, balance: Option<Setting>) -> Result<Working, DriveError> {
    let setting = balance.map_or(0.5, |balance| balance.share_for(Level::Likely));
    let drive = fitted.drive(&DriveState::of(fitted.card, setting))?;
    let weights = fitted.weights();
    let setup = fitted.setup(&weights, &drive);
    Ok(Working {
        balance,
        setting,
        curves: curves(&setup, PLACES),
        let_go: release(&setup, Level::High, 0.5, 0.0),
    })
}

pub(crate) fn offer(
    wall_box: &WallBox,
    report: &BoxReport,
    place: &OpeningReport,
    door: &DoorReport,
) -> Offer {
    let clear = place.clear;
    // Shelves inside the opening, loose ones too: the body beside the side must clear them.
    let highest_shelf = report
        .panels
        .iter()
        .filter(|panel| matches!(panel.id.part, Part::Shelf(_)))
        .map(|panel| panel.solid.max.y)
        .filter(|&top| top > clear.min.y && top < clear.max.y)
        .fold(clear.min.y, f64::max);
    // Bores that are off hang the door where they are; it has to be moved by as much.
    let worst = door
        .offsets
        .iter()
        .max_by(|a, b| a.distance().total_cmp(&b.distance()));
    Offer {
        door_width: door.edges.right - door.edges.left,
        box_height: wall_box.height,
        // o is out, z is back: z of a datum is -o.
        depth_from_side: clear.max.z + door.closed.side_front_o,
        depth_from_frame: clear.max.z + door.closed.frame_front_o,
        opening_height: clear.max.y - clear.min.y,
        clear_down: clear.max.y - highest_shelf,
        to_adjust: worst.map_or([0.0; 3], |offset| [offset.across, offset.up, 0.0]),
    }
}

/// The change that gives a door a size of a card; `None` where it has no fitting.
#[must_use]
pub fn pick_size(job: &Job, door: DoorId, card: CardId, size: &str) -> Option<Edit> {
    let (wall_box, _) = job.door_by_id(door)?;
    pick_size_in(wall_box, door, card, size)
}

/// The same for a door of this box.
#[must_use]
pub(crate) fn pick_size_in(
    wall_box: &WallBox,
    door: DoorId,
    card: CardId,
    size: &str,
) -> Option<Edit> {
    let mut with = wall_box.clone();
    let choice = with.door_mut(door)?.fitting.as_mut()?;
    choice.card = card;
    size.clone_into(&mut choice.size);
    Some(Edit::replace_box(with))
}
