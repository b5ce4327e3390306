//! Tests of the motion crate from outside: expected values are published, or arithmetic that a
//! reader can do again.

mod common;
mod dynamics;
mod masses;
mod poses;
mod reach;
mod sizes;
mod statics;
