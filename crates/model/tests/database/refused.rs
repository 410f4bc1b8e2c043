//! Every promise of the data types, broken once: the description is refused, and the message names the item and the reason.

use wirelore_bits::NumberKind;
use wirelore_bits::e2e::DataId;
use wirelore_model::*;

use super::example::{self, bits, decimal, field, number, signal, word};

/// Breaks the example and gives the message without its standing introduction.
fn refusal(break_it: impl FnOnce(&mut Description)) -> String {
    let mut description = example::description();
    break_it(&mut description);
    let error = Database::new(description).expect_err("a promise is broken");
    let text = error.to_string();
    assert_eq!(text, format!("the description is not valid: {}: {}", error.item(), error.flaw()));
    text.trim_start_matches("the description is not valid: ").to_owned()
}

/// Each line: what is broken, and the beginning of the message.
macro_rules! refused {
    ($($test:ident { $(|$description:ident| $break_it:expr => $message:literal,)+ })+) => {$(
        #[test]
        fn $test() {
            $({
                let message = refusal(|$description| { $break_it; });
                assert!(message.starts_with($message), "{}\nshould begin with\n{}", message, $message);
            })+
        }
    )+};
}

fn first(d: &mut Description) -> &mut Signal {
    &mut d.frames[0].signals[0]
}

fn protection(d: &mut Description) -> &mut Protection {
    match &mut d.frames[3].signals[0].role {
        Role::Protection(protection) => protection,
        other => panic!("the first signal of the example's fourth frame is its protection, not {other:?}"),
    }
}

fn checksum(d: &mut Description) -> &mut Checksum {
    match &mut d.frames[0].signals[2].role {
        Role::Checksum(checksum) => checksum,
        other => panic!("the example's third signal is the checksum, not {other:?}"),
    }
}

fn timing(d: &mut Description) -> &mut FlexRayTiming {
    d.networks[6].flexray.as_mut().expect("the example states it")
}

fn single(value: RawValue) -> Vec<RawSpan> {
    vec![RawSpan::single(value)]
}

fn star(d: &mut Description) -> &mut ActiveStar {
    d.networks[6].star.as_mut().expect("the example has one")
}

refused! {
    wiring {
        |d| d.networks[3].terminators = d.networks[0].terminators.clone() => "network `on_lin`: only networks of CAN and FlexRay have terminators",
        |d| d.networks[0].terminators[1].at = Fitted::Unit(EcuId(2)) => "network `on_can`: its wiring names the unit `trailer`, which is not on it",
        |d| d.networks[0].terminators[1].at = Fitted::Unit(EcuId(9)) => "network `on_can`: it refers to ecu number 9",
        |d| d.networks[0].terminators[1].at = Fitted::Unit(EcuId(0)) => "network `on_can`: its list of terminators names the same item twice",
        |d| d.networks[0].terminators[1].ohms = Some(0) => "network `on_can`: its resistance of a terminator is 0",
        |d| d.networks[0].star = d.networks[6].star.clone() => "network `on_can`: only a FlexRay network has an active star",
        |d| star(d).branches.push(vec![]) => "network `on_flexray`: it has no unit on a branch",
        |d| star(d).branches.push(vec![EcuId(2)]) => "network `on_flexray`: its list of a star and its branches names the same item twice",
        |d| star(d).branches[0].push(EcuId(1)) => "network `on_flexray`: its list of a star and its branches names the same item twice",
    }

    names {
        |d| d.vehicle.as_mut().expect("there is one").label.name.clear() => "vehicle ``: a name is made of letters, digits and `_`, and `` is not",
        |d| d.networks[1].label.name = "on_can".into() => "network `on_can`: another one has the same name",
        |d| d.ecus[2].label.name = "hub".into() => "ecu `hub`: another one has the same name",
        |d| d.frames[2].label.name = "speeds".into() => "frame `speeds`: another one has the same name",
        |d| d.states.push(d.states[0].clone()) => "states `gear`: another one has the same name",
        |d| d.ecus[0].label.name = "two words".into() => "ecu `two words`: a name is made of letters, digits and `_`",
        |d| d.ecus[0].label.name = "cell[3]".into() => "ecu `cell[3]`: a name is made of letters, digits and `_`",
        |d| d.frames[0].label.name = "\u{65}\u{301}t".into() => "frame `\u{65}\u{301}t`: a name is made of letters",
        |d| d.ecus[0].label.name = "\u{1100}\u{1161}".into() => "ecu `\u{1100}\u{1161}`: names are stored in Unicode normal form C",
        |d| first(d).label.name = "cell[]".into() => "frame `speeds`, signal `cell[]`: a name is made of letters",
        |d| first(d).label.name = "cell[3".into() => "frame `speeds`, signal `cell[3`: a name is made of letters",
        |d| first(d).label.name = "[3]".into() => "frame `speeds`, signal `[3]`: a name is made of letters",
        |d| first(d).label.name = "alive".into() => "frame `speeds`, signal `alive`: another signal has the same name on the same page",
        |d| d.frames[1].signals[5].page = Some(PageId(2)) => "frame `request`, signal `value`: another signal has the same name",
        |d| d.frames[1].signals[4].label.name = "gear".into() => "frame `request`, signal `gear`: another signal has the same name on the same page or on one around",
        |d| d.frames[1].signals[4].label.name = "torque".into() => "frame `request`, signal `torque`: another signal has the same name",
    }

    networks_units_and_wires {
        |d| d.networks[0].rate = Some(BitRate(0)) => "network `on_can`: its bit rate is 0",
        |d| d.networks[1].data_rate = Some(BitRate(0)) => "network `on_can_fd`: its bit rate is 0",
        |d| d.networks[0].data_rate = Some(BitRate(1)) => "network `on_can`: only CAN FD and CAN XL have a bit rate for the data phase",
        |d| d.networks[0].flexray = Some(FlexRayTiming::default()) => "network `on_can`: only a FlexRay network has cycles and slots",
        |d| timing(d).cycle = Some(Nanoseconds(0)) => "network `on_flexray`: its cycle is 0",
        |d| timing(d).cycles = 65 => "network `on_flexray`: its number of cycles is 65, and at most 64",
        |d| timing(d).static_slots = Some(StaticSlots { count: 1024, bytes: 32 }) => "network `on_flexray`: its number of static slots is 1024, and at most 1023",
        |d| timing(d).static_slots = Some(StaticSlots { count: 62, bytes: 31 }) => "network `on_flexray`: its static slots have 31 bytes, and FlexRay counts words",
        |d| timing(d).static_slots = Some(StaticSlots { count: 62, bytes: 256 }) => "network `on_flexray`: its number of bytes in a static slot is 256, and at most 254",
        |d| timing(d).last_dynamic_slot = Some(62) => "network `on_flexray`: the end of its dynamic segment lies before",
        |d| timing(d).last_dynamic_slot = Some(2048) => "network `on_flexray`: its last dynamic slot is 2048, and at most 2047",
        |d| d.ecus[1].on[3].ring_position = Some(64) => "ecu `hub`: its ring position is 64, and at most 63",
        |d| d.ecus[1].on[0].ring_position = Some(0) => "ecu `hub`: it has a ring position on network `on_can`, which is no MOST ring",
        |d| d.ecus[0].on[1].network = NetworkId(99) => "ecu `brakes`: it refers to network number 99 (counted from 0), and there are 11",
        |d| d.ecus[1].leads[0] = NetworkId(99) => "ecu `hub`: it refers to network number 99",
        |d| d.ecus[0].on[1].network = NetworkId(0) => "ecu `brakes`: its list of networks names the same item twice",
        |d| d.ecus[1].leads.push(NetworkId(2)) => "ecu `hub`: its list of networks that it leads names the same item twice",
        |d| d.wires[0].to.clear() => "wire number 0 (counted from 0): it has no unit at its other end",
        |d| d.wires[0].from = EcuId(3) => "wire number 0 (counted from 0): it refers to ecu number 3",
        |d| d.wires[0].to[1] = EcuId(u32::MAX) => "wire number 0 (counted from 0): it refers to ecu number 4294967295",
    }

    routes {
        |d| d.routes[0].gateway = EcuId(3) => "route number 0 (counted from 0): it refers to ecu number 3",
        |d| d.routes[3].from = NetworkId(99) => "route number 3 (counted from 0): it refers to network number 99",
        |d| d.routes[3].to = NetworkId(99) => "route number 3 (counted from 0): it refers to network number 99",
        |d| d.routes[3].what = Passed::Frame(FrameId(99)) => "route number 3 (counted from 0): it refers to frame number 99",
        |d| d.routes[2].what = Passed::All { except: vec![FrameId(99)] } => "route number 2 (counted from 0): it refers to frame number 99",
        |d| d.routes[1].what = Passed::Identifiers { first: 2, last: 1, extended: false } => "route number 1 (counted from 0): the end of its run of identifiers",
        |d| d.routes[1].what = Passed::Identifiers { first: 2, last: 0x800, extended: false } => "route number 1 (counted from 0): its identifier is 2048, and at most 2047",
        |d| d.routes[3].what = Passed::Signal { from_frame: FrameId(0), from_signal: SignalId(4), to_frame: FrameId(1), to_signal: SignalId(0) }
            => "route number 3 (counted from 0): it refers to signal number 4 (counted from 0), and there are 4",
        |d| d.routes[3].what = Passed::Signal { from_frame: FrameId(0), from_signal: SignalId(0), to_frame: FrameId(99), to_signal: SignalId(0) }
            => "route number 3 (counted from 0): it refers to frame number 99",
        |d| d.routes[1].pace = Pace::Every(Nanoseconds(0)) => "route number 1 (counted from 0): its period is 0",
        |d| d.routes[2].pace = Pace::Nth(1) => "route number 2 (counted from 0): it has no second frame",
    }

    frames {
        |d| d.frames[0].seen_on.clear() => "frame `speeds`: it has no network that it is seen on",
        |d| d.frames[0].seen_on[0].network = NetworkId(99) => "frame `speeds`: it refers to network number 99",
        |d| d.frames[0].seen_on[0].via = Some(RouteId(0)) => "frame `speeds`: it is seen on network `on_can` through a route, and the first",
        |d| d.frames[0].seen_on[1].via = None => "frame `speeds`: it is seen on network `on_can_fd` without a route",
        |d| d.frames[0].seen_on[1].via = Some(RouteId(4)) => "frame `speeds`: it refers to route number 4",
        |d| d.frames[0].seen_on[1].via = Some(RouteId(2)) => "frame `speeds`: it is seen on network `on_can_fd` through a route that leads to another network",
        |d| d.routes[0].what = Passed::Frame(FrameId(1)) => "frame `speeds`: it is seen on network `on_can_fd` through a route that passes another frame",
        |d| d.frames[0].seen_on[0].network = NetworkId(3) => "frame `speeds`: network `on_lin` is of the kind `lin`, whose frames are not recognised like this",
        |d| d.frames[0].seen_on[0].identifier = Identifier::Can { first: 0, last: 0x800, extended: false } => "frame `speeds`: its identifier is 2048, and at most 2047",
        |d| d.frames[0].seen_on[0].identifier = Identifier::Can { first: 0, last: 0x2000_0000, extended: true } => "frame `speeds`: its identifier is 536870912",
        |d| d.frames[0].seen_on[0].identifier = Identifier::Can { first: 2, last: 1, extended: true } => "frame `speeds`: the end of its run of identifiers lies before",
        |d| d.frames[2].seen_on[0].identifier = Identifier::Pgn { pgn: 0x4_0000, sources: vec![], priority: None } => "frame `group`: its parameter group number is 262144",
        |d| d.frames[2].seen_on[0].identifier = Identifier::Pgn { pgn: 0xEA01, sources: vec![], priority: None } => "frame `group`: parameter group 59905 is sent to a destination, so its low byte has to be 0; use 59904",
        |d| d.frames[2].seen_on[0].identifier = Identifier::Pgn { pgn: 0xFEF1, sources: vec![], priority: Some(8) } => "frame `group`: its priority is 8, and at most 7",
        |d| lin(d, 64, LinChecksum::Classic, 5) => "frame `other_3`: its identifier is 64, and at most 63",
        |d| lin(d, 60, LinChecksum::Enhanced, 5) => "frame `other_3`: identifiers from 60 to 63 have the classic checksum",
        |d| lin(d, 1, LinChecksum::Enhanced, 99) => "frame `other_3`: it refers to frame number 99",
        |d| slot(d, 0, 0, 1) => "frame `other_6`: its slot is 0",
        |d| slot(d, 2048, 0, 1) => "frame `other_6`: its slot is 2048, and at most 2047",
        |d| slot(d, 1, 4, 4) => "frame `other_6`: its first cycle is 4, and at most 3",
        |d| slot(d, 1, 0, 3) => "frame `other_6`: a FlexRay frame cannot be sent every 3 cycles",
        |d| named(d, "other_9").seen_on[0].identifier = Identifier::Most { block: 1, instance: None, function: 0x1000, operation: None } => "frame `other_9`: its function is 4096, and at most 4095",
        |d| named(d, "other_9").seen_on[0].identifier = Identifier::Can { first: 1, last: 1, extended: false } => "frame `other_9`: network `on_most` is of the kind `most`",
        |d| d.frames[0].length = Some(LengthRange { min: 8, max: 7 }) => "frame `speeds`: the end of its length lies before",
        |d| d.frames[0].length = Some(LengthRange { min: 8, max: 9 }) => "frame `speeds`: its length in bytes is 9, and at most 8",
        |d| d.frames[0].senders[0] = EcuId(3) => "frame `speeds`: it refers to ecu number 3",
        |d| d.frames[0].readers[1] = EcuId(3) => "frame `speeds`: it refers to ecu number 3",
        |d| d.frames[0].unknown[0] = field((8, 0), (8, 0)) => "frame `speeds`, unknown or unused bits: it reaches byte 8 of the payload, whose last byte is 7",
        |d| d.frames[0].unused[0] = field((8, 0), (8, 0)) => "frame `speeds`, unknown or unused bits: it reaches byte 8",
    }

    schedules {
        |d| d.schedules[0].label.name.clear() => "schedule ``: a name is made of letters",
        |d| d.schedules.push(d.schedules[0].clone()) => "schedule `normal`: another one has the same name",
        |d| d.schedules[0].network = NetworkId(99) => "schedule `normal`: it refers to network number 99",
        |d| d.schedules[0].network = NetworkId(0) => "schedule `normal`: network `on_can` is of the kind `can`, and only LIN networks have schedules",
        |d| d.schedules[0].time_base = Some(Nanoseconds(0)) => "schedule `normal`: its time base is 0",
        |d| d.schedules[0].slots.clear() => "schedule `normal`: it has no slot and needs at least one",
        |d| d.schedules[0].slots[1].content = SlotContent::Sporadic(vec![]) => "schedule `normal`: it has no frame in one of its slots",
        |d| d.schedules[0].slots[0].content = SlotContent::Frame(FrameId(99)) => "schedule `normal`: it refers to frame number 99",
        |d| d.schedules[0].slots[0].takes = Some(Nanoseconds(0)) => "schedule `normal`: its slot's length is 0",
        |d| d.schedules[0].slots[1].every = Some(Nanoseconds(0)) => "schedule `normal`: its slot's period is 0",
    }

    times {
        |d| d.frames[0].sending.every = Some(Period { shortest: Nanoseconds(0), longest: Nanoseconds(1) }) => "frame `speeds`: its period is 0",
        |d| d.frames[0].sending.every = Some(Period { shortest: Nanoseconds(2), longest: Nanoseconds(1) }) => "frame `speeds`: the end of its period lies before",
        |d| d.frames[0].sending.timeout = Some(Nanoseconds(0)) => "frame `speeds`: its timeout is 0",
        |d| d.frames[0].sending.apart_at_most = Some(Nanoseconds(1)) => "frame `speeds`: the end of its time between two of them",
        |d| d.frames[0].sending.faster.as_mut().expect("stated").every.shortest = Nanoseconds(0) => "frame `speeds`: its period is 0",
        |d| d.frames[0].sending.faster.as_mut().expect("stated").test.selector = SignalId(4) => "frame `speeds`: it refers to signal number 4",
        |d| d.frames[0].sending.faster.as_mut().expect("stated").test.values = single(number(2)) => "frame `speeds`: raw value 2 is outside what its 1 bits",
        |d| {
            let faster = d.frames[0].sending.faster.clone().expect("stated");
            d.frames[1].sending.faster = Some(FasterWhile { test: Test { selector: SignalId(2), ..faster.test }, ..faster });
        } => "frame `request`: it depends on signal `gear`, which is neither always there",
    }

    pages {
        |d| d.frames[1].pages[2].parent = Some(PageId(6)) => "frame `request`, page number 2 (counted from 0): it refers to page number 6",
        |d| d.frames[1].pages[2].parent = Some(PageId(2)) => "frame `request`, page number 2 (counted from 0): it is nested in page 2, which does not stand before",
        |d| d.frames[1].pages[2].parent = Some(PageId(3)) => "frame `request`, page number 2 (counted from 0): it is nested in page 3, which does not stand before",
        |d| d.frames[1].pages[0].switch = 1 => "frame `request`, page number 0 (counted from 0): its switch number is 1: switches are numbered",
        |d| d.frames[1].pages[3].switch = 0 => "frame `request`, page number 3 (counted from 0): its switch number is 0: the pages of a switch stand beside each other",
        |d| d.frames[1].pages[1].tests[0].selector = SignalId(0) => "frame `request`, page number 1 (counted from 0): its switch number is 0: the pages of a switch look at",
        |d| {
            d.frames[1].pages[2].tests.clear();
        } => "frame `request`, page number 3 (counted from 0): its switch number is 1: a switch has at most one page without",
        |d| d.frames[1].pages[0].tests[0].values.clear() => "frame `request`, page number 0 (counted from 0): it has no value in its condition",
        |d| d.frames[1].pages[0].tests[0].values = single(number(256)) => "frame `request`, page number 0 (counted from 0): raw value 256 is outside",
        |d| d.frames[1].pages[2].tests[0].selector = SignalId(99) => "frame `request`, page number 2 (counted from 0): it refers to signal number 99",
        |d| d.frames[1].pages[2].tests[0].selector = SignalId(3) => "frame `request`, page number 2 (counted from 0): it depends on signal `value`, which is neither",
        |d| d.frames[1].pages[2].tests[0].selector = SignalId(4) => "frame `request`, page number 2 (counted from 0): it depends on signal `value`, which is neither",
        |d| d.frames[1].pages[2].tests[0].selector = SignalId(8) => "frame `request`, page number 2 (counted from 0): it depends on signal `maker`, which holds no number",
        |d| d.frames[1].pages[5].switch = 2 => "frame `request`, page number 5 (counted from 0): its switch number is 2: an element of a repeated group, or a group that gives rows, has a switch of its own",
        |d| d.frames[1].pages[5].tests = d.frames[1].pages[0].tests.clone() => "frame `request`, page number 5 (counted from 0): it cannot give rows: it has a condition",
        |d| d.frames[1].pages[5].parent = Some(PageId(4)) => "frame `request`, page number 5 (counted from 0): it cannot give rows: it stands in another repeated group",
        |d| d.frames[1].pages[4].rows_from = Some(0) => "frame `request`, page number 4 (counted from 0): it cannot give rows: it has a condition",
        |d| d.frames[1].pages[5].rows_from = Some(65) => "frame `request`, page number 5 (counted from 0): its number of bytes in front of its rows is 65, and at most 64",
        |d| d.frames[1].pages[5].rows_from = Some(21) => "frame `request`, page number 5 (counted from 0): it reaches byte 20",
        |d| d.frames[1].pages[5].rows_from = Some(5) => "frame `request`, page number 5 (counted from 0): it cannot give rows: a signal that is not in it lies behind its beginning",
        |d| { let page = d.frames[1].pages[5].clone(); d.frames[1].pages.push(Page { switch: 4, ..page }) } => "frame `request`, page number 6 (counted from 0): it cannot give rows: another such group can be there at the same time",
        |d| d.frames[1].signals[1].role = d.frames[0].signals[1].role.clone() => "frame `request`, page number 5 (counted from 0): it cannot give rows: the frame has a counter",
        |d| d.frames[1].signals[2].page = Some(PageId(9)) => "frame `request`, page number 2 (counted from 0): it refers to page number 9",
        |d| d.frames[1].signals[6].page = Some(PageId(9)) => "frame `request`, signal `cell[3]`: it refers to page number 9",
        |d| d.frames[1].pages[1].length = Some(LengthRange { min: 2, max: 65 }) => "frame `request`, page number 1 (counted from 0): its length in bytes is 65",
        |d| d.frames[1].pages[1].length = Some(LengthRange { min: 2, max: 5 }) => "frame `request`, signal `rest`: it reaches byte 5 of the payload, whose last byte is 4",
        |d| d.frames[1].pages[0].length = Some(LengthRange { min: 2, max: 7 }) => "frame `request`, signal `value`: it reaches byte 7 of the payload, whose last byte is 6",
        |d| d.frames[1].pages[2].every = Some(Period { shortest: Nanoseconds(0), longest: Nanoseconds(0) }) => "frame `request`, page number 2 (counted from 0): its period is 0",
    }

    places {
        |d| d.frames[0].signals[3] = signal("active", field((8, 0), (8, 0)), NumberKind::Unsigned) => "frame `speeds`, signal `active`: it reaches byte 8",
        |d| d.frames[2].signals[3] = signal("x", field((8, 0), (7, 1)), NumberKind::Unsigned) => "frame `group`, signal `x`: it reaches byte 8",
        |d| d.frames[1].signals[8].content = Content::Bytes { bytes: ByteSpan { first: 19, last: Some(20) }, size: None } => "frame `request`, signal `maker`: it reaches byte 20",
        |d| d.frames[1].signals[8].content = Content::Bytes { bytes: ByteSpan { first: 20, last: None }, size: None } => "frame `request`, signal `maker`: it reaches byte 20",
        |d| d.frames[1].signals[8].content = Content::Bytes { bytes: ByteSpan { first: 3, last: Some(2) }, size: None } => "frame `request`, signal `maker`: the end of its run of bytes",
        |d| d.frames[1].signals[8].content = Content::Bytes { bytes: ByteSpan { first: u32::MAX, last: None }, size: None } => "frame `request`, signal `maker`: it reaches byte 429496729",
        |d| d.frames[0].signals[1] = signal("alive", field((6, 2), (6, 0)), NumberKind::Float) => "frame `speeds`, signal `alive`: 3 bits cannot be read that way",
        |d| d.frames[1].signals[11].content = signal("", field((0, 7), (0, 0)), NumberKind::Unsigned).content => "frame `request`, signal `code`: 8 bits cannot be read that way: a trouble code",
        |d| d.frames[1].signals[11].unit = Unit::known("V") => "frame `request`, signal `code`: it is a trouble code and cannot have a unit",
        |d| d.frames[1].signals[8].unit = Unit::known("V") => "frame `request`, signal `maker`: it holds text or bytes and cannot have a unit",
        |d| d.frames[1].signals[8].scaling = Scaling::Affine(wirelore_bits::Affine::identity()) => "frame `request`, signal `maker`: it holds text or bytes and cannot have a formula",
        |d| d.frames[1].signals[8].states = Some(States::Table(StatesId(0))) => "frame `request`, signal `maker`: it holds text or bytes and cannot have states",
        |d| d.frames[1].signals[8].fault = single(number(1)) => "frame `request`, signal `maker`: it holds text or bytes and cannot have fault values",
        |d| d.frames[1].signals[8].role = d.frames[0].signals[1].role.clone() => "frame `request`, signal `maker`: it holds text or bytes and cannot have the duty",
        |d| d.frames[1].signals[8].shown = Shown::Hexadecimal => "frame `request`, signal `maker`: it holds text or bytes and cannot have a way to be shown",
        |d| d.frames[1].signals[1].unit = Unit::known("V") => "frame `request`, signal `page`: only an unsigned number without formula and unit can be shown in hexadecimal",
        |d| d.frames[1].signals[0].shown = Shown::Hexadecimal => "frame `request`, signal `torque`: only an unsigned number without formula and unit",
    }

    raw_values {
        |d| first(d).absent = single(bits(0x2000)) => "frame `speeds`, signal `front_left`: raw value 0x2000 is outside what its 13 bits can hold",
        |d| first(d).fault = single(number(8192)) => "frame `speeds`, signal `front_left`: raw value 8192 is outside",
        |d| first(d).fault = single(number(-1)) => "frame `speeds`, signal `front_left`: raw value -1 is outside",
        |d| first(d).fault = vec![RawSpan { first: number(9), last: number(8) }] => "frame `speeds`, signal `front_left`: the raw values 9..8 are no unbroken run",
        |d| first(d).fault = vec![RawSpan { first: number(9), last: bits(8) }] => "frame `speeds`, signal `front_left`: the raw values 9..0x8 are no unbroken run",
        |d| d.frames[1].signals[0].absent = vec![RawSpan { first: bits(0x7FFF), last: bits(0x8000) }] => "frame `request`, signal `torque`: the raw values 0x7FFF..0x8000 are no unbroken run",
        |d| d.frames[1].signals[6].absent = single(bits(0xA)) => "frame `request`, signal `cell[3]`: the bits 0xA make no number in its format",
        |d| d.frames[1].signals[4].absent = vec![RawSpan { first: bits(1), last: number(2) }] => "frame `request`, signal `value`: the raw values 0x1..2 are no unbroken run",
        |d| d.frames[1].signals[2].states = Some(States::Table(StatesId(1))) => "frame `request`, signal `gear`: it refers to table of states number 1",
        |d| d.states[0].words[3].values = RawSpan::single(bits(0x10)) => "frame `request`, signal `gear`: raw value 0x10 is outside what its 4 bits",
        |d| d.states[0].words[3].values = RawSpan::single(bits(0x0A)) => "frame `request`, signal `gear`: the words `forward` and `unknown` stand for the same raw value",
        |d| d.states[0].words[0].values = RawSpan::single(number(10)) => "states `gear`: the words `forward` and `park` stand for the same raw value",
        |d| d.states[0].words[0].values = RawSpan { first: number(1), last: number(0) } => "states `gear`: the raw values 1..0 are no unbroken run",
        |d| d.states[0].words[0].word.clear() => "states `gear`: it has no letter in one of its state words",
        |d| d.frames[0].signals[3].states = Some(States::Own(vec![
            word(number(0), number(1), "both", Meaning::Reading),
            word(bits(1), bits(1), "on", Meaning::Reading),
        ])) => "frame `speeds`, signal `active`: the words `both` and `on` stand for the same raw value",
    }

    formulas_and_duties {
        |d| first(d).scaling = Scaling::Curve(Curve { points: vec![CurvePoint { raw: 0, value: decimal("1") }] }) => "frame `speeds`, signal `front_left`: its curve needs at least two points",
        |d| first(d).scaling = Scaling::Curve(Curve { points: vec![CurvePoint { raw: 1, value: decimal("1") }; 2] }) => "frame `speeds`, signal `front_left`: its curve needs",
        |d| first(d).range = Some(Box::new(ValueRange { low: decimal("1"), high: decimal("0.999") })) => "frame `speeds`, signal `front_left`: the end of its range",
        |d| d.frames[0].signals[1].role = Role::Counter(Counter { low: 0, high: 16, step: 1 }) => "frame `speeds`, signal `alive`: its last count is 16, and at most 15",
        |d| d.frames[0].signals[1].role = Role::Counter(Counter { low: 3, high: 3, step: 1 }) => "frame `speeds`, signal `alive`: its counter goes from 3 to 3",
        |d| d.frames[0].signals[1].role = Role::Counter(Counter { low: 0, high: 15, step: 0 }) => "frame `speeds`, signal `alive`: its step is 0",
        |d| d.frames[1].signals[0].role = d.frames[0].signals[1].role.clone() => "frame `request`, signal `torque`: a counter is an unsigned number",
        |d| d.frames[1].signals[0].role = d.frames[0].signals[2].role.clone() => "frame `request`, signal `torque`: a checksum is an unsigned number",
        |d| checksum(d).over.clear() => "frame `speeds`, signal `check`: it has no byte that its checksum covers",
        |d| checksum(d).over.push(ByteSpan { first: 8, last: Some(8) }) => "frame `speeds`, signal `check`: it reaches byte 8",
        |d| checksum(d).over[0].last = Some(7) => "frame `speeds`, signal `check`: it covers its own byte 7",
        |d| checksum(d).over[0].last = None => "frame `speeds`, signal `check`: it covers its own byte 7",
        |d| checksum(d).start = Some(256) => "frame `speeds`, signal `check`: its start value is 256, and at most 255",
        |d| checksum(d).algorithm = ChecksumAlgorithm::Crc(CrcRule { width: 0, poly: 1, start: 0, xor: 0, reflected: false }) => "frame `speeds`, signal `check`: its checksum cannot be calculated: a CRC has 1 to 64 bits",
        |d| checksum(d).first[0] = MixedByte::Identifier(4) => "frame `speeds`, signal `check`: its byte of the identifier is 4, and at most 3",
        |d| checksum(d).first[0] = MixedByte::Signal(SignalId(9)) => "frame `speeds`, signal `check`: it refers to signal number 9",
        |d| checksum(d).first[0] = MixedByte::Signal(SignalId(2)) => "frame `speeds`, signal `check`: its checksum takes in signal `check`",
        |d| checksum(d).first[0] = MixedByte::Signal(SignalId(0)) => "frame `speeds`, signal `check`: its checksum takes in signal `front_left`",
    }

    protections {
        |d| protection(d).data_id = DataId::List([0; 16]) => "frame `protected`, signal `protection`: it cannot protect the frame: its profile has no such data id",
        |d| protection(d).header = 0 => "frame `protected`, signal `protection`: it cannot protect the frame: its header is not among the bytes that it covers",
        |d| protection(d).over.last = Some(12) => "frame `protected`, signal `protection`: it cannot protect the frame: its header is not among the bytes that it covers",
        |d| protection(d).over.last = Some(16) => "frame `protected`, signal `protection`: it reaches byte 16",
        |d| protection(d).header = 5 => "frame `protected`, signal `protection`: it reaches byte 16",
        |d| protection(d).header = 3 => "frame `protected`, signal `protection`: it cannot protect the frame: its bits are not those of the profile's counter",
        |d| protection(d).most_rise = 0 => "frame `protected`, signal `protection`: its greatest rise is 0",
        |d| protection(d).most_rise = 0x1_0000 => "frame `protected`, signal `protection`: its greatest rise is 65536, and at most 65535",
        |d| {
            let first = d.frames[3].signals[0].clone();
            d.frames[3].signals.push(Signal { label: Label::named("second"), ..first });
        } => "frame `protected`, signal `second`: it cannot protect the frame: the frame has another one already",
        |d| {
            d.frames[3].pages = vec![Page { parent: None, switch: 0, tests: vec![Test { selector: SignalId(1), values: single(number(1)) }], every: None, length: None, element: None, rows_from: None }];
            d.frames[3].signals.push(signal("page", field((0, 7), (0, 0)), NumberKind::Unsigned));
            d.frames[3].signals[0].page = Some(PageId(0));
        } => "frame `protected`, signal `protection`: it cannot protect the frame: it is on a page",
    }
}

/// What looks like a breach and is none.
#[test]
fn the_promises_are_no_stricter_than_they_say() {
    let accepted = |change: &dyn Fn(&mut Description)| {
        let mut description = example::description();
        change(&mut description);
        Database::new(description).expect("no promise is broken");
    };
    accepted(&|_| {});
    accepted(&|d| d.ecus[0].label.name = "Bremsenger\u{e4}t_1".into());
    accepted(&|d| d.ecus[0].label.name = "制動".into());
    accepted(&|d| first(d).label.name = "row[2]_cell[13]".into());
    accepted(&|d| d.networks[2].label.name = "hub".into());
    accepted(&|d| checksum(d).over = vec![ByteSpan { first: 4, last: Some(6) }, ByteSpan { first: 0, last: Some(6) }]);
    // A float's special patterns are compared as they are, in either half.
    accepted(&|d| d.frames[1].signals[4].fault = vec![RawSpan { first: bits(0x7F80_0000), last: bits(0xFF80_0000) }]);
    accepted(&|d| d.frames[1].signals[4].absent = single(number(-1)));
    // A page may be longer than its frame is elsewhere, and its signals lie behind the beginning of rows that are not there with it.
    accepted(&|d| {
        d.frames[1].pages[5].parent = Some(PageId(0));
        d.frames[1].pages[1].length = Some(LengthRange { min: 64, max: 64 });
        d.frames[1].signals[7].content = Content::Bytes { bytes: ByteSpan { first: 63, last: None }, size: None };
    });
}

/// Descriptions that would make a careless check slow.
#[test]
fn large_descriptions_are_checked_in_bounded_time() {
    let mut description = example::description();
    let frame = &mut description.frames[1];
    // Each page in the one before it, each with a signal of a name of its own, all of them looking at the same selector.
    frame.pages = (0..20_000_u32)
        .map(|index| Page {
            element: None,
            rows_from: None,
            parent: index.checked_sub(1).map(PageId),
            switch: index,
            tests: vec![Test { selector: SignalId(1), values: single(number(1)) }],
            every: None,
            length: None,
        })
        .collect();
    frame.signals.truncate(2);
    let on_page = |page: u32| Signal {
        page: Some(PageId(page)),
        ..signal(&format!("s_{page}"), field((3, 7), (3, 0)), NumberKind::Unsigned)
    };
    frame.signals.extend((0..20_000).map(on_page));
    description.routes.truncate(1);
    assert!(Database::new(description.clone()).is_ok());
    // All of one name, on pages beside each other.
    let frame = &mut description.frames[1];
    for page in &mut frame.pages {
        page.parent = None;
    }
    for signal in &mut frame.signals[2..] {
        signal.label.name = "value".into();
    }
    assert!(Database::new(description.clone()).is_ok());
    description.frames[1].signals[2].page = None;
    assert!(matches!(Database::new(description).map_err(|error| error.flaw().clone()), Err(Flaw::SignalNameTaken)));
}

fn lin(description: &mut Description, id: u8, checksum: LinChecksum, stands_for: u32) {
    named(description, "other_3").seen_on[0].identifier =
        Identifier::Lin { id, checksum, stands_for: vec![FrameId(stands_for)] };
}

fn slot(description: &mut Description, slot: u16, first_cycle: u8, repetition: u8) {
    let identifier = Identifier::FlexRay { slot, first_cycle, repetition, channels: FlexRayChannels::A };
    named(description, "other_6").seen_on[0].identifier = identifier;
}

fn named<'d>(description: &'d mut Description, name: &str) -> &'d mut Frame {
    description.frames.iter_mut().find(|frame| frame.label.name == name).expect("the example has it")
}
