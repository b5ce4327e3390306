//! What the job remembers of a panel whose sheet went out.

use egui::{Label, RichText, Ui};
use flapwright_model::change::forget_records;
use flapwright_model::part::Part;
use flapwright_model::record::RecordState;

use super::Form;
use crate::window::tokens::tokens;

/// State and revision of the record of a part, if there is one, and a button that forgets it.
pub(crate) fn record_ui(ui: &mut Ui, form: &mut Form<'_>, part: Part, name: &str) {
    let records = form.wall_box().map_or(&[][..], |it| it.records.as_slice());
    let Some(record) = records.iter().find(|record| record.part == part) else {
        return;
    };
    let state = match record.state {
        RecordState::SheetExported => "Sheet exported",
        RecordState::Drilled => "Drilled",
    };
    let revision = if record.revision.is_empty() {
        "no revision".to_owned()
    } else {
        format!("revision {}", record.revision)
    };
    let bores = flapwright_rules::plural::count(record.bores.len(), "bore");
    let text = RichText::new(format!("{state}: {revision}, {bores}"));
    ui.add(Label::new(text.color(tokens(ui).note)).wrap());
    let button = ui
        .small_button("Forget record")
        .accessible_name(format!("Forget record of {name}"))
        .on_hover_text("Later changes of this panel are then not compared with what went out.");
    if button.clicked()
        && let Some(part) = form.part(part)
    {
        let edit = forget_records(form.job, &[part]);
        form.press(&format!("forget the record of {name}"), edit);
    }
}
