//! A machine that cannot draw: a sentence in place of a backtrace.

use std::panic::{AssertUnwindSafe, catch_unwind, set_hook, take_hook};
use std::sync::{Arc, Mutex};

use backlift::files::fault::Fault;

/// What bevy and its crates say when no card, no driver or no display can be found.
const TOLD: [&str; 5] = ["GPU", "adapter", "event loop", "surface", "display"];

/// Runs the window; where nothing can be drawn with, says what to do.
pub fn guarded<T>(window: impl FnOnce() -> T) -> Result<T, Fault> {
    let heard = Arc::new(Mutex::new(String::new()));
    let hears = Arc::clone(&heard);
    let usual: Arc<dyn Fn(&std::panic::PanicHookInfo<'_>) + Send + Sync> = Arc::from(take_hook());
    let before = Arc::clone(&usual);
    set_hook(Box::new(move |info| {
        let said = info.payload_as_str().unwrap_or_default().to_owned();
        if !TOLD.iter().any(|it| said.contains(it)) {
            before(info);
        }
        if let Ok(mut it) = hears.lock() {
            *it = said;
        }
    }));
    let ran = catch_unwind(AssertUnwindSafe(window));
    set_hook(Box::new(move |info| usual(info)));
    ran.map_err(|_| {
        let said = heard.lock().map(|it| it.clone()).unwrap_or_default();
        let first = said.lines().next().unwrap_or_default();
        Fault::new(format!("the window could not be drawn: {first}")).help(
            "install a Vulkan driver; one in software will do (Debian: mesa-vulkan-drivers). Every figure is on the command line too: `backlift --help`",
        )
    })
}
