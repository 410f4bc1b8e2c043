//! Tables from outside: everything that is written is read back with the readers of the formats' own libraries and compared with the
//! per-frame path, cell by cell and bit by bit.

mod every_option;
mod files;
mod grids;
mod kinds;
mod long;
mod support;
