//! Work shared between threads: as many as there are workspaces, the calling one among them.

use std::sync::{Mutex, PoisonError};
use std::thread;

/// Does each job once, with one of the workspaces; stops at the first error.
///
/// A thread takes the next job when it has done one, so that a long job keeps no other waiting.
pub(crate) fn share<J: Send, W: Send, E: Send>(
    jobs: impl IntoIterator<Item = J, IntoIter: Send>,
    workspaces: &mut [W],
    work: impl Fn(J, &mut W) -> Result<(), E> + Sync,
) -> Result<(), E> {
    let jobs = Mutex::new(jobs.into_iter());
    let take_turns = |workspace: &mut W| -> Result<(), E> {
        loop {
            let job = jobs.lock().unwrap_or_else(PoisonError::into_inner).next();
            match job {
                Some(job) => work(job, workspace)?,
                None => return Ok(()),
            }
        }
    };
    let Some((own, others)) = workspaces.split_first_mut() else {
        return Ok(());
    };
    if others.is_empty() {
        return take_turns(own);
    }
    thread::scope(|scope| {
        let threads: Vec<_> = others.iter_mut().map(|other| scope.spawn(|| take_turns(other))).collect();
        let own = take_turns(own);
        threads.into_iter().fold(own, |sum, thread| match thread.join() {
            Ok(result) => sum.and(result),
            Err(panic) => std::panic::resume_unwind(panic),
        })
    })
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn every_job_is_done_once() {
        for threads in 1..4 {
            let mut sums = vec![0_u64; threads];
            let done = share(1..=1000_u64, &mut sums, |job, sum| {
                *sum += job;
                Ok::<(), ()>(())
            });
            assert_eq!((done, sums.iter().sum::<u64>()), (Ok(()), 500_500));
        }
    }

    #[test]
    fn an_error_comes_back() {
        for threads in 1..4 {
            let done = share(0..100, &mut vec![(); threads], |job, ()| if job == 50 { Err(job) } else { Ok(()) });
            assert_eq!(done, Err(50));
        }
    }
}
