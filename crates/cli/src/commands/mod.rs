//! The commands, one file each.

pub(crate) mod budget;
pub(crate) mod check;
pub(crate) mod compile;
pub(crate) mod decode;
pub(crate) mod encode;
pub(crate) mod explain;
pub(crate) mod format;
pub(crate) mod map;
