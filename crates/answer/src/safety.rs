//! Which remedies may be applied unseen: each is tried on its box and what is near it.

use std::collections::{BTreeMap, BTreeSet};
use std::sync::{Arc, Mutex, PoisonError};

use flapwright_model::acceptance::Topic;
use flapwright_model::cabinet::WallBox;
use flapwright_model::edit::Edit;
use flapwright_model::id::BoxId;
use flapwright_model::validate::validate_box;
use flapwright_rules::checks::{Seen, Stretch, look_at_box, look_at_pair};
use flapwright_rules::finding::{Finding, Remedy, Safety, Severity};
use flapwright_rules::inspection::Inspection;
use flapwright_rules::placement::place_among;

use crate::answer::{Answer, MOST_COMPARED};

/// A remedy: check and topics of its finding, its number.
type Key = (&'static str, Vec<Topic>, usize);

/// The verdicts on remedies that somebody asked about, each with the stretch of the wall that it
/// goes by.
#[derive(Debug, Default)]
pub(crate) struct Judged(Mutex<BTreeMap<Key, (Safety, Option<Stretch>)>>);

impl Clone for Judged {
    fn clone(&self) -> Self {
        let known = self.0.lock().unwrap_or_else(PoisonError::into_inner);
        Self(Mutex::new(known.clone()))
    }
}

impl Judged {
    pub(crate) fn forget(&mut self) {
        *self = Self::default();
    }

    /// Forgets what goes by a place where something is not as it was.
    pub(crate) fn forget_near(&mut self, places: &[Stretch]) {
        let known = self.0.get_mut().unwrap_or_else(PoisonError::into_inner);
        known.retain(|_, (_, stretch)| {
            stretch.is_some_and(|it| !places.iter().any(|place| place.meets(&it)))
        });
    }
}

/// What a box and all around it would be found to be with another description of the box.
#[derive(Debug)]
pub(crate) struct Trial {
    /// What was found in the box and between it and others.
    pub(crate) before: Vec<Arc<Finding>>,
    /// What would be.
    pub(crate) after: Vec<Arc<Finding>>,
    /// The stretch of the wall that this goes by.
    stretch: Stretch,
}

impl Answer {
    /// Who should look at a remedy of a finding before it is applied. One that its check claims to
    /// be safe is so only if (stops, cautions) of its box falls in dictionary order, no stop comes up
    /// that was not there before, and the finding itself is gone. Tried once, and again only after
    /// something near it has changed.
    #[must_use]
    pub fn safety(&self, finding: &Finding, remedy: usize) -> Safety {
        let Some(offered) = finding.remedies.get(remedy) else {
            return Safety::NeedsALook;
        };
        if !offered.claims_safe() {
            return offered.safety;
        }
        let key = (finding.check, finding.about.clone(), remedy);
        let judged = &self.judged.0;
        let known = judged.lock().unwrap_or_else(PoisonError::into_inner);
        if let Some((safety, _)) = known.get(&key) {
            return *safety;
        }
        drop(known);
        let trial = self.tried(&offered.edit);
        let safe = trial
            .as_ref()
            .is_some_and(|it| it.is_safe(finding, offered));
        let safety = if safe {
            Safety::Safe
        } else {
            Safety::NeedsALook
        };
        let stretch = trial.map(|it| it.stretch);
        let mut known = judged.lock().unwrap_or_else(PoisonError::into_inner);
        known.insert(key, (safety, stretch));
        safety
    }

    /// Whether a remedy of a finding may be applied unseen.
    #[must_use]
    pub fn is_safe(&self, finding: &Finding, remedy: usize) -> bool {
        self.safety(finding, remedy) == Safety::Safe
    }

    /// The whole answer with every remedy judged.
    #[must_use]
    pub fn judged(&self) -> Inspection {
        let mut inspection = self.inspection().clone();
        for finding in &mut inspection.findings {
            if !finding.remedies.iter().any(Remedy::claims_safe) {
                continue;
            }
            let remedies = 0..finding.remedies.len();
            let safety: Vec<Safety> = remedies.map(|it| self.safety(finding, it)).collect();
            let judged = Arc::make_mut(finding).remedies.iter_mut().zip(safety);
            judged.for_each(|(remedy, safety)| remedy.safety = safety);
        }
        inspection
    }

    /// Tries a change of one box; `None` for any other change, for one that makes the job unsound,
    /// and where boxes are so crowded that not all are compared.
    pub(crate) fn tried(&self, edit: &Edit) -> Option<Trial> {
        let Edit::ReplaceBox { with, .. } = edit else {
            return None;
        };
        let id = with.id;
        let known = self.known.get(&id)?;
        if !validate_box(&self.head, with).is_empty() {
            return None;
        }
        let settings = &self.head.settings;
        let report = place_among(&self.head, with, &self.motions);
        let seen = Seen {
            wall_box: with,
            report: &report,
        };
        let (old, new) = (*self.wall.stretch(id)?, Stretch::of(seen));
        let (old_near, new_near) = (self.near_but(id, &old)?, self.near_but(id, &new)?);
        let mut before = known.found.clone();
        let pair = |other: BoxId| (id.min(other), id.max(other));
        let pairs = old_near.iter().chain([&id]);
        let pairs = pairs.filter_map(|other| self.pairs.get(&pair(*other)));
        before.extend(pairs.flatten().cloned());
        let mut found = look_at_box(&self.head, seen, &self.motions, |_| true);
        found.extend(look_at_pair(settings, [seen, seen]));
        for other in &new_near {
            let near = self.known.get(other)?.seen();
            let pair = if *other < id {
                [near, seen]
            } else {
                [seen, near]
            };
            found.extend(look_at_pair(settings, pair));
        }
        let mut after: Vec<Arc<Finding>> = found.into_iter().map(Arc::new).collect();
        let alike = self.alike.tried(settings, &self.known, &report);
        let cards = self.cards.tried(&self.head, with);
        for [was, will] in [alike, cards] {
            before.extend(was);
            after.extend(will);
        }
        let stretch = old.and(&new);
        Some(Trial {
            before,
            after,
            stretch,
        })
    }

    /// The other boxes near a stretch; `None` where they crowd.
    fn near_but(&self, id: BoxId, stretch: &Stretch) -> Option<BTreeSet<BoxId>> {
        let mut near = self.wall.near(stretch);
        near.remove(&id);
        let crowded = near.iter().any(|it| self.crowds.contains_key(it));
        (near.len() <= MOST_COMPARED && !crowded).then_some(near)
    }
}

impl Trial {
    /// Whether the change of this remedy is better for its box, makes no new stop and leaves nothing
    /// of the finding.
    pub(crate) fn is_safe(&self, finding: &Finding, remedy: &Remedy) -> bool {
        let Edit::ReplaceBox { with, .. } = &remedy.edit else {
            return false;
        };
        let stops = self.before.iter().filter(|it| is_stop(it));
        let stops: BTreeSet<_> = stops.map(|it| key(it)).collect();
        of_box(&self.after, with) < of_box(&self.before, with)
            && self
                .after
                .iter()
                .filter(|it| is_stop(it))
                .all(|it| stops.contains(&key(it)))
            && !self.after.iter().any(|it| key(it) == key(finding))
    }
}

fn is_stop(finding: &Finding) -> bool {
    finding.severity == Severity::Stop
}

fn key(finding: &Finding) -> (&str, &[Topic]) {
    (finding.check, finding.about.as_slice())
}

/// How many stops and cautions point at a box.
fn of_box(findings: &[Arc<Finding>], wall_box: &WallBox) -> (usize, usize) {
    let points_at = |it: &&Arc<Finding>| {
        let mut subjects = it.subjects.iter();
        subjects.any(|subject| subject.box_id() == Some(wall_box.id))
    };
    let count = |severity| {
        let its = findings.iter().filter(points_at);
        its.filter(|it| it.severity == severity).count()
    };
    (count(Severity::Stop), count(Severity::Caution))
}
