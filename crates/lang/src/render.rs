//! Messages for people and for other programs. Same messages, same output, byte for byte.

mod json;
mod safe;
mod sarif;
mod text;
mod window;

#[cfg(test)]
mod tests;

pub use json::json_lines;
pub use safe::message as visible;
pub use sarif::sarif;
pub use text::text;
