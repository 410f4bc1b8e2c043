//! What is written is read back equal; the bytes are always the same.

mod common;

use common::{Kept, bytes, read};
use proptest::prelude::*;
use wirelore_bits::payload_lengths::can_fd_length;
use wirelore_log::write::PcapngWriter;
use wirelore_log::{
    CanXl, Channel, Faults, FlexRay, Frame, Kind, Lin, LinChecksum, LinkType, Medium, Most, PlaceInLog,
};

const CHANNELS: [&str; 3] = ["drive", "", "body, \"left\""];

fn as_pcapng(frames: &[Kept]) -> Vec<u8> {
    let mut log = PcapngWriter::new(Vec::new()).expect("memory");
    for name in CHANNELS {
        log.add_channel(name, LinkType::Can).expect("memory");
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

/// The channels of the networks beside CAN, behind a first one of CAN.
const LINKS: [LinkType; 4] = [LinkType::Can, LinkType::Lin, LinkType::FlexRay, LinkType::Ethernet];

fn of_all_networks(frames: &[Kept]) -> Vec<u8> {
    let mut log = PcapngWriter::new(Vec::new()).expect("memory");
    for link in LINKS {
        log.add_channel("", link).expect("memory");
    }
    frames.iter().for_each(|frame| log.write(&frame.view()).expect("is a frame"));
    log.finish().expect("memory")
}

/// A frame that has only what all networks have.
fn kept(time_ns: i64, channel: u16, id: u32, kind: Kind, medium: Medium, payload: Vec<u8>) -> Kept {
    let frame = Frame { kind, medium, dlc: None, fd: false, ..Frame::data(Some(time_ns), Channel(channel), 0, &[]) };
    Kept { id, payload, ..Kept::from(frame) }
}

fn any_can_xl() -> impl Strategy<Value = Kept> {
    let payload = proptest::collection::vec(any::<u8>(), 1..=2048);
    (0..i64::MAX, 0..0x800_u32, any::<(u8, u8, u32)>(), any::<[bool; 2]>(), payload).prop_map(
        |(time_ns, id, (sdu_type, virtual_network, acceptance), [extended_content, request_substitution], payload)| {
            let xl = CanXl { sdu_type, virtual_network, acceptance, extended_content, request_substitution };
            kept(time_ns, 0, id, Kind::Data, Medium::CanXl(xl), payload)
        },
    )
}

/// Any LIN frame with what its recorder can say of it; its faults are all that it has.
fn any_lin() -> impl Strategy<Value = Kept> {
    let kind = prop::sample::select(vec![Kind::Data, Kind::Unanswered, Kind::Faulty, Kind::Signal]);
    let sum = prop::option::of(prop::sample::select(vec![LinChecksum::Classic, LinChecksum::Enhanced]));
    (0..i64::MAX, any::<u32>(), kind, sum, any::<u8>(), proptest::collection::vec(any::<u8>(), 1..=8)).prop_map(
        |(time_ns, code, kind, checksum_kind, any_byte, data)| {
            let id = code & 0x3F;
            let protected_id = id as u8 | LIN_PARITY[id as usize];
            let (wrong_sum, right_sum) =
                (any_byte, checksum_kind.map_or(any_byte.max(1), |kind| lin_sum(kind, protected_id, &data)));
            let fits_0 = [LinChecksum::Classic, LinChecksum::Enhanced]
                .map(|kind| lin_sum(kind, protected_id, &data))
                .contains(&0);
            let mut lin = Lin { protected_id: Some(protected_id), checksum_kind, ..Lin::default() };
            match kind {
                Kind::Signal => return kept(time_ns, 1, code, kind, Medium::Lin(Lin::default()), vec![]),
                Kind::Unanswered => return kept(time_ns, 1, id, kind, Medium::Lin(lin), vec![]),
                Kind::Faulty => {
                    lin.checksum = Some(wrong_sum);
                    lin.faults =
                        Faults::CHECKSUM | [Faults::FRAMING, Faults::OVERFLOW, Faults::IDENTIFIER][data.len() % 3];
                    if code & 0x40 != 0 {
                        lin.protected_id = Some(protected_id ^ 0x80);
                        lin.faults |= Faults::PARITY;
                    }
                }
                // Recorders that do not tell the kind of the sum often do not tell the sum.
                _ if checksum_kind.is_none() && code & 0x80 != 0 && !fits_0 => {}
                _ => lin.checksum = Some(right_sum),
            }
            kept(time_ns, 1, id, kind, Medium::Lin(lin), data)
        },
    )
}

/// The parity bits of every identifier. Source: LIN 2.2A, section 2.3.1.3: P0 is ID0, ID1, ID2 and ID4 combined, P1 the complement of
/// ID1, ID3, ID4 and ID5 combined.
const LIN_PARITY: [u8; 64] = {
    let mut parity = [0; 64];
    let mut id = 0_u8;
    while id < 64 {
        let even = (id & 0b01_0111).count_ones() as u8 & 1;
        let odd = 1 - ((id & 0b11_1010).count_ones() as u8 & 1);
        parity[id as usize] = even << 6 | odd << 7;
        id += 1;
    }
    parity
};

/// The checksum by its rule: LIN 2.2A, section 2.3.1.5: the sum with 255 taken away whenever it reaches 256, inverted.
fn lin_sum(kind: LinChecksum, protected_id: u8, data: &[u8]) -> u8 {
    let first = if kind == LinChecksum::Enhanced { u32::from(protected_id) } else { 0 };
    let sum = data.iter().fold(first, |sum, &byte| {
        let sum = sum + u32::from(byte);
        if sum >= 256 { sum - 255 } else { sum }
    });
    !(sum as u8)
}

fn any_flexray() -> impl Strategy<Value = Kept> {
    let kind = prop::sample::select(vec![Kind::Data, Kind::Null, Kind::Faulty, Kind::Signal]);
    let payload = (0..=127_usize).prop_flat_map(|words| proptest::collection::vec(any::<u8>(), 2 * words));
    (0..i64::MAX, 1..=2047_u32, kind, 0..64_u8, any::<[bool; 4]>(), 0..0x800_u16, payload).prop_map(
        |(time_ns, id, kind, cycle, [on_b, preamble, sync, startup], crc, payload)| {
            if kind == Kind::Signal {
                let medium = Medium::FlexRay(FlexRay { on_b, ..FlexRay::default() });
                return kept(time_ns, 2, id & 0x7F, kind, medium, vec![]);
            }
            let mut flexray = FlexRay { cycle, on_b, preamble, sync, startup, ..FlexRay::default() };
            if kind == Kind::Faulty {
                flexray.header_crc = Some(crc);
                flexray.faults = Faults::HEADER_CRC
                    | [Faults::FRAME_CRC, Faults::FRAME_END, Faults::CODING, Faults::FRAME_START]
                        [usize::from(cycle % 4)];
            }
            kept(time_ns, 2, id, kind, Medium::FlexRay(flexray), payload)
        },
    )
}

fn any_ethernet() -> impl Strategy<Value = Kept> {
    let payload = proptest::collection::vec(any::<u8>(), 14..=1600);
    (0..i64::MAX, payload).prop_map(|(time_ns, payload)| kept(time_ns, 3, 0, Kind::Data, Medium::Ethernet, payload))
}

/// The header's check sequence where the frame did not tell it: it was worked out while writing.
fn without_worked_out_crc(mut frame: Kept) -> Kept {
    if let Medium::FlexRay(flexray) = &mut frame.medium
        && frame.kind != Kind::Faulty
    {
        flexray.header_crc = None;
    }
    frame.unplaced()
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

    #[test]
    fn frames_of_all_networks_survive(
        frames in proptest::collection::vec(prop_oneof![any_can_xl(), any_lin(), any_flexray(), any_ethernet()], 0..40)
    ) {
        let file = of_all_networks(&frames);
        let log = read(&file);
        prop_assert_eq!((log.report.damaged, &log.report.lost_tail), (0, &None), "{:?}", log.report.damage);
        let as_read = of_all_networks(&log.frames);
        let given: Vec<Kept> = log.frames.into_iter().map(without_worked_out_crc).collect();
        prop_assert_eq!(given, &frames[..]);
        prop_assert_eq!(as_read, file);
    }
}

#[test]
fn the_registry_examples_are_written_byte_for_byte() {
    // Sources: public link-type registry, LINKTYPE 212, 210 and 227; data and checksum of the LIN frame: LIN 2.2A, section 2.8.3, and
    // documentation that quotes it; header of the FlexRay frame: FlexRay 2.1A (from memory).
    let lin = Lin { checksum_kind: Some(LinChecksum::Enhanced), ..Lin::default() };
    let asleep = Medium::Lin(Lin::default());
    let flexray = Medium::FlexRay(FlexRay { cycle: 5, ..FlexRay::default() });
    let symbol = Medium::FlexRay(FlexRay { on_b: true, ..FlexRay::default() });
    let xl = CanXl {
        sdu_type: 3,
        virtual_network: 0x2A,
        acceptance: 0x1122_3344,
        extended_content: true,
        ..CanXl::default()
    };
    for (frame, packet) in [
        (kept(0, 1, 0x11, Kind::Data, Medium::Lin(lin), bytes("4A 55 93 E5")), "01 00 00 00 42 11 D5 00 4A 55 93 E5"),
        (kept(0, 1, 0x10, Kind::Unanswered, Medium::Lin(lin), vec![]), "01 00 00 00 02 50 00 01 00 00 00 00"),
        (kept(0, 1, 0xB0B0_0004, Kind::Signal, asleep, vec![]), "01 00 00 00 4C 00 00 00 B0 B0 00 04"),
        (
            kept(0, 2, 10, Kind::Data, flexray, bytes("00 01 02 03 04 05 06 07")),
            "01 00 20 0A 09 4F 05 00 01 02 03 04 05 06 07",
        ),
        (kept(0, 2, 30, Kind::Signal, symbol, vec![]), "82 1E"),
        (
            kept(0, 0, 0x123, Kind::Data, Medium::CanXl(xl), bytes("AA BB CC DD")),
            "00 2A 01 23 81 03 04 00 44 33 22 11 AA BB CC DD",
        ),
    ] {
        let packet = bytes(packet);
        let file = of_all_networks(&[frame]);
        let padded = packet.len().next_multiple_of(4);
        let written = &file[file.len() - 4 - padded..][..packet.len()];
        assert_eq!(written, packet);
    }
}

#[test]
fn frames_of_other_networks_that_cannot_exist_are_refused() {
    let lin = |lin| Medium::Lin(lin);
    let sum = Lin { checksum: Some(0xD4), checksum_kind: Some(LinChecksum::Enhanced), ..Lin::default() };
    let parity = Lin { protected_id: Some(0x91), ..Lin::default() };
    let faulty = Lin { faults: Faults::FRAMING, ..Lin::default() };
    let foreign = Lin { faults: Faults::HEADER_CRC, ..Lin::default() };
    let flexray = |flexray| Medium::FlexRay(flexray);
    let (crc, late) =
        (FlexRay { header_crc: Some(1), ..FlexRay::default() }, FlexRay { cycle: 64, ..FlexRay::default() });
    let (data, four) = (Kind::Data, || vec![0x4A, 0x55, 0x93, 0xE5]);
    let zero = Lin { checksum: Some(0), ..Lin::default() };
    for (frame, words) in [
        (kept(0, 1, 0x123, data, Medium::Can, four()), "it is a CAN frame, and its channel is one of LIN"),
        (kept(0, 0, 0x11, data, lin(Lin::default()), four()), "it is a LIN frame, and its channel is one of CAN"),
        (kept(0, 0, 0, data, Medium::Serial, four()), "it is of a single-wire network, for which no layout"),
        (kept(0, 3, 0, data, Medium::Most(Most::default()), four()), "it is of MOST, for which no layout"),
        (kept(0, 0, 1, data, Medium::CanXl(CanXl::default()), vec![]), "it has 0 data bytes"),
        (kept(0, 0, 0x800, data, Medium::CanXl(CanXl::default()), four()), "larger than 7FF"),
        (kept(0, 1, 0x40, data, lin(Lin::default()), four()), "its identifier 40 is larger than 3F"),
        (kept(0, 1, 0x11, data, lin(Lin::default()), vec![0; 9]), "it has 9 data bytes"),
        (kept(0, 1, 0x11, data, lin(Lin::default()), vec![]), "it has 0 data bytes"),
        (kept(0, 1, 0x11, Kind::Unanswered, lin(Lin::default()), four()), "a header that nobody answered has no data"),
        (kept(0, 1, 0x11, Kind::Null, lin(Lin::default()), four()), "a LIN frame is never of the kind Null"),
        (kept(0, 1, 0x11, data, lin(sum), four()), "its checksum D4 is wrong, and its faults do not say so"),
        (kept(0, 1, 0x11, data, lin(zero), four()), "its checksum 00 fits as neither kind"),
        (kept(0, 1, 0x11, data, lin(parity), four()), "the parity of the protected identifier 91 is wrong"),
        (
            kept(0, 1, 0x12, data, lin(parity), four()),
            "its identifier 12 is not the one of the protected identifier 91",
        ),
        (kept(0, 1, 0x11, data, lin(faulty), four()), "it has faults (framing), and its kind does not say so"),
        (kept(0, 1, 0x11, Kind::Faulty, lin(Lin::default()), four()), "it is faulty, and none of its faults is told"),
        (kept(0, 1, 0x11, Kind::Faulty, lin(foreign), four()), "a LIN frame has no such faults (header CRC)"),
        (kept(0, 1, 1, Kind::Signal, lin(Lin::default()), four()), "an event has no data but its code"),
        (kept(0, 2, 0, data, flexray(FlexRay::default()), four()), "its slot is 0"),
        (kept(0, 2, 2048, data, flexray(FlexRay::default()), four()), "its slot is 2048"),
        (kept(0, 2, 1, data, flexray(late), four()), "its cycle is 64"),
        (kept(0, 2, 1, data, flexray(crc), four()), "its header CRC 001 is wrong"),
        (kept(0, 2, 1, data, flexray(FlexRay::default()), vec![0; 3]), "it has 3 data bytes"),
        (kept(0, 2, 128, Kind::Signal, flexray(FlexRay::default()), vec![]), "a symbol has 0 to 127 bits"),
        (kept(0, 3, 0, data, Medium::Ethernet, vec![0; 13]), "it has 13 data bytes"),
        (kept(0, 3, 1, data, Medium::Ethernet, vec![0; 60]), "its identifier 1 is larger than 0"),
        (Kept { extended: true, ..kept(0, 3, 0, data, Medium::Ethernet, vec![0; 60]) }, "has no 29-bit identifier"),
    ] {
        let mut log = PcapngWriter::new(Vec::new()).expect("memory");
        for link in LINKS {
            log.add_channel("", link).expect("memory");
        }
        let error = log.write(&frame.view()).expect_err(words).to_string();
        assert!(error.starts_with("cannot write frame 1 of the log: ") && error.contains(words), "{error}");
    }
}

#[test]
fn channels_that_would_not_be_read_back_are_refused() {
    let mut log = PcapngWriter::new(Vec::new()).expect("memory");
    for name in ["x".repeat(129), "drive\0left".to_owned()] {
        let error = log.add_channel(&name, LinkType::Can).expect_err("it would be cut").to_string();
        assert!(error.contains("the name of channel 0 has more than 128 bytes or a zero among them"), "{error}");
    }
    for _ in 0..1024 {
        log.add_channel(&"x".repeat(128), LinkType::Can).expect("memory");
    }
    let error = log.add_channel("", LinkType::Can).expect_err("one too many").to_string();
    assert!(error.contains("there are 1024 channels already"), "{error}");
    let longest = kept(0, 1023, 0, Kind::Data, Medium::Can, vec![1]);
    log.write(&longest.view()).expect("is a frame");
    let read_back = read(log.finish().expect("memory"));
    assert_eq!((read_back.channels.len(), read_back.channels[0].len(), read_back.frames.len()), (1024, 128, 1));
}

#[test]
fn the_published_example_is_written_byte_for_byte() {
    // Source: check bytes from draft-ietf-opsawg-pcapng and the LINKTYPE 227 page.
    let mut log = PcapngWriter::new(Vec::new()).expect("memory");
    let channel = log.add_channel("", LinkType::Can).expect("memory");
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
        (Frame { dlc: Some(5), ..good }, "its data length code 5 is not one of 8 data bytes"),
        (Frame { dlc: Some(16), ..good }, "its data length code 16 is not one of 8 data bytes"),
        (Frame { bit_rate_switch: true, ..good }, "only CAN FD frames have a bit rate switch or an error state"),
        (Frame { error_state: true, ..good }, "only CAN FD frames have a bit rate switch or an error state"),
        (Frame { kind: Kind::Remote, ..good }, "a remote frame has no data"),
        (Frame { time_ns: Some(-1), ..good }, "its time lies before 1970"),
        (Frame { time_ns: None, channel: Channel(1), ..good }, "it has no time"),
    ] {
        let mut log = PcapngWriter::new(Vec::new()).expect("memory");
        for name in CHANNELS {
            log.add_channel(name, LinkType::Can).expect("memory");
        }
        log.write(&good).expect("is a frame");
        let error = log.write(&frame).expect_err(words).to_string();
        assert!(error.starts_with("cannot write frame 2 of the log: ") && error.contains(words), "{error}");
    }
}
