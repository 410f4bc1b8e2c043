//! Do frames come to where they are read and copied?

use wirelore_model::{FrameId, NetworkId, Passed};

use crate::resolve::catalogue::Catalogue;
use crate::resolve::messages::{Messages, at};
use crate::resolve::{Resolved, not_on_network};
use crate::syntax::tree::{self, Name};
use crate::{Diagnostic, Rule};

pub(crate) fn check(resolved: &Resolved<'_>, catalogue: &Catalogue<'_>, messages: &mut Messages) {
    // Where a gateway's line is broken, frames may well come to where nobody can see them now.
    if !resolved.lines.is_broken {
        readers(resolved, catalogue, messages);
        copies(resolved, messages);
    }
}

fn readers(resolved: &Resolved<'_>, catalogue: &Catalogue<'_>, messages: &mut Messages) {
    let description = &resolved.description;
    for (frame, origin) in description.frames.iter().zip(&resolved.frames) {
        let Some(own) = origin.network else { continue };
        for &(ecu, site) in &origin.readers {
            let sits_on = &description.ecus[ecu.index()].on;
            let reads = |network: NetworkId| sits_on.iter().any(|attachment| attachment.network == network);
            if reads(own) || frame.seen_on.iter().any(|seen| reads(seen.network)) {
                continue;
            }
            let message = not_on_network(catalogue, Rule::ReaderNotOnNetwork, site, ecu, own);
            messages.push(message.help(format!(
                "if a gateway passes the frame on, say so: `pass {} from ... to ...`",
                frame.label.name
            )));
        }
    }
}

/// Copied signals: the one frame has to come to the first network, the other one to be on the second.
fn copies(resolved: &Resolved<'_>, messages: &mut Messages) {
    let description = &resolved.description;
    for (route, origin) in description.routes.iter().zip(&resolved.lines.origins) {
        let (Passed::Signal { from_frame, to_frame, .. }, tree::Passed::Signal { source, target, .. }) =
            (&route.what, &origin.tree.what)
        else {
            continue;
        };
        let (from, to) = origin.networks();
        let mut check = |frame: FrameId, name: &Name, network: NetworkId, network_name: &Name| {
            let seen_on = &description.frames[frame.index()].seen_on;
            if seen_on.is_empty() || seen_on.iter().any(|seen| seen.network == network) {
                return;
            }
            let text = format!("frame `{}` is not seen on `{}`", name.value, network_name.value);
            messages.push(
                Diagnostic::new(Rule::PassFromNowhere, at(origin.file, network_name.span), text)
                    .here("never comes here")
                    .remark(resolved.frames[frame.index()].name(), "the frame")
                    .help("pass it to this network first, or correct the name of the network"),
            );
        };
        check(*from_frame, &source.0, route.from, from);
        check(*to_frame, &target.0, route.to, to);
    }
}
