//! Bytes that go into a checksum beside those that it covers. They may be signals, so they are read when all signals are known.

use wirelore_model::{Content, MixedByte, NetworkKind, Role, Signal, SignalId};

use crate::syntax::tree::{self, Integer, MixedIn, Name};
use crate::{Diagnostic, Rule, Site};

use super::Resolver;
use super::flat::Scope;
use super::messages::suggest;
use super::pages::Sight;

/// The last byte of an identifier, counted from the least significant one.
const LAST_IDENTIFIER_BYTE: u8 = 3;

/// The bytes that go into a signal's checksum, before and behind the payload's: `None` where something is wrong with one of them, and
/// a message says so.
pub(crate) fn read(
    resolver: &mut Resolver<'_, '_>,
    sight: &Sight<'_, '_>,
    id: SignalId,
    scope: &Scope,
    kind: Option<NetworkKind>,
) -> Option<(Vec<MixedByte>, Vec<MixedByte>)> {
    let written = &sight.origins[id.index()].tree.extras().checksum.as_ref()?.value;
    let mut reader = Reader { resolver, sight, scope, kind, signal: &sight.signals[id.index()] };
    let (first, then) = (reader.bytes(&written.first), reader.bytes(&written.then));
    Some((first?, then?))
}

struct Reader<'a, 'r, 's, 't> {
    resolver: &'a mut Resolver<'r, 's>,
    sight: &'a Sight<'a, 't>,
    scope: &'a Scope,
    /// The frame's own network.
    kind: Option<NetworkKind>,
    /// The checksum.
    signal: &'a Signal,
}

impl Reader<'_, '_, '_, '_> {
    fn bytes(&mut self, written: &[MixedIn<'_>]) -> Option<Vec<MixedByte>> {
        let bytes: Vec<MixedByte> = written.iter().filter_map(|byte| self.byte(byte)).collect();
        (bytes.len() == written.len()).then_some(bytes)
    }

    fn byte(&mut self, written: &MixedIn<'_>) -> Option<MixedByte> {
        match written {
            MixedIn::Byte(number) => {
                let byte = self.at_most(number, u8::MAX, "is not a byte", "a byte goes from 0 to 255");
                byte.map(MixedByte::Byte)
            }
            MixedIn::Identifier(number) => {
                if let Some(kind) = self.kind.filter(|kind| !kind.is_can() && *kind != NetworkKind::Lin) {
                    let message = format!("frames of `{}` networks have no bytes of an identifier", kind.keyword());
                    let site = self.scope.site(number.span);
                    let message = Diagnostic::new(Rule::KindDoesNotFit, site, message);
                    self.resolver.messages.push(message.here("those of CAN and LIN have some"));
                    return None;
                }
                let here = "0 is the least significant byte, 3 the last one of 29 bits";
                let byte = self.at_most(number, LAST_IDENTIFIER_BYTE, "is not a byte of an identifier", here);
                byte.map(MixedByte::Identifier)
            }
            MixedIn::Signal(name) => self.signal(name).map(MixedByte::Signal),
        }
    }

    fn at_most(&mut self, number: &Integer, most: u8, what: &str, here: &str) -> Option<u8> {
        let byte = u8::try_from(number.value).ok().filter(|byte| *byte <= most);
        if byte.is_none() {
            let message = format!("{} {what}", number.value);
            let site = self.scope.site(number.span);
            self.resolver.messages.push(Diagnostic::new(Rule::ChecksumWidth, site, message).here(here));
        }
        byte
    }

    /// A signal that is there whenever the checksum is, and has room in a byte.
    fn signal(&mut self, name: &Name<'_>) -> Option<SignalId> {
        let site = self.scope.site(name.span);
        let Some(entry) = self.sight.seen(name, self.scope, self.signal.page) else {
            self.say_unknown(name, site);
            return None;
        };
        let id = entry.id?;
        let mixed = &self.sight.signals[id.index()];
        let trouble = match &mixed.content {
            _ if std::ptr::eq(mixed, self.signal) => "a checksum cannot be mixed into itself".to_owned(),
            Content::Number { field, .. } if field.width() <= 8 => return Some(id),
            Content::Number { field, .. } => {
                format!("`{}` has {} bits, and what is mixed in has at most 8", name.value, field.width())
            }
            Content::Text { .. } | Content::Bytes { .. } => format!("`{}` holds text or bytes", name.value),
        };
        let message = Diagnostic::new(Rule::ChecksumWidth, site, trouble).here("cannot be mixed in");
        self.resolver.messages.push(message.remark(entry.site, "this signal"));
        None
    }

    fn say_unknown(&mut self, name: &Name<'_>, site: Site) {
        let Self { resolver, sight, signal, scope, .. } = self;
        let meant =
            resolver.messages.nearest(&scope.full_name(&name.value), sight.table.seen_from(signal.page, sight.pages));
        let message = format!("no signal that is there with `{}` is called `{}`", signal.label.name, name.value);
        let message = Diagnostic::new(Rule::UnknownSignal, site, message).here("not there to be mixed in");
        resolver.messages.push(suggest(message, &meant));
    }
}

/// Whether the bytes of a signal's checksum are to be read.
pub(crate) fn has_some(signal: &Signal, tree: &tree::Signal<'_>) -> bool {
    let written = tree.extras().checksum.as_ref();
    matches!(signal.role, Role::Checksum(_))
        && written.is_some_and(|written| !written.value.first.is_empty() || !written.value.then.is_empty())
}
