//! Which findings of a long list are shown.

use egui::{ComboBox, Ui};
use flapwright_rules::finding::{Finding, Severity};
use flapwright_rules::inspection::Inspection;

/// Lists up to this long are shown whole.
const SHORT: usize = 6;

/// What is shown; `None` is all.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Default)]
pub(super) struct Filter {
    severity: Option<Severity>,
    box_index: Option<usize>,
}

impl Filter {
    /// Whether a finding is shown. In a short list all are.
    pub(super) fn shows(self, finding: &Finding, inspection: &Inspection) -> bool {
        if is_short(inspection) {
            return true;
        }
        let of_box = |index: usize| {
            let mut boxes = finding.subjects.iter().map(|subject| subject.box_index());
            index >= inspection.boxes.len() || boxes.any(|it| it == index)
        };
        self.severity.is_none_or(|it| it == finding.severity) && self.box_index.is_none_or(of_box)
    }
}

fn is_short(inspection: &Inspection) -> bool {
    inspection.findings.len() <= SHORT
}

/// The choice, where the list is long.
pub(super) fn filter_ui(ui: &mut Ui, inspection: &Inspection, filter: &mut Filter) {
    if is_short(inspection) {
        return;
    }
    ui.horizontal_wrapped(|ui| {
        let severity_words = |it: Option<Severity>| it.map_or("all weights", plural);
        ComboBox::from_id_salt("findings of severity")
            .selected_text(severity_words(filter.severity))
            .width(110.0)
            .show_ui(ui, |ui| {
                let known = [Severity::Stop, Severity::Caution, Severity::Note];
                for it in std::iter::once(None).chain(known.map(Some)) {
                    ui.selectable_value(&mut filter.severity, it, severity_words(it));
                }
            })
            .response
            .accessible_name("Findings of weight");
        let box_words = |it: Option<usize>| {
            it.and_then(|index| inspection.boxes.get(index))
                .map_or("all boxes", |report| report.name.as_str())
        };
        ComboBox::from_id_salt("findings of box")
            .selected_text(box_words(filter.box_index))
            .width(150.0)
            .truncate()
            .show_ui(ui, |ui| {
                let boxes = (0..inspection.boxes.len()).map(Some);
                for it in std::iter::once(None).chain(boxes) {
                    ui.selectable_value(&mut filter.box_index, it, box_words(it));
                }
            })
            .response
            .accessible_name("Findings of box");
    });
}

const fn plural(severity: Severity) -> &'static str {
    match severity {
        Severity::Stop => "stops",
        Severity::Caution => "cautions",
        Severity::Note => "notes",
    }
}
