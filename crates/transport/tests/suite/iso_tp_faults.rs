//! Every fault, with its numbers, and that good messages come through behind it. Rules: ISO 15765-2:2016, from memory.

use wirelore_transport::iso_tp::{
    Addressing, FaultKind, FlowControl, FlowStatus, Layout, Outcome, Rules, SeparationTime,
};

use crate::heard::{IsoTp, cut, ms, pattern};

fn classic(length: usize) -> Vec<Vec<u8>> {
    cut(&pattern(length), &Layout::default())
}

fn fd(length: usize) -> Vec<Vec<u8>> {
    cut(&pattern(length), &Layout { frame_bytes: 64, ..Layout::default() })
}

/// One frame that cannot be used, in the middle of a message that it does not belong to: that goes on (the standard has it ignored).
#[track_caller]
fn assert_ignored(frame: &[u8], kind: FaultKind) {
    let frames = classic(30);
    let mut heard = IsoTp::default();
    heard.feed_all(1, &frames[..2]);
    assert_eq!(heard.feed(1, frame), Outcome::Unusable);
    heard.feed_all(1, &frames[2..]);
    assert_eq!((heard.kinds(), heard.bytes()), (vec![kind], vec![pattern(30).as_slice()]));
    assert_eq!(heard.faults[0].frames, 0, "no message was given up");
}

#[test]
fn frames_that_say_nothing() {
    assert_ignored(&[], FaultKind::FrameEmpty { found: 0 });
    assert_ignored(&[0; 65], FaultKind::FrameTooLong { found: 65 });
    for number in 4..16 {
        assert_ignored(&[number << 4, 0, 0, 0, 0, 0, 0, 0], FaultKind::TypeReserved { number });
    }
    let mut heard = IsoTp::with(Rules { addressing: Addressing::Extended, ..Rules::default() });
    heard.feed(1, &[0x12]);
    assert_eq!(heard.kinds(), [FaultKind::FrameEmpty { found: 1 }]);
    assert_eq!(heard.faults[0].conversation.address, Some(0x12));
}

#[test]
fn single_frames_of_wrong_length() {
    assert_ignored(&[0x00, 1, 2, 3, 4, 5, 6, 7], FaultKind::SingleLength { announced: 0, least: 1, most: 7 });
    assert_ignored(&[0x08, 1, 2, 3, 4, 5, 6, 7], FaultKind::SingleLength { announced: 8, least: 1, most: 7 });
    assert_ignored(&[0x03, 1, 2], FaultKind::SingleLength { announced: 3, least: 1, most: 2 });
    // Beyond 8 bytes the length is a byte of its own, for what does not fit a frame of 8.
    let mut long = [0; 12];
    long[0] = 5;
    assert_ignored(&long, FaultKind::SingleWithoutEscape { frame_bytes: 12 });
    for announced in [0, 7, 11, 255] {
        long[..2].copy_from_slice(&[0, announced]);
        let announced = usize::from(announced);
        assert_ignored(&long, FaultKind::SingleLength { announced, least: 8, most: 10 });
    }
}

#[test]
fn first_frames_of_wrong_length() {
    assert_ignored(&[0x10, 20, 1, 2, 3], FaultKind::FirstCut { found: 5 });
    assert_ignored(&[0x10, 7, 1, 2, 3, 4, 5, 6], FaultKind::FirstFitsSingle { announced: 7, most: 7 });
    assert_ignored(&[0x10, 0, 0, 0, 0x0F, 0xFF, 1, 2], FaultKind::FirstEscapeNeedless { announced: 4095 });
    let mut long = [0; 64];
    long[..2].copy_from_slice(&[0x10, 62]);
    assert_ignored(&long, FaultKind::FirstFitsSingle { announced: 62, most: 62 });
}

#[test]
fn flow_controls_that_say_nothing() {
    assert_ignored(&[0x30, 0], FaultKind::FlowControlCut { found: 2 });
    for status in 3..16 {
        assert_ignored(&[0x30 | status, 0, 0], FaultKind::FlowStatusReserved { status });
    }
}

/// What is left of the message is passed over, not told frame by frame; the next message is whole.
#[test]
fn a_lost_frame() {
    let frames = classic(60);
    let mut heard = IsoTp::default();
    heard.feed_all(1, &frames[..3]);
    assert_eq!(heard.feed(1, &frames[5]), Outcome::Unusable);
    assert_eq!(heard.feed(1, &frames[6]), Outcome::OfGivenUp);
    heard.feed_all(1, &frames[7..]);
    heard.feed_all(1, &frames);
    assert_eq!(heard.kinds(), [FaultKind::Lost { index: 3, expected: 3, found: 5 }]);
    assert_eq!((heard.faults[0].frames, heard.faults[0].time_ns), (3, ms(4)));
    assert_eq!(heard.bytes(), [pattern(60)]);
}

#[test]
fn a_repeated_frame() {
    let frames = classic(60);
    let mut heard = IsoTp::default();
    heard.feed_all(1, &frames[..4]);
    heard.feed_all(1, &frames[3..]);
    heard.feed_all(1, &frames);
    assert_eq!(heard.kinds(), [FaultKind::Repeated { index: 4, number: 3 }]);
    assert_eq!(heard.bytes(), [pattern(60)]);
}

#[test]
fn a_consecutive_frame_without_a_message() {
    let mut heard = IsoTp::default();
    heard.feed_all(1, &classic(20)[1..]);
    assert_eq!(heard.kinds(), [FaultKind::NothingBegun { number: 1 }, FaultKind::NothingBegun { number: 2 }]);
}

#[test]
fn a_message_in_the_middle_of_another() {
    let frames = classic(60);
    let broken_off = FaultKind::BrokenOff { received: 13, announced: 60 };
    for next in [vec![vec![0x01, 0x3E]], classic(40)] {
        let mut heard = IsoTp::default();
        heard.feed_all(1, &frames[..2]);
        heard.feed_all(1, &next);
        assert_eq!(heard.kinds(), [broken_off]);
        assert_eq!((heard.messages.len(), heard.faults[0].frames), (1, 2));
    }
}

#[test]
fn consecutive_frames_of_wrong_length() {
    let frames = fd(200);
    let wrong = |index: usize, bytes: usize, least: usize| {
        let mut heard = IsoTp::default();
        heard.feed_all(1, &frames[..index]);
        let frame: Vec<u8> = frames[index].iter().copied().chain([0; 64]).take(bytes).collect();
        heard.feed(1, &frame);
        heard.feed_all(1, &frames[index + 1..]);
        heard.feed_all(1, &frames);
        let kind = FaultKind::ConsecutiveLength { index: index as u32, found: bytes, least, most: 64 };
        assert_eq!((heard.kinds(), heard.bytes()), (vec![kind], vec![pattern(200).as_slice()]));
    };
    wrong(1, 48, 64);
    // 200 - 62 - 2 * 63 = 12 bytes are left for the last frame.
    wrong(3, 12, 13);
    // A frame of CAN FD after a first frame of 8 bytes.
    let mut heard = IsoTp::default();
    heard.feed(1, &classic(20)[0]);
    heard.feed(1, &[&[0x21][..], &[0; 11]].concat());
    assert_eq!(heard.kinds(), [FaultKind::ConsecutiveLength { index: 1, found: 12, least: 8, most: 8 }]);
}

/// The bound tells both numbers, and the frames that follow count as those of a refused message.
#[test]
fn a_message_that_is_too_long() {
    let frames = classic(101);
    let mut heard = IsoTp::with(Rules { most_bytes: 100, ..Rules::default() });
    assert_eq!(heard.feed(1, &frames[0]), Outcome::Unusable);
    for frame in &frames[1..] {
        assert_eq!(heard.feed(1, frame), Outcome::OfGivenUp);
    }
    assert_eq!(heard.kinds(), [FaultKind::TooLong { announced: 101, most: 100 }]);
    // The refused message had no more frames than these.
    heard.feed(1, &frames[1]);
    assert_eq!(heard.kinds()[1..], [FaultKind::NothingBegun { number: 1 }]);
    heard.feed_all(1, &classic(100));
    assert_eq!(heard.bytes(), [pattern(100)]);
}

#[test]
fn four_gibibytes_take_no_memory() {
    let first = [0x10, 0, 0xFF, 0xFF, 0xFF, 0xFF, 1, 2];
    let mut heard = IsoTp::default();
    heard.feed(1, &first);
    assert_eq!(heard.kinds(), [FaultKind::TooLong { announced: u32::MAX, most: 4095 }]);
    let mut heard = IsoTp::with(Rules { most_bytes: u32::MAX, ..Rules::default() });
    for key in 0..1000 {
        heard.feed(key, &first);
    }
    assert!(heard.reassembler.held_bytes() <= 256 * 16, "{}", heard.reassembler.held_bytes());
    let pushed_out = FaultKind::PushedOut { most: 256, received: 2, announced: u32::MAX };
    assert_eq!(heard.kinds(), vec![pushed_out; 1000 - 256]);
    let keys: Vec<u32> = heard.faults.iter().map(|fault| fault.conversation.key).collect();
    assert_eq!(keys, (0..744).collect::<Vec<_>>());
    heard.finish();
    assert_eq!(heard.faults.len(), 1000);
}

/// N_Cr, 1000 ms: the frame that comes later is the fault; one that comes in time, or earlier than the one before, is none.
#[test]
fn a_frame_that_comes_too_late() {
    let frames = classic(20);
    for (times, is_late) in
        [([0, 1000, 2000], false), ([0, 1001, 1002], true), ([0, 500, 1501], true), ([5000, 10, 0], false)]
    {
        let mut heard = IsoTp::default();
        for (time, frame) in times.into_iter().zip(&frames) {
            heard.feed_at(ms(time), 1, frame);
        }
        assert_eq!(
            (heard.messages.len(), heard.faults.len()),
            (usize::from(!is_late), usize::from(is_late)),
            "{times:?}"
        );
    }
    let mut heard = IsoTp::with(Rules { most_gap_ns: 50_000_000, ..Rules::default() });
    heard.feed_at(ms(0), 1, &frames[0]);
    heard.feed_at(ms(51), 1, &frames[1]);
    assert_eq!(heard.kinds(), [FaultKind::TimedOut { index: 1, waited_ns: 51_000_000, limit_ns: 50_000_000 }]);
    // A new message long after one that never went on says so, too.
    let mut heard = IsoTp::default();
    heard.feed_at(ms(0), 1, &frames[0]);
    heard.feed_at(ms(3000), 1, &[1, 0x3E]);
    assert_eq!(heard.kinds(), [FaultKind::TimedOut { index: 1, waited_ns: 3_000_000_000, limit_ns: 1_000_000_000 }]);
    assert_eq!(heard.bytes(), [[0x3E]]);
    // Without times there is no wait.
    let mut heard = IsoTp::default();
    for frame in &frames {
        heard.feed_at(None, 1, frame);
    }
    assert_eq!((heard.messages.len(), heard.faults.len()), (1, 0));
}

#[test]
fn answers_begin_the_wait_anew_or_end_the_message() {
    let frames = classic(20);
    let answer = |status| FlowControl { status, block_size: 0, separation_time: SeparationTime(0) };
    let mut heard = IsoTp::default();
    heard.feed_at(ms(0), 1, &frames[0]);
    heard.answered(ms(900), 1, answer(FlowStatus::Wait));
    heard.answered(ms(1800), 1, answer(FlowStatus::Continue));
    heard.feed_at(ms(2700), 1, &frames[1]);
    heard.feed_at(ms(2701), 1, &frames[2]);
    assert_eq!((heard.bytes(), heard.faults.len()), (vec![pattern(20).as_slice()], 0));

    heard.feed_at(ms(3000), 1, &frames[0]);
    heard.answered(ms(3001), 1, answer(FlowStatus::Overflow));
    heard.answered(ms(3002), 1, answer(FlowStatus::Overflow));
    assert_eq!(heard.kinds(), [FaultKind::Overflow { announced: 20 }]);
    assert_eq!((heard.faults[0].frames, heard.faults[0].time_ns), (1, ms(3001)));
}

/// In the order in which they went silent.
#[test]
fn the_log_ends_first() {
    let mut heard = IsoTp::default();
    heard.feed_all(7, &classic(20)[..2]);
    heard.feed_all(3, &classic(30)[..1]);
    heard.finish();
    assert_eq!(
        heard.kinds(),
        [FaultKind::Unfinished { received: 13, announced: 20 }, FaultKind::Unfinished { received: 6, announced: 30 }]
    );
    assert_eq!((heard.faults[0].time_ns, heard.faults[0].frames), (ms(2), 2));
    assert_eq!(heard.reassembler.held_bytes(), 0);
    heard.finish();
    assert_eq!(heard.faults.len(), 2);
}

#[test]
fn faults_are_sentences() {
    let late = FaultKind::TimedOut { index: 3, waited_ns: 1_204_000_000, limit_ns: 1_000_000_000 };
    assert_eq!(late.to_string(), "frame 3 of the message was not there after 1204 ms, and 1000 ms is the longest wait");
    let lost = FaultKind::Lost { index: 3, expected: 3, found: 5 };
    assert_eq!(
        lost.to_string(),
        "frame 3 of the message has number 5, and 3 was due: frames were lost or changed places"
    );
}
