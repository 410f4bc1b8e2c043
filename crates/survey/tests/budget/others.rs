//! Loads of the networks that are not CAN.

use wirelore_survey::budget::{Remark, WhyNot};

use crate::support::{assert_near, load_of};

/// LIN 2.2A, section 2.3.2: 8 bytes take 124 bit times, at 19.2 kbit/s 6.458 ms and at most 9.042 ms; 2 bytes 64, 3.333 ms and 4.667 ms.
#[test]
fn a_lin_schedule() {
    let text = "network seat lin 19.2 kbit/s
        frame long on seat id 0x11 { length 8 }
        frame short on seat id 0x12 { length 2 }
        frame rare on seat id 0x13 { length 2 }
        frame lost on seat id 0x14 { length 2 }
        schedule normal on seat, time base 5 ms {
            long takes 10 ms
            short takes 5 ms
            sporadic rare takes 5 ms
        }";
    let load = load_of(text, "seat");
    let share = load.share.expect("there are times");
    assert_near(share.least, (124.0 + 64.0) / 19_200.0 / 0.02);
    assert!((share.most - 1.4 * (124.0 + 64.0 + 64.0) / 19_200.0 / 0.02).abs() < 1e-6, "whole nanoseconds, rounded up");
    assert_near(load.frames_per_s, 100.0);
    let [schedule] = load.schedules.as_slice() else { panic!("one schedule") };
    let long = schedule.slots[0].share_of_slot().expect("there are times");
    assert!((long.least - 0.6458).abs() < 5e-5 && (long.most - 0.9042).abs() < 5e-5);
    let why: Vec<WhyNot> = load.uncounted.iter().map(|it| it.why).collect();
    assert_eq!(why, [WhyNot::NoSlot]);
}

/// 60 static slots, 64 cycles: one frame in each cycle on both channels, one in every second on channel A, two that share a slot; a
/// dynamic slot out of 30.
#[test]
fn slots_of_flexray() {
    let text = "network chassis flexray 10 Mbit/s, cycle 5 ms, static slots 60 of 16 bytes, dynamic up to slot 90
        frame a on chassis slot 7 { length 16 }
        frame b on chassis slot 12 every 2nd channel a { length 16 }
        frame c on chassis slot 42 from cycle 1 every 4th channel a { length 16 }
        frame d on chassis slot 42 from cycle 3 every 4th channel a { length 16 }
        frame e on chassis slot 70 from cycle 5 every 8th channel b { length 40 }";
    let load = load_of(text, "chassis");
    let slots = load.slots.expect("it is FlexRay");
    let [a, b] = &slots.channels;
    assert_eq!((a.static_used, a.static_all), (64 + 32 + 16 + 16, 60 * 64));
    assert_eq!((b.static_used, b.dynamic_used, b.dynamic_all, b.fullest_cycle), (64, 1, 30, 5));
    assert_near(load.share.expect("slots are described").least, 128.0 / 3840.0);
    // In 320 ms: 2 * 64 + 32 + 16 + 16 + 8.
    assert_near(load.frames_per_s, 200.0 / 0.32);
    assert_eq!(
        load_of("network x flexray 10 Mbit/s\nframe a on x slot 7 { length 16 }", "x").remarks,
        [Remark::NoSlots]
    );
}

/// A control message takes 16 of 44,100 frames a second (MOST Specification, from memory).
#[test]
fn control_messages_of_most() {
    let text = "network sound most 25 Mbit/s
        frame time on sound function 0x31.0x02.0x202 operation status {
            every 1 s
            length 3
        }";
    let load = load_of(text, "sound");
    assert_near(load.share.expect("the ring is known").least, 16.0 / 44_100.0);
    let faster = load_of(&text.replace("25 Mbit/s", "150 Mbit/s"), "sound");
    assert_eq!(faster.remarks, [Remark::NothingCounted, Remark::UnknownRing]);
}

/// IEEE 802.3: the smallest packet takes 672 bit times. 10,400 bit/s: 10 bits a byte (ISO 14230-2).
#[test]
fn packets_and_bytes() {
    let text = "network backbone ethernet 100 Mbit/s
        network line kline 10_400 bit/s
        frame small on backbone udp port 41200 {
            every 10 ms
            length 10
        }
        frame question on line from 0x10 to 0x2A {
            every 1 s
            length 2
        }";
    let backbone = load_of(text, "backbone");
    assert_near(backbone.share.expect("there is a rate").least, 672.0 * 100.0 / 100e6);
    assert_eq!(backbone.remarks, [Remark::OneLink]);
    let line = load_of(text, "line");
    assert_near(line.share.expect("there is a rate").least, 60.0 / 10_400.0);
    assert_eq!(line.remarks, [Remark::NoPauses]);
}
