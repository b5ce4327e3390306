//! Work on a thread of its own, with snapshots in and a channel out.

use std::sync::Arc;
use std::sync::atomic::{AtomicBool, AtomicU16, Ordering};
use std::sync::mpsc::{Receiver, TryRecvError, channel};

/// Progress is told in these parts of the whole.
const PARTS: f32 = 1000.0;

/// Called from another thread when there is something to hear.
pub(crate) type Wake = Arc<dyn Fn() + Send + Sync>;

/// A running thread that gives back a `T`. Dropping it asks the thread to stop.
#[derive(Debug)]
pub(crate) struct Worker<T> {
    receiver: Receiver<T>,
    shared: Arc<Shared>,
}

#[derive(Debug, Default)]
struct Shared {
    stop: AtomicBool,
    done: AtomicU16,
}

/// What the work tells while it goes on, and asks: `true` to go on, given how much is done, 0 to 1.
pub(crate) type GoOn<'a> = &'a mut dyn FnMut(f32) -> bool;

impl<T: Send + 'static> Worker<T> {
    /// Begins the work.
    ///
    /// # Errors
    /// When there is no thread to do it.
    pub(crate) fn start(
        name: &str,
        wake: Wake,
        work: impl FnOnce(GoOn<'_>) -> T + Send + 'static,
    ) -> std::io::Result<Self> {
        let shared = Arc::new(Shared::default());
        let theirs = Arc::clone(&shared);
        let (sender, receiver) = channel();
        let thread = std::thread::Builder::new().name(name.to_owned());
        thread.spawn(move || {
            let found = work(&mut |done| {
                let part = (done.clamp(0.0, 1.0) * PARTS) as u16;
                theirs.done.store(part, Ordering::Relaxed);
                wake();
                !theirs.stop.load(Ordering::Relaxed)
            });
            // Who has gone away needs no answer.
            if sender.send(found).is_ok() {
                wake();
            }
        })?;
        Ok(Self { receiver, shared })
    }
}

impl<T> Worker<T> {
    /// How much is done, 0 to 1.
    pub(crate) fn progress(&self) -> f32 {
        f32::from(self.shared.done.load(Ordering::Relaxed)) / PARTS
    }

    /// Asks it to stop. Whether it still could is told by what it gives back.
    pub(crate) fn stop(&self) {
        self.shared.stop.store(true, Ordering::Relaxed);
    }

    /// Whether it was asked to stop.
    pub(crate) fn stopping(&self) -> bool {
        self.shared.stop.load(Ordering::Relaxed)
    }

    /// What came of it: `None` while it runs, `Some(None)` when it ended before its time.
    pub(crate) fn poll(&self) -> Option<Option<T>> {
        match self.receiver.try_recv() {
            Ok(found) => Some(Some(found)),
            Err(TryRecvError::Empty) => None,
            Err(TryRecvError::Disconnected) => Some(None),
        }
    }

    /// The same, waiting for it.
    pub(crate) fn wait(&self) -> Option<T> {
        self.receiver.recv().ok()
    }
}

impl<T> Drop for Worker<T> {
    fn drop(&mut self) {
        self.stop();
    }
}
