//! The search for mounts of a gas strut, on a thread of its own.

use flapwright_motion::strut_mounts::{MountError, MountLimits};
use flapwright_rules::strut_places::StrutPlaces;

use crate::outcome::Found;
use crate::worker::{Wake, Worker};

/// A running search. Dropping it stops the thread.
#[derive(Debug)]
pub(crate) struct StrutSearch(Worker<Found>);

impl StrutSearch {
    /// Begins a search.
    ///
    /// # Errors
    /// When there is no thread to do it.
    pub(crate) fn start(
        places: StrutPlaces,
        limits: MountLimits,
        wake: Wake,
    ) -> std::io::Result<Self> {
        let worker = Worker::start("strut places", wake, move |go_on| {
            places.search(&limits, &mut |share| go_on(share as f32))
        });
        worker.map(Self)
    }

    /// How much is done, 0 to 1.
    pub(crate) fn progress(&self) -> f32 {
        self.0.progress()
    }

    /// What was found, once it is; `None` while the search runs.
    pub(crate) fn poll(&self) -> Option<Found> {
        let found = self.0.poll()?;
        Some(found.unwrap_or(Err(MountError::Stopped)))
    }

    /// The same, waiting for it.
    pub(crate) fn wait(&self) -> Found {
        self.0.wait().unwrap_or(Err(MountError::Stopped))
    }
}
