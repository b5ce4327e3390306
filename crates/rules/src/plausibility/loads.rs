//! Sizes that leave a hole in the load range, lie in each other, or are out of order.

use flapwright_model::card::Size;
use flapwright_model::lift::{Carries, Lift, MassRow};
use flapwright_model::measure::Measure;
use flapwright_model::message::{AsTyped, Mm, NewtonMetre};
use flapwright_motion::reason_message::LoadValue;

use super::Suspicions;
use crate::message::{SlipMessage, SlipRemedy};

pub(super) fn look_at(look: &mut Suspicions<'_>) {
    let first = look.card.sizes.first().map(|size| kind(&size.carries));
    // Loads of different kinds cannot be compared.
    if look
        .card
        .sizes
        .iter()
        .all(|size| Some(kind(&size.carries)) == first)
    {
        holes(look);
        inside(look);
        order(look);
    }
    settings(look);
}

/// What kind of load a size carries; moments by the bits of their angle.
fn kind(carries: &Carries) -> (u8, u64) {
    match carries {
        Carries::Mass { .. } => (0, 0),
        Carries::Moment { at_degrees, .. } => (1, at_degrees.to_bits()),
        Carries::MassByDoorHeight(_) => (2, 0),
        Carries::MassByBoxHeight(_) => (3, 0),
    }
}

/// What a size carries at a height of door (or box), if it is made for that height.
fn range(size: &Size, height: f64) -> Option<(f64, f64)> {
    let made = height >= size.door_height.min && height <= size.door_height.max;
    match &size.carries {
        Carries::Mass { min, max } | Carries::Moment { min, max, .. } => {
            made.then_some((*min, *max))
        }
        Carries::MassByDoorHeight(rows) => made.then(|| between(rows, height)).flatten(),
        Carries::MassByBoxHeight(rows) => between(rows, height),
    }
}

/// Straight between rows, nothing outside them.
fn between(rows: &[MassRow], height: f64) -> Option<(f64, f64)> {
    let last = rows.last()?;
    if height == last.height {
        return Some((last.min, last.max));
    }
    rows.windows(2).find_map(|pair| {
        let [a, b] = pair else { return None };
        let share = (height - a.height) / (b.height - a.height);
        (0.0..=1.0).contains(&share).then(|| {
            let mix = |from: f64, to: f64| from + (to - from) * share;
            (mix(a.min, b.min), mix(a.max, b.max))
        })
    })
}

/// Heights at which anything begins, ends or bends.
fn heights(sizes: &[Size]) -> Vec<f64> {
    let mut heights: Vec<f64> = Vec::new();
    for size in sizes {
        if let Carries::MassByDoorHeight(rows) | Carries::MassByBoxHeight(rows) = &size.carries {
            heights.extend(rows.iter().map(|row| row.height));
        }
        if !matches!(size.carries, Carries::MassByBoxHeight(_)) {
            heights.extend([size.door_height.min, size.door_height.max]);
        }
    }
    heights.sort_by(f64::total_cmp);
    heights.dedup();
    heights
}

/// A load of the card's sizes: a mass or a moment.
fn load(look: &Suspicions<'_>, load: f64) -> LoadValue {
    let is_moment = look
        .card
        .sizes
        .first()
        .is_some_and(|size| matches!(size.carries, Carries::Moment { .. }));
    let measure = if is_moment {
        Measure::Moment
    } else {
        Measure::Mass
    };
    LoadValue(measure, load)
}

/// The widest hole between what the sizes carry at one height.
fn holes(look: &mut Suspicions<'_>) {
    let mut widest: Option<(f64, f64, f64)> = None;
    for height in heights(&look.card.sizes) {
        let mut ranges: Vec<_> = look
            .card
            .sizes
            .iter()
            .filter_map(|size| range(size, height))
            .collect();
        ranges.sort_by(|a, b| a.0.total_cmp(&b.0));
        let mut covered = f64::INFINITY;
        for (min, max) in ranges {
            if covered.is_finite() && min > covered {
                let wide = |hole: (f64, f64, f64)| hole.1 - hole.0;
                if widest.is_none_or(|hole| min - covered > wide(hole)) {
                    widest = Some((covered, min, height));
                }
            }
            covered = if covered.is_finite() {
                covered.max(max)
            } else {
                max
            };
        }
    }
    if let Some((from, to, height)) = widest {
        let message = SlipMessage::Hole {
            from: load(look, from),
            to: load(look, to),
            height: Mm(height),
        };
        look.slip("sizes", message, SlipRemedy::Loads);
    }
}

/// Sizes whose whole range lies in that of another one.
fn inside(look: &mut Suspicions<'_>) {
    let sizes = &look.card.sizes;
    let heights = heights(sizes);
    for (i, inner) in sizes.iter().enumerate() {
        let outer = sizes.iter().enumerate().find(|(j, outer)| {
            let mut seen = false;
            *j != i
                && inner.door_width.min >= outer.door_width.min
                && inner.door_width.max <= outer.door_width.max
                && heights.iter().all(|height| {
                    let Some((min, max)) = range(inner, *height) else {
                        return true;
                    };
                    seen = true;
                    range(outer, *height).is_some_and(|(low, high)| {
                        // Of two alike only the later one is told.
                        low <= min && max <= high && ((low, high) != (min, max) || *j < i)
                    })
                })
                && seen
        });
        if let Some((_, outer)) = outer {
            let message = SlipMessage::Inside {
                inner: inner.name.clone(),
                outer: outer.name.clone(),
            };
            let field = format!("sizes[{i}].carries");
            look.slip(field, message, SlipRemedy::SameNumbers);
            return;
        }
    }
}

/// Sizes that carry less than the one before them.
fn order(look: &mut Suspicions<'_>) {
    let sizes = &look.card.sizes;
    let heights = heights(sizes);
    for (i, pair) in sizes.windows(2).enumerate() {
        let [before, after] = pair else { continue };
        let both: Vec<(f64, f64)> = heights
            .iter()
            .filter_map(|height| {
                let middle = |(min, max): (f64, f64)| f64::midpoint(min, max);
                Some((
                    middle(range(before, *height)?),
                    middle(range(after, *height)?),
                ))
            })
            .collect();
        let falls = !both.is_empty() && both.iter().all(|(before, after)| after < before);
        if let (true, Some((b, a))) = (falls, both.first()) {
            let message = SlipMessage::Order {
                size: after.name.clone(),
                carries: load(look, *a),
                before: before.name.clone(),
                before_carries: load(look, *b),
            };
            look.slip(format!("sizes[{}]", i + 1), message, SlipRemedy::Order);
            return;
        }
    }
}

/// Springs that are weaker at the strongest setting.
fn settings(look: &mut Suspicions<'_>) {
    for (i, size) in look.card.sizes.iter().enumerate() {
        let Lift::Spring { table, .. } = &size.lift else {
            continue;
        };
        let weaker =
            |row: &&flapwright_model::lift::SpringRow| row.strongest.abs() < row.weakest.abs();
        if let Some(row) = table.iter().find(weaker)
            && table
                .iter()
                .all(|row| row.strongest.abs() <= row.weakest.abs())
        {
            let message = SlipMessage::Settings {
                size: size.name.clone(),
                weakest: NewtonMetre(row.weakest),
                strongest: NewtonMetre(row.strongest),
                at: AsTyped(row.degrees),
            };
            let field = format!("sizes[{i}].lift.table");
            look.slip(field, message, SlipRemedy::SettingsExchanged);
            return;
        }
    }
}
