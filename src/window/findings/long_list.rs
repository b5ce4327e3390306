//! A long list of findings of which only those in sight are made.

use std::collections::HashMap;

use egui::{Id, Rect, Ui, vec2};
use flapwright_rules::finding::Finding;

/// So many findings are always all made; to leave some out would save nothing.
const SHORT: usize = 40;
/// How high a finding is taken to be until it was in sight, screen points.
const GUESS: f32 = 150.0;
/// How far beyond what is in sight findings are made, screen points: those that the next turn of
/// the wheel brings.
const BEYOND: f32 = 400.0;

/// How high the findings were when they were last in sight.
#[derive(Debug, Default)]
pub(super) struct Heights {
    width: f32,
    known: HashMap<Id, f32>,
}

/// Shows the findings that are in sight, and room for the others. `show` is given each finding and
/// whether it is in sight; of one that is not, it says whether it must come there.
pub(super) fn long_list(
    ui: &mut Ui,
    heights: &mut Heights,
    findings: &[&Finding],
    mut show: impl FnMut(&mut Ui, &Finding, bool) -> bool,
) {
    let width = ui.available_width();
    if (heights.width - width).abs() > 0.5 {
        heights.known.clear();
        heights.width = width;
    }
    let sight = ui.clip_rect().y_range().expand(BEYOND);
    for finding in findings {
        let name = ("finding", finding.check, &finding.about);
        let id = Id::unique(name);
        let top = ui.cursor().min;
        let height = heights.known.get(&id).copied().unwrap_or(GUESS);
        let room = Rect::from_min_size(top, vec2(1.0, height));
        let in_sight = findings.len() <= SHORT || sight.intersects(room.y_range());
        if in_sight {
            ui.push_id(name, |ui| show(ui, finding, true));
            heights.known.insert(id, ui.cursor().min.y - top.y);
        } else {
            if show(ui, finding, false) {
                ui.scroll_to_rect(room, None);
            }
            ui.add_space(height);
        }
    }
}

#[cfg(test)]
mod tests {
    use std::cell::Cell;

    use flapwright_model::acceptance::Topic;
    use flapwright_model::id::BoxId;

    use super::*;

    /// So many findings like one of the demo job, each about a box of its own.
    fn findings(count: u32) -> Vec<Finding> {
        let demo = flapwright_session::shipped::demo_job().unwrap();
        let one = flapwright_answer::inspect(&demo).findings.remove(0);
        let finding = |number| Finding::clone(&one).about([Topic::Box(BoxId::new(number))]);
        (1..=count).map(finding).collect()
    }

    /// How many findings are made in a window of 600 points, each 100 points high; the 300th has to
    /// come into sight.
    fn made(count: u32) -> (u32, bool) {
        let all = findings(count);
        let (made, wanted) = (Cell::new(0), Cell::new(false));
        let mut heights = Heights::default();
        let mut harness = egui_kittest::Harness::builder()
            .with_size([300.0, 600.0])
            .build_ui(|ui| {
                made.set(0);
                let all: Vec<&Finding> = all.iter().collect();
                egui::ScrollArea::vertical().show(ui, |ui| {
                    long_list(ui, &mut heights, &all, |ui, finding, in_sight| {
                        let is_wanted = finding.about == [Topic::Box(BoxId::new(300))];
                        if in_sight {
                            made.set(made.get() + 1);
                            wanted.set(wanted.get() || is_wanted);
                            ui.allocate_space(vec2(200.0, 100.0));
                        }
                        is_wanted && !wanted.get()
                    });
                });
            });
        harness.run();
        drop(harness);
        (made.get(), wanted.get())
    }

    #[test]
    fn only_findings_in_sight_are_made_and_the_wanted_one_comes_there() {
        let (made, wanted) = made(500);
        assert!((6..30).contains(&made), "{made}");
        assert!(wanted);
    }

    #[test]
    fn a_short_list_is_made_whole() {
        assert_eq!(made(40), (40, false));
    }
}
