//! Frames of `--add`: the words of the language for a frame, in any order and on one line, brought into the order of a file.

use wirelore_model::Database;

use crate::failure::Failure;

/// The words that begin a part of what is recognised, or of when it is sent.
const RECOGNISED: [&str; 11] =
    ["id", "pgn", "xl", "slot", "function", "service", "udp", "tcp", "doip", "from", "starts"];
const SENT: [&str; 5] = ["sent", "every", "jitter", "timeout", "at"];

/// A text with one frame for each option.
pub(super) fn text(options: &[String], database: &Database) -> Result<String, Failure> {
    let mut text = String::new();
    let mut number = 1;
    for option in options {
        let parts = Parts::of(option)?;
        while database.frame_named(&format!("added_{number}")).is_some() {
            number += 1;
        }
        text.push_str(&parts.frame(&format!("added_{number}")));
        number += 1;
    }
    Ok(text)
}

/// One frame, taken apart.
#[derive(Debug, Default, PartialEq)]
struct Parts {
    network: String,
    recognised: String,
    sent: Vec<String>,
    length: String,
}

impl Parts {
    fn of(option: &str) -> Result<Self, Failure> {
        let mut parts = Self::default();
        let words: Vec<&str> = option.split_whitespace().collect();
        let word = |at: usize| words.get(at).map_or("", |word| word.trim_end_matches(','));
        let is_occasion = |at: usize| word(at) == "on" && matches!(word(at + 1), "change" | "request");
        let begins = |at: usize| match word(at) {
            // `every 1 s or on change` is one part, `every 2nd` belongs to the slot.
            "on" => !is_occasion(at) || word(at - 1) != "or",
            "from" => !words[..at].contains(&"pgn") && !words[..at].contains(&"slot"),
            "every" => !is_ordinal(word(at + 1)),
            "length" => true,
            word => RECOGNISED.contains(&word) || SENT.contains(&word),
        };
        let mut at = 0;
        while at < words.len() {
            let end = (at + 1..words.len()).find(|next| begins(*next)).unwrap_or(words.len());
            let part = words[at..end].join(" ");
            let part = part.trim_end_matches(',');
            match words[at] {
                "on" if is_occasion(at) => parts.sent.push(part.to_owned()),
                "on" => part.trim_start_matches("on ").clone_into(&mut parts.network),
                "length" => part.clone_into(&mut parts.length),
                word if RECOGNISED.contains(&word) => {
                    parts.recognised = format!("{} {part}", parts.recognised).trim_start().to_owned();
                }
                word if SENT.contains(&word) => parts.sent.push(part.to_owned()),
                word => return Err(wrong(option, &format!("\"{word}\" begins no part of a frame"))),
            }
            at = end;
        }
        match &parts {
            Self { network, .. } if network.is_empty() => Err(wrong(option, "it does not say on which network")),
            Self { recognised, .. } if recognised.is_empty() => Err(wrong(option, "it does not say which identifier")),
            Self { sent, .. } if sent.is_empty() => Err(wrong(option, "it does not say how often")),
            _ => Ok(parts),
        }
    }

    /// As it stands in a file.
    fn frame(&self, name: &str) -> String {
        let Self { network, recognised, sent, length } = self;
        // `sent by x every 10 ms`: no comma behind the sender.
        let sent = sent.join(", ");
        let sent = match sent.split_once(", ") {
            Some((by, rest)) if by.starts_with("sent by") => format!("{by} {rest}"),
            _ => sent,
        };
        format!("frame {name} on {network} {recognised} {{\n    {sent}\n    {length}\n}}\n")
    }
}

fn is_ordinal(word: &str) -> bool {
    word.starts_with(|c: char| c.is_ascii_digit()) && ["st", "nd", "rd", "th"].iter().any(|end| word.ends_with(end))
}

fn wrong(option: &str, why: &str) -> Failure {
    Failure::Usage(format!(
        "cannot understand --add \"{option}\": {why}; write it so: 'id 0x123 every 10 ms length 8 on drive'"
    ))
}

#[cfg(test)]
mod tests {
    use super::*;

    fn frame(option: &str) -> String {
        Parts::of(option).map(|parts| parts.frame("new")).unwrap_or_else(|error| error.to_string())
    }

    #[test]
    fn words_in_any_order() {
        assert_eq!(
            frame("id 0x123 every 10 ms length 8 on drive"),
            "frame new on drive id 0x123 {\n    every 10 ms\n    length 8\n}\n"
        );
        assert_eq!(
            frame("on truck pgn 65265 from 0x21 priority 6, length 8, sent by brakes every 100 ms, jitter 2 ms"),
            "frame new on truck pgn 65265 from 0x21 priority 6 {\n    sent by brakes every 100 ms, jitter 2 ms\n    length 8\n}\n"
        );
        assert_eq!(
            frame("on change, at least 100 ms apart id 0x1 on drive length 2"),
            "frame new on drive id 0x1 {\n    on change, at least 100 ms apart\n    length 2\n}\n"
        );
        assert_eq!(
            frame("id 0x18FF0101 extended every 1 s or on change, at least 10 ms apart on drive length 2"),
            "frame new on drive id 0x18FF0101 extended {\n    every 1 s or on change, at least 10 ms apart\n    length 2\n}\n"
        );
    }

    #[test]
    fn what_is_missing_is_told() {
        assert!(frame("id 0x123 every 10 ms length 8").contains("on which network"));
        assert!(frame("every 10 ms on drive").contains("which identifier"));
        assert!(frame("id 0x123 on drive").contains("how often"));
        assert!(frame("0x123 on drive").contains("\"0x123\" begins no part"));
    }
}
