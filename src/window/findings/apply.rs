//! What is done to findings: accepted, taken back, remedied all at once, explained.

use egui::Context;
use flapwright_rules::accept::{accept, take_back};
use flapwright_rules::apply_safe_remedies;
use flapwright_rules::checks::check;
use flapwright_rules::finding::{Finding, Severity};
use flapwright_rules::plural::count;

use super::RemedyAt;
use crate::window::app::App;
use crate::window::dialogs::Dialog;
use crate::window::dialogs::accept_dialog::AcceptDialog;

impl App {
    fn finding_at(&self, index: usize) -> Option<&Finding> {
        self.document.inspection().findings.get(index)
    }

    /// Asks why a finding is accepted.
    pub(in crate::window) fn ask_accept(&mut self, ctx: &Context, index: usize) {
        let job = self.document.job();
        let Some(finding) = self.finding_at(index).filter(|it| it.accepted.is_none()) else {
            return;
        };
        // One that came back keeps the reason that it had.
        let before = job
            .accepted
            .iter()
            .find(|it| it.check == finding.check && it.place == finding.place);
        let dialog = AcceptDialog {
            finding: index,
            message: finding.message.clone(),
            reason: before.map(|it| it.reason.clone()).unwrap_or_default(),
            missing: false,
        };
        self.open_dialog(ctx, Dialog::Accept(dialog));
    }

    /// Accepts a finding as it stands. Without a reason nothing is done.
    pub(in crate::window) fn accept_finding(&mut self, index: usize, reason: &str) {
        let Some(finding) = self.finding_at(index) else {
            return;
        };
        if reason.trim().is_empty() {
            return;
        }
        let label = format!("accept {}: {}", finding.check, finding.place);
        let edit = accept(self.document.job(), finding, reason);
        self.dialog = None;
        self.whole_edit(label, edit);
    }

    /// Opens an accepted finding again.
    pub(in crate::window) fn take_back_acceptance(&mut self, index: usize) {
        let Some(finding) = self.finding_at(index) else {
            return;
        };
        let label = format!("take back: {}, {}", finding.check, finding.place);
        let edit = take_back(self.document.job(), finding);
        self.whole_edit(label, edit);
    }

    /// Applies every safe remedy as one step and says what was done.
    pub(in crate::window) fn apply_safe(&mut self, ctx: &Context) {
        let run = apply_safe_remedies(self.document.job());
        let Some(edit) = run.edit else { return };
        let done = match run.applied.len() {
            1 => "1 safe remedy".to_owned(),
            many => format!("{many} safe remedies"),
        };
        let before = self.document.revision();
        self.whole_edit(format!("apply {done}"), edit);
        if self.document.revision() == before {
            return;
        }
        let mut text = String::from("One step; undo takes all of it back.\n");
        for it in &run.applied {
            text.push_str(&format!("\n• {}: {} ({})", it.place, it.title, it.check));
        }
        let open = |severity: Severity| count(run.inspection.open(severity), severity.word());
        text.push_str(&format!(
            "\n\nOpen now: {}, {}, {}.",
            open(Severity::Stop),
            open(Severity::Caution),
            open(Severity::Note)
        ));
        let title = format!("Applied {done}");
        self.open_dialog(ctx, Dialog::Message { title, text });
    }

    /// Shows the page of a check.
    pub(in crate::window) fn show_page(&mut self, ctx: &Context, name: &str) {
        if let Some(check) = check(name) {
            self.open_dialog(ctx, Dialog::Page(check.name));
        }
    }

    /// The lit finding, if it is open or need not be.
    pub(in crate::window) fn lit(&self, open: bool) -> Option<(usize, &Finding)> {
        let index = self.view.finding?;
        let finding = self.finding_at(index)?;
        (!open || finding.accepted.is_none()).then_some((index, finding))
    }

    /// Keeps the preview of a remedy on, or switches it off.
    pub(in crate::window) fn keep_preview(&mut self, finding: usize, remedy: usize) {
        let at = RemedyAt {
            revision: self.document.revision(),
            finding,
            remedy,
        };
        if self.view.findings.preview.keep_or_drop(at) {
            self.select_finding(Some(finding));
        }
    }
}
