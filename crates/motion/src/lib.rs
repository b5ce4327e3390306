//! How a lift-up door moves, what it weighs and what it asks of the hand.
//!
//! Everything here is plane mechanics in the vertical section
//! ([`SectionSpace`](flapwright_model::space::SectionSpace)): o out into the room, y up, mm. An
//! angle is + when it opens, which is counter-clockwise with o to the right: from straight down
//! towards the room, then up. A motion is a curve over s from 0 (closed) to 1 (fully open).
//!
//! | how do I ... | with |
//! |---|---|
//! | get the motion of a door on a card | [`motion::motion`] |
//! | know where a leaf is at half opening | [`motion::Motion::pose`] |
//! | draw the door half open | [`outline::outline_at`] |
//! | know how high and how far out it comes | [`outline::reach`] |
//! | know what it sweeps over, and what that meets | [`sweep::Sweep`] |
//! | know whether two leaves touch each other | [`leaves::first_touch`] |
//! | weigh a leaf or a door | [`mass::leaf_mass`], [`mass::door_mass`] |
//! | know what springs or struts do | [`drive::Drive`] |
//! | know what the hand feels on the way | [`statics::curves`] |
//! | know how fast a door falls shut | [`dynamics::release`] |
//! | choose a size | [`sizes::verdicts`], [`size_chart::regions`] |
//! | find a place for a gas strut | [`strut_mounts::place_strut`] |
//! | turn a paper's load into another form | [`load_forms::load_forms`] |
//! | fit a spring's curve to readings of a hand scale | [`measured::fit_spring`] |
//!
//! This crate draws nothing, reads no file and knows no clock: the same input gives the same
//! numbers.

mod build;
pub mod closed;
pub mod drive;
pub mod dynamics;
mod error;
mod flap_table;
mod four_bar;
mod golden;
mod grade;
pub mod gravity;
mod judged;
mod least_squares;
pub mod leaves;
mod limits;
pub mod load;
pub mod load_forms;
mod load_on_size;
pub mod mass;
pub mod measured;
mod mechanism;
pub mod motion;
mod mount_cost;
mod mount_question;
mod mount_search;
pub mod outline;
mod pose;
pub mod reason;
pub mod reason_message;
pub mod setting;
pub mod size_chart;
pub mod sizes;
mod spring;
pub mod statics;
pub mod strut;
pub mod strut_mounts;
pub mod sweep;

pub use error::{DriveError, Mend, MotionError, WhichNumber};
pub use mount_cost::Shortfall;
