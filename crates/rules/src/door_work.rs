//! What the fitting of a door makes of it, reckoned once for all doors that are alike: a wall has few
//! distinct doors, and a verdict follows a door over its whole way.

use std::collections::BTreeMap;
use std::sync::{Arc, Mutex, OnceLock, PoisonError};

use flapwright_model::cabinet::WallBox;
use flapwright_model::id::{CardId, DoorId};
use flapwright_model::job::{Job, Settings};
use flapwright_model::material::MassRange;
use flapwright_motion::mass::{DoorMass, LeafMass, PartMass};
use flapwright_motion::sizes::{Offer, Verdict};

use crate::chosen_work::{ChosenWork, Fall, chosen_work, fall};
use crate::inspection::BoxReport;
use crate::mechanics::{all_sizes, offer};
use crate::placement::door_motions::{bit, bits};

/// So many are kept at most. One takes a few kB for the curves of the chosen size, more where the door
/// falls.
const MOST_KEPT: usize = 1000;

/// What the fitting of a door makes of it, as far as somebody asked.
#[derive(Debug, Default)]
pub(crate) struct DoorWork {
    chosen: OnceLock<Option<ChosenWork>>,
    sizes: OnceLock<Vec<Verdict>>,
    fall: OnceLock<Option<Fall>>,
}

/// A door of a box, and the job whose settings and cards it is judged by.
#[derive(Debug, Clone, Copy)]
pub(crate) struct Asked<'a> {
    pub(crate) job: &'a Job,
    pub(crate) wall_box: &'a WallBox,
    pub(crate) report: &'a BoxReport,
    pub(crate) door: DoorId,
}

impl DoorWork {
    /// How the chosen size works; see [`chosen_work`].
    pub(crate) fn chosen(&self, asked: Asked<'_>) -> Option<&ChosenWork> {
        let Asked {
            job,
            wall_box,
            report,
            door,
        } = asked;
        self.chosen
            .get_or_init(|| chosen_work(job, wall_box, report, door))
            .as_ref()
    }

    /// The verdicts on all sizes, the best first.
    pub(crate) fn sizes(&self, asked: Asked<'_>) -> &[Verdict] {
        let Asked {
            job,
            wall_box,
            report,
            door,
        } = asked;
        self.sizes
            .get_or_init(|| all_sizes(job, wall_box, report, door))
    }

    /// From where the heaviest door falls, over what the settings let fall; see [`fall`].
    pub(crate) fn fall(&self, asked: Asked<'_>) -> Option<&Fall> {
        let find = || {
            let verdict = &self.chosen(asked)?.verdict;
            let lowest = asked.job.settings.holds_above / 100.0;
            let Asked {
                job,
                wall_box,
                report,
                door,
            } = asked;
            fall(job, wall_box, report, door, (verdict, lowest))
        };
        self.fall.get_or_init(find).as_ref()
    }
}

/// The works of doors by what they follow from. Only for jobs whose cards are the same.
#[derive(Debug, Default)]
pub(crate) struct DoorWorks {
    known: Mutex<BTreeMap<Key, Arc<DoorWork>>>,
}

/// Card, name of the size, the numbers of the closed door bit by bit, those of all else.
type Key = (CardId, String, [Vec<u64>; 2]);

impl DoorWorks {
    /// The work of a door; `None` without a fitting or a mass, for then there is none.
    pub(crate) fn of(&self, asked: Asked<'_>) -> Option<Arc<DoorWork>> {
        let key = key(asked)?;
        let mut known = self.known.lock().unwrap_or_else(PoisonError::into_inner);
        if known.len() >= MOST_KEPT && !known.contains_key(&key) {
            known.clear();
        }
        Some(Arc::clone(known.entry(key).or_default()))
    }
}

fn key(asked: Asked<'_>) -> Option<Key> {
    let Asked {
        job,
        wall_box,
        report,
        door,
    } = asked;
    let choice = wall_box.door(door)?.fitting.as_ref()?;
    let place = report.opening_of(door)?;
    let door = place.door.as_ref()?;
    let mut rest = mass_bits(door.weighed.as_ref()?);
    rest.extend(offer_bits(&offer(wall_box, report, place, door)));
    rest.extend(setting_bits(&job.settings));
    let bits = [bits(&door.closed), rest];
    Some((choice.card, choice.size.clone(), bits))
}

/// The settings that a work goes by.
fn setting_bits(settings: &Settings) -> [u64; 3] {
    let [cold, hot] = settings.cold_and_hot();
    [cold, hot, settings.holds_above].map(f64::to_bits)
}

/// All numbers of an offer. Taken apart without a rest, so that a field that is added later cannot be
/// left out; below likewise.
fn offer_bits(offer: &Offer) -> [u64; 9] {
    let Offer {
        door_width,
        box_height,
        depth_from_side,
        depth_from_frame,
        opening_height,
        clear_down,
        to_adjust: [sideways, upward, deep],
    } = *offer;
    [
        door_width,
        box_height,
        depth_from_side,
        depth_from_frame,
        opening_height,
        clear_down,
        sideways,
        upward,
        deep,
    ]
    .map(f64::to_bits)
}

fn mass_bits(mass: &DoorMass) -> Vec<u64> {
    let DoorMass {
        leaves,
        built,
        typed,
        used,
    } = mass;
    let mut bits = Vec::new();
    bits.extend(range_bits(built));
    bits.extend(typed.as_ref().map_or([u64::MAX; 3], range_bits));
    bits.extend(range_bits(used));
    for (id, leaf) in leaves {
        let LeafMass {
            mass,
            parts,
            centre_up,
            centre_ahead,
        } = leaf;
        bits.push(bit(*id));
        bits.extend(range_bits(mass));
        bits.extend([centre_up, centre_ahead].map(|it| it.to_bits()));
        for part in parts {
            let PartMass {
                // Said, and nothing reckoned with it.
                name: _,
                mass,
                centre_up,
                centre_ahead,
                extent_up,
                extent_ahead,
            } = part;
            bits.extend(range_bits(mass));
            let places = [centre_up, centre_ahead, extent_up, extent_ahead];
            bits.extend(places.map(|it| it.to_bits()));
        }
        // Where the parts of a leaf end: no number is this one.
        bits.push(u64::MAX);
    }
    bits
}

fn range_bits(range: &MassRange) -> [u64; 3] {
    let MassRange { low, likely, high } = *range;
    [low, likely, high].map(f64::to_bits)
}

#[cfg(test)]
mod tests {
    use flapwright_model::file::read_job;
    use flapwright_model::job::Job;

    use super::*;
    use crate::placement::place_box;

    const GALLEY: &str = include_str!("../../../assets/demo/houseboat-galley.ron");

    fn work(works: &DoorWorks, job: &Job) -> Arc<DoorWork> {
        let wall_box = &job.boxes[0];
        let report = &place_box(job, wall_box);
        let asked = Asked {
            job,
            wall_box,
            report,
            door: wall_box.doors()[0].id,
        };
        works.of(asked).unwrap()
    }

    #[test]
    fn doors_share_their_work_where_all_that_it_follows_from_is_the_same() {
        let works = DoorWorks::default();
        let first = read_job(GALLEY).unwrap();
        let its = work(&works, &first);
        let mut named = first.clone();
        named.boxes[0].name.push('x');
        named.boxes[0].place.along_wall += 1000.0;
        named.settings.grid_step += 1.0;
        assert!(Arc::ptr_eq(&its, &work(&works, &named)));
        let changes: [fn(&mut Job); 6] = [
            |it| it.boxes[0].depth += 1.0,
            |it| it.boxes[0].width += 1.0,
            |it| it.settings.coldest -= 1.0,
            |it| it.settings.holds_above += 1.0,
            |it| it.settings.hottest += 1.0,
            |it| {
                for material in &mut it.materials {
                    material.density.high += 1.0;
                }
            },
        ];
        for change in changes {
            let mut other = first.clone();
            change(&mut other);
            assert!(!Arc::ptr_eq(&its, &work(&works, &other)));
        }
    }
}
