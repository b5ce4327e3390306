//! The search for anchors on a thread of its own.

use std::sync::Arc;
use std::sync::atomic::{AtomicBool, AtomicU16, Ordering};
use std::sync::mpsc::{Receiver, TryRecvError, channel};

use flapwright_motion::strut_mounts::{MountAnswer, MountError, MountLimits};
use flapwright_rules::strut_places::StrutPlaces;

/// Progress is told in these parts of the whole.
const PARTS: f64 = 1000.0;

/// What came of it.
pub(crate) type Found = Result<Vec<MountAnswer>, MountError>;

/// A running search. Dropping it stops the thread.
#[derive(Debug)]
pub(crate) struct StrutSearch {
    receiver: Receiver<Found>,
    shared: Arc<Shared>,
}

#[derive(Debug, Default)]
struct Shared {
    stop: AtomicBool,
    done: AtomicU16,
}

impl StrutSearch {
    /// Begins a search.
    ///
    /// # Errors
    /// When there is no thread to do it.
    pub(crate) fn start(
        places: StrutPlaces,
        limits: MountLimits,
        context: egui::Context,
    ) -> Result<Self, String> {
        let shared = Arc::new(Shared::default());
        let theirs = Arc::clone(&shared);
        let (sender, receiver) = channel();
        let thread = std::thread::Builder::new().name("strut places".to_owned());
        let started = thread.spawn(move || {
            let found = places.search(&limits, &mut |share| {
                let part = (share.clamp(0.0, 1.0) * PARTS) as u16;
                theirs.done.store(part, Ordering::Relaxed);
                context.request_repaint();
                !theirs.stop.load(Ordering::Relaxed)
            });
            // A question that is closed needs no answer.
            if sender.send(found).is_ok() {
                context.request_repaint();
            }
        });
        match started {
            Ok(_running) => Ok(Self { receiver, shared }),
            Err(error) => Err(format!("cannot search: {error}")),
        }
    }

    /// How much is done, 0 to 1.
    pub(crate) fn progress(&self) -> f32 {
        f32::from(self.shared.done.load(Ordering::Relaxed)) / PARTS as f32
    }

    /// What was found, once it is; `None` while the search runs.
    pub(super) fn poll(&self) -> Option<Found> {
        match self.receiver.try_recv() {
            Ok(found) => Some(found),
            Err(TryRecvError::Empty) => None,
            Err(TryRecvError::Disconnected) => Some(Err(MountError::Stopped)),
        }
    }
}

impl Drop for StrutSearch {
    fn drop(&mut self) {
        self.shared.stop.store(true, Ordering::Relaxed);
    }
}
