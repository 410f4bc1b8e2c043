//! Pictures: functions from a description to the text of a drawing.
//!
//! It opens no file, and the same description gives the same picture, byte for byte.
