//! Small random networks, and what their senders do: at the worst moment, and at any.

use wirelore_survey::response::{Stream, Ticks};
use wirelore_tests::noise::Noise;

use crate::bus::{Bus, Frames, Sent, Wanted};

/// Ticks of a bit: events, queues and frames of two rates are not aligned to bits.
pub(crate) const BIT: u64 = 4;

/// Frames that are sent at random before the next network.
const RANDOM_FRAMES: u64 = 250;

/// Two to six streams; together they take 20 to 100 % of the network, sometimes a little more by rounding.
pub(crate) fn network(random: &mut Noise) -> Vec<Stream> {
    let count = 2 + random.below(5);
    let percent = 20 + random.below(81);
    let shares: Vec<u64> = (0..count).map(|_| 1 + random.below(8)).collect();
    let whole: u64 = shares.iter().sum();
    let stream = |&share: &u64| {
        // Classic frames; every fourth is of two rates and no whole number of nominal bits.
        let length = (47 + random.below(114)) * BIT + if random.below(4) == 0 { random.below(BIT) } else { 0 };
        let period = (length * whole * 100).div_ceil(share * percent);
        let jitter = match random.below(4) {
            0 => random.below(2 * period),
            1 => random.below(period / 4),
            _ => 0,
        };
        Stream { length: Ticks(length), period: Ticks(period), jitter: Ticks(jitter), deadline: Ticks(period) }
    };
    shares.iter().map(stream).collect()
}

/// The moment that is worst for one stream, until the bus is free: the longest frame below it begins, and everybody else is a hair too late
/// to stop it. All queue a frame at this moment, as long after its event as can be, and all later ones as soon as can be.
pub(crate) fn worst_moment(streams: &[Stream], target: usize) -> Vec<Sent> {
    let moment = streams.iter().map(|stream| stream.jitter.0).max().unwrap_or(0);
    let blocker = (target + 1..streams.len()).max_by_key(|&index| streams[index].length);
    let frames = |(index, stream): (usize, &Stream)| -> (u64, Frames<'_>) {
        let (period, jitter) = (stream.period.0, stream.jitter.0);
        let later = (0..).map(move |instance| {
            let event = moment - jitter + instance * period;
            Wanted { event, queued: event.max(moment) }
        });
        let count = match index {
            _ if index <= target => usize::MAX,
            _ if blocker == Some(index) => 1,
            _ => 0,
        };
        // What blocks need not have come late into its own queue.
        let own =
            later.map(move |wanted| if index > target { Wanted { event: moment, queued: moment } } else { wanted });
        (stream.length.0, Box::new(own.take(count)))
    };
    let joins = |arbitration| arbitration > 0 || blocker.is_none();
    let mut free_at = moment;
    let busy = Bus::new(streams.iter().enumerate().map(frames), BIT, joins).take_while(|sent| {
        let goes_on = sent.start <= free_at;
        free_at = sent.end;
        goes_on
    });
    busy.collect()
}

/// Senders that do whatever they may: any first moment, later than their period at times, anywhere within their jitter.
pub(crate) fn any_moments(streams: &[Stream], random: &mut Noise) -> Vec<Sent> {
    let longest = streams.iter().map(|stream| stream.length.0).max().unwrap_or(0);
    let begin_together = random.below(2) == 0;
    let frames_per_tick: f64 = streams.iter().map(|stream| 1.0 / stream.period.0 as f64).sum();
    let horizon = (RANDOM_FRAMES as f64 / frames_per_tick) as u64;
    let mut joins = Noise::new(random.bits());
    let plan = |stream: &Stream| -> (u64, Frames<'static>) {
        let first = random.below(if begin_together { 2 * longest } else { stream.period.0 });
        let habits = Habits { stream: *stream, pauses: random.below(3) == 0, delays: random.below(3) };
        (stream.length.0, Box::new(habits.frames(first, horizon, Noise::new(random.bits()))))
    };
    let plans: Vec<_> = streams.iter().map(plan).collect();
    Bus::new(plans, BIT, |_| joins.below(2) == 0).collect()
}

struct Habits {
    stream: Stream,
    /// Whether events come later than they could at times.
    pauses: bool,
    /// 0: queued at once; 1: some time within the jitter; 2: at once or as late as can be.
    delays: u64,
}

impl Habits {
    fn frames(self, first: u64, horizon: u64, mut random: Noise) -> impl Iterator<Item = Wanted> {
        let (mut event, mut last_queued) = (first, 0);
        std::iter::from_fn(move || {
            let jitter = self.stream.jitter.0;
            let delay = match self.delays {
                0 => 0,
                1 => random.below(jitter + 1),
                _ => random.below(2) * jitter,
            };
            // First in, first out: a frame is never queued before those of earlier events.
            last_queued = (event + delay).max(last_queued);
            let wanted = Wanted { event, queued: last_queued };
            let pause = if self.pauses && random.below(4) == 0 { random.below(self.stream.period.0) } else { 0 };
            event += self.stream.period.0 + pause;
            (wanted.event < horizon).then_some(wanted)
        })
    }
}
