//! The progress bar on standard error.

use std::io::IsTerminal;
use std::time::Duration;

use indicatif::{ProgressBar, ProgressStyle};

/// Shows how far a recording has been read: only on a terminal that does not show the values themselves, and only where its size is known.
pub(crate) struct Progress {
    bar: Option<ProgressBar>,
}

impl Progress {
    /// A bar for so many bytes, where it is wanted; silent where there is nobody to see it.
    pub(crate) fn new(size_bytes: Option<u64>, wanted: bool) -> Self {
        let wanted = wanted && std::io::stderr().is_terminal();
        let bar = size_bytes.filter(|_| wanted).map(|size| {
            let bar = ProgressBar::new(size);
            if let Ok(style) =
                ProgressStyle::with_template("{bar:32} {percent:>3} %  {bytes} of {total_bytes}, {eta} left")
            {
                bar.set_style(style);
            }
            bar.enable_steady_tick(Duration::from_millis(200));
            bar
        });
        Self { bar }
    }

    /// So many bytes have been read.
    pub(crate) fn at(&self, bytes: u64) {
        if let Some(bar) = &self.bar {
            bar.set_position(bytes);
        }
    }
}

impl Drop for Progress {
    fn drop(&mut self) {
        if let Some(bar) = &self.bar {
            bar.finish_and_clear();
        }
    }
}
