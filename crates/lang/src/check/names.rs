//! The house style of names.

use crate::resolve::catalogue::{Catalogue, Sourced};
use crate::resolve::messages::{Messages, at};
use crate::syntax::tree::{self, Head, Name, StatesClause};
use crate::{Diagnostic, FileId, Rule};

pub(crate) fn check(catalogue: &Catalogue<'_>, messages: &mut Messages) {
    heads(&catalogue.vehicles, |head| head, messages);
    heads(&catalogue.networks, |network| &network.head, messages);
    heads(&catalogue.ecus, |ecu| &ecu.head, messages);
    heads(&catalogue.states, |states| &states.head, messages);
    heads(&catalogue.layouts, |layout| &layout.head, messages);
    heads(&catalogue.frames, |frame| &frame.head, messages);
    heads(&catalogue.schedules, |schedule| &schedule.head, messages);
    for states in &catalogue.states {
        words(&states.tree.words, states.file, messages);
    }
}

/// Checks the names of one signal.
pub(crate) fn signal(tree: &tree::Signal, file: FileId, messages: &mut Messages) {
    name(&tree.head.name, file, messages);
    if let Some(StatesClause::Own(own)) = tree.extras().states.as_ref().map(|states| &states.value) {
        words(own, file, messages);
    }
}

fn heads<'t, T>(items: &[Sourced<'t, T>], head: impl Fn(&'t T) -> &'t Head<'t>, messages: &mut Messages) {
    items.iter().for_each(|item| name(&head(item.tree).name, item.file, messages));
}

fn words(words: &[tree::StateWord], file: FileId, messages: &mut Messages) {
    words.iter().for_each(|word| name(&word.word, file, messages));
}

fn name(written: &Name, file: FileId, messages: &mut Messages) {
    let text = &written.value;
    let has_capitals = if text.is_ascii() {
        text.bytes().any(|byte| byte.is_ascii_uppercase())
    } else {
        text.chars().any(char::is_uppercase)
    };
    if !has_capitals {
        return;
    }
    let better = snake_case(&written.value);
    let message = Diagnostic::new(
        Rule::NameStyle,
        at(file, written.span),
        format!("names are written in lower case with `_` between words, and `{}` is not", written.value),
    );
    messages.push(
        message.here("capital letters").help(format!("for example `{better}`; every place that names it changes too")),
    );
}

/// `FrontLeft` and `Front_Left` as `front_left`; a run of capitals stays one word.
fn snake_case(name: &str) -> String {
    let mut snake = String::with_capacity(name.len() + 4);
    let mut before: Option<char> = None;
    let mut rest = name.chars().peekable();
    while let Some(current) = rest.next() {
        let next_is_lower = rest.peek().is_some_and(|next| next.is_lowercase());
        let begins_word = current.is_uppercase()
            && before.is_some_and(|before| {
                before.is_lowercase() || before.is_numeric() || (before.is_uppercase() && next_is_lower)
            });
        if begins_word {
            snake.push('_');
        }
        snake.extend(current.to_lowercase());
        before = Some(current);
    }
    snake
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn capitals_become_words() {
        for (name, better) in [
            ("FrontLeft", "front_left"),
            ("Front_Left", "front_left"),
            ("ABSActive", "abs_active"),
            ("ECU", "ecu"),
            ("Rear2Left", "rear2_left"),
            ("ÄußererSpiegel", "äußerer_spiegel"),
        ] {
            assert_eq!(snake_case(name), better);
        }
    }
}
