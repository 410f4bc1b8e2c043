//! The figures of a description: networks, control units, frames, and the ways over gateways.

use wirelore_model::{BitRate, Database, EcuId, Identifier, Nanoseconds, Network, NetworkKind, identifier_text};
use wirelore_survey::budget::{Budget, Lateness, NetworkLoad, Path, Spread, StreamLoad, WhyNot};

use super::Wanted;
use super::sheet::{Cell, Column, Sheet, figures, words};

const NETWORKS: [Column; 7] = [
    words("network", "network"),
    words("kind", "kind"),
    words("rate", "rate"),
    figures("frames/s", "frames_per_s"),
    figures("at least", "share_least"),
    figures("expected", "share_expected"),
    figures("at most", "share_most"),
];

/// A line a network.
pub(super) fn networks(database: &Database, budget: &Budget, wanted: &Wanted) -> Sheet {
    let mut sheet = Sheet::new(&NETWORKS);
    for load in budget.networks.iter().filter(|load| wanted.has(database, load.network)) {
        let network = &database.networks[load.network.index()];
        let [least, expected, most] = shares(network.kind, load.share);
        sheet.push(vec![
            Cell::name(&network.label, &network.label.name),
            Cell::text(kind_word(network.kind)),
            rate_cell(network),
            Cell::Rate(load.frames_per_s),
            least,
            expected,
            most,
        ]);
    }
    sheet
}

fn shares(kind: NetworkKind, share: Option<Spread>) -> [Cell; 3] {
    let expected = share.and_then(|share| share.expected_on(kind));
    [share.map(|it| it.least), expected, share.map(|it| it.most)].map(Cell::share)
}

const UNITS: [Column; 6] = [
    words("network", "network"),
    words("control unit", "control_unit"),
    figures("frames/s", "frames_per_s"),
    figures("at least", "share_least"),
    figures("expected", "share_expected"),
    figures("at most", "share_most"),
];

/// A line a control unit and network.
pub(super) fn units(database: &Database, budget: &Budget, wanted: &Wanted) -> Sheet {
    let mut sheet = Sheet::new(&UNITS);
    for load in budget.networks.iter().filter(|load| wanted.has(database, load.network)) {
        let network = &database.networks[load.network.index()];
        for unit in &load.units {
            let [least, expected, most] = shares(network.kind, unit.share);
            sheet.push(vec![
                Cell::name(&network.label, &network.label.name),
                Cell::text(senders(database, &unit.ecus)),
                Cell::Rate(unit.frames_per_s),
                least,
                expected,
                most,
            ]);
        }
    }
    sheet
}

const FRAMES: [Column; 14] = [
    words("network", "network"),
    words("frame", "frame"),
    words("recognised by", "recognised_by"),
    words("sent by", "sent_by"),
    figures("bytes", "bytes"),
    figures("parts", "parts"),
    figures("period", "period_ms"),
    figures("frames/s", "frames_per_s"),
    figures("at least", "share_least"),
    figures("expected", "share_expected"),
    figures("at most", "share_most"),
    figures("longest", "worst_ms"),
    figures("deadline", "deadline_ms"),
    figures("margin", "margin_ms"),
];

/// A line a frame, on CAN in order of priority.
pub(super) fn frames(database: &Database, budget: &Budget, wanted: &Wanted) -> Sheet {
    let mut sheet = Sheet::new(&FRAMES);
    for (load, late) in budget.networks.iter().zip(&budget.lateness) {
        if !wanted.has(database, load.network) {
            continue;
        }
        let late = late.as_ref().and_then(|found| found.as_ref().ok());
        for (at, stream) in load.streams.iter().enumerate() {
            sheet.push(frame_row(database, load, stream, late.map(|late| &late.streams[at])));
        }
    }
    sheet
}

fn frame_row(database: &Database, load: &NetworkLoad, stream: &StreamLoad, late: Option<&Lateness>) -> Vec<Cell> {
    let network = &database.networks[load.network.index()];
    let timing = stream.stream.timing;
    let parts = if stream.stream.parts > 1 { Cell::Count(stream.stream.parts.into()) } else { Cell::Nothing };
    let [least, expected, most] = shares(network.kind, stream.share);
    let worst = late.and_then(|late| late.worst.ok());
    let margin = late.zip(worst).map(|(late, worst)| Cell::Time(i128::from(late.deadline.0) - i128::from(worst.0)));
    vec![
        Cell::name(&network.label, &network.label.name),
        Cell::name(&database.frames[stream.stream.frame.index()].label, frame_name(database, stream)),
        Cell::text(recognised_by(database, stream)),
        Cell::text(senders(database, &stream.stream.senders)),
        Cell::Count(stream.stream.bytes.into()),
        parts,
        Cell::Time(timing.shortest.0.into()),
        Cell::Rate(stream.frames_per_s.0),
        least,
        expected,
        most,
        match (late, worst) {
            (Some(_), None) => Cell::text("no bound"),
            (_, worst) => Cell::time(worst.map(|worst| worst.0)),
        },
        Cell::time(late.map(|late| late.deadline.0)),
        margin.unwrap_or(Cell::Nothing),
    ]
}

/// The frame's name, with the page where each comes by its own clock.
pub(super) fn frame_name(database: &Database, load: &StreamLoad) -> String {
    let frame = &database.frames[load.stream.frame.index()];
    let of_page = load.stream.page.map_or_else(String::new, |page| format!(" page {}", page.index() + 1));
    format!("{}{of_page}", frame.label.name)
}

fn recognised_by(database: &Database, load: &StreamLoad) -> String {
    let frame = &database.frames[load.stream.frame.index()];
    let identifier = &frame.seen_on[load.stream.appearance].identifier;
    match (identifier, load.stream.rank) {
        (Identifier::Pgn { .. }, Some(rank)) => rank.to_string(),
        _ => identifier_text(identifier),
    }
}

/// The names of those who send something.
pub(super) fn senders(database: &Database, ecus: &[EcuId]) -> String {
    if ecus.is_empty() {
        return "not described".to_owned();
    }
    let names: Vec<&str> = ecus.iter().map(|ecu| database.ecus[ecu.index()].label.name.as_str()).collect();
    names.join(", ")
}

const PATHS: [Column; 8] = [
    words("passed on", "frame"),
    words("from", "from"),
    words("to", "to"),
    figures("on the first", "first_ms"),
    figures("gateway's clock", "clock_ms"),
    figures("in the gateway", "gateway_ms"),
    figures("on the second", "second_ms"),
    figures("together", "total_ms"),
];

/// A line a frame that a gateway passes on.
pub(super) fn paths(database: &Database, budget: &Budget, wanted: &Wanted) -> Sheet {
    let mut sheet = Sheet::new(&PATHS);
    let is_wanted = |path: &&Path| {
        let route = &database.routes[path.route.index()];
        wanted.has(database, route.from) || wanted.has(database, route.to)
    };
    for path in budget.paths.iter().filter(is_wanted) {
        let route = &database.routes[path.route.index()];
        let frame = &database.frames[path.frame.index()].label;
        let name = |network: wirelore_model::NetworkId| &database.networks[network.index()].label.name;
        let time = |time: Option<Nanoseconds>| Cell::time(time.map(|time| time.0));
        sheet.push(vec![
            Cell::name(frame, &frame.name),
            Cell::text(name(route.from)),
            Cell::text(name(route.to)),
            time(path.before),
            time(path.clock),
            time(path.within),
            time(path.behind),
            time(path.total()),
        ]);
    }
    sheet
}

/// How the trade writes a kind of network.
pub(super) fn kind_word(kind: NetworkKind) -> &'static str {
    match kind {
        NetworkKind::Can => "CAN",
        NetworkKind::CanFd => "CAN FD",
        NetworkKind::CanXl => "CAN XL",
        NetworkKind::Lin => "LIN",
        NetworkKind::Kline => "K-line",
        NetworkKind::Uart => "serial",
        NetworkKind::FlexRay => "FlexRay",
        NetworkKind::Most => "MOST",
        NetworkKind::Ethernet => "Ethernet",
    }
}

/// The rates of a network.
pub(super) fn rate_cell(network: &Network) -> Cell {
    match (network.rate, network.data_rate) {
        (Some(rate), Some(data)) => Cell::Text(format!("{}, data {}", rate_text(rate), rate_text(data))),
        (Some(rate), None) => Cell::Text(rate_text(rate)),
        (None, _) => Cell::Nothing,
    }
}

/// `500 kbit/s`.
pub(super) fn rate_text(BitRate(rate): BitRate) -> String {
    let (scale, unit) = match rate {
        0..1_000 => (1.0, "bit/s"),
        1_000..1_000_000 => (1e3, "kbit/s"),
        1_000_000..1_000_000_000 => (1e6, "Mbit/s"),
        _ => (1e9, "Gbit/s"),
    };
    format!("{} {unit}", rate as f64 / scale)
}

/// Why a frame is not counted, in words.
pub(super) fn why_not(why: WhyNot) -> &'static str {
    match why {
        WhyNot::NoPeriod => "no period is described",
        WhyNot::LengthOpen => "no length is described",
        WhyNot::ManyIdentifiers => "it stands for several identifiers",
        WhyNot::NotCalculated => "its length on the wire is not calculated here",
        WhyNot::NoSlot => "no schedule has a slot for it",
    }
}
