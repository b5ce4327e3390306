//! The window on the desktop.

use std::path::PathBuf;

use egui::{Context, ThemePreference, ViewportBuilder};
use flapwright_model::job::Job;
use serde::{Deserialize, Serialize};

use super::app::App;
use super::dialogs::SystemDialogs;
use super::tokens;

/// Key of what is kept of the window itself. The job is never kept there.
const KEPT: &str = "flapwright-window";

/// Why there is no window. One line to print.
#[derive(Debug)]
pub enum WindowError {
    /// There is no display to open it on.
    NoDisplay(String),
    /// It could not be opened or kept open.
    Failed(String),
}

impl std::fmt::Display for WindowError {
    fn fmt(&self, f: &mut std::fmt::Formatter<'_>) -> std::fmt::Result {
        match self {
            Self::NoDisplay(why) => write!(f, "there is no display for a window: {why}"),
            Self::Failed(why) => write!(f, "the window could not be opened: {why}"),
        }
    }
}

impl std::error::Error for WindowError {}

/// What is kept of the window between two runs, beside egui's own panel widths: nothing of the
/// job, and nothing of what was looked at, since both belong to the job that was open.
#[derive(Debug, Clone, Serialize, Deserialize)]
#[serde(default)]
struct Kept {
    theme: ThemePreference,
    /// Folders with fitting cards of others.
    shared_cards: Vec<PathBuf>,
}

impl Default for Kept {
    fn default() -> Self {
        Self {
            theme: ThemePreference::System,
            shared_cards: Vec::new(),
        }
    }
}

/// Gives a context the window's fonts and colours; to be called before its first frame.
pub fn prepare(ctx: &Context) {
    tokens::install(ctx);
}

/// Opens the window on a job and returns when it is closed.
///
/// # Errors
/// [`WindowError::NoDisplay`] without a display, [`WindowError::Failed`] when the system refuses
/// the window for another reason.
pub fn run(job: Job, path: Option<PathBuf>) -> Result<(), WindowError> {
    if let Some(why) = no_display() {
        return Err(WindowError::NoDisplay(why));
    }
    let viewport = ViewportBuilder::default()
        .with_title("Flapwright")
        .with_app_id("flapwright")
        .with_inner_size([1280.0, 800.0])
        .with_min_inner_size([1000.0, 600.0]);
    let options = eframe::NativeOptions {
        viewport,
        ..eframe::NativeOptions::default()
    };
    let opened = eframe::run_native(
        "flapwright",
        options,
        Box::new(|cc| {
            prepare(&cc.egui_ctx);
            let kept: Option<Kept> = cc
                .storage
                .and_then(|storage| eframe::get_value(storage, KEPT));
            let Kept {
                theme,
                shared_cards,
            } = kept.unwrap_or_default();
            cc.egui_ctx.set_theme(theme);
            let mut app = App::new(job, path, Box::new(SystemDialogs));
            app.cards().shared = shared_cards;
            Ok(Box::new(Shell { app, theme }))
        }),
    );
    opened.map_err(|error| match error {
        // The inner message names places in the source of the window library.
        eframe::Error::WinitEventLoop(_) => {
            let display = std::env::var("WAYLAND_DISPLAY").or_else(|_| std::env::var("DISPLAY"));
            let name = display.unwrap_or_default();
            WindowError::NoDisplay(format!("the display {name} cannot be reached"))
        }
        other => WindowError::Failed(other.to_string().lines().collect::<Vec<_>>().join(" ")),
    })
}

#[cfg(any(target_os = "linux", target_os = "freebsd"))]
fn no_display() -> Option<String> {
    let set = |name| std::env::var_os(name).is_some_and(|value| !value.is_empty());
    let some = set("DISPLAY") || set("WAYLAND_DISPLAY") || set("WAYLAND_SOCKET");
    (!some).then(|| "neither DISPLAY nor WAYLAND_DISPLAY is set".to_owned())
}

#[cfg(not(any(target_os = "linux", target_os = "freebsd")))]
const fn no_display() -> Option<String> {
    None
}

/// The window's state with what the desktop wants of it.
struct Shell {
    app: App,
    theme: ThemePreference,
}

impl eframe::App for Shell {
    fn ui(&mut self, ui: &mut egui::Ui, _frame: &mut eframe::Frame) {
        // Remembered here because saving gets no context.
        self.theme = ui.ctx().options(|options| options.theme_preference);
        self.app.frame(ui);
    }

    fn save(&mut self, storage: &mut dyn eframe::Storage) {
        let kept = Kept {
            theme: self.theme,
            shared_cards: self.app.card_list().shared.clone(),
        };
        eframe::set_value(storage, KEPT, &kept);
    }
}
