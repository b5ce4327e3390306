//! The answer, and how an edit patches it.

use std::collections::{BTreeMap, BTreeSet};
use std::sync::Arc;

use flapwright_model::acceptance::Acceptance;
use flapwright_model::cabinet::WallBox;
use flapwright_model::id::BoxId;
use flapwright_model::job::Job;
use flapwright_rules::accept;
use flapwright_rules::checks::{Check, Seen, Stretch, look_at_box, look_at_pair, tell_of_crowd};
use flapwright_rules::finding::Finding;
use flapwright_rules::inspection::{BoxReport, Inspection};
use flapwright_rules::placement::door_motions::DoorMotions;
use flapwright_rules::placement::place_among;

use crate::alike::Alike;
use crate::anew::Anew;
use crate::cards::Cards;
use crate::order;
use crate::safety::Judged;
use crate::wall::Wall;

/// A box is compared with so many neighbours of later identity at most: a sound job has fewer, and
/// boxes that are all in one place would be compared each with all. How many were left out is told.
pub(crate) const MOST_COMPARED: usize = 16;

/// What is true of a job, kept from edit to edit.
#[derive(Debug, Clone)]
pub struct Answer {
    /// The job as it was last, without its boxes: what all of them are looked at with.
    pub(crate) head: Job,
    pub(crate) motions: Arc<DoorMotions>,
    /// The motions that were kept when unused ones were forgotten last.
    motions_kept: usize,
    pub(crate) known: BTreeMap<BoxId, Known>,
    pub(crate) wall: Wall,
    /// What is between two boxes that have to do with each other, the smaller identity first;
    /// between the doors of one box under its identity twice.
    pub(crate) pairs: BTreeMap<(BoxId, BoxId), Vec<Arc<Finding>>>,
    /// What is told of boxes that have more neighbours than they are compared with.
    pub(crate) crowds: BTreeMap<BoxId, Vec<Arc<Finding>>>,
    pub(crate) alike: Alike,
    pub(crate) cards: Cards,
    pub(crate) judged: Judged,
    inspection: Inspection,
    /// Whether anything that the list is put together from is another since.
    stale: bool,
    /// What was accepted when the list was put together last.
    accepted: Vec<Acceptance>,
    work: Work,
}

/// What is known of a box.
#[derive(Debug, Clone)]
pub(crate) struct Known {
    pub(crate) described: Arc<WallBox>,
    pub(crate) report: Arc<BoxReport>,
    /// What is found in it by itself, in the order of the checks.
    pub(crate) found: Vec<Arc<Finding>>,
    /// Its turn in the job's list.
    pub(crate) turn: usize,
}

impl Known {
    pub(crate) fn seen(&self) -> Seen<'_> {
        Seen {
            wall_box: &self.described,
            report: &self.report,
        }
    }
}

/// What the last update worked out anew.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Default)]
pub struct Work {
    /// Boxes that were placed.
    pub placed: usize,
    /// Boxes that were looked at by themselves, by all checks or some.
    pub looked_at: usize,
    /// Pairs of boxes that were compared, a box with itself counted.
    pub pairs: usize,
    /// Doors that were compared with the first that looks like them.
    pub alike: usize,
    /// Cards that were looked at.
    pub cards: usize,
}

impl Answer {
    /// What is true of a job.
    #[must_use]
    pub fn of(job: &Job) -> Self {
        let mut answer = Self {
            head: head_of(job),
            motions: Arc::default(),
            motions_kept: 0,
            known: BTreeMap::new(),
            wall: Wall::default(),
            pairs: BTreeMap::new(),
            crowds: BTreeMap::new(),
            alike: Alike::default(),
            cards: Cards::default(),
            judged: Judged::default(),
            inspection: Inspection {
                boxes: Vec::new(),
                findings: Vec::new(),
            },
            stale: true,
            accepted: Vec::new(),
            work: Work::default(),
        };
        let all = Anew {
            cards: true,
            ..Anew::default()
        };
        answer.patch(job, &all, |_| true);
        answer.put_together(job);
        answer
    }

    /// Takes the job as it is now for the one that was.
    pub fn update(&mut self, job: &Job) {
        let anew = Anew::between(&self.head, job);
        self.patch(job, &anew, |_| true);
        self.put_together(job);
    }

    /// The same where an edit touched these boxes and no others: the rest is not compared with what
    /// it was. Head, materials, cards and acceptances are.
    pub fn after(&mut self, job: &Job, touched: &BTreeSet<BoxId>) {
        let anew = Anew::between(&self.head, job);
        self.patch(job, &anew, |id| touched.contains(&id));
        self.put_together(job);
    }

    /// The whole of it as data.
    #[must_use]
    pub const fn inspection(&self) -> &Inspection {
        &self.inspection
    }

    /// The same, and nothing to go on from.
    #[must_use]
    pub fn into_inspection(self) -> Inspection {
        self.inspection
    }

    /// What the last update worked out anew.
    #[must_use]
    pub const fn work(&self) -> Work {
        self.work
    }

    /// How many distinct doors the job has: so many motions were reckoned.
    #[must_use]
    pub fn distinct_doors(&self) -> usize {
        self.motions.len()
    }

    /// Works out what is untrue since the job changed; gives back the boxes whose findings may be
    /// others now. The list is put together separately.
    pub(crate) fn patch(
        &mut self,
        job: &Job,
        anew: &Anew,
        may_differ: impl Fn(BoxId) -> bool,
    ) -> BTreeSet<BoxId> {
        self.work = Work::default();
        if anew.motions {
            self.motions = Arc::default();
        }
        self.take_head(job);
        let mut places = Vec::new();
        let mut touched = self.forget_gone(job, &mut places);
        for (turn, wall_box) in job.boxes.iter().enumerate() {
            let id = wall_box.id;
            if let Some(known) = self.known.get_mut(&id) {
                self.stale |= known.turn != turn;
                known.turn = turn;
                if !anew.places && (!may_differ(id) || *known.described == *wall_box) {
                    self.look_again(id, &anew.checks);
                    continue;
                }
            }
            places.extend(self.wall.stretch(id).copied());
            places.push(self.place(wall_box, turn));
            touched.insert(id);
        }
        self.stale |= anew.asks_all() || !touched.is_empty();
        self.forget_motions();
        let near = self.compare_neighbours(&touched, &places, anew.pairs);
        let looks = if anew.alike {
            self.known.keys().copied().collect()
        } else {
            touched.clone()
        };
        let compared = self.alike.update(&self.head.settings, &self.known, &looks);
        self.work.alike = compared.doors;
        let cards = &mut self.cards;
        self.work.cards = cards.update(&self.head, &self.known, &touched, anew.cards);
        if anew.asks_all() || compared.another_first || self.work.cards > 0 {
            self.judged.forget();
        } else {
            self.judged.forget_near(&places);
        }
        near
    }

    /// Keeps the job's head, if it is another.
    fn take_head(&mut self, job: &Job) {
        let head = &mut self.head;
        head.next_id = job.next_id;
        head.unit = job.unit;
        if head.settings != job.settings {
            head.settings = job.settings.clone();
        }
        if head.room != job.room {
            head.room = job.room.clone();
        }
        if head.materials != job.materials {
            head.materials.clone_from(&job.materials);
        }
        if head.cards != job.cards {
            head.cards.clone_from(&job.cards);
        }
    }

    /// Forgets the boxes that are no longer there, and notes where they were.
    fn forget_gone(&mut self, job: &Job, places: &mut Vec<Stretch>) -> BTreeSet<BoxId> {
        let known = self.known.len();
        let there = job.boxes.iter();
        if there
            .clone()
            .filter(|it| self.known.contains_key(&it.id))
            .count()
            == known
        {
            return BTreeSet::new();
        }
        let there: BTreeSet<BoxId> = there.map(|it| it.id).collect();
        let gone = self.known.keys().filter(|id| !there.contains(id)).copied();
        let gone: BTreeSet<BoxId> = gone.collect();
        for id in &gone {
            places.extend(self.wall.stretch(*id).copied());
            self.wall.take_down(*id);
            self.known.remove(id);
            self.crowds.remove(id);
            self.forget_pairs(*id, |_| true);
        }
        gone
    }

    /// Places a box and looks at it by itself. Where it hangs now.
    fn place(&mut self, wall_box: &WallBox, turn: usize) -> Stretch {
        self.work.placed += 1;
        self.work.looked_at += 1;
        let report = Arc::new(place_among(&self.head, wall_box, &self.motions));
        let seen = Seen {
            wall_box,
            report: &report,
        };
        let stretch = Stretch::of(seen);
        self.wall.hang(wall_box.id, stretch);
        let found = look_at_box(&self.head, seen, &self.motions, |_| true);
        let known = Known {
            described: Arc::new(wall_box.clone()),
            report,
            found: found.into_iter().map(Arc::new).collect(),
            turn,
        };
        self.known.insert(wall_box.id, known);
        stretch
    }

    /// Looks again at a box that is as it was, with the checks that go by something that is not.
    fn look_again(&mut self, id: BoxId, checks: &BTreeSet<&'static str>) {
        let Some(known) = self.known.get_mut(&id).filter(|_| !checks.is_empty()) else {
            return;
        };
        self.work.looked_at += 1;
        let which = |check: &Check| checks.contains(check.name);
        let found = look_at_box(&self.head, known.seen(), &self.motions, which);
        known.found.retain(|it| !checks.contains(it.check));
        known.found.extend(found.into_iter().map(Arc::new));
        known.found.sort_by_key(|it| order::turn(it.check));
    }

    /// Compares boxes that are others now, or near to such a one, with their neighbours. A pair
    /// with both boxes as they were keeps what is between them, unless all are to be done `anew`.
    fn compare_neighbours(
        &mut self,
        touched: &BTreeSet<BoxId>,
        places: &[Stretch],
        anew: bool,
    ) -> BTreeSet<BoxId> {
        let mut near: BTreeSet<BoxId> = touched.clone();
        if anew {
            near.extend(self.known.keys());
        } else if touched.len() < self.known.len() {
            near.extend(places.iter().flat_map(|it| self.wall.near(it)));
        }
        for &id in &near {
            let Some(stretch) = self.wall.stretch(id) else {
                continue;
            };
            let mut later: Vec<BoxId> = self.wall.near(stretch).range(id..).copied().collect();
            let uncompared = later.len().saturating_sub(MOST_COMPARED + 1);
            later.truncate(MOST_COMPARED + 1);
            self.tell_of_crowd(id, uncompared);
            self.forget_pairs(id, |other| !later.contains(&other));
            for other in later {
                let as_it_was = !anew && !touched.contains(&id) && !touched.contains(&other);
                if as_it_was && self.pairs.contains_key(&(id, other)) {
                    continue;
                }
                let (Some(first), Some(second)) = (self.known.get(&id), self.known.get(&other))
                else {
                    continue;
                };
                let found = look_at_pair(&self.head.settings, [first.seen(), second.seen()]);
                self.work.pairs += 1;
                let found = found.into_iter().map(Arc::new).collect();
                self.pairs.insert((id, other), found);
            }
        }
        near
    }

    fn tell_of_crowd(&mut self, id: BoxId, uncompared: usize) {
        self.crowds.remove(&id);
        if let Some(known) = self.known.get(&id).filter(|_| uncompared > 0) {
            let found = tell_of_crowd(&self.head.settings, known.seen(), uncompared);
            self.crowds
                .insert(id, found.into_iter().map(Arc::new).collect());
        }
    }

    /// Forgets what is between a box and later ones.
    fn forget_pairs(&mut self, id: BoxId, which: impl Fn(BoxId) -> bool) {
        let of_it = self.pairs.range((id, id)..).take_while(|it| it.0.0 == id);
        let others = of_it.map(|it| it.0.1).filter(|other| which(*other));
        for other in others.collect::<Vec<_>>() {
            self.pairs.remove(&(id, other));
        }
    }

    /// Forgets doors that are no longer in the job, once they are as many as those that are.
    fn forget_motions(&mut self) {
        if self.motions.len() > 2 * self.motions_kept + 64 {
            self.motions.forget_unused();
            self.motions_kept = self.motions.len();
        }
    }

    /// Puts the list together, unless it would be the same: pointers only, so it costs little.
    fn put_together(&mut self, job: &Job) {
        if !self.stale && self.accepted == job.accepted {
            return;
        }
        self.stale = false;
        self.accepted.clone_from(&job.accepted);
        let known = job.boxes.iter().filter_map(|it| self.known.get(&it.id));
        let mut boxes = Vec::with_capacity(job.boxes.len());
        let mut findings = Vec::new();
        for known in known {
            boxes.push(Arc::clone(&known.report));
            findings.extend(known.found.iter().cloned());
        }
        let pairs = self.pairs.values().chain(self.crowds.values()).flatten();
        let others = pairs.chain(self.alike.found()).chain(self.cards.found());
        let mut others: Vec<&Arc<Finding>> = others.collect();
        others.sort_by_cached_key(|&it| order::between(it, &self.known));
        findings.extend(others.into_iter().cloned());
        accept::mark(job, &mut findings);
        let findings = order::worst_first(findings);
        self.inspection = Inspection { boxes, findings };
    }
}

/// A job without its boxes and what is recorded about them.
fn head_of(job: &Job) -> Job {
    Job {
        version: job.version,
        next_id: job.next_id,
        name: String::new(),
        invented: job.invented,
        unit: job.unit,
        title_block: job.title_block.clone(),
        settings: job.settings.clone(),
        room: job.room.clone(),
        materials: job.materials.clone(),
        cards: job.cards.clone(),
        boxes: Vec::new(),
        accepted: Vec::new(),
    }
}
