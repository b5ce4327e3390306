//! Doors that look alike, wherever they hang: each is compared with the first of them.

use std::collections::{BTreeMap, BTreeSet};
use std::sync::Arc;

use flapwright_model::id::{BoxId, DoorId};
use flapwright_model::job::Settings;
use flapwright_rules::checks::{Looks, look_at_alike, looks_of, one_door};
use flapwright_rules::finding::Finding;
use flapwright_rules::inspection::BoxReport;

use crate::answer::Known;

/// A door: first by its box, so that the first of several is that of the oldest box.
type Member = (BoxId, DoorId);

/// The doors by what they look like.
#[derive(Debug, Clone, Default)]
pub(crate) struct Alike {
    of_box: BTreeMap<BoxId, Vec<(Looks, DoorId)>>,
    groups: BTreeMap<Looks, BTreeSet<Member>>,
    /// What is found between a door and the first that looks like it.
    found: BTreeMap<Member, Vec<Arc<Finding>>>,
}

/// What an update did.
#[derive(Debug, Default)]
pub(crate) struct Compared {
    /// How many doors were compared.
    pub(crate) doors: usize,
    /// Whether doors of boxes that were not touched got another first to be compared with.
    pub(crate) another_first: bool,
}

impl Alike {
    /// Takes in boxes that are others now, or gone.
    pub(crate) fn update(
        &mut self,
        settings: &Settings,
        known: &BTreeMap<BoxId, Known>,
        touched: &BTreeSet<BoxId>,
    ) -> Compared {
        // What doors of touched boxes look like, with the first of those before.
        let mut groups: BTreeMap<Looks, Option<Member>> = BTreeMap::new();
        for id in touched {
            let before = self.of_box.remove(id).unwrap_or_default();
            let now = known.get(id).map(|it| looks_of(&it.report));
            let both = before.iter().chain(now.iter().flatten());
            for (looks, _) in both {
                let first = self.groups.get(looks).and_then(|it| it.first().copied());
                groups.entry(looks.clone()).or_insert(first);
            }
            for (looks, door) in before {
                self.found.remove(&(*id, door));
                if let Some(group) = self.groups.get_mut(&looks) {
                    group.remove(&(*id, door));
                    if group.is_empty() {
                        self.groups.remove(&looks);
                    }
                }
            }
            for (looks, door) in now.iter().flatten() {
                let group = self.groups.entry(looks.clone()).or_default();
                group.insert((*id, *door));
            }
            self.of_box.extend(now.map(|it| (*id, it)));
        }
        let mut compared = Compared::default();
        for (looks, first_before) in groups {
            let Some(group) = self.groups.get(&looks) else {
                continue;
            };
            let first = group.first().copied();
            let another = first != first_before || first.is_some_and(|it| touched.contains(&it.0));
            compared.another_first |= another;
            let members = group
                .iter()
                .filter(|it| another || touched.contains(&it.0))
                .copied();
            for member in members.collect::<Vec<_>>() {
                compared.doors += 1;
                let found = compare(
                    settings,
                    |id| known.get(&id).map(|it| &*it.report),
                    [first, Some(member)],
                );
                self.found.remove(&member);
                if !found.is_empty() {
                    self.found.insert(member, found);
                }
            }
        }
        compared
    }

    /// What is found.
    pub(crate) fn found(&self) -> impl Iterator<Item = &Arc<Finding>> {
        self.found.values().flatten()
    }

    /// What is found between doors that look like one of a box, before and after another report
    /// stands in place of its own.
    pub(crate) fn tried(
        &self,
        settings: &Settings,
        known: &BTreeMap<BoxId, Known>,
        with: &BoxReport,
    ) -> [Vec<Arc<Finding>>; 2] {
        let after = looks_of(with);
        let before = self.of_box.get(&with.id).into_iter().flatten();
        let looks: BTreeSet<&Looks> = before.chain(&after).map(|it| &it.0).collect();
        let report = |id: BoxId| {
            if id == with.id {
                Some(with)
            } else {
                known.get(&id).map(|it| &*it.report)
            }
        };
        let mut found = [Vec::new(), Vec::new()];
        for looks in looks {
            let members = self.groups.get(looks).into_iter().flatten().copied();
            let members: BTreeSet<Member> = members.collect();
            let is_own = |it: &Member| it.0 == with.id;
            let own = after.iter().filter(|it| it.0 == *looks);
            let own = own.map(|it| (with.id, it.1));
            let others = members.iter().filter(|it| !is_own(it)).copied();
            let now: BTreeSet<Member> = others.chain(own).collect();
            let of = |all: &BTreeSet<Member>| all.first().copied();
            // With the same first as before the others stay as they are.
            let same_first = of(&members) == of(&now) && !of(&now).is_some_and(|it| is_own(&it));
            for member in members.iter().filter(|it| !same_first || is_own(it)) {
                found[0].extend(self.found.get(member).into_iter().flatten().cloned());
            }
            for member in now.iter().filter(|it| !same_first || is_own(it)) {
                found[1].extend(compare(settings, report, [of(&now), Some(*member)]));
            }
        }
        found
    }
}

/// What is found between the first of the doors that look alike and another.
fn compare<'a>(
    settings: &Settings,
    report: impl Fn(BoxId) -> Option<&'a BoxReport>,
    [first, other]: [Option<Member>; 2],
) -> Vec<Arc<Finding>> {
    let door = |member: Option<Member>| {
        let (id, door) = member?;
        one_door(report(id)?, door)
    };
    if first == other {
        return Vec::new();
    }
    let found = door(first).zip(door(other));
    let found = found.map(|(first, other)| look_at_alike(settings, [first, other]));
    found.into_iter().flatten().map(Arc::new).collect()
}
