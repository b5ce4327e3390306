//! Tests of the motion crate from outside: expected values are published, or arithmetic that a
//! reader can do again.
#![expect(
    clippy::expect_used,
    reason = "a test whose case cannot be set up has failed"
)]

mod case;
mod common;
mod dynamics;
mod garbage;
mod leaves;
mod masses;
mod poses;
mod reach;
mod size_chart;
mod sizes;
mod statics;
mod strut_mounts;
mod struts;
mod sweep;
mod typed_cards;
