//! Checks of what belongs to the wires of a network.

use super::flaw::{Checked, Flaw};
use super::general::{not_zero, refers, set};
use crate::{Description, EcuId, Network, NetworkId, NetworkKind};

pub(super) fn check(description: &Description, network: &Network, id: NetworkId) -> Checked {
    let has_two_wires = network.kind.is_can() || network.kind == NetworkKind::FlexRay;
    if !has_two_wires && !network.terminators.is_empty() {
        return Err(Flaw::NoWirePair);
    }
    for terminator in &network.terminators {
        terminator.at.unit().map_or(Ok(()), |unit| sits_on(description, unit, id))?;
        not_zero("resistance of a terminator", terminator.ohms.unwrap_or(1).into())?;
    }
    let in_units = network.terminators.iter().filter_map(|terminator| terminator.at.unit());
    set("list of terminators", &mut in_units.map(|unit| unit.0).collect::<Vec<_>>())?;
    let Some(star) = &network.star else { return Ok(()) };
    if network.kind != NetworkKind::FlexRay {
        return Err(Flaw::NoStar);
    }
    if star.branches.iter().any(Vec::is_empty) {
        return Err(Flaw::Missing { what: "unit on a branch" });
    }
    let units = star.at.unit().into_iter().chain(star.branches.iter().flatten().copied());
    let mut units: Vec<u32> = units.map(|unit| unit.0).collect();
    units.iter().try_for_each(|unit| sits_on(description, EcuId(*unit), id))?;
    set("list of a star and its branches", &mut units)
}

fn sits_on(description: &Description, unit: EcuId, network: NetworkId) -> Checked {
    refers("ecu", unit.0, description.ecus.len())?;
    let ecu = &description.ecus[unit.index()];
    let is_there = ecu.leads.contains(&network) || ecu.on.iter().any(|attachment| attachment.network == network);
    if is_there { Ok(()) } else { Err(Flaw::NotOnNetwork { unit: ecu.label.name.clone() }) }
}
