//! The frames of the example.

use wirelore_bits::e2e::{DataId, Profile};
use wirelore_bits::{Affine, Field, NumberKind, Ratio};
use wirelore_model::*;

use super::{bits, decimal, field, milliseconds, number, place, signal, word};

pub(super) fn speeds() -> Frame {
    let can = |first, last, extended| Identifier::Can { first, last, extended };
    Frame {
        seen_on: vec![
            Appearance { network: NetworkId(0), identifier: can(0x1B4, 0x1B4, false), via: None },
            Appearance {
                network: NetworkId(1),
                identifier: can(0x18FF_0000, 0x18FF_00FF, true),
                via: Some(RouteId(0)),
            },
        ],
        sending: Sending {
            every: Some(Period { shortest: milliseconds(10), longest: milliseconds(40) }),
            faster: Some(FasterWhile {
                every: Period { shortest: milliseconds(5), longest: milliseconds(5) },
                test: Test { selector: SignalId(3), values: vec![RawSpan::single(number(1))] },
            }),
            on_change: true,
            on_request: true,
            apart_at_least: Some(milliseconds(5)),
            apart_at_most: Some(milliseconds(1000)),
            jitter: Some(milliseconds(2)),
            timeout: Some(milliseconds(100)),
        },
        unknown: vec![field((2, 7), (2, 0))],
        unused: vec![field((3, 7), (3, 5))],
        ..frame("speeds", 8, vec![front_left(), alive(), check(), active()])
    }
}

fn front_left() -> Signal {
    Signal {
        label: Label {
            title: Some("Front left".into()),
            note: Some("From the hub sensor.\nIn two lines.".into()),
            called: Some("WS_FL".into()),
            certainty: Some(Certainty { grade: Grade::Confirmed, evidence: Some("turned the wheel".into()) }),
            ..Label::named("front_left")
        },
        scaling: Scaling::Affine(Affine::new(decimal("0.05"), decimal("-1.5")).expect("it fits")),
        unit: Unit::known("km/h"),
        range: Some(Box::new(ValueRange { low: decimal("0"), high: decimal("300.5") })),
        absent: vec![RawSpan { first: bits(0x1FF0), last: bits(0x1FFE) }],
        fault: vec![RawSpan::single(number(0x1FFF))],
        ..signal("front_left", field((1, 4), (0, 0)), NumberKind::Unsigned)
    }
}

fn alive() -> Signal {
    let counter = Role::Counter(Counter { low: 0, high: 14, step: 1 });
    Signal {
        role: counter,
        absent: vec![RawSpan::single(number(15))],
        ..signal("alive", field((6, 7), (6, 4)), NumberKind::Unsigned)
    }
}

fn check() -> Signal {
    let checksum = Checksum {
        algorithm: ChecksumAlgorithm::Crc8SaeJ1850,
        over: vec![ByteSpan { first: 0, last: Some(6) }],
        start: Some(0xFF),
        first: vec![MixedByte::Byte(0x12), MixedByte::Identifier(1)],
        then: vec![MixedByte::Signal(SignalId(1))],
    };
    Signal { role: Role::Checksum(Box::new(checksum)), ..signal("check", field((7, 7), (7, 0)), NumberKind::Unsigned) }
}

fn active() -> Signal {
    let own =
        vec![word(number(0), number(0), "off", Meaning::Reading), word(number(1), number(1), "on", Meaning::Reading)];
    Signal { states: Some(States::Own(own)), ..signal("active", field((6, 0), (6, 0)), NumberKind::Unsigned) }
}

/// A frame with pages: 0 and 1 form a switch on `page`, 2 lies inside 0, 3 is the `otherwise` page of the switch of 2.
pub(super) fn request() -> Frame {
    let on_page = |page, signal| Signal { page: Some(PageId(page)), ..signal };
    let curve = Curve {
        points: [(0, "-40"), (128, "21.5"), (255, "150")]
            .map(|(raw, value)| CurvePoint { raw, value: decimal(value) })
            .to_vec(),
    };
    let split = Field::of(&[place((5, 2), (5, 0)), place((4, 7), (3, 0))]).expect("disjoint pieces");
    Frame {
        optional: true,
        pages: vec![
            page(None, 0, Some((1, vec![RawSpan::single(number(1))]))),
            Page {
                length: Some(LengthRange { min: 2, max: 12 }),
                ..page(None, 0, Some((1, vec![RawSpan { first: number(4), last: number(6) }])))
            },
            Page {
                every: Some(Period { shortest: milliseconds(20), longest: milliseconds(20) }),
                ..page(Some(0), 1, Some((2, vec![RawSpan::single(bits(0x2))])))
            },
            page(Some(0), 1, None),
            Page { element: Some(Element { number: 1, most: 2, reaches: 6 }), ..page(None, 2, None) },
            Page { rows_from: Some(20), ..page(None, 3, None) },
        ],
        ..frame(
            "request",
            20,
            vec![
                Signal {
                    scaling: Scaling::Affine(
                        Affine::new(Ratio::new(1, 3).expect("a third"), Ratio::ZERO).expect("it fits"),
                    ),
                    unit: Some(Unit::Text("steps".into())),
                    ..signal("torque", field((0, 7), (1, 0)), NumberKind::Signed)
                },
                Signal { shown: Shown::Hexadecimal, ..signal("page", field((2, 7), (2, 0)), NumberKind::Unsigned) },
                on_page(
                    0,
                    Signal {
                        states: Some(States::Table(StatesId(0))),
                        ..signal("gear", field((3, 3), (3, 0)), NumberKind::Unsigned)
                    },
                ),
                on_page(
                    1,
                    Signal {
                        scaling: Scaling::Curve(curve),
                        unit: Unit::known("°C"),
                        ..signal("value", field((3, 7), (3, 0)), NumberKind::Unsigned)
                    },
                ),
                on_page(2, signal("value", field((4, 7), (7, 0)), NumberKind::Float)),
                on_page(3, signal("value", split, NumberKind::SignMagnitude)),
                on_page(1, signal("cell[3]", field((4, 7), (4, 0)), NumberKind::Bcd)),
                on_page(
                    1,
                    Signal {
                        content: Content::Bytes { bytes: ByteSpan { first: 5, last: None }, size: None },
                        ..signal("rest", field((0, 0), (0, 0)), NumberKind::Unsigned)
                    },
                ),
                text("maker", 8, Charset::Ascii),
                Signal {
                    content: Content::Text {
                        bytes: ByteSpan { first: 12, last: Some(15) },
                        charset: Charset::Latin1,
                        size: Some(SignalId(1)),
                    },
                    ..text("place", 12, Charset::Latin1)
                },
                text("driver", 16, Charset::Utf8),
                on_page(
                    0,
                    Signal {
                        scaling: Scaling::TroubleCode,
                        ..signal("code", field((7, 7), (8, 0)), NumberKind::Unsigned)
                    },
                ),
            ],
        )
    }
}

pub(super) fn group() -> Frame {
    let label =
        |name: &str, grade| Label { certainty: Some(Certainty { grade, evidence: None }), ..Label::named(name) };
    let graded = [Grade::Likely, Grade::Guessed, Grade::Measured, Grade::Document].into_iter().zip(0_u32..);
    let signals = graded.map(|(grade, byte)| Signal {
        label: label(&format!("grade_{byte}"), grade),
        ..signal("", field((byte, 7), (byte, 0)), NumberKind::Unsigned)
    });
    let sum = Checksum {
        algorithm: ChecksumAlgorithm::Sum8,
        over: vec![ByteSpan { first: 0, last: Some(6) }],
        start: None,
        first: vec![],
        then: vec![],
    };
    let sum =
        Signal { role: Role::Checksum(Box::new(sum)), ..signal("sum", field((7, 7), (7, 0)), NumberKind::Unsigned) };
    Frame {
        seen_on: vec![Appearance {
            network: NetworkId(0),
            identifier: Identifier::Pgn { pgn: 65_265, sources: vec![0x0B, 0x31], priority: Some(6) },
            via: None,
        }],
        length: None,
        ..frame("group", 8, signals.chain([sum]).collect())
    }
}

/// Two protected frames: a profile with one data id, and one with a list.
pub(super) fn protected() -> [Frame; 2] {
    let one = Protection {
        profile: Profile::P04,
        data_id: DataId::One(0x0A0B_0C0D),
        header: 2,
        over: ByteSpan { first: 1, last: Some(15) },
        most_rise: 3,
    };
    let listed = Protection {
        profile: Profile::P22,
        data_id: DataId::List([1, 2, 3, 4, 5, 6, 7, 8, 9, 10, 11, 12, 13, 14, 15, 16]),
        header: 0,
        over: ByteSpan { first: 0, last: None },
        most_rise: 1,
    };
    let own_crc = Checksum {
        algorithm: ChecksumAlgorithm::Crc(CrcRule { width: 16, poly: 0x8BB7, start: 0, xor: 0, reflected: false }),
        over: vec![ByteSpan { first: 0, last: Some(5) }],
        start: None,
        first: vec![],
        then: vec![],
    };
    let own_crc = Signal {
        role: Role::Checksum(Box::new(own_crc)),
        ..signal("own_crc", field((6, 7), (7, 0)), NumberKind::Unsigned)
    };
    let protected = |rule: Protection, field| Signal {
        role: Role::Protection(Box::new(rule)),
        ..signal("protection", field, NumberKind::Unsigned)
    };
    [
        frame("protected", 16, vec![protected(one, field((4, 7), (5, 0)))]),
        frame("listed", 8, vec![protected(listed, field((1, 3), (1, 0))), own_crc]),
    ]
}

/// A frame for each way in which the other networks recognise theirs. (Networks stand in the order of [`NetworkKind::ALL`].)
pub(super) fn of_other_networks() -> Vec<Frame> {
    let slot = |slot, channels| Identifier::FlexRay { slot, first_cycle: 1, repetition: 4, channels };
    let port = |protocol| Identifier::Port { protocol, port: 41_200 };
    let identifiers = [
        (2, Identifier::Xl { acceptance: 0x1122_3344, priority: Some(0x123) }),
        (2, Identifier::Xl { acceptance: 0x1122_3345, priority: None }),
        (3, lin(0x23, LinChecksum::Enhanced, &[])),
        (4, Identifier::Telegram { source: Some(0xF1), target: Some(0x10), starts: vec![] }),
        (5, Identifier::Telegram { source: None, target: None, starts: vec![0x2C, 0x06] }),
        (6, slot(42, FlexRayChannels::A)),
        (6, slot(43, FlexRayChannels::B)),
        (6, slot(44, FlexRayChannels::Both)),
        (7, Identifier::Most { block: 0x22, instance: Some(1), function: 0x0D2, operation: Some(0xC) }),
        (7, Identifier::Most { block: 0x22, instance: None, function: 0x0D3, operation: None }),
        (8, Identifier::SomeIp { service: 0x4A10, method: 0x8001, message_type: Some(2) }),
        (8, Identifier::SomeIp { service: 0x4A10, method: 1, message_type: None }),
        (8, port(PortProtocol::Udp)),
        (8, port(PortProtocol::Tcp)),
        (8, Identifier::DoIp { payload_type: 0x8001, source: Some(0x0E00), target: Some(0x1001) }),
        (8, Identifier::DoIp { payload_type: 0x8002, source: None, target: None }),
        (3, lin(0x24, LinChecksum::Classic, &[5])),
    ];
    let made = identifiers.into_iter().zip(1..).map(|((network, identifier), number): (_, u32)| Frame {
        seen_on: vec![Appearance { network: NetworkId(network), identifier, via: None }],
        ..frame(&format!("other_{number}"), 8, vec![])
    });
    made.chain(carried()).collect()
}

fn carried() -> impl Iterator<Item = Frame> {
    let transports = [Transport::IsoTp, Transport::IsoTpExtended, Transport::IsoTpMixed, Transport::J1939Tp];
    transports.into_iter().zip(1..).map(|(transport, number): (_, u32)| {
        let identifier = match transport {
            Transport::J1939Tp => Identifier::Pgn { pgn: 65_226, sources: vec![], priority: None },
            _ => Identifier::Can { first: 0x700 + number, last: 0x700 + number, extended: false },
        };
        Frame {
            seen_on: vec![Appearance { network: NetworkId(0), identifier, via: None }],
            carried: Some(transport),
            length: Some(LengthRange { min: 2, max: 1785 }),
            ..frame(&format!("carried_{number}"), 0, vec![])
        }
    })
}

fn lin(id: u8, checksum: LinChecksum, stands_for: &[u32]) -> Identifier {
    Identifier::Lin { id, checksum, stands_for: stands_for.iter().copied().map(FrameId).collect() }
}

fn frame(name: &str, length: u32, signals: Vec<Signal>) -> Frame {
    Frame {
        label: Label::named(name),
        seen_on: vec![Appearance {
            network: NetworkId(1),
            identifier: Identifier::Can { first: 0xC8, last: 0xC8, extended: false },
            via: None,
        }],
        carried: None,
        length: Some(LengthRange { min: length, max: length }),
        senders: vec![EcuId(0)],
        readers: vec![EcuId(1), EcuId(2)],
        sending: Sending::default(),
        optional: false,
        pages: vec![],
        signals,
        unknown: vec![],
        unused: vec![],
    }
}

fn page(parent: Option<u32>, switch: u32, test: Option<(u32, Vec<RawSpan>)>) -> Page {
    let tests = test.into_iter().map(|(selector, values)| Test { selector: SignalId(selector), values }).collect();
    Page { parent: parent.map(PageId), switch, tests, element: None, rows_from: None, every: None, length: None }
}

fn text(name: &str, first: u32, charset: Charset) -> Signal {
    let content = Content::Text { bytes: ByteSpan { first, last: Some(first + 3) }, charset, size: None };
    Signal { content, ..signal(name, field((0, 0), (0, 0)), NumberKind::Unsigned) }
}
