//! Which findings of a long list are shown.

use egui::{ComboBox, Ui};
use flapwright_model::id::BoxId;
use flapwright_rules::finding::{Finding, Severity};
use flapwright_rules::inspection::Inspection;

/// Lists up to this long are shown whole.
const SHORT: usize = 6;

/// What is shown; `None` is all.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Default)]
pub(super) struct Filter {
    severity: Option<Severity>,
    box_id: Option<BoxId>,
}

impl Filter {
    /// The choice as it holds for a list: a short one is shown whole, and a box that is gone is no
    /// choice.
    pub(super) fn within(self, inspection: &Inspection) -> Self {
        if is_short(inspection) {
            return Self::default();
        }
        Self {
            box_id: self.box_id.filter(|id| inspection.report(*id).is_some()),
            ..self
        }
    }

    /// Whether a finding is shown.
    pub(super) fn shows(self, finding: &Finding) -> bool {
        let of_box = |id: BoxId| {
            let mut boxes = finding.subjects.iter().map(|subject| subject.box_id());
            boxes.any(|it| it == Some(id))
        };
        self.severity.is_none_or(|it| it == finding.severity) && self.box_id.is_none_or(of_box)
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
        let box_words = |it: Option<BoxId>| {
            it.and_then(|id| inspection.report(id))
                .map_or("all boxes", |report| report.name.as_str())
        };
        ComboBox::from_id_salt("findings of box")
            .selected_text(box_words(filter.box_id))
            .width(150.0)
            .truncate()
            .show_ui(ui, |ui| {
                let boxes = inspection.boxes.iter().map(|report| Some(report.id));
                for it in std::iter::once(None).chain(boxes) {
                    ui.selectable_value(&mut filter.box_id, it, box_words(it));
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
