//! A log that another program makes shorter while it is read: the run ends with a message, and nothing half-read is used.

use std::sync::{Mutex, PoisonError};

/// The log that is read.
static READING: Mutex<String> = Mutex::new(String::new());

/// Notes what is read from now on.
pub(crate) fn reading(name: &str) {
    #[cfg(target_os = "linux")]
    {
        static WATCH: std::sync::Once = std::sync::Once::new();
        WATCH.call_once(watch);
    }
    name.clone_into(&mut READING.lock().unwrap_or_else(PoisonError::into_inner));
}

#[cfg(target_os = "linux")]
fn watch() {
    // Without the watch such a cut ends the run as well, but without a word.
    let Some(watch) = wirelore_log::CutWatch::begin() else { return };
    let waiting = std::thread::Builder::new().spawn(move || {
        watch.wait();
        crate::half_done::remove_all();
        let name = READING.lock().unwrap_or_else(PoisonError::into_inner);
        crate::tell::tell_line(&format!(
            "wirelore: cannot read the log {name} on: another program has made it shorter, or its disk fails; start again when the file is whole"
        ));
        std::process::exit(2);
    });
    // Where there is no thread to be had, nobody waits and the watch is none.
    drop(waiting);
}
