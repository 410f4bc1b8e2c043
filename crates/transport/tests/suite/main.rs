//! The transports from outside: published exchanges, every fault, and what holds for any traffic.

mod heard;
mod iso_tp_exchanges;
mod iso_tp_faults;
mod iso_tp_properties;
mod j1939_tp_exchanges;
mod j1939_tp_faults;
mod j1939_tp_properties;
mod most;
