//! What is written and not whole yet: removed where the run is broken off (Ctrl-C, the end of the terminal, a request to end).
//!
//! The hidden files and folders clean up after themselves when a run ends by itself; a signal ends it without that.

use std::path::{Path, PathBuf};
use std::sync::{Mutex, MutexGuard, Once, PoisonError};

/// The files and folders that exist now and may not stay.
static HALF_DONE: Mutex<Vec<PathBuf>> = Mutex::new(Vec::new());

/// Notes a file or folder in the making for as long as this lives.
#[derive(Debug)]
pub(crate) struct HalfDone(PathBuf);

impl HalfDone {
    pub(crate) fn new(path: &Path) -> Self {
        static WATCH: Once = Once::new();
        WATCH.call_once(watch);
        let path = path.canonicalize().unwrap_or_else(|_| path.to_owned());
        all().push(path.clone());
        Self(path)
    }
}

impl Drop for HalfDone {
    fn drop(&mut self) {
        all().retain(|path| *path != self.0);
    }
}

fn all() -> MutexGuard<'static, Vec<PathBuf>> {
    HALF_DONE.lock().unwrap_or_else(PoisonError::into_inner)
}

/// Waits for the signals that end a run, beside the work; status 128 and the signal's number, as shells have it.
#[cfg(unix)]
fn watch() {
    use signal_hook::consts::{SIGHUP, SIGINT, SIGTERM};
    use signal_hook::iterator::Signals;

    let wanted = [SIGINT, SIGTERM, SIGHUP].into_iter().filter(|signal| !is_ignored(*signal));
    // Without the watch a broken run leaves its hidden file, and everything else goes on.
    let Ok(mut signals) = Signals::new(wanted) else { return };
    std::thread::spawn(move || {
        if let Some(signal) = signals.forever().next() {
            remove_all();
            std::process::exit(128 + signal);
        }
    });
}

#[cfg(not(unix))]
fn watch() {}

/// Whether the run was started so that a signal does not end it, as by `nohup`: that stays so. Where the system does not tell, the one
/// that is sent when a terminal closes is left as it is.
#[cfg(unix)]
fn is_ignored(signal: i32) -> bool {
    let status = std::fs::read_to_string("/proc/self/status").unwrap_or_default();
    let mask = status.lines().find_map(|line| line.strip_prefix("SigIgn:"));
    match mask.and_then(|mask| u64::from_str_radix(mask.trim(), 16).ok()) {
        Some(mask) => mask >> (signal - 1) & 1 == 1,
        None => signal == signal_hook::consts::SIGHUP,
    }
}

/// Removes them. The lock is kept to the end of the program: nothing new is begun.
#[cfg(unix)]
pub(crate) fn remove_all() {
    let paths = all();
    for path in paths.iter() {
        // Other threads may still write into a folder: a few rounds catch what they add.
        for _ in 0..5 {
            let removed = if path.is_dir() { std::fs::remove_dir_all(path) } else { std::fs::remove_file(path) };
            if removed.is_ok() || !path.exists() {
                break;
            }
        }
    }
    std::mem::forget(paths);
}
