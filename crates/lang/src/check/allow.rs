//! `allow`: hints and warnings that are not wanted at a place.

use rustc_hash::FxHashMap;

use crate::resolve::ParsedFile;
use crate::resolve::messages::{Messages, at, suggest};
use crate::syntax::tree::{Body, BodyKind, Front, ItemKind, Name};
use crate::{Diagnostic, FileId, Level, Rule, Site, Span};

/// One rule that is not wanted in one stretch of a file.
#[derive(Debug)]
struct Allow {
    rule: Rule,
    scope: Span,
    site: Site,
    used: bool,
}

/// The allows of all files, by file and rule, sorted by where their stretches begin.
type Allows = FxHashMap<(FileId, Rule), Vec<Allow>>;

/// Takes out what is not wanted, tells of each `allow` that takes nothing out, and sorts what is left by file and place.
pub(crate) fn settle(files: &[ParsedFile], mut messages: Messages) -> Vec<Diagnostic> {
    let mut allows = Allows::default();
    for parsed in files.iter().filter(|parsed| parsed.tree.has_allow) {
        let mut collector = Collector { file: parsed.file, allows: &mut allows, messages: &mut messages };
        collector.file(parsed);
    }
    for list in allows.values_mut() {
        // Of two with the same beginning the wider one comes first, so that the inner one is found on top.
        list.sort_by_key(|allow| (allow.scope.start, std::cmp::Reverse(allow.scope.end), allow.site.span));
    }
    let told = sorted(messages.into_list());
    let mut left = quieted(told, &mut allows);
    let mut idle: Vec<Diagnostic> = Vec::new();
    for parsed in files {
        for &rule in Rule::ALL {
            let list = allows.get(&(parsed.file, rule));
            idle.extend(
                list.into_iter()
                    .flatten()
                    .filter(|allow| !allow.used && rule != Rule::AllowQuietsNothing)
                    .map(say_idle),
            );
        }
    }
    left.extend(quieted(sorted(idle), &mut allows));
    sorted(left)
}

fn sorted(mut messages: Vec<Diagnostic>) -> Vec<Diagnostic> {
    messages.sort_by(|a, b| (a.site, a.rule).cmp(&(b.site, b.rule)).then_with(|| a.message.cmp(&b.message)));
    messages
}

/// Goes through sorted messages, with the stretches around each of them on a stack.
fn quieted(messages: Vec<Diagnostic>, allows: &mut Allows) -> Vec<Diagnostic> {
    let mut stacks: FxHashMap<(FileId, Rule), (usize, Vec<usize>)> = FxHashMap::default();
    let mut left = Vec::with_capacity(messages.len());
    for message in messages {
        let key = (message.site.file, message.rule);
        let list = allows.get_mut(&key).filter(|_| message.level() < Level::Error);
        let Some(list) = list else {
            left.push(message);
            continue;
        };
        let (next, open) = stacks.entry(key).or_default();
        let place = message.site.span.start;
        while list.get(*next).is_some_and(|allow| allow.scope.start <= place) {
            open.push(*next);
            *next += 1;
        }
        while open.last().is_some_and(|&index| list[index].scope.end <= place) {
            open.pop();
        }
        match open.last() {
            Some(&index) => list[index].used = true,
            None => left.push(message),
        }
    }
    left
}

fn say_idle(allow: &Allow) -> Diagnostic {
    let message = Diagnostic::new(
        Rule::AllowQuietsNothing,
        allow.site,
        format!("this `allow {}` quiets nothing", allow.rule.name()),
    );
    if allow.rule.level() == Level::Error {
        message.here("an error").help("errors stay: only hints and warnings can be quieted")
    } else {
        message.here("no such message here").help("take it out")
    }
}

struct Collector<'a> {
    file: FileId,
    allows: &'a mut Allows,
    messages: &'a mut Messages,
}

impl Collector<'_> {
    fn file(&mut self, parsed: &ParsedFile) {
        for item in &parsed.tree.items {
            self.front(&item.front, item.span);
            match &item.kind {
                ItemKind::AllowInFile(names) => names.iter().for_each(|name| self.name(name, Span::new(0, u32::MAX))),
                ItemKind::Frame(frame) => self.body(&frame.body),
                ItemKind::Layout(layout) => self.body(&layout.body),
                ItemKind::Gateway(gateway) => {
                    gateway.routes.iter().for_each(|route| self.front(&route.front, route.span))
                }
                ItemKind::Schedule(schedule) => {
                    schedule.slots.iter().for_each(|slot| self.front(&slot.front, slot.span))
                }
                _ => {}
            }
        }
    }

    fn body(&mut self, body: &Body) {
        for item in &body.items {
            self.front(&item.front, item.span);
            match &item.kind {
                BodyKind::When(when) => self.body(&when.body),
                BodyKind::Otherwise(body) => self.body(body),
                BodyKind::Repeat(repeat) => self.body(&repeat.body),
                _ => {}
            }
        }
    }

    fn front(&mut self, front: &Front, scope: Span) {
        front.allow.iter().for_each(|name| self.name(name, scope));
    }

    fn name(&mut self, name: &Name, scope: Span) {
        let site = at(self.file, name.span);
        if let Some(rule) = Rule::named(&name.value) {
            self.allows.entry((self.file, rule)).or_default().push(Allow { rule, scope, site, used: false });
            return;
        }
        let meant = self.messages.nearest(&name.value, Rule::ALL.iter().map(|rule| rule.name()));
        let message = Diagnostic::new(Rule::UnknownRule, site, format!("there is no rule called `{}`", name.value))
            .here("nothing to allow");
        self.messages.push(
            suggest(message, &meant)
                .help("each message begins with its grade and the name of its rule, as in `hint still-guessed: ...`"),
        );
    }
}
