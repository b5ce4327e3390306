//! A recorded panel against the panel as it is needed now, bore by bore.

use std::collections::BTreeMap;

use flapwright_model::card::{Depth, Drill};
use flapwright_model::message::{Count, Mm, Word};
use flapwright_model::record::{PanelRecord, RecordState, RecordedBore};

use crate::inspection::{Face, PanelReport};
use crate::message::{BorePlace, PanelDiffers, Step};

/// How a recorded panel differs from the one that is needed now.
#[derive(Debug, Clone, PartialEq)]
pub(crate) struct PanelDifference {
    /// Bores that are needed in another place or depth, in the record's order.
    pub(crate) moved: Vec<Moved>,
    /// Bores that are needed and not recorded.
    pub(crate) missing: Vec<RecordedBore>,
    /// Numbers and bores of the record for which nothing is needed.
    pub(crate) surplus: Vec<(usize, RecordedBore)>,
    /// Width along u and v and thickness of the panel, recorded and needed, where they differ, mm.
    pub(crate) sizes: Vec<(Word, f64, f64)>,
    /// The drawn face.
    face: Face,
}

/// A recorded bore that is needed elsewhere.
#[derive(Debug, Clone, PartialEq)]
pub(crate) struct Moved {
    /// Its number in the record.
    pub(crate) number: usize,
    /// As recorded.
    pub(crate) was: RecordedBore,
    /// As needed.
    pub(crate) needed: RecordedBore,
    /// Depth recorded and needed, mm, where they differ.
    depth: Option<(f64, f64)>,
}

impl Moved {
    /// From the recorded place to the needed one, mm.
    pub(crate) fn by(&self) -> (f64, f64) {
        (self.needed.u - self.was.u, self.needed.v - self.was.v)
    }

    /// Whether another depth is needed.
    pub(crate) const fn has_other_depth(&self) -> bool {
        self.depth.is_some()
    }

    /// The same as a straight line, mm.
    pub(crate) fn distance(&self) -> f64 {
        let (u, v) = self.by();
        u.hypot(v)
    }
}

impl PanelDifference {
    /// How a record differs from the panel as it is needed now; differences up to `slack`, mm, do
    /// not count.
    pub(crate) fn of(record: &PanelRecord, now: &PanelReport, slack: f64) -> Self {
        let wanted: Vec<RecordedBore> = now.bores.iter().map(recorded_bore).collect();
        let pairs = pairs(&record.bores, &wanted);
        let mut moved = Vec::new();
        for (i, was) in record.bores.iter().enumerate() {
            let Some(needed) = pairs[i].map(|j| &wanted[j]) else {
                continue;
            };
            let depths = (
                depth(&was.drill, record.thickness),
                depth(&needed.drill, now.thickness),
            );
            let other_depth = (depths.0 - depths.1).abs() > slack
                && !(was.drill.depth == Depth::Through && needed.drill.depth == Depth::Through);
            let it = Moved {
                number: i + 1,
                was: was.clone(),
                needed: needed.clone(),
                depth: other_depth.then_some(depths),
            };
            if it.distance() > slack || other_depth {
                moved.push(it);
            }
        }
        let numbered = record.bores.iter().enumerate();
        let surplus = numbered
            .filter(|(i, _)| pairs[*i].is_none())
            .map(|(i, bore)| (i + 1, bore.clone()))
            .collect();
        let missing = wanted
            .iter()
            .enumerate()
            .filter(|(j, _)| !pairs.contains(&Some(*j)))
            .map(|(_, bore)| bore.clone())
            .collect();
        let (u, v) = size_words(now.face);
        let sizes = [
            (u, record.size[0], now.size[0]),
            (v, record.size[1], now.size[1]),
            (Word("thickness"), record.thickness, now.thickness),
        ]
        .into_iter()
        .filter(|(_, was, is)| (was - is).abs() > slack)
        .collect();
        Self {
            moved,
            missing,
            surplus,
            sizes,
            face: now.face,
        }
    }

    /// Whether nothing differs.
    pub(crate) const fn is_empty(&self) -> bool {
        self.moved.is_empty()
            && self.missing.is_empty()
            && self.surplus.is_empty()
            && self.sizes.is_empty()
    }

    /// How far the furthest bore has to move, mm; 0 when none has.
    pub(crate) fn largest(&self) -> f64 {
        self.moved.iter().map(Moved::distance).fold(0.0, f64::max)
    }

    /// What differs, the most important first; nothing where nothing differs.
    pub(crate) fn parts(&self) -> Vec<PanelDiffers> {
        let sizes = self.sizes.iter();
        let mut parts: Vec<PanelDiffers> = sizes
            .map(|(what, was, is)| PanelDiffers::Size {
                what: *what,
                was: Mm(*was),
                is: Mm(*is),
            })
            .collect();
        let furthest = self
            .moved
            .iter()
            .rev()
            .max_by(|a, b| a.distance().total_cmp(&b.distance()));
        if let Some(it) = furthest {
            let bores = Count(self.moved.len());
            let (furthest, way) = (Count(it.number), self.way(it));
            parts.push(if it.distance() <= 1e-6 {
                PanelDiffers::Deeper {
                    bores,
                    furthest,
                    way,
                }
            } else {
                PanelDiffers::Moved {
                    bores,
                    furthest,
                    way,
                }
            });
        }
        if !self.missing.is_empty() {
            parts.push(PanelDiffers::Missing {
                bores: Count(self.missing.len()),
            });
        }
        if !self.surplus.is_empty() {
            parts.push(PanelDiffers::Surplus {
                bores: Count(self.surplus.len()),
            });
        }
        parts
    }

    /// What differs, bore by bore, with what to do in a panel of that state.
    pub(crate) fn lines(&self, state: RecordState) -> Vec<PanelDiffers> {
        let is_drilled = state == RecordState::Drilled;
        let moved = self.moved.iter().map(|it| {
            let (bore, purpose) = (Count(it.number), it.was.drill.purpose.clone());
            let (way, was, is) = (self.way(it), place(&it.was), place(&it.needed));
            if is_drilled {
                PanelDiffers::Redrill {
                    bore,
                    purpose,
                    way,
                    was,
                    is,
                }
            } else {
                PanelDiffers::SheetMoved {
                    bore,
                    purpose,
                    way,
                    was,
                    is,
                }
            }
        });
        let missing = self.missing.iter().map(|it| {
            let (purpose, is) = (it.drill.purpose.clone(), place(it));
            if is_drilled {
                PanelDiffers::Drill { purpose, is }
            } else {
                PanelDiffers::SheetMissing { purpose, is }
            }
        });
        let surplus = self.surplus.iter().map(|(number, it)| {
            let (bore, purpose, was) = (Count(*number), it.drill.purpose.clone(), place(it));
            if is_drilled {
                PanelDiffers::Plug { bore, purpose, was }
            } else {
                PanelDiffers::SheetSurplus { bore, purpose, was }
            }
        });
        moved.chain(missing).chain(surplus).collect()
    }

    /// How far and which way a bore has to go.
    fn way(&self, it: &Moved) -> Vec<Step> {
        let (across, along) = it.by();
        let mut steps = match self.face {
            Face::SideInner(_) => Step::on_side(across, along),
            Face::Underside => Step::on_underside(across, along),
            // u counts from the box-right edge: the back is seen.
            Face::DoorBack => Step::seen_from_front(-across, -along),
            Face::Plain => Step::seen_from_front(across, -along),
        };
        if let Some((was, is)) = it.depth {
            steps.retain(|step| *step != Step::Stays);
            steps.push(Step::Depth {
                is: Mm(is),
                was: Mm(was),
            });
        }
        steps
    }
}

/// A bore and where it is.
fn place(bore: &RecordedBore) -> BorePlace {
    let (diameter, u, v) = (Mm(bore.drill.diameter), Mm(bore.u), Mm(bore.v));
    match bore.drill.depth {
        Depth::Blind(depth) => BorePlace::Blind {
            diameter,
            depth: Mm(depth),
            u,
            v,
        },
        Depth::Through => BorePlace::Through { diameter, u, v },
    }
}

/// A bore of a panel as a record keeps it.
pub(crate) fn recorded_bore(bore: &crate::inspection::PlacedBore) -> RecordedBore {
    let (u, v) = bore.at.uv();
    RecordedBore {
        u,
        v,
        drill: bore.drill.clone(),
    }
}

const fn depth(drill: &Drill, thickness: f64) -> f64 {
    match drill.depth {
        Depth::Blind(depth) => depth,
        Depth::Through => thickness,
    }
}

const fn size_words(face: Face) -> (Word, Word) {
    match face {
        Face::SideInner(_) => (Word("depth"), Word("height")),
        Face::Underside => (Word("width"), Word("depth")),
        Face::DoorBack | Face::Plain => (Word("width"), Word("height")),
    }
}

/// Index of the wanted bore that each recorded one stands for. Bores alike in purpose, diameter and
/// pass go together, the nearest pair first. Where the counts agree the whole group is laid over the
/// other one before: else a shift by one pitch of a row would be taken for a fit of most of them.
fn pairs(there: &[RecordedBore], wanted: &[RecordedBore]) -> Vec<Option<usize>> {
    let mut groups: BTreeMap<(&str, i64, u8), [Vec<usize>; 2]> = BTreeMap::new();
    for (which, bores) in [there, wanted].into_iter().enumerate() {
        for (i, bore) in bores.iter().enumerate() {
            let drill = &bore.drill;
            let key = (
                drill.purpose.as_str(),
                hundredths(drill.diameter),
                drill.pass,
            );
            groups.entry(key).or_default()[which].push(i);
        }
    }
    let mut found = vec![None; there.len()];
    let mut taken = vec![false; wanted.len()];
    for [have, want] in groups.into_values() {
        let shift = if have.len() == want.len() {
            let (a, b) = (middle(there, &have), middle(wanted, &want));
            (b.0 - a.0, b.1 - a.1)
        } else {
            (0.0, 0.0)
        };
        let mut near: Vec<(f64, usize, usize)> = Vec::new();
        for &i in &have {
            for &j in &want {
                let across = wanted[j].u - there[i].u - shift.0;
                let along = wanted[j].v - there[i].v - shift.1;
                near.push((across.hypot(along), i, j));
            }
        }
        near.sort_by(|a, b| a.0.total_cmp(&b.0).then((a.1, a.2).cmp(&(b.1, b.2))));
        for (_, i, j) in near {
            if found[i].is_none() && !taken[j] {
                found[i] = Some(j);
                taken[j] = true;
            }
        }
    }
    found
}

/// The mean place of some bores, mm.
fn middle(bores: &[RecordedBore], some: &[usize]) -> (f64, f64) {
    let count = f64::from(u32::try_from(some.len()).unwrap_or(u32::MAX)).max(1.0);
    let sum = |of: fn(&RecordedBore) -> f64| some.iter().map(|&i| of(&bores[i])).sum::<f64>();
    (sum(|bore| bore.u) / count, sum(|bore| bore.v) / count)
}

/// Rounded so that noise in the last digit does not part bores that are alike.
#[expect(
    clippy::cast_possible_truncation,
    reason = "a place on a panel is far below the limit, and the cast saturates"
)]
fn hundredths(value: f64) -> i64 {
    (value * 100.0).round() as i64
}
