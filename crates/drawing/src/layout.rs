//! Keeping texts apart: labels along an edge, and labels around a point.

use euclid::default::Rect;

use crate::list::At;

/// Where labels along one edge go: as near as can be to where they want to be, in their order,
/// at least `apart` from middle to middle, all middles within `low..=high`. The positions wanted
/// must rise. `None` when they cannot fit.
///
/// The sum of squared shifts is the least possible (pool adjacent violators).
#[must_use]
pub fn spread(wanted: &[f64], apart: f64, low: f64, high: f64) -> Option<Vec<f64>> {
    spread_sized(wanted, &vec![apart; wanted.len()], low, high)
}

/// The same for labels of different sizes along the edge: two neighbours keep half of each size
/// apart. `wanted` and `sizes` go together; where one is longer its rest is left out.
#[must_use]
pub fn spread_sized(wanted: &[f64], sizes: &[f64], low: f64, high: f64) -> Option<Vec<f64>> {
    let mut reach = 0.0;
    let mut offsets = Vec::with_capacity(wanted.len());
    let mut before: Option<f64> = None;
    for size in sizes.iter().take(wanted.len()) {
        reach += before.map_or(0.0, |before| 0.5 * (before + size));
        before = Some(*size);
        offsets.push(reach);
    }
    let top = high - reach;
    if top < low - 1e-9 {
        return None;
    }
    let mut pools: Vec<(f64, usize)> = Vec::new();
    for (place, offset) in wanted.iter().zip(&offsets) {
        let mut pool = (place - offset, 1);
        while let Some((mean, count)) = pools.pop_if(|(mean, _)| *mean > pool.0) {
            let total = count + pool.1;
            pool = (
                (mean * count as f64 + pool.0 * pool.1 as f64) / total as f64,
                total,
            );
        }
        pools.push(pool);
    }
    let settled = pools
        .into_iter()
        .flat_map(|(mean, count)| std::iter::repeat_n(mean, count));
    Some(
        settled
            .zip(&offsets)
            .map(|(place, offset)| place.max(low).min(top.max(low)) + offset)
            .collect(),
    )
}

/// Rectangles that are taken, so that the next text goes where there is room. Paper mm.
#[derive(Debug, Clone, Default)]
pub struct Crowd {
    taken: Vec<Rect<f64>>,
    labels: Vec<Rect<f64>>,
    leaders: Vec<(At, At)>,
}

impl Crowd {
    /// Nothing taken.
    #[must_use]
    pub fn new() -> Self {
        Self::default()
    }

    /// Marks a rectangle as taken.
    pub fn take(&mut self, rect: Rect<f64>) {
        self.taken.push(rect);
    }

    /// Whether a rectangle meets nothing that is taken and no leader.
    #[must_use]
    pub fn is_free(&self, rect: Rect<f64>) -> bool {
        let wide = rect.inflate(LEADER_AIR, LEADER_AIR);
        !self.taken.iter().any(|other| other.intersects(&rect))
            && !self
                .leaders
                .iter()
                .any(|(from, to)| crosses(*from, *to, wide))
    }

    /// The free place for a label of this size that is nearest to the middle of `within`, on a grid
    /// of this pitch, mm; it is taken at once.
    pub fn place_in(&mut self, within: Rect<f64>, size: [f64; 2], pitch: f64) -> Option<At> {
        let middle = within.center();
        let steps = |room: f64, own: f64| (0.5 * (room - own) / pitch).floor();
        let (across, up) = (
            steps(within.width(), size[0]),
            steps(within.height(), size[1]),
        );
        if across < 0.0 || up < 0.0 {
            return None;
        }
        let (across, up) = (across.min(200.0) as i32, up.min(200.0) as i32);
        let mut places: Vec<(i32, i32)> = (-across..=across)
            .flat_map(|x| (-up..=up).map(move |y| (x, y)))
            .collect();
        places.sort_by_key(|(x, y)| x * x + y * y);
        let found = places
            .into_iter()
            .map(|(x, y)| {
                At::new(
                    middle.x + pitch * f64::from(x),
                    middle.y + pitch * f64::from(y),
                )
            })
            .find(|at| self.is_free(around(*at, size)))?;
        self.take(around(found, size));
        Some(found)
    }

    fn strikes_label(&self, from: At, to: At) -> bool {
        self.labels
            .iter()
            .any(|label| crosses(from, to, label.inflate(LEADER_AIR, LEADER_AIR)))
    }

    /// The first of the middles around `point` at which a label of this size is free and inside
    /// `within`; it is taken at once. Tries near places first.
    pub fn place_near(
        &mut self,
        point: At,
        size: [f64; 2],
        radii: &[f64],
        within: Rect<f64>,
    ) -> Option<At> {
        self.place_with_leader(point, size, radii, within, |_| None)
    }

    /// The same for a label that may need a leader: `leader` gives it for a middle. A place where
    /// the leader would run through another label is not taken.
    pub fn place_with_leader(
        &mut self,
        point: At,
        size: [f64; 2],
        radii: &[f64],
        within: Rect<f64>,
        leader: impl Fn(At) -> Option<(At, At)>,
    ) -> Option<At> {
        for radius in radii {
            for (dx, dy) in AROUND {
                let middle = At::new(
                    point.x + dx * (radius + 0.5 * size[0]),
                    point.y + dy * (radius + 0.5 * size[1]),
                );
                let rect = around(middle, size);
                if !within.contains_rect(&rect) || !self.is_free(rect) {
                    continue;
                }
                let line = leader(middle);
                if line.is_some_and(|(from, to)| self.strikes_label(from, to)) {
                    continue;
                }
                self.leaders.extend(line);
                self.labels.push(rect);
                self.take(rect);
                return Some(middle);
            }
        }
        None
    }
}

/// A label keeps so far from leaders, mm: half their pen.
const LEADER_AIR: f64 = 0.13;

/// Directions in the order in which a label is tried: upper right first, as on a map.
/// Slight slopes come last: they help where an edge cuts off what is level.
const AROUND: [(f64, f64); 16] = [
    (1.0, 0.7),
    (1.0, -0.7),
    (-1.0, 0.7),
    (-1.0, -0.7),
    (1.0, 0.0),
    (-1.0, 0.0),
    (0.0, 1.0),
    (0.0, -1.0),
    (0.6, 1.0),
    (-0.6, 1.0),
    (0.6, -1.0),
    (-0.6, -1.0),
    (1.0, 0.35),
    (1.0, -0.35),
    (-1.0, 0.35),
    (-1.0, -0.35),
];

/// Whether a straight stroke enters a rectangle (clipping by its four sides).
#[must_use]
pub fn crosses(from: At, to: At, rect: Rect<f64>) -> bool {
    let along = to - from;
    let (mut enter, mut leave) = (0.0_f64, 1.0_f64);
    for (start, by, low, high) in [
        (from.x, along.x, rect.min_x(), rect.max_x()),
        (from.y, along.y, rect.min_y(), rect.max_y()),
    ] {
        if by.abs() < 1e-12 {
            if start < low || start > high {
                return false;
            }
            continue;
        }
        let (a, b) = ((low - start) / by, (high - start) / by);
        enter = enter.max(a.min(b));
        leave = leave.min(a.max(b));
    }
    enter <= leave
}

/// A rectangle of this size about its middle.
#[must_use]
pub fn around(middle: At, size: [f64; 2]) -> Rect<f64> {
    let half = euclid::default::Vector2D::new(0.5 * size[0], 0.5 * size[1]);
    Rect::from_points([middle - half, middle + half])
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn labels_with_room_stay_where_they_are() {
        let wanted = [10.0, 20.0, 40.0];
        assert_eq!(spread(&wanted, 3.0, 0.0, 100.0), Some(wanted.to_vec()));
    }

    #[test]
    fn a_cluster_spreads_about_its_middle() {
        // Three labels at 50, 3 apart: 47, 50, 53.
        assert_eq!(
            spread(&[50.0, 50.0, 50.0], 3.0, 0.0, 100.0),
            Some(vec![47.0, 50.0, 53.0])
        );
    }

    #[test]
    fn limits_hold() {
        assert_eq!(spread(&[0.0, 0.5], 3.0, 0.0, 100.0), Some(vec![0.0, 3.0]));
        assert_eq!(
            spread(&[99.0, 100.0], 3.0, 0.0, 100.0),
            Some(vec![97.0, 100.0])
        );
        assert_eq!(spread(&[0.0; 5], 3.0, 0.0, 11.9), None);
        assert_eq!(spread(&[], 3.0, 0.0, 1.0), Some(vec![]));
    }

    #[test]
    fn many_random_labels_keep_apart_and_in_order() {
        let mut seed = 7_u64;
        for _ in 0..500 {
            let mut wanted: Vec<f64> = (0..30)
                .map(|_| {
                    seed = seed.wrapping_mul(6_364_136_223_846_793_005).wrapping_add(1);
                    (seed >> 33) as f64 / f64::from(1_u32 << 31) * 120.0
                })
                .collect();
            wanted.sort_by(f64::total_cmp);
            let placed = spread(&wanted, 3.0, 0.0, 120.0).expect("29 gaps of 3 fit 120");
            assert!(placed.windows(2).all(|pair| pair[1] - pair[0] > 3.0 - 1e-9));
            assert!(placed.iter().all(|at| (-1e-9..=120.0 + 1e-9).contains(at)));
        }
    }

    #[test]
    fn a_crowd_gives_each_label_its_own_place() {
        let mut crowd = Crowd::new();
        let within = Rect::from_points([At::new(0.0, 0.0), At::new(50.0, 50.0)]);
        let mut placed = Vec::new();
        for i in 0..12 {
            let point = At::new(20.0 + f64::from(i), 20.0);
            let found = crowd.place_near(point, [4.0, 2.5], &[1.0, 4.0, 8.0, 12.0], within);
            placed.extend(found.map(|middle| around(middle, [4.0, 2.5])));
        }
        assert_eq!(placed.len(), 12);
        for (i, a) in placed.iter().enumerate() {
            assert!(placed[i + 1..].iter().all(|b| !a.intersects(b)));
        }
    }
}
