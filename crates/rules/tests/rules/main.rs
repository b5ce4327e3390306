//! Tests of placement and checks on whole boxes.

#![expect(clippy::expect_used, reason = "a test that lacks its part is to fail")]

mod acceptances;
mod advice_words;
mod alike_checks;
mod bore_checks;
mod card_words;
mod cards;
mod checks;
mod common;
mod door_words;
mod drilled_remedies;
mod drilled_words;
mod findings;
mod fingerprint;
mod hang_on;
mod identities;
mod machine_frame;
mod mechanics;
mod neighbours;
mod papers;
mod placement;
mod properties;
mod record_words;
mod records;
mod remedy_properties;
mod reminders;
mod size_checks;
mod size_words;
mod static_checks;
mod sweeps;
mod trees;
mod troubles;
mod version_1;
mod way_words;
mod work_words;
mod working_checks;
