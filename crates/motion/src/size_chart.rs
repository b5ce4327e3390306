//! The size chart: door height against door mass, with the region that each size carries.

use flapwright_model::card::{Card, Size};
use flapwright_model::lift::Carries;

use crate::drive::share;
use crate::load::LoadKind;
use crate::sizes::{Judged, Verdict};

/// Steps over the height where a limit is a curve.
const STEPS: u16 = 16;

/// What one size carries, over the door's height.
#[derive(Debug, Clone, PartialEq)]
pub struct Region {
    /// Name of the card.
    pub card: String,
    /// Name of the size.
    pub size: String,
    /// Corners as (door height in mm, door mass in kg), in turning order.
    pub outline: Vec<(f64, f64)>,
    /// Whether the size gives its limits as masses; else they were turned into masses as for this
    /// door, whose lift moment grows with its height.
    pub as_given: bool,
}

impl Region {
    /// Heights, mm, with the least and the greatest mass, kg, in rising height.
    #[must_use]
    pub fn limits(&self) -> Vec<(f64, f64, f64)> {
        // The outline runs along the lower limit and back along the upper one, at the same
        // heights.
        let half = self.outline.len() / 2;
        let (lower, upper) = self.outline.split_at(half);
        lower
            .iter()
            .zip(upper.iter().rev())
            .map(|(&(height, least), &(_, most))| (height, least, most))
            .collect()
    }

    /// Whether it carries a door of this height, mm, and mass, kg.
    #[must_use]
    pub fn carries(&self, height: f64, mass: f64) -> bool {
        self.limits_at(height)
            .is_some_and(|(least, most)| (least..=most).contains(&mass))
    }

    /// Least and greatest mass at a door height, kg; `None` outside of its heights.
    #[must_use]
    pub fn limits_at(&self, height: f64) -> Option<(f64, f64)> {
        self.limits().windows(2).find_map(|pair| {
            let [(h0, least0, most0), (h1, least1, most1)] = *pair else {
                return None;
            };
            (h0..=h1).contains(&height).then(|| {
                let share = if h1 > h0 {
                    (height - h0) / (h1 - h0)
                } else {
                    0.0
                };
                (
                    least0 + (least1 - least0) * share,
                    most0 + (most1 - most0) * share,
                )
            })
        })
    }
}

/// The regions of the sizes that were judged, for as many pieces as each verdict counts. A size
/// without a load for this box or door has none.
#[must_use]
pub fn regions<'a>(
    cards: impl IntoIterator<Item = &'a Card>,
    verdicts: &[Verdict],
    judged: &Judged<'_>,
) -> Vec<Region> {
    let cards: Vec<&Card> = cards.into_iter().collect();
    verdicts
        .iter()
        .filter_map(|verdict| {
            let card = cards.iter().find(|card| card.name == verdict.card)?;
            let size = card.size(&verdict.size)?;
            let (outline, as_given) = outline(card, size, verdict, judged)?;
            Some(Region {
                card: card.name.clone(),
                size: size.name.clone(),
                outline,
                as_given,
            })
        })
        .collect()
}

type Outline = Vec<(f64, f64)>;

fn outline(
    card: &Card,
    size: &Size,
    verdict: &Verdict,
    judged: &Judged<'_>,
) -> Option<(Outline, bool)> {
    let factor = share(card.per, verdict.pieces);
    let (low, high) = (size.door_height.min, size.door_height.max);
    match &size.carries {
        Carries::Mass { min, max } => {
            Some((band(&[low, high], |_| (min * factor, max * factor)), true))
        }
        Carries::MassByDoorHeight(rows) => {
            let lower = rows.iter().map(|row| (row.height, row.min * factor));
            let upper = rows.iter().rev().map(|row| (row.height, row.max * factor));
            Some((lower.chain(upper).collect(), true))
        }
        Carries::MassByBoxHeight(_) => {
            // The verdict has the limits for this box.
            let load = verdict.load.as_ref()?;
            Some((band(&[low, high], |_| (load.min, load.max)), true))
        }
        Carries::Moment { .. } => {
            let load = verdict.load.as_ref()?;
            let LoadKind::Moment { .. } = load.kind else {
                return None;
            };
            let height = height_of(judged)?;
            // Moment of one kilogram of this door; it grows with the height of the door.
            let per_kilogram = load.load.likely / judged.mass.used.likely;
            if !(per_kilogram > 0.0 && low > 0.0) {
                return None;
            }
            let heights: Vec<f64> = (0..=STEPS)
                .map(|step| low + (high - low) * f64::from(step) / f64::from(STEPS))
                .collect();
            let limits = |at: f64| {
                let moment = per_kilogram * at / height;
                (load.min / moment, load.max / moment)
            };
            Some((band(&heights, limits), false))
        }
    }
}

/// The band between two limits: along the lower one, back along the upper one.
fn band(heights: &[f64], limits: impl Fn(f64) -> (f64, f64)) -> Outline {
    let lower = heights.iter().map(|&height| (height, limits(height).0));
    let upper = heights
        .iter()
        .rev()
        .map(|&height| (height, limits(height).1));
    lower.chain(upper).collect()
}

/// Height of the closed door, mm.
fn height_of(judged: &Judged<'_>) -> Option<f64> {
    let leaves = &judged.door.leaves;
    Some(leaves.first()?.top - leaves.last()?.bottom)
}

#[cfg(test)]
mod tests {
    use super::*;

    fn region() -> Region {
        let rows = [(200.0, 1.0, 3.0), (300.0, 2.0, 5.0), (400.0, 2.0, 4.0)];
        let lower = rows.iter().map(|row| (row.0, row.1));
        let upper = rows.iter().rev().map(|row| (row.0, row.2));
        Region {
            card: "Plover".to_owned(),
            size: "1".to_owned(),
            outline: lower.chain(upper).collect(),
            as_given: true,
        }
    }

    #[test]
    fn the_limits_run_straight_between_the_rows_and_end_with_them() {
        let region = region();
        assert_eq!(region.limits()[1], (300.0, 2.0, 5.0));
        assert_eq!(region.limits_at(250.0), Some((1.5, 4.0)));
        assert_eq!(region.limits_at(400.0), Some((2.0, 4.0)));
        assert_eq!(region.limits_at(199.0), None);
        assert_eq!(region.limits_at(401.0), None);
        assert!(region.carries(250.0, 4.0) && !region.carries(250.0, 4.1));
    }
}
