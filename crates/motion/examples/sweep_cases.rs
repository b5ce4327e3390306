//! Prints what invented doors of every kind sweep over, and their poses, one JSON object a line.
//! `tests/outside/python/check_sweeps.py` holds the one against the other with another library.
#![expect(
    clippy::expect_used,
    reason = "a case that cannot be printed is a failure"
)]

use flapwright_model::space::SectionPoint;
use flapwright_motion::motion::motion;
use flapwright_motion::outline::{arm_outlines, outline_at};
use flapwright_motion::sweep::{ARM_HALF_WIDTH, SectionBlock, Sweep};
use serde_json::json;

#[path = "../tests/checks/common.rs"]
#[expect(dead_code, reason = "the tests use the rest")]
mod common;

fn main() {
    for (name, card, door) in common::every_kind() {
        let motion = motion(&card, "A", &door).expect(name);
        let sweep = Sweep::of(&motion, &door);
        let pairs = |corners: &[SectionPoint]| -> Vec<[f64; 2]> {
            corners.iter().map(|it| [it.x, it.y]).collect()
        };
        let pieces: Vec<_> = sweep
            .pieces
            .iter()
            .map(|it| json!({"hull": pairs(&it.hull), "bulge": it.bulge}))
            .collect();
        let poses: Vec<_> = (0..=997_u16)
            .flat_map(|step| {
                let s = f64::from(step) / 997.0;
                let mut bodies = outline_at(&motion, &door, s);
                bodies.extend(arm_outlines(&motion, s, ARM_HALF_WIDTH));
                bodies
            })
            .map(|(_, corners)| pairs(&corners))
            .collect();
        let blocks: Vec<_> = (-4..=8_i8)
            .flat_map(|out| (-8..=8_i8).map(move |up| (f64::from(out), f64::from(up))))
            .map(|(out, up)| {
                let low = SectionPoint::new(out * 60.0, common::UNDERSIDE + up * 60.0);
                let high = low + euclid::vec2(17.0, 23.0);
                let near = sweep.approach(&SectionBlock::new(low, high), 1e4, |_| true);
                let gap = near.map(|near| near.gap);
                json!({"block": pairs(&[low, high]), "gap": gap})
            })
            .collect();
        let tolerance = sweep.tolerance;
        println!(
            "{}",
            json!({"name": name, "tolerance": tolerance, "pieces": pieces, "poses": poses,
                   "blocks": blocks})
        );
    }
}
