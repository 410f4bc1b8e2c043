//! What only frames of LIN have: the kind of their checksum, and the frames that an event-triggered one stands for.

use wirelore_bits::lin;
use wirelore_model::{Identifier, LengthRange, LinChecksum, NetworkKind};

use crate::syntax::tree;
use crate::{Diagnostic, FileId, Rule, Span};

use super::Resolver;
use super::messages::at;

/// Frames of diagnostics have 8 bytes (LIN 2.2A, section 2.3.3.4, from memory).
pub(crate) const DIAGNOSTIC_LENGTH: LengthRange = LengthRange { min: 8, max: 8 };

/// Whether a frame is one of diagnostics.
pub(crate) fn is_diagnostic(identifier: &Identifier) -> bool {
    matches!(identifier, Identifier::Lin { id: lin::MASTER_REQUEST | lin::SLAVE_RESPONSE, .. })
}

/// Puts the clauses of a frame into the identifier that it is recognised by.
pub(crate) fn with_clauses(
    resolver: &mut Resolver<'_, '_>,
    file: FileId,
    tree: &tree::Frame<'_>,
    mut identifier: Identifier,
    kind: Option<NetworkKind>,
) -> Identifier {
    if let Identifier::Lin { id, checksum, stands_for } = &mut identifier {
        if let Some(written) = tree.checksum {
            *checksum = told_checksum(resolver, file, *id, written, *checksum);
        }
        *stands_for =
            tree.stands_for.iter().filter_map(|name| resolver.names.frame(file, name, resolver.messages)).collect();
    } else if let Some(kind) = kind {
        elsewhere(resolver, file, tree, kind);
    }
    identifier
}

/// The checksum that a frame says it has, where it can have it.
fn told_checksum(
    resolver: &mut Resolver<'_, '_>,
    file: FileId,
    id: u8,
    written: crate::Spanned<LinChecksum>,
    usual: LinChecksum,
) -> LinChecksum {
    if id < lin::FIRST_CLASSIC_ID || written.value == usual {
        return written.value;
    }
    let site = at(file, written.span);
    let text = format!("the frames of identifier {id:#04X} always have the classic checksum");
    resolver.messages.push(
        Diagnostic::new(Rule::ChecksumKindImpossible, site, text)
            .here("60 to 63 (0x3C to 0x3F) are reserved (LIN 2.2A, section 2.3.1.5)")
            .help("write `classic`, or leave it out")
            .fix(site, "classic"),
    );
    usual
}

/// Clauses of LIN on a frame of another network.
fn elsewhere(resolver: &mut Resolver<'_, '_>, file: FileId, tree: &tree::Frame<'_>, kind: NetworkKind) {
    let mut say = |rule, span: Span, text: String, help: &str| {
        resolver.messages.push(Diagnostic::new(rule, at(file, span), text).here("for LIN only").help(help));
    };
    if let Some(written) = tree.checksum {
        let text = format!("frames of a `{}` network have no `{}` checksum", kind.keyword(), written.value.word());
        say(
            Rule::ChecksumKindImpossible,
            written.span,
            text,
            "describe a checksum among the data as a signal: `checksum NAME over bytes A..B`",
        );
    }
    if let (Some(first), Some(last)) = (tree.stands_for.first(), tree.stands_for.last()) {
        let text = format!("frames of a `{}` network do not stand for others", kind.keyword());
        let help = "where one frame carries several meanings, describe them as pages with `when`";
        say(Rule::StandsForImpossible, first.span.to(last.span), text, help);
    }
}
