//! What belongs to the wires of a network: terminators, the active star and its branches.

use rustc_hash::FxHashSet;
use wirelore_model::{ActiveStar, Description, EcuId, Fitted, NetworkId, NetworkKind, Terminator};

use crate::syntax::tree::{self, FittedAt, Name};
use crate::{Diagnostic, Rule, Span};

use super::catalogue::{Catalogue, Sourced};
use super::messages::{Messages, at, clause_does_not_fit};
use super::names::Names;
use super::not_on_network;

/// Reads what every network line says of the network's wires.
pub(super) fn read(
    description: &mut Description,
    catalogue: &Catalogue<'_>,
    names: &Names<'_>,
    attached: &FxHashSet<(EcuId, NetworkId)>,
    messages: &mut Messages,
) {
    for (sourced, id) in catalogue.networks.iter().zip((0..).map(NetworkId)) {
        let mut reader = Reader { id, sourced, catalogue, names, attached, messages };
        let (terminators, star) = (reader.terminators(), reader.star());
        let network = &mut description.networks[id.index()];
        (network.terminators, network.star) = (terminators, star);
    }
}

/// Reads one network line.
struct Reader<'a, 't> {
    id: NetworkId,
    sourced: &'a Sourced<'t, tree::Network<'t>>,
    catalogue: &'a Catalogue<'t>,
    names: &'a Names<'t>,
    attached: &'a FxHashSet<(EcuId, NetworkId)>,
    messages: &'a mut Messages,
}

impl Reader<'_, '_> {
    fn terminators(&mut self) -> Vec<Terminator> {
        let Some(written) = &self.sourced.tree.wiring.terminators else { return Vec::new() };
        let has_two_wires = |kind: NetworkKind| kind.is_can() || kind == NetworkKind::FlexRay;
        if !self.fits(written.span, "terminators", "of CAN and FlexRay", NetworkKind::Can, has_two_wires) {
            return Vec::new();
        }
        let mut units = FxHashSet::default();
        let mut found = Vec::new();
        for item in &written.value {
            let ohms = item.ohms.as_ref().and_then(|ohms| self.ohms(ohms));
            found.extend(self.fitted(&item.at, &mut units).map(|at| Terminator { at, ohms }));
        }
        found
    }

    fn ohms(&mut self, written: &tree::Integer) -> Option<u32> {
        let ohms = u32::try_from(written.value).ok().filter(|ohms| *ohms > 0);
        if ohms.is_none() {
            let text = format!("{} ohm is no resistance of a terminator", written.value);
            let message = Diagnostic::new(Rule::BadNumber, at(self.sourced.file, written.span), text);
            self.messages.push(message.here("mostly 120").help("leave it out where it was not measured"));
        }
        ohms
    }

    fn star(&mut self) -> Option<ActiveStar> {
        let wiring = &self.sourced.tree.wiring;
        let first = wiring.star.iter().map(|star| star.span).chain(wiring.branches.iter().map(|it| it.span)).min()?;
        if !self.fits(first, "active star", "of FlexRay", NetworkKind::FlexRay, |kind| kind == NetworkKind::FlexRay) {
            return None;
        }
        let Some(star) = &wiring.star else {
            let text = "a branch needs the star that it begins at";
            let message = Diagnostic::new(Rule::MissingPart, at(self.sourced.file, first), text);
            self.messages
                .push(message.here("of which star?").help("say where the star is: `star hub, branch brakes, dampers`"));
            return None;
        };
        let mut units = FxHashSet::default();
        let at = self.fitted(&star.value, &mut units)?;
        let mut branches = Vec::new();
        for branch in &wiring.branches {
            let named: Vec<EcuId> = branch.value.iter().filter_map(|name| self.unit(name, &mut units)).collect();
            branches.extend(Some(named).filter(|named| !named.is_empty()));
        }
        Some(ActiveStar { at, branches })
    }

    /// Whether the network is of a kind that has such a thing; where it is not, that is told.
    fn fits(
        &mut self,
        clause: Span,
        what: &str,
        whose: &str,
        wanted: NetworkKind,
        has: impl Fn(NetworkKind) -> bool,
    ) -> bool {
        let Some(kind) = self.sourced.tree.kind else { return false };
        if has(kind.value) {
            return true;
        }
        let text = format!("a `{}` network has no {what}", kind.value.keyword());
        let (clause, remark) = (at(self.sourced.file, clause), (at(self.sourced.file, kind.span), wanted));
        self.messages.push(clause_does_not_fit(clause, text, &format!("only networks {whose} have that"), remark));
        false
    }

    fn fitted(&mut self, written: &FittedAt<'_>, units: &mut FxHashSet<EcuId>) -> Option<Fitted> {
        match written {
            FittedAt::Unit(name) => self.unit(name, units).map(Fitted::Unit),
            FittedAt::Wiring(place) => Some(Fitted::Wiring(place.value.to_string())),
        }
    }

    /// The unit of a name, which must be on the network, and must be named once in one matter.
    fn unit(&mut self, name: &Name<'_>, units: &mut FxHashSet<EcuId>) -> Option<EcuId> {
        let file = self.sourced.file;
        let unit = self.names.ecu(file, name, self.messages)?;
        let site = at(file, name.span);
        if !self.attached.contains(&(unit, self.id)) {
            let message = not_on_network(self.catalogue, Rule::WiringNotOnNetwork, site, unit, self.id);
            self.messages.push(message);
            return None;
        }
        if !units.insert(unit) {
            let message = Diagnostic::new(Rule::RepeatedClause, site, format!("`{}` is named twice here", name.value))
                .here("again");
            self.messages.push(message.help("a unit has one terminator, and one place at a star"));
            return None;
        }
        Some(unit)
    }
}
