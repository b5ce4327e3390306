//! The keys of the table of actions, for the window library.

use egui::{Key, KeyboardShortcut, Modifiers};
use flapwright_session::action_table::ActionId;
use flapwright_session::keys::{self, Keys};

/// The same keys for the window library.
#[must_use]
pub fn shortcut(keys: Keys) -> KeyboardShortcut {
    let mut modifiers = Modifiers::NONE;
    if keys.ctrl {
        modifiers = modifiers.plus(Modifiers::COMMAND);
    }
    if keys.shift {
        modifiers = modifiers.plus(Modifiers::SHIFT);
    }
    KeyboardShortcut::new(modifiers, key(keys.key))
}

fn key(key: keys::Key) -> Key {
    match key {
        keys::Key::Letter(letter) => named(&letter.to_string()),
        keys::Key::Digit(digit) => named(&digit.to_string()),
        keys::Key::Function(number) => named(&format!("F{number}")),
        keys::Key::Plus => Key::Plus,
        keys::Key::Minus => Key::Minus,
        keys::Key::Equals => Key::Equals,
    }
}

/// A key by its name. Every key of the table has one, which a test sees to; Escape chooses nothing.
fn named(name: &str) -> Key {
    Key::from_name(name).unwrap_or(Key::Escape)
}

/// The first keys of an action in words; empty where it has none.
pub(crate) fn words(ctx: &egui::Context, id: ActionId) -> String {
    let first = id.keys().first();
    first.map_or_else(String::new, |keys| ctx.format_shortcut(&shortcut(*keys)))
}

#[cfg(test)]
mod tests {
    use flapwright_session::action_table::ACTIONS;

    use super::*;

    #[test]
    fn every_key_of_the_table_is_one_of_the_window_library() {
        let mut seen = Vec::new();
        for info in &ACTIONS {
            for keys in info.keys {
                let shortcut = shortcut(*keys);
                assert_ne!(shortcut.logical_key, Key::Escape, "{info:?}");
                assert!(!seen.contains(&shortcut), "{info:?}");
                seen.push(shortcut);
            }
        }
    }
}
