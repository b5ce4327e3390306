//! Fingerprints of bores.

use flapwright_answer::inspect;
use flapwright_model::card::Depth;
use flapwright_model::door::Side;
use flapwright_model::space::SidePoint;
use flapwright_rules::fingerprint::fingerprint;
use flapwright_rules::inspection::{Face, FacePoint, PanelReport};

use super::common::{card, job, wall_box};

fn side() -> PanelReport {
    let inspection = inspect(&job(wall_box(), card()));
    inspection.boxes[0]
        .panels
        .iter()
        .find(|panel| panel.face == Face::SideInner(Side::Left))
        .expect("left side")
        .clone()
}

fn moved(panel: &PanelReport, by: f64) -> PanelReport {
    let mut panel = panel.clone();
    let (u, v) = panel.bores[0].at.uv();
    panel.bores[0].at = FacePoint::Side(SidePoint::new(u + by, v));
    panel
}

#[test]
fn the_same_bores_have_the_same_fingerprint_whatever_the_panel_is_called() {
    let panel = side();
    let mut other = panel.clone();
    other.name = "something else".to_owned();
    other.material = "oak".to_owned();
    other.bores.reverse();
    for (number, bore) in other.bores.iter_mut().enumerate() {
        bore.number = number + 40;
    }
    assert_eq!(fingerprint(&panel), fingerprint(&other));
    assert_eq!(fingerprint(&panel), fingerprint(&moved(&panel, 0.000_4)));
}

#[test]
fn whatever_the_drill_would_do_otherwise_changes_it() {
    let panel = side();
    let plain = fingerprint(&panel);
    let mut changed = vec![moved(&panel, 0.001), moved(&panel, -0.1)];
    let change: [fn(&mut PanelReport); 7] = [
        |it| it.bores[0].drill.diameter += 0.5,
        |it| it.bores[0].drill.depth = Depth::Through,
        |it| it.bores[0].drill.purpose.push('!'),
        |it| it.bores[0].drill.pass += 1,
        |it| it.size[1] += 0.1,
        |it| it.face = Face::SideInner(Side::Right),
        |it| {
            it.bores.pop();
        },
    ];
    changed.extend(change.map(|change| {
        let mut it = panel.clone();
        change(&mut it);
        it
    }));
    for it in &changed {
        assert_ne!(fingerprint(it), plain);
    }
}

#[test]
fn it_is_eight_signs_without_look_alikes() {
    for step in 0..500 {
        let name = fingerprint(&moved(&side(), f64::from(step) * 0.01));
        assert_eq!(name.len(), 8);
        assert!(
            name.chars()
                .all(|c| c.is_ascii_uppercase() || c.is_ascii_digit())
        );
        assert!(!name.contains(['0', 'O', '1', 'I']), "{name}");
    }
}
