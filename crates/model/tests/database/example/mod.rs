//! A small description that has every variant of every data type at least once. The vehicle is invented.

mod frames;

use wirelore_bits::{BitPosition, Field, NumberKind, Place, Ratio};
use wirelore_model::*;

use frames::{group, of_other_networks, protected, request, speeds};

/// The whole description.
pub(crate) fn description() -> Description {
    Description {
        vehicle: Some(Vehicle {
            label: Label { title: Some("A vehicle that exists only here".into()), ..Label::named("trial") },
        }),
        networks: networks(),
        ecus: vec![
            ecu("brakes", &[(0, Some(0x0B)), (1, None), (6, None)], &[]),
            ecu("hub", &[(0, None), (1, None), (2, None), (7, None), (6, None)], &[2]),
            Ecu { optional: true, ..ecu("trailer", &[(1, None), (6, None)], &[]) },
        ],
        wires: vec![Wire {
            from: EcuId(0),
            to: vec![EcuId(1), EcuId(2)],
            what: "brake light switch, 12 V".into(),
            note: Some("a note".into()),
        }],
        states: vec![StateTable {
            label: Label::named("gear"),
            words: vec![
                word(number(0), number(0), "park", Meaning::Reading),
                StateWord {
                    title: Some("Forward gear".into()),
                    ..word(number(3), number(10), "forward", Meaning::Reading)
                },
                word(bits(0x0E), bits(0x0E), "broken", Meaning::Fault),
                word(bits(0x0F), bits(0x0F), "unknown", Meaning::Absent),
            ],
        }],
        frames: [speeds(), request(), group()].into_iter().chain(protected()).chain(of_other_networks()).collect(),
        routes: routes(),
        schedules: vec![schedule()],
    }
}

fn networks() -> Vec<Network> {
    let network = |name: &str, kind| Network {
        label: Label::named(name),
        kind,
        rate: Some(BitRate(500_000)),
        data_rate: None,
        telegram: None,
        flexray: None,
        terminators: Vec::new(),
        star: None,
    };
    let mut networks: Vec<_> =
        NetworkKind::ALL.iter().map(|kind| network(&format!("on_{}", kind.keyword()), *kind)).collect();
    networks[1].data_rate = Some(BitRate(2_000_000));
    networks[3].rate = None;
    networks[5].telegram = Some(Telegram {
        source_byte: Some(0),
        target_byte: Some(2),
        size: Some(TelegramSize { byte: 1, counts_from: 2 }),
        check: Some(TelegramCheck::Xor),
        gap: Some(milliseconds(20)),
    });
    let bare = Telegram { check: Some(TelegramCheck::Sum), ..Telegram::default() };
    networks.push(Network { telegram: Some(bare), ..network("bare", NetworkKind::Uart) });
    let unguarded = Telegram { source_byte: Some(0), ..Telegram::default() };
    networks.push(Network { telegram: Some(unguarded), ..network("unguarded", NetworkKind::Uart) });
    networks[6].flexray = Some(FlexRayTiming {
        cycle: Some(milliseconds(5)),
        cycles: 64,
        static_slots: Some(StaticSlots { count: 62, bytes: 32 }),
        last_dynamic_slot: Some(200),
    });
    networks[0].terminators = vec![
        Terminator { at: Fitted::Unit(EcuId(0)), ohms: Some(120) },
        Terminator { at: Fitted::Wiring("behind the dashboard".into()), ohms: None },
    ];
    networks[6].star = Some(ActiveStar { at: Fitted::Unit(EcuId(1)), branches: vec![vec![EcuId(0), EcuId(2)]] });
    networks
}

fn ecu(name: &str, on: &[(u32, Option<u8>)], leads: &[u32]) -> Ecu {
    let on = on.iter().map(|&(network, address)| Attachment {
        network: NetworkId(network),
        address,
        ring_position: (network == 7).then_some(3),
    });
    let on = on.collect();
    Ecu { label: Label::named(name), on, leads: leads.iter().copied().map(NetworkId).collect(), optional: false }
}

fn schedule() -> Schedule {
    let slot = |content, takes, every| Slot { content, takes, every };
    Schedule {
        label: Label::named("normal"),
        network: NetworkId(3),
        time_base: Some(milliseconds(5)),
        jitter: None,
        slots: vec![
            slot(SlotContent::Frame(FrameId(5)), Some(milliseconds(10)), None),
            slot(SlotContent::Sporadic(vec![FrameId(5), FrameId(19)]), None, Some(milliseconds(100))),
        ],
    }
}

fn routes() -> Vec<Route> {
    let route = |what, from, to, pace, within| Route {
        gateway: EcuId(1),
        what,
        from: NetworkId(from),
        to: NetworkId(to),
        pace,
        within,
        note: None,
    };
    let copied = Passed::Signal {
        from_frame: FrameId(0),
        from_signal: SignalId(0),
        to_frame: FrameId(1),
        to_signal: SignalId(0),
    };
    vec![
        route(Passed::Frame(FrameId(0)), 0, 1, Pace::Each, Some(milliseconds(20))),
        route(
            Passed::Identifiers { first: 0x700, last: 0x7FF, extended: false },
            0,
            1,
            Pace::Every(milliseconds(100)),
            None,
        ),
        Route {
            note: Some("thinned out".into()),
            ..route(Passed::All { except: vec![FrameId(1)] }, 1, 0, Pace::Nth(10), None)
        },
        route(copied, 0, 1, Pace::Each, None),
    ]
}

pub(crate) fn signal(name: &str, field: Field, kind: NumberKind) -> Signal {
    Signal {
        label: Label::named(name),
        page: None,
        content: Content::Number { field, kind },
        scaling: Scaling::Raw,
        unit: None,
        states: None,
        range: None,
        absent: vec![],
        fault: vec![],
        role: Role::Value,
        shown: Shown::Decimal,
    }
}

pub(crate) fn word(first: RawValue, last: RawValue, word: &str, meaning: Meaning) -> StateWord {
    StateWord { values: RawSpan { first, last }, word: word.into(), title: None, meaning }
}

pub(crate) fn field(msb: (u32, u8), lsb: (u32, u8)) -> Field {
    place(msb, lsb).into()
}

pub(super) fn place(msb: (u32, u8), lsb: (u32, u8)) -> Place {
    Place::between(BitPosition::new(msb.0, msb.1), BitPosition::new(lsb.0, lsb.1)).expect("a place")
}

pub(crate) fn number(number: i64) -> RawValue {
    RawValue::Number(number)
}

pub(crate) fn bits(bits: u64) -> RawValue {
    RawValue::Bits(bits)
}

pub(crate) fn decimal(text: &str) -> Ratio {
    Ratio::from_decimal(text).expect("a decimal number")
}

pub(crate) fn milliseconds(count: u64) -> Nanoseconds {
    Nanoseconds(count * 1_000_000)
}
