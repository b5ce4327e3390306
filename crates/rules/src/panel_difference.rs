//! A recorded panel against the panel as it is needed now, bore by bore.

use std::collections::BTreeMap;

use flapwright_model::card::{Depth, Drill};
use flapwright_model::length::Unit;
use flapwright_model::measure;
use flapwright_model::record::{PanelRecord, RecordState, RecordedBore};

use crate::inspection::{Face, PanelReport};

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
    pub(crate) sizes: Vec<(&'static str, f64, f64)>,
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
            ("thickness", record.thickness, now.thickness),
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

    /// What differs, in a few words.
    pub(crate) fn words(&self, unit: Unit) -> String {
        let mut parts: Vec<String> = self
            .sizes
            .iter()
            .map(|(what, was, is)| {
                let (was, is) = (measure::length(*was, unit), measure::length(*is, unit));
                format!("its {what} is {was}, {is} is needed")
            })
            .collect();
        let furthest = self
            .moved
            .iter()
            .rev()
            .max_by(|a, b| a.distance().total_cmp(&b.distance()));
        if let Some(furthest) = furthest {
            let where_to = if self.moved.iter().all(|it| it.distance() <= 1e-6) {
                "at another depth"
            } else {
                "elsewhere"
            };
            parts.push(format!(
                "{} needed {where_to}, bore {} {}",
                bores(self.moved.len()),
                furthest.number,
                self.way(furthest, unit)
            ));
        }
        if !self.missing.is_empty() {
            parts.push(format!("{} missing", bores(self.missing.len())));
        }
        if !self.surplus.is_empty() {
            parts.push(format!("{} needed no more", bores(self.surplus.len())));
        }
        parts.join("; ")
    }

    /// What differs, bore by bore, with what to do in a panel of that state.
    pub(crate) fn lines(&self, state: RecordState, unit: Unit) -> Vec<String> {
        let (gone, new) = match state {
            RecordState::Drilled => ("plug", "drill"),
            RecordState::SheetExported => ("the sheet says", "now it is"),
        };
        let place = |bore: &RecordedBore| {
            let (u, v) = (measure::length(bore.u, unit), measure::length(bore.v, unit));
            format!("{} at u {u}, v {v}", drill_words(&bore.drill, unit))
        };
        let moved = self.moved.iter().map(|it| {
            format!(
                "bore {} ({}): needed {}; {gone} {}, {new} {}",
                it.number,
                it.was.drill.purpose,
                self.way(it, unit),
                place(&it.was),
                place(&it.needed)
            )
        });
        let missing = self
            .missing
            .iter()
            .map(|it| format!("missing ({}): {new} {}", it.drill.purpose, place(it)));
        let surplus = self.surplus.iter().map(|(number, it)| {
            format!(
                "bore {number} ({}): needed no more; {gone} {}",
                it.drill.purpose,
                place(it)
            )
        });
        moved.chain(missing).chain(surplus).collect()
    }

    /// How far and which way a bore has to go.
    fn way(&self, it: &Moved, unit: Unit) -> String {
        let (across, along) = it.by();
        let words = match self.face {
            Face::SideInner(_) => ["back", "forward", "down", "up"],
            Face::Underside => ["to the right", "to the left", "back", "forward"],
            // u counts from the box-right edge: the back is seen.
            Face::DoorBack => ["to the left", "to the right", "down", "up"],
            Face::Plain => ["along", "back along", "down", "up"],
        };
        let mut parts = Vec::new();
        for (by, more, less) in [(across, words[0], words[1]), (along, words[2], words[3])] {
            if by.abs() > 1e-6 {
                let word = if by > 0.0 { more } else { less };
                parts.push(format!("{} {word}", measure::length(by.abs(), unit)));
            }
        }
        if let Some((was, is)) = it.depth {
            parts.push(format!(
                "{} deep, not {}",
                measure::length(is, unit),
                measure::length(was, unit)
            ));
        }
        parts.join(" and ")
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

fn bores(number: usize) -> String {
    let verb = if number == 1 { "is" } else { "are" };
    format!("{} {verb}", crate::plural::count(number, "bore"))
}

fn drill_words(drill: &Drill, unit: Unit) -> String {
    let depth = match drill.depth {
        Depth::Blind(depth) => format!("{} deep", measure::length(depth, unit)),
        Depth::Through => "through".to_owned(),
    };
    format!("{} {depth}", measure::length(drill.diameter, unit))
}

const fn depth(drill: &Drill, thickness: f64) -> f64 {
    match drill.depth {
        Depth::Blind(depth) => depth,
        Depth::Through => thickness,
    }
}

const fn size_words(face: Face) -> (&'static str, &'static str) {
    match face {
        Face::SideInner(_) => ("depth", "height"),
        Face::Underside => ("width", "depth"),
        Face::DoorBack | Face::Plain => ("width", "height"),
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
