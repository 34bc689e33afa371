//! The window sleeps until something is done in it; this calls it when a thread has something to tell, or when the
//! panels want another picture later.

use std::sync::mpsc::{Receiver, RecvTimeoutError, channel};
use std::time::{Duration, Instant};

use bevy::prelude::Resource;
use bevy::winit::{EventLoopProxyWrapper, WinitUserEvent};

use crate::studio::work::Wake;

/// Calls the window.
#[derive(Resource)]
pub struct Calls(pub Wake);

/// What calls the window of this loop.
pub fn wake_of(events: &EventLoopProxyWrapper) -> Wake {
    let events = (**events).clone();
    let at_once = events.clone();
    let (sender, receiver) = channel();
    std::thread::spawn(move || {
        ring(&receiver, || events.send_event(WinitUserEvent::WakeUp).is_ok())
    });
    Wake::new(move |so_long: Duration| {
        // Nobody listens once the window is gone.
        if so_long.is_zero() {
            let _ = at_once.send_event(WinitUserEvent::WakeUp);
        } else if let Some(at) = Instant::now().checked_add(so_long) {
            let _ = sender.send(at);
        }
    })
}

/// Calls at the earliest of the times it was told since it called last, for as long as there is somebody to call.
fn ring(times: &Receiver<Instant>, call: impl Fn() -> bool) {
    let mut next: Option<Instant> = None;
    loop {
        let told = match next {
            None => times.recv().map_err(|_| RecvTimeoutError::Disconnected),
            Some(at) => times.recv_timeout(at.saturating_duration_since(Instant::now())),
        };
        match told {
            Ok(at) => next = Some(next.map_or(at, |before| before.min(at))),
            Err(RecvTimeoutError::Timeout) if call() => next = None,
            Err(_) => return,
        }
    }
}

#[cfg(test)]
mod tests {
    #![allow(clippy::unwrap_used, reason = "tests")]

    use std::cell::Cell;
    use std::sync::mpsc::channel;
    use std::time::{Duration, Instant};

    use crate::studio::window::alarm::ring;

    #[test]
    fn many_words_are_one_call_at_the_earliest_of_their_times() {
        let (sender, receiver) = channel();
        let started = Instant::now();
        for ms in [400, 60, 80, 30_000] {
            sender.send(started + Duration::from_millis(ms)).unwrap();
        }
        let calls = Cell::new(0);
        // Somebody listens for the first call only.
        ring(&receiver, || {
            calls.set(calls.get() + 1);
            false
        });
        let called = started.elapsed();
        assert_eq!(calls.get(), 1);
        assert!(called >= Duration::from_millis(60) && called < Duration::from_millis(400));
    }
}
