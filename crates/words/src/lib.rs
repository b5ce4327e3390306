//! What the program says, from catalogues.
//!
//! Everything below this crate gives data: a key and typed arguments
//! ([`model::message`](flapwright_model::message)). Here it becomes a sentence, in a language and in
//! the job's unit. No joinery is done here, and nothing is decided.
//!
//! | How do I… | |
//! |---|---|
//! | say a message | [`Speaker::say`] |
//! | say one quantity | [`Speaker::value`] |
//! | say a finding: its headline, its reasons, where it is | [`headline`], [`reasons`], [`place`] |
//! | say a remedy: its button and its effect | [`remedy`], [`effect`] |
//! | say where something is | [`places`] |
//! | know the names of a job's parts | [`Names`] |
//!
//! The catalogues are Fluent files in `assets/words/LANGUAGE/`, built into the program. A number is
//! formatted by [`model::measure`](flapwright_model::measure) before it gets there; only counts go
//! in as numbers, since a language chooses singular and plural by them. The same message gives the
//! same bytes: no locale of the system, no clock.

mod catalogue;
mod finding;
mod names;
mod place;
mod speaker;

pub use catalogue::{Catalogue, Language};
pub use finding::{effect, headline, headline_in_box, message, place, reasons, remedy};
pub use names::{Names, PlaceName};
pub use place::{BoxName, PartName, Place, own_examples, places};
pub use speaker::Speaker;
