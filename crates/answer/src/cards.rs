//! What is found in the cards, and which doors are on them.

use std::collections::{BTreeMap, BTreeSet};
use std::sync::Arc;

use flapwright_model::cabinet::WallBox;
use flapwright_model::id::{BoxId, CardId, DoorId};
use flapwright_model::job::Job;
use flapwright_model::part::Subject;
use flapwright_rules::checks::look_at_card;
use flapwright_rules::finding::Finding;

use crate::answer::Known;

/// A door by its box and its turn in it.
type User = (BoxId, usize, DoorId);

/// The cards with their doors.
#[derive(Debug, Clone, Default)]
pub(crate) struct Cards {
    of_box: BTreeMap<BoxId, Vec<(CardId, User)>>,
    users: BTreeMap<CardId, BTreeSet<User>>,
    found: BTreeMap<CardId, Vec<Arc<Finding>>>,
}

impl Cards {
    /// Takes in boxes that are others now, or gone; looks again at the cards that this touches, or
    /// at all of them. How many it looked at.
    pub(crate) fn update(
        &mut self,
        head: &Job,
        known: &BTreeMap<BoxId, Known>,
        touched: &BTreeSet<BoxId>,
        all: bool,
    ) -> usize {
        let mut cards = BTreeSet::new();
        for id in touched {
            let now = known.get(id).map(|it| users_in(&it.described));
            let before = self.of_box.remove(id);
            if before == now {
                self.of_box.extend(before.map(|it| (*id, it)));
                continue;
            }
            for (card, user) in before.into_iter().flatten() {
                cards.insert(card);
                if let Some(users) = self.users.get_mut(&card) {
                    users.remove(&user);
                }
            }
            for (card, user) in now.iter().flatten() {
                cards.insert(*card);
                self.users.entry(*card).or_default().insert(*user);
            }
            self.of_box.extend(now.map(|it| (*id, it)));
        }
        if all {
            self.found.clear();
        }
        let mut looked = 0;
        for used in head.cards.iter().filter(|it| all || cards.contains(&it.id)) {
            looked += 1;
            let users = subjects(self.users.get(&used.id).into_iter().flatten());
            let found = look_at_card(&head.settings, used, &users);
            self.found
                .insert(used.id, found.into_iter().map(Arc::new).collect());
        }
        looked
    }

    /// What is found.
    pub(crate) fn found(&self) -> impl Iterator<Item = &Arc<Finding>> {
        self.found.values().flatten()
    }

    /// What is found in the cards that a box is on or would be on, before and after.
    pub(crate) fn tried(&self, head: &Job, with: &WallBox) -> [Vec<Arc<Finding>>; 2] {
        let before = self.of_box.get(&with.id).cloned().unwrap_or_default();
        let after = users_in(with);
        let mut found = [Vec::new(), Vec::new()];
        if before == after {
            return found;
        }
        for used in &head.cards {
            let is_on = |all: &[(CardId, User)]| all.iter().any(|it| it.0 == used.id);
            if !is_on(&before) && !is_on(&after) {
                continue;
            }
            found[0].extend(self.found.get(&used.id).into_iter().flatten().cloned());
            let others = self.users.get(&used.id).into_iter().flatten();
            let others = others.filter(|user| user.0 != with.id).copied();
            let own = after.iter().filter(|it| it.0 == used.id).map(|it| it.1);
            let users: BTreeSet<User> = others.chain(own).collect();
            let after = look_at_card(&head.settings, used, &subjects(&users));
            found[1].extend(after.into_iter().map(Arc::new));
        }
        found
    }
}

fn users_in(wall_box: &WallBox) -> Vec<(CardId, User)> {
    let doors = wall_box.doors().into_iter().enumerate();
    doors
        .filter_map(|(turn, door)| {
            let choice = door.fitting.as_ref()?;
            Some((choice.card, (wall_box.id, turn, door.id)))
        })
        .collect()
}

fn subjects<'a>(users: impl IntoIterator<Item = &'a User>) -> Vec<Subject> {
    let users = users.into_iter();
    users
        .map(|&(box_id, _, door)| Subject::Door(box_id, door))
        .collect()
}
