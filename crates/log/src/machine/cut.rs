//! Files that are memory and become shorter under their reader.
//!
//! A page behind the new end of a file is gone at once, fetched or not, and who touches it gets the signal SIGBUS (POSIX.1-2017, `mmap`),
//! which ends the process without a word. Reading instead of mapping would avoid that, and takes nearly twice as long (see `map`);
//! holding others off the file would stop the program that records. So a program may ask to be woken ([`CutWatch`]): the thread that
//! touched such a page then stays where it is, nothing of what it would have read is ever used, and another one can say what has happened.
//!
//! The blocks below rest on this:
//! - The handler calls what may be called in one (`write`, `pause`, `raise`, `sigaction`; POSIX.1-2017, 2.4.3), reads two places that were filled
//!   before it was installed and never change, and never returns where a file is the reason.
//! - For any other reason, and where nobody listens any more, it puts the earlier handler back and returns: a fault comes again of itself,
//!   a signal that somebody has sent is sent once more, and either goes there.

use std::io::{PipeReader, PipeWriter, Read, pipe};
use std::mem::MaybeUninit;
use std::os::fd::AsRawFd;
use std::ptr;
use std::sync::OnceLock;

use libc::{BUS_ADRERR, SA_ONSTACK, SA_SIGINFO, SIGBUS, c_int, c_void, sigaction, siginfo_t};

/// What the handler needs: where it tells, and what was there before it.
struct Installed {
    wake: PipeWriter,
    earlier: sigaction,
}

static INSTALLED: OnceLock<Installed> = OnceLock::new();

/// Waits for the moment in which a mapped file is shorter than what is read of it. There can be one in a process.
#[derive(Debug)]
pub struct CutWatch {
    woken: PipeReader,
}

impl CutWatch {
    /// Begins to watch; `None` where the process has a watch already, or the system gives none.
    ///
    /// Whoever asks has to wait, and to end the process then: the thread that met the cut goes on waiting for ever.
    #[must_use]
    pub fn begin() -> Option<Self> {
        let (woken, wake) = pipe().ok()?;
        let earlier = of_now()?;
        INSTALLED.set(Installed { wake, earlier }).ok()?;
        install().then_some(Self { woken })
    }

    /// Returns once a file was cut; a thread of its own is the place for it.
    pub fn wait(mut self) {
        while self.woken.read(&mut [0]).is_err() {}
    }
}

/// The handler that is there now.
fn of_now() -> Option<sigaction> {
    let mut earlier = MaybeUninit::uninit();
    // SAFETY: nothing is installed, and the place is large enough for what is asked.
    let is_told = unsafe { sigaction(SIGBUS, ptr::null(), earlier.as_mut_ptr()) } == 0;
    // SAFETY: the call has filled it.
    is_told.then(|| unsafe { earlier.assume_init() })
}

fn install() -> bool {
    // SAFETY: all fields of the structure are numbers, sets of bits or pointers that may be null.
    let mut action: sigaction = unsafe { MaybeUninit::zeroed().assume_init() };
    action.sa_sigaction = on_bus_error as extern "C" fn(c_int, *mut siginfo_t, *mut c_void) as usize;
    action.sa_flags = SA_SIGINFO | SA_ONSTACK;
    // SAFETY: the handler keeps to what the module head says.
    unsafe { sigaction(SIGBUS, &action, ptr::null_mut()) == 0 }
}

extern "C" fn on_bus_error(_signal: c_int, info: *mut siginfo_t, _context: *mut c_void) {
    let Some(Installed { wake, earlier }) = INSTALLED.get() else { return };
    // SAFETY: the system gives a handler of this kind a whole structure.
    let reason = unsafe { (*info).si_code };
    // SAFETY: one byte of a constant goes to an open pipe.
    let is_heard = reason == BUS_ADRERR && unsafe { libc::write(wake.as_raw_fd(), [0_u8].as_ptr().cast(), 1) } == 1;
    if !is_heard {
        // SAFETY: it is what was installed before.
        unsafe { sigaction(SIGBUS, earlier, ptr::null_mut()) };
        if reason <= 0 {
            // SAFETY: the signal waits until this handler has returned.
            unsafe { libc::raise(SIGBUS) };
        }
        return;
    }
    loop {
        // SAFETY: it does nothing but wait.
        unsafe { libc::pause() };
    }
}
