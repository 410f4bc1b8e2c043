//! A program without the standard library and without an allocator: it decodes one frame by a table in read-only memory.
//!
//! Built and run by `tests/tests/no_std.rs`. Its status is 0 where the value is right.

#![no_std]
#![no_main]

use core::panic::PanicInfo;

use wirelore_lorec::{Lorec, Value};

/// `frame wheel_speeds on drive id 0x1B4 { signal front_left in bits 1.4..0.0 = raw * 0.05 km/h }`
static TABLE: &[u8] = include_bytes!("../../crates/lorec/tests/wheels.lorec");

/// Called by the C runtime.
#[unsafe(no_mangle)]
extern "C" fn main() -> i32 {
    let Ok(table) = Lorec::new(TABLE) else { return 1 };
    let Some(frame) = table.network("drive").and_then(|drive| drive.find(0x1B4, false)) else { return 2 };
    let mut status = 3;
    frame.decode(&[0xE8, 0x03, 0, 0, 0, 0, 0, 0], |signal, reading| {
        if signal.name() == "front_left" && reading.value == Value::Number(50.0) {
            status = 0;
        }
    });
    status
}

#[panic_handler]
fn panicked(_: &PanicInfo<'_>) -> ! {
    loop {}
}

/// Asked for by the core library of targets that unwind. Nothing here does.
#[unsafe(no_mangle)]
extern "C" fn rust_eh_personality() {}
