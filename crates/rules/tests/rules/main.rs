//! Tests of placement and checks on whole boxes.

#![expect(clippy::expect_used, reason = "a test that lacks its part is to fail")]

mod cards;
mod checks;
mod common;
mod hang_on;
mod mechanics;
mod papers;
mod placement;
mod properties;
