//! Networks and the control units on them.

use rustc_hash::FxHashMap;
use wirelore_model::NetworkKind;

use crate::resolve::Resolved;
use crate::resolve::catalogue::{Catalogue, Sourced};
use crate::resolve::messages::{Messages, at};
use crate::syntax::tree;
use crate::{Diagnostic, Rule, Site, Spanned};

pub(crate) fn check(resolved: &Resolved<'_>, catalogue: &Catalogue<'_>, messages: &mut Messages) {
    for network in &catalogue.networks {
        rates(network, messages);
    }
    for ecu in &catalogue.ecus {
        leads(ecu, catalogue, messages);
    }
    addresses(resolved, catalogue, messages);
}

/// The fastest rate of a kind in bit/s, and who says so.
fn fastest(kind: NetworkKind) -> (u64, &'static str) {
    match kind {
        NetworkKind::Can | NetworkKind::CanFd | NetworkKind::CanXl => (1_000_000, "ISO 11898-2"),
        NetworkKind::Lin => (20_000, "ISO 17987"),
        NetworkKind::Kline | NetworkKind::Uart => (125_000, "common practice"),
        NetworkKind::FlexRay => (10_000_000, "ISO 17458"),
        NetworkKind::Most => (150_000_000, "the fastest MOST ring"),
        NetworkKind::Ethernet => (10_000_000_000, "IEEE 802.3ch"),
    }
}

/// The fastest data phase in bit/s: of CAN FD with transceivers that improve the signal, of CAN XL as CAN in Automation (CiA 610) has it.
fn fastest_data(kind: NetworkKind) -> u64 {
    if kind == NetworkKind::CanXl { 20_000_000 } else { 8_000_000 }
}

fn rates(network: &Sourced<'_, tree::Network<'_>>, messages: &mut Messages) {
    let tree = network.tree;
    let Some(Spanned { value: kind, span: kind_span }) = tree.kind else { return };
    let (fastest, source) = fastest(kind);
    if let Some(rate) = tree.rate {
        rate_within(
            &rate,
            fastest,
            &format!("a `{}` network runs at up to {} ({source})", kind.keyword(), shown(fastest)),
            network,
            messages,
        );
    }
    let Some(data_rate) = tree.data_rate else { return };
    let site = at(network.file, data_rate.span);
    if !matches!(kind, NetworkKind::CanFd | NetworkKind::CanXl) {
        messages.push(
            Diagnostic::new(
                Rule::DataRateNeedless,
                site,
                format!("a `{}` network has no second rate for the data", kind.keyword()),
            )
            .here("only CAN FD and CAN XL have a data phase")
            .remark(at(network.file, kind_span), "the kind")
            .help("make the network a `can_fd` or `can_xl` one, or take the data rate away"),
        );
        return;
    }
    let fastest = fastest_data(kind);
    rate_within(
        &data_rate,
        fastest,
        &format!("the data phase of a `{}` network runs at up to {}", kind.keyword(), shown(fastest)),
        network,
        messages,
    );
    if let Some(rate) = tree.rate
        && data_rate.value < rate.value
    {
        let text = format!("the data rate of {} is slower than the other one", shown(data_rate.value));
        let message = Diagnostic::new(Rule::RateBeyondKind, site, text).here("the data phase is the faster one");
        messages.push(message.remark(at(network.file, rate.span), shown(rate.value)).help("were the two mixed up?"));
    }
}

fn rate_within(
    rate: &Spanned<u64>,
    fastest: u64,
    why: &str,
    network: &Sourced<'_, tree::Network<'_>>,
    messages: &mut Messages,
) {
    if rate.value == 0 {
        let message = Diagnostic::new(Rule::EveryZero, at(network.file, rate.span), "a bit rate of 0 makes no sense");
        messages.push(message.here("0").help("state the rate, or leave it out where it is not known"));
    }
    if rate.value <= fastest {
        return;
    }
    let message = Diagnostic::new(
        Rule::RateBeyondKind,
        at(network.file, rate.span),
        format!("{} is no rate for this network", shown(rate.value)),
    );
    messages.push(message.here(why).help("check the number and the unit (kbit/s or Mbit/s)"));
}

/// A rate in its largest whole unit.
fn shown(rate: u64) -> String {
    match rate {
        0 => "0 bit/s".to_owned(),
        _ if rate.is_multiple_of(1_000_000) => format!("{} Mbit/s", rate / 1_000_000),
        _ if rate.is_multiple_of(1_000) => format!("{} kbit/s", rate / 1_000),
        _ => format!("{rate} bit/s"),
    }
}

fn leads(ecu: &Sourced<'_, tree::Ecu<'_>>, catalogue: &Catalogue<'_>, messages: &mut Messages) {
    for name in &ecu.tree.leads {
        let network = catalogue.networks.iter().find(|network| network.tree.head.name.value == name.value);
        let Some((network, kind)) = network.and_then(|network| Some((network, network.tree.kind?))) else { continue };
        if !kind.value.is_can() {
            continue;
        }
        messages.push(
            Diagnostic::new(
                Rule::LeadsCan,
                at(ecu.file, name.span),
                format!("nobody leads a `{}` network", kind.value.keyword()),
            )
            .here("all units on it are equal")
            .remark(at(network.file, kind.span), "its kind")
            .help(format!("write `on {}`", name.value)),
        );
    }
}

/// Two units with one address on one network.
fn addresses(resolved: &Resolved<'_>, catalogue: &Catalogue<'_>, messages: &mut Messages) {
    let mut taken: FxHashMap<(u32, u8), (Site, &str)> = FxHashMap::default();
    for (ecu, sourced) in resolved.description.ecus.iter().zip(&catalogue.ecus) {
        let Some(written) = &sourced.tree.address else { continue };
        let site = at(sourced.file, written.span);
        for attachment in &ecu.on {
            let Some(address) = attachment.address else { continue };
            let Some((first, name)) = taken.insert((attachment.network.0, address), (site, &ecu.label.name)) else {
                continue;
            };
            let network = &resolved.description.networks[attachment.network.index()].label.name;
            messages.push(
                Diagnostic::new(
                    Rule::AddressTaken,
                    site,
                    format!("address {address:#04X} is taken on `{network}` by `{name}`"),
                )
                .here("the same address again")
                .remark(first, "the first one")
                .help("two units with one address cannot be told apart; correct one of them"),
            );
        }
    }
}
