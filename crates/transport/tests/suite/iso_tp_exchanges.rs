//! Good traffic. Formats: ISO 15765-2:2016, from memory; the exchange of the identification number has the
//! layout of ISO 15765-2, the identifiers and padding of ISO 15765-4, from memory; the number is invented.

use wirelore_transport::iso_tp::{
    Addressing, Conversation, Event, FlowControl, FlowStatus, Layout, Outcome, Reassembler, Rules, SegmentError,
    SeparationTime, segment,
};

use crate::heard::{IsoTp, cut, ms, pattern};

const CLASSIC: Layout = Layout { address: None, frame_bytes: 8, padding: Some(0) };
const FD: Layout = Layout { address: None, frame_bytes: 64, padding: None };

/// Reading the vehicle identification number: service 09, information type 02 (SAE J1979).
#[test]
fn the_exchange_of_an_identification_number() {
    let mut heard = IsoTp::default();
    assert_eq!(heard.feed(0x7DF, &[0x02, 0x09, 0x02, 0, 0, 0, 0, 0]), Outcome::Finished);
    assert_eq!(heard.feed(0x7E8, &[0x10, 0x14, 0x49, 0x02, 0x01, 0x5A, 0x5A, 0x39]), Outcome::Part);
    let answer = FlowControl { status: FlowStatus::Continue, block_size: 0, separation_time: SeparationTime(0) };
    assert_eq!(heard.feed(0x7E0, &[0x30, 0, 0, 0, 0, 0, 0, 0]), Outcome::FlowControl(answer));
    heard.answered(ms(3), 0x7E8, answer);
    assert_eq!(heard.feed(0x7E8, &[0x21, 0x47, 0x50, 0x30, 0x30, 0x52, 0x35, 0x35]), Outcome::Part);
    assert_eq!(heard.feed(0x7E8, &[0x22, 0x42, 0x31, 0x32, 0x33, 0x34, 0x35, 0x36]), Outcome::Finished);

    assert_eq!(heard.bytes(), [b"\x09\x02".as_slice(), b"\x49\x02\x01ZZ9GP00R55B123456"]);
    assert_eq!(heard.messages[1].0, Conversation { key: 0x7E8, address: None });
    assert_eq!(heard.spans, [(ms(1), ms(1), 1), (ms(2), ms(5), 3)]);
    heard.finish();
    assert_eq!(heard.kinds(), []);

    // The other way: the same frames come out.
    let frames = cut(heard.bytes()[1], &CLASSIC);
    assert_eq!(
        frames,
        [
            [0x10, 0x14, 0x49, 0x02, 0x01, 0x5A, 0x5A, 0x39],
            [0x21, 0x47, 0x50, 0x30, 0x30, 0x52, 0x35, 0x35],
            [0x22, 0x42, 0x31, 0x32, 0x33, 0x34, 0x35, 0x36]
        ]
    );
    assert_eq!(cut(heard.bytes()[0], &CLASSIC), [[0x02, 0x09, 0x02, 0, 0, 0, 0, 0]]);
    assert_eq!(answer.to_bytes(), [0x30, 0, 0]);
}

/// 4095 bytes: 6 in the first frame, then 585 times 7, the last number is 9.
#[test]
fn the_longest_message_without_escape() {
    let message = pattern(4095);
    let frames = cut(&message, &CLASSIC);
    assert_eq!(frames.len(), 1 + 585);
    assert_eq!((&frames[0][..2], frames[585][0]), ([0x1F, 0xFF].as_slice(), 0x29));
    // Numbers go on from 15 with 0.
    assert_eq!([frames[15][0], frames[16][0], frames[17][0]], [0x2F, 0x20, 0x21]);
    let mut heard = IsoTp::default();
    heard.feed_all(1, &frames);
    assert_eq!(heard.bytes(), [message]);
    assert_eq!(heard.kinds(), []);
}

/// 5000 bytes in frames of 64: the length in 32 bits and 58 bytes first, then 79 frames of up to 63.
#[test]
fn a_long_message_over_can_fd() {
    let message = pattern(5000);
    let frames = cut(&message, &FD);
    assert_eq!(frames.len(), 1 + 79);
    assert_eq!(frames[0][..6], [0x10, 0, 0, 0, 0x13, 0x88]);
    assert_eq!((frames[0].len(), frames[1].len()), (64, 64));
    // 4942 - 78 * 63 = 28 bytes and a head go into a frame of 32.
    assert_eq!(frames[79].len(), 32);
    let mut heard = IsoTp::with(Rules { most_bytes: 5000, ..Rules::default() });
    heard.feed_all(1, &frames);
    assert_eq!(heard.bytes(), [message]);
    assert_eq!(heard.kinds(), []);
}

/// Single frames of CAN FD: up to 7 bytes as on CAN, from 8 to 62 with the length in the second byte.
#[test]
fn single_frames_of_can_fd() {
    let long = pattern(62);
    let frames = cut(&long, &FD);
    assert_eq!((frames.len(), frames[0].len(), &frames[0][..2]), (1, 64, [0, 0x3E].as_slice()));
    let frame_bytes = |length| cut(&pattern(length), &FD)[0].len();
    assert_eq!([1, 7, 8, 10, 11, 62].map(frame_bytes), [2, 8, 12, 12, 16, 64]);
    assert_eq!(cut(&pattern(63), &FD).len(), 2);
    let mut heard = IsoTp::default();
    for length in 1..=62 {
        heard.feed_all(1, &cut(&pattern(length), &FD));
        assert_eq!(heard.messages[length - 1].1, pattern(length));
    }
    assert_eq!(heard.kinds(), []);
}

/// Extended and mixed addressing put a byte in front: a single frame carries 6 bytes, a first one 5.
#[test]
fn a_byte_of_address_tells_conversations_apart() {
    for addressing in [Addressing::Extended, Addressing::Mixed] {
        let layout = |address| Layout { address: Some(address), ..CLASSIC };
        let (one, other) = (cut(&pattern(20), &layout(0x12)), cut(&pattern(30), &layout(0x40)));
        assert_eq!(one[0], [0x12, 0x10, 20, 0, 7, 14, 21, 28]);
        assert_eq!((cut(&pattern(6), &layout(0x12)).len(), cut(&pattern(7), &layout(0x12)).len()), (1, 2));

        let mut heard = IsoTp::with(Rules { addressing, ..Rules::default() });
        for (index, frame) in other.iter().enumerate() {
            heard.feed(0x600, frame);
            if let Some(frame) = one.get(index) {
                heard.feed(0x600, frame);
            }
        }
        let told = |address, length| (Conversation { key: 0x600, address: Some(address) }, pattern(length));
        assert_eq!(heard.messages, [told(0x12, 20), told(0x40, 30)]);
        assert_eq!(heard.kinds(), []);
    }
}

/// Everybody answers at once to a request to everybody, each on its own identifier.
#[test]
fn responders_interleave() {
    let frames: Vec<_> = (0..8).map(|unit| cut(&pattern(20 + unit), &CLASSIC)).collect();
    let mut heard = IsoTp::default();
    for index in 0..4 {
        for (key, frames) in (0x7E8..).zip(&frames) {
            frames.get(index).map(|frame| heard.feed(key, frame));
        }
    }
    assert_eq!(heard.bytes(), (20..28).map(pattern).collect::<Vec<_>>());
    assert_eq!(heard.kinds(), []);
}

/// STmin: 00 to 7F are milliseconds, F1 to F9 hundreds of microseconds, the others are reserved and count as the longest.
#[test]
fn separation_times() {
    let us = |value| SeparationTime(value).ns() / 1000;
    assert_eq!([0x00, 0x14, 0x7F, 0xF1, 0xF5, 0xF9].map(us), [0, 20_000, 127_000, 100, 500, 900]);
    assert_eq!([0x80, 0xF0, 0xFA, 0xFF].map(us), [127_000; 4]);
    assert_eq!((0..=255).filter(|&value| SeparationTime(value).is_reserved()).count(), 256 - 128 - 9);
}

#[test]
fn flow_controls_say_what_they_say() {
    let mut heard = IsoTp::default();
    for (status, word) in [(0, FlowStatus::Continue), (1, FlowStatus::Wait), (2, FlowStatus::Overflow)] {
        let answer = FlowControl { status: word, block_size: 8, separation_time: SeparationTime(0xF5) };
        assert_eq!(heard.feed(1, &[0x30 | status, 8, 0xF5]), Outcome::FlowControl(answer));
        assert_eq!(answer.to_bytes(), [0x30 | status, 8, 0xF5]);
    }
    assert_eq!((heard.messages.len(), heard.kinds().len()), (0, 0));
}

#[test]
fn unfilled_frames_are_taken_and_made() {
    let layout = Layout { padding: None, ..CLASSIC };
    assert_eq!(cut(&[1, 2], &layout), [[2, 1, 2]]);
    let frames = cut(&pattern(9), &layout);
    assert_eq!(frames[1].len(), 4);
    let mut heard = IsoTp::default();
    heard.feed_all(1, &frames);
    assert_eq!(heard.bytes(), [pattern(9)]);
}

#[test]
fn what_cannot_be_cut_is_told() {
    let cut = |message: &[u8], frame_bytes| {
        segment(message, &Layout { frame_bytes, ..CLASSIC }, &mut |_| panic!("no frame can come")).unwrap_err()
    };
    assert_eq!(cut(&[], 8), SegmentError::Empty);
    for frame_bytes in [0, 7, 9, 65, 1000] {
        assert_eq!(cut(&[1], frame_bytes), SegmentError::FrameBytes(frame_bytes));
    }
}

/// The bytes of a message are lent out of the frame or out of the one buffer, not copied: the next message stands at the same place.
#[test]
fn buffers_are_used_again() {
    let frames = cut(&pattern(100), &CLASSIC);
    let mut reassembler = Reassembler::new();
    let mut places = Vec::new();
    for frame in frames.iter().chain(&frames) {
        reassembler.feed(&Rules::default(), None, 1, frame, &mut |event| {
            if let Event::Message(message) = event {
                places.push(message.bytes.as_ptr());
            }
        });
    }
    assert_eq!(places.len(), 2);
    assert_eq!(places[0], places[1]);
}
