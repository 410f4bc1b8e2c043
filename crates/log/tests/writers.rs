//! What is written is read back equal; the bytes are always the same.

mod common;

use common::{Kept, bytes, read};
use proptest::prelude::*;
use wirelore_bits::payload_lengths::can_fd_length;
use wirelore_log::write::PcapngWriter;
use wirelore_log::{Channel, Frame, Kind, Medium, PlaceInLog};

const CHANNELS: [&str; 3] = ["drive", "", "body, \"left\""];

fn as_pcapng(frames: &[Kept]) -> Vec<u8> {
    let mut log = PcapngWriter::new(Vec::new()).expect("memory");
    for name in CHANNELS {
        log.add_channel(name).expect("memory");
    }
    frames.iter().for_each(|frame| log.write(&frame.view()).expect("is a frame"));
    log.finish().expect("memory")
}

/// Any frame that can exist.
fn any_frame() -> impl Strategy<Value = Kept> {
    let payload = proptest::collection::vec(any::<u8>(), 64);
    let flags = any::<[bool; 4]>();
    (0..i64::MAX, 0..3_u16, 0..0x2000_0000_u32, 0..3_u8, 0..16_u8, flags, payload).prop_map(
        |(time_ns, channel, id, kind, dlc, [extended, fd, bit_rate_switch, error_state], mut payload)| {
            let kind = [Kind::Data, Kind::Remote, Kind::Error][usize::from(kind)];
            let fd = fd && kind == Kind::Data;
            let code = if kind == Kind::Data { dlc } else { dlc.min(8) };
            let length = usize::from(can_fd_length(code));
            payload.truncate(if kind == Kind::Remote {
                0
            } else if fd {
                length
            } else {
                length.min(8)
            });
            Kept {
                time_ns: Some(time_ns),
                channel: Channel(channel),
                id: if extended { id } else { id & 0x7FF },
                extended,
                kind,
                fd,
                bit_rate_switch: fd && bit_rate_switch,
                error_state: fd && error_state,
                dlc: Some(code),
                medium: Medium::Can,
                payload,
                place: PlaceInLog::Line(0),
            }
        },
    )
}

proptest! {
    #![proptest_config(ProptestConfig { failure_persistence: None, ..ProptestConfig::default() })]

    #[test]
    fn frames_survive(frames in proptest::collection::vec(any_frame(), 0..40)) {
        let file = as_pcapng(&frames);
        let log = read(&file);
        prop_assert_eq!((log.report.damaged, &log.report.lost_tail), (0, &None), "{:?}", log.report.damage);
        prop_assert_eq!(log.channels, CHANNELS);
        prop_assert_eq!(log.frames.into_iter().map(Kept::unplaced).collect::<Vec<_>>(), &frames[..]);
        prop_assert_eq!(as_pcapng(&frames), file);
    }
}

#[test]
fn the_published_example_is_written_byte_for_byte() {
    // Source: check bytes from draft-ietf-opsawg-pcapng and the LINKTYPE 227 page.
    let mut log = PcapngWriter::new(Vec::new()).expect("memory");
    let channel = log.add_channel("").expect("memory");
    log.write(&Frame::data(Some(1_700_000_000_250_000_000), channel, 0x123, &[0x11, 0x22, 0x33])).expect("is a frame");
    let wanted = bytes(
        "0A 0D 0D 0A 1C 00 00 00 4D 3C 2B 1A 01 00 00 00 FF FF FF FF FF FF FF FF 1C 00 00 00
         01 00 00 00 20 00 00 00 E3 00 00 00 00 00 00 00 09 00 01 00 09 00 00 00 00 00 00 00 20 00 00 00
         06 00 00 00 2C 00 00 00 00 00 00 00 FE 9C 97 17 80 B2 10 45 0B 00 00 00 0B 00 00 00
         00 00 01 23 03 00 00 00 11 22 33 00 2C 00 00 00",
    );
    assert_eq!(log.finish().expect("memory"), wanted);
}

#[test]
fn a_frame_without_a_time_stays_without() {
    let frame = Frame::data(None, Channel(0), 0x7FF, &[1]);
    let frames = [Kept::from(frame)];
    assert_eq!(read(as_pcapng(&frames)).frames[0].time_ns, None);
}

#[test]
fn frames_that_cannot_exist_are_refused() {
    let good = Frame::data(Some(0), Channel(0), 0x123, &[0; 8]);
    for (frame, words) in [
        (Frame { channel: Channel(3), ..good }, "its channel is 3, and 3 were added before"),
        (Frame { id: 0x800, ..good }, "its identifier 800 is larger than 7FF"),
        (Frame { id: 0x2000_0000, extended: true, ..good }, "larger than 1FFFFFFF"),
        (Frame { payload: &[0; 9], ..good }, "it has 9 data bytes"),
        (Frame { payload: &[0; 9], fd: true, ..good }, "it has 9 data bytes"),
        (Frame { kind: Kind::Remote, ..good }, "a remote frame has no data"),
        (Frame { time_ns: Some(-1), ..good }, "its time lies before 1970"),
        (Frame { time_ns: None, channel: Channel(1), ..good }, "it has no time"),
    ] {
        let mut log = PcapngWriter::new(Vec::new()).expect("memory");
        for name in CHANNELS {
            log.add_channel(name).expect("memory");
        }
        log.write(&good).expect("is a frame");
        let error = log.write(&frame).expect_err(words).to_string();
        assert!(error.starts_with("cannot write frame 2 of the log: ") && error.contains(words), "{error}");
    }
}
