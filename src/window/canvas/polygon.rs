//! Simple polygons as triangles, for areas that are not convex.

use egui::Pos2;

fn turn(a: Pos2, b: Pos2, c: Pos2) -> f32 {
    (b.x - a.x) * (c.y - a.y) - (b.y - a.y) * (c.x - a.x)
}

/// Whether a polygon turns the same way at every corner.
pub(crate) fn is_convex(points: &[Pos2]) -> bool {
    let count = points.len();
    let turns = (0..count)
        .map(|i| turn(points[i], points[(i + 1) % count], points[(i + 2) % count]))
        .filter(|turn| turn.abs() > 1e-6);
    let (mut left, mut right) = (false, false);
    for turn in turns {
        left |= turn > 0.0;
        right |= turn < 0.0;
    }
    !(left && right)
}

/// The triangles of a simple polygon, as indices of its corners, by cutting off ears.
pub(crate) fn triangles(points: &[Pos2]) -> Vec<[u32; 3]> {
    let area: f32 = (0..points.len())
        .map(|i| {
            let (a, b) = (points[i], points[(i + 1) % points.len()]);
            a.x * b.y - b.x * a.y
        })
        .sum();
    let mut left: Vec<usize> = (0..points.len()).collect();
    if area < 0.0 {
        left.reverse();
    }
    let mut found = Vec::new();
    while left.len() > 2 {
        let count = left.len();
        let ear = (0..count).find(|&i| {
            let corner = [
                left[(i + count - 1) % count],
                left[i],
                left[(i + 1) % count],
            ];
            let [a, b, c] = corner.map(|index| points[index]);
            turn(a, b, c) > 0.0
                && left
                    .iter()
                    .filter(|index| !corner.contains(index))
                    .all(|&index| !inside(points[index], a, b, c))
        });
        // A polygon that crosses itself has no ear left: what remains is not painted.
        let Some(i) = ear else { break };
        let corner = [
            left[(i + count - 1) % count],
            left[i],
            left[(i + 1) % count],
        ];
        found.push(corner.map(|index| u32::try_from(index).unwrap_or(0)));
        left.remove(i);
    }
    found
}

fn inside(p: Pos2, a: Pos2, b: Pos2, c: Pos2) -> bool {
    turn(a, b, p) >= 0.0 && turn(b, c, p) >= 0.0 && turn(c, a, p) >= 0.0
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn an_angle_piece_is_cut_into_triangles_of_its_own_area() {
        let points: Vec<Pos2> = [
            (0.0, 0.0),
            (4.0, 0.0),
            (4.0, 1.0),
            (1.0, 1.0),
            (1.0, 3.0),
            (0.0, 3.0),
        ]
        .map(|(x, y)| Pos2::new(x, y))
        .to_vec();
        assert!(!is_convex(&points));
        for run in [points.clone(), points.into_iter().rev().collect()] {
            let area: f32 = triangles(&run)
                .iter()
                .map(|t| {
                    let [a, b, c] = t.map(|i| run[i as usize]);
                    0.5 * turn(a, b, c).abs()
                })
                .sum();
            assert!((area - 6.0).abs() < 1e-5, "{area}");
        }
    }

    #[test]
    fn a_rectangle_is_convex_either_way_round() {
        let mut points = vec![
            Pos2::new(0.0, 0.0),
            Pos2::new(2.0, 0.0),
            Pos2::new(2.0, 1.0),
            Pos2::new(0.0, 1.0),
        ];
        assert!(is_convex(&points));
        points.reverse();
        assert!(is_convex(&points));
    }
}
