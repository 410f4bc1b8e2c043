//! Lines of LIN, FlexRay, MOST and single-wire networks: headings, told columns, patterns, and what was damaged on the wire.
//!
//! The lines are our own; that such lines are common is common practice, no source. Values from standards say where they are from.

mod common;

use common::{Read, damage, read, read_with, refusal};
use wirelore_log::{Channel, ColumnMap, Faults, FlexRay, Kind, Lin, LinChecksum, LinePattern, Medium, Most, Options};

fn columns(map: &str) -> Options {
    Options { columns: Some(ColumnMap::parse(map).unwrap_or_else(|error| panic!("{error}"))), ..Options::default() }
}

fn pattern(text: &str) -> Options {
    Options { line: Some(LinePattern::parse(text).unwrap_or_else(|error| panic!("{error}"))), ..Options::default() }
}

fn read_as(text: &str, options: &Options) -> Read {
    read_with(text, options).unwrap_or_else(|error| panic!("{error}"))
}

/// Identifier, kind, faults and data of each frame.
fn brief(log: &Read) -> Vec<(u32, Kind, Faults, &[u8])> {
    log.frames.iter().map(|it| (it.id, it.kind, it.medium.faults(), &it.payload[..])).collect()
}

#[test]
fn lines_of_lin() {
    // Data and checksums: LIN 2.2A, section 2.8.3, and documentation that quotes it.
    let log = read("time_s,pid_hex,data_hex,checksum_hex\n0.1,11,4A5593E5,D5\n0.2,BF,4A5593E5,E6\n0.3,50,,\n");
    let data = &[0x4A, 0x55, 0x93, 0xE5][..];
    assert_eq!(damage(&log.report), [""; 0]);
    assert_eq!(
        brief(&log),
        [
            (0x11, Kind::Data, Faults::NONE, data),
            (0x3F, Kind::Data, Faults::NONE, data),
            (0x10, Kind::Unanswered, Faults::NONE, &[][..]),
        ]
    );
    let wanted = Lin { protected_id: Some(0x11), checksum: Some(0xD5), checksum_kind: None, faults: Faults::NONE };
    assert_eq!((log.frames[0].medium, log.frames[0].dlc, log.frames[0].extended), (Medium::Lin(wanted), None, false));
    assert_eq!(log.report.notes(), [""; 0]);
}

#[test]
fn what_is_wrong_with_lines_of_lin() {
    let text = "time_s,protected id,data,checksum,parity_ok,checksum_ok\n\
                1,91,4A5593E5,E6,,\n\
                2,11,4A5593E5,D4,,\n\
                3,11,4A5593E5,E6,1,enhanced\n\
                4,11,4A5593E5,E6,1,Classic\n\
                5,11,4A5593E5,,,\n\
                6,11,,D5,,\n\
                7,11,,,0,\n\
                8,,,,,\n\
                9,,01 02,,,\n\
                10,11,4A5593E5,D5,1,0\n\
                11,11,,,1,0\n\
                ,,,,,\n";
    let log = read(text);
    let (sum, data) = (Faults::CHECKSUM, &[0x4A, 0x55, 0x93, 0xE5][..]);
    assert_eq!(
        brief(&log),
        [
            (0x11, Kind::Faulty, Faults::PARITY, data),
            (0x11, Kind::Faulty, sum, data),
            (0x11, Kind::Faulty, sum, data),
            (0x11, Kind::Data, Faults::NONE, data),
            (0x11, Kind::Faulty, sum, data),
            (0x11, Kind::Faulty, sum, &[][..]),
            (0x11, Kind::Faulty, Faults::PARITY, &[][..]),
            (0, Kind::Faulty, Faults::IDENTIFIER, &[][..]),
            (0, Kind::Faulty, Faults::IDENTIFIER, &[1, 2][..]),
            (0x11, Kind::Faulty, sum, data),
            (0x11, Kind::Unanswered, Faults::NONE, &[][..]),
        ]
    );
    assert_eq!(log.report.damaged, 0);
    let Medium::Lin(lin) = log.frames[3].medium else { panic!("{:?}", log.frames[3]) };
    assert_eq!(lin.checksum_kind, Some(LinChecksum::Classic));
}

#[test]
fn lines_of_lin_that_cannot_be() {
    let log = read(
        "time_s,pid,id_hex,len,data,checksum\n0,11,12,4,4A5593E5,D5\n0,111,11,4,4A5593E5,D5\n0,11,11,9,010203040506070809,D5\n\
         0,11,11,4,4A5593,D5\n0,,40,4,4A5593E5,D5\n0,11,11,4,4A5593E5,D5\n0,11,11,4,,\n",
    );
    assert_eq!((log.frames.len(), log.frames[1].kind, log.report.damaged), (2, Kind::Unanswered, 5));
    assert_eq!(
        damage(&log.report),
        [
            "line 2: id \"12\" is not the one of the protected identifier \"11\"",
            "line 3: pid \"111\" is not a byte",
            "line 4: there are 9 data bytes, and a LIN frame has at most 8",
        ]
    );
}

#[test]
fn a_pid_beside_an_id_and_no_checksum_may_be_something_else() {
    let text = "time_s,id_hex,pid,data\n0,7E8,0C,04 41 0C 1A F8\n";
    let log = read(text);
    assert_eq!((log.frames[0].id, log.frames[0].medium), (0x7E8, Medium::Can));
    // Told, it is what it is told to be.
    let told = read_as("time_s,id_hex,pid,data\n0,11,11,4A\n0,7E8,,04\n", &columns("pid=pid"));
    assert!(matches!(told.frames[0].medium, Medium::Lin(_)));
    assert_eq!((told.frames[1].id, told.frames[1].medium), (0x7E8, Medium::Can));
}

#[test]
fn an_identifier_and_a_told_checksum_are_lin() {
    let log = read_as("time_s,id_dec,data,sum\n0,17,4A5593E5,D5\n0,17,,\n", &columns("checksum=sum"));
    assert_eq!((log.frames[0].id, log.frames[0].kind, log.frames[1].kind), (17, Kind::Data, Kind::Unanswered));
    let Medium::Lin(lin) = log.frames[0].medium else { panic!("{:?}", log.frames[0]) };
    assert_eq!((lin.protected_id, lin.checksum), (None, Some(0xD5)));
}

#[test]
fn lines_of_flexray() {
    let log = read(
        "time_s,bus,flexray_channel,slot,cycle,data\n0,chassis,B,10,5,0001020304050607\n0,chassis,a,2047,63,\n0,body,,0x0A,1,AABB\n",
    );
    assert_eq!(log.channels, ["chassis", "body"]);
    let wanted = FlexRay { cycle: 5, on_b: true, ..FlexRay::default() };
    let [first, second, third] = &log.frames[..] else { panic!("{log:?}") };
    assert_eq!((first.id, first.kind, first.medium), (10, Kind::Data, Medium::FlexRay(wanted)));
    assert_eq!((second.id, second.kind, second.payload.len()), (2047, Kind::Data, 0));
    assert_eq!((third.id, third.channel, &third.payload[..]), (10, Channel(1), &[0xAA, 0xBB][..]));
}

#[test]
fn what_lines_of_flexray_say_of_their_header() {
    // The order of the indicators: header of FlexRay 2.1A (from memory; ISO 17458-2 the same).
    let log = read(
        "time_s,frame_id,cycle,indicators_bin,payload,header_crc_ok,frame_crc_ok,kind\n\
         0,1,0,00111,AABB,1,1,\n0,1,0,00011,0000,1,1,\n0,1,0,01100,AABB,1,1,data\n0,1,0,00100,AABB,0,1,\n\
         0,1,0,00100,AABB,1,0,\n0,1,0,11,0000,0,0,\n0,1,0,,AABB,,,null\n",
    );
    let kinds: Vec<(Kind, Faults)> = log.frames.iter().map(|frame| (frame.kind, frame.medium.faults())).collect();
    assert_eq!(
        kinds,
        [
            (Kind::Data, Faults::NONE),
            (Kind::Null, Faults::NONE),
            (Kind::Data, Faults::NONE),
            (Kind::Faulty, Faults::HEADER_CRC),
            (Kind::Faulty, Faults::FRAME_CRC),
            (Kind::Faulty, Faults::HEADER_CRC | Faults::FRAME_CRC),
            (Kind::Null, Faults::NONE),
        ]
    );
    let Medium::FlexRay(first) = log.frames[0].medium else { panic!("{:?}", log.frames[0]) };
    assert!(first.sync && first.startup && !first.preamble);
    let Medium::FlexRay(third) = log.frames[2].medium else { panic!("{:?}", log.frames[2]) };
    assert!(third.preamble && !third.sync && !third.startup);
}

#[test]
fn a_column_channel_of_a_and_b_is_the_one_of_flexray() {
    let text = "time_s,channel,slot,cycle,data\n0,A,1,0,0102\n0,B,1,0,0102\n";
    let log = read(text);
    let sides: Vec<bool> =
        log.frames.iter().map(|frame| matches!(frame.medium, Medium::FlexRay(FlexRay { on_b: true, .. }))).collect();
    assert_eq!((sides, &log.channels[..]), (vec![false, true], &[String::new()][..]));
    assert_eq!(
        log.report.notes(),
        [
            "the column \"channel\" has only A and B, and is read as the channel of FlexRay; if it names what was recorded \
          from, say --columns 'channel=channel'"
        ]
    );
    assert_eq!(read_as(text, &columns("channel=channel")).channels, ["A", "B"]);
    assert!(read_as(text, &columns("flexray_channel=channel")).report.notes().is_empty());
    assert_eq!(read("time_s,channel,slot,cycle,data\n0,A,1,0,0102\n0,C,1,0,0102\n").channels, ["A", "C"]);
    // Behind the lines that were looked at, another name is damage and no channel.
    let long = format!("{text}{}0,C,1,0,0102\n", "0,A,1,0,0102\n".repeat(200_000));
    assert!(damage(&read(&long).report)[0].ends_with("flexray_channel \"C\" is not A or B"));
}

#[test]
fn lines_of_flexray_that_cannot_be() {
    let log = read("time_s,slot,cycle,data\n0,0,0,0102\n0,1,64,0102\n0,1,0,010203\n0,,0,0102\n0,1,,0102\n0,1,0,0102\n");
    assert_eq!((log.frames.len(), log.report.damaged), (1, 5));
    assert_eq!(
        damage(&log.report),
        [
            "line 2: slot \"0\" is not a slot, 1 to 2047",
            "line 3: cycle \"64\" is not a cycle, 0 to 63",
            "line 4: there are 3 data bytes, and a FlexRay frame has whole words of two, 254 at most",
        ]
    );
    let longest = read(format!("time_s,slot,cycle,data\n0,1,0,{}\n0,1,0,{}\n", "5A".repeat(254), "5A".repeat(256)));
    assert_eq!((longest.frames[0].payload.len(), longest.report.damaged), (254, 1));
}

#[test]
fn a_length_of_flexray_counts_bytes_or_the_words_of_its_header() {
    // The payload length of the header counts words of two bytes: FlexRay 2.1A, section 4.2.4 (from memory).
    let log = read("time_s,slot,cycle,length,data\n0,10,1,4,01020304\n0,10,2,2,01020304\n0,10,3,3,01020304\n");
    assert_eq!((log.frames.len(), log.report.damaged), (2, 1));
    assert!(damage(&log.report)[0].starts_with("line 4: "), "{:?}", damage(&log.report));
}

#[test]
fn a_cycle_without_a_slot_is_no_flexray() {
    let log = read("time_s,id_hex,cycle,data\n0,123,100,AA\n");
    assert_eq!((log.frames[0].id, log.frames[0].medium), (0x123, Medium::Can));
    let error = read_with("time_s,id_hex,cycle,data\n0,123,100,AA\n", &columns("cycle=cycle")).expect_err("no slot");
    assert!(
        error.to_string().contains("cycle is something of lines of FlexRay, which tell their slot and cycle"),
        "{error}"
    );
}

#[test]
fn messages_of_most() {
    // Recorded messages that are printed with their fields in public articles on MOST control messages; widths of the parts from memory
    // of the MOST Specification 3.0.
    let wanted = [(0x3102_201C, &[0, 0, 0, 0xBF, 0x68, 0][..]), (0x3102_C34C, &[2, 0, 1, 0][..])];
    for text in [
        "time_s,id,data\n0,31.02.201.C,000000BF6800\n0,31.2.C34.C,02000100\n",
        "time_s,fblock,inst,fkt,optype,data\n0,31,02,201,C,000000BF6800\n0,0x31,2,C34,C,02000100\n",
    ] {
        let log = read(text);
        let seen: Vec<(u32, &[u8])> = log.frames.iter().map(|frame| (frame.id, &frame.payload[..])).collect();
        assert_eq!(seen, wanted, "{text}");
        assert!(
            log.frames.iter().all(|frame| frame.medium == Medium::Most(Most::default()) && frame.kind == Kind::Data)
        );
    }
    // Parts of a message: the kinds of part that the same articles print; in one line nothing is said.
    for text in [
        "time_s,id,telid,data\n0,31.02.420.C,1,00\n0,31.02.C34.C,2,02\n0,31.02.201.C,0,00\n0,31.02.202.C,,00\n",
        "time_s,fblock,inst,fkt,optype,part,data\n0,31,2,420,C,1,00\n0,31,2,C34,C,2,02\n0,31,2,201,C,0,00\n0,31,2,202,C,,00\n",
    ] {
        let parts: Vec<Medium> = read(text).frames.iter().map(|frame| frame.medium).collect();
        assert_eq!(parts, [Some(1), Some(2), Some(0), None].map(|part| Medium::Most(Most { part })), "{text}");
    }
    // For frames of CAN the column means nothing.
    let can = read("time_s,id,part,data\n0,1B4,left,00\n");
    assert_eq!((can.frames.len(), can.frames[0].id, can.frames[0].medium), (1, 0x1B4, Medium::Can));
    let decimal = read_as(
        "time_s,fblock,inst,fkt,optype,data\n0,49,2,513,12,00\n",
        &columns("function_block=fblock:dec, instance=inst:dec, function=fkt:dec, operation=optype:dec"),
    );
    assert_eq!(decimal.frames[0].id, 0x3102_201C);
    let log = read(
        "time_s,id,data\n0,31.02.201.C,00\n0,31.02.2010.C,00\n0,31.02.C,00\n0,31.02.201.C.0,00\n0,G1.02.201.C,00\n",
    );
    assert_eq!((log.frames.len(), log.report.damaged), (1, 4));
    assert!(damage(&log.report)[0].contains("is not an identifier of MOST, such as 22.01.0D2.C"));
    // Messages may be longer than any frame of CAN.
    let long =
        read(format!("time_s,id,data\n0,31.02.201.C,{}\n0,31.02.201.C,{}\n", "5A".repeat(4096), "5A".repeat(4097)));
    assert_eq!((long.frames[0].payload.len(), long.report.damaged), (4096, 1));
}

#[test]
fn bytes_without_identifiers() {
    // A start of communication and its answer: ISO 14230-2 (from memory).
    let text = "time_s,data\n0.1,C1 33 F1 81 66\n0.2,83 F1 11 C1 EF 8F C4\n0.3,\n";
    let log = read(text);
    assert_eq!(log.frames[0].payload, [0xC1, 0x33, 0xF1, 0x81, 0x66]);
    assert_eq!((log.frames[1].payload.len(), log.frames[1].medium, log.frames[1].id), (7, Medium::Serial, 0));
    assert_eq!(damage(&log.report), ["line 4: data is empty"]);
    let note = "no column tells an id: the lines are read as bytes of a network without identifiers";
    assert!(log.report.notes().contains(&note.to_owned()));

    // Byte after byte, each with its time.
    let bytes = read("time_us,channel,data\n0,k,C1\n960,k,33\n1920,k,F1\n");
    let seen: Vec<(Option<i64>, &[u8])> = bytes.frames.iter().map(|it| (it.time_ns, &it.payload[..])).collect();
    assert_eq!(seen, [(Some(0), &[0xC1][..]), (Some(960_000), &[0x33]), (Some(1_920_000), &[0xF1])]);
    assert_eq!(bytes.channels, ["k"]);

    // A column that nobody knows may be the identifier: it is asked for.
    let error = refusal("time_s,Ident,data\n0,123,C1\n");
    assert!(error.contains("no column is known as the id") && error.contains("'skip=...'"), "{error}");
    let skipped = read_as("time_s,remark,data\n0,hello,C1\n", &columns("skip=remark"));
    assert_eq!((skipped.frames[0].medium, &skipped.frames[0].payload[..]), (Medium::Serial, &[0xC1][..]));
}

#[test]
fn one_text_may_hold_several_networks() {
    let log = read(
        "time_s,bus,id_hex,pid,checksum,slot,cycle,fblock,inst,fkt,op,data\n\
         0,drive,123,,,,,,,,,0102\n0,seat,11,11,D5,,,,,,,4A5593E5\n0,chassis,,,,7,3,,,,,AABB\n0,media,,,,,,22,01,0D2,C,05\n\
         0,seat,,,,,,,,,,\n",
    );
    let media: Vec<Medium> = log.frames.iter().map(|frame| frame.medium).collect();
    assert!(
        matches!(media[..], [Medium::Can, Medium::Lin(_), Medium::FlexRay(_), Medium::Most(_), Medium::Lin(_)]),
        "{media:?}"
    );
    assert_eq!(log.frames.iter().map(|frame| frame.id).collect::<Vec<_>>(), [0x123, 0x11, 7, 0x2201_0D2C, 0]);
    assert_eq!(log.channels, ["drive", "seat", "chassis", "media"]);
}

#[test]
fn patterns_of_other_networks() {
    let lin =
        read_as("0.5 seat 11 [4] 4A 55 93 E5 D5\n", &pattern("{time} {channel} {pid} [{length}] {data} {checksum}"));
    assert_eq!((lin.frames[0].id, lin.frames[0].kind, lin.frames[0].payload.len()), (0x11, Kind::Data, 4));
    let flexray = read_as("0.5;A;10;63;AABB\n", &pattern("{time};{flexray_channel};{slot};{cycle};{data}"));
    assert_eq!((flexray.frames[0].id, flexray.frames[0].kind), (10, Kind::Data));
    let hex = read_as("0A 3F AABB\n", &pattern("{slot:hex} {cycle:hex} {data}"));
    assert!(matches!(hex.frames[0].medium, Medium::FlexRay(FlexRay { cycle: 63, .. })), "{:?}", hex.frames[0]);
    let most = read_as("0.5 22.01.0D2.C AABB\n", &pattern("{time} {id} {data}"));
    assert_eq!((most.frames[0].id, most.frames[0].medium), (0x2201_0D2C, Medium::Most(Most::default())));
    let serial = read_as("0.5: C1 33 F1 81 66\n", &pattern("{time}: {data}"));
    assert_eq!((serial.frames[0].medium, serial.frames[0].payload.len()), (Medium::Serial, 5));
    for (text, words) in [
        ("{slot} {data}", "slot is something of lines of FlexRay"),
        ("{id} {parity_good} {data}", "parity_good is something of lines of LIN"),
        ("{function_block} {data}", "function_block is something of lines of MOST"),
        ("{pid}", "the pattern has no {data}"),
    ] {
        let error = LinePattern::parse(text).expect_err(text).to_string();
        assert!(error.contains(words), "{text}: {error}");
    }
}
