//! The networks of the generated files, each with its way from what is seen to a frame.

use wirelore_model::{PortProtocol, SeenId};

use super::agreement::{Compared, Generated, can, compare, network};
use super::{files, heavy_duty, hostile, kestrel, kinds};

fn demo() -> Vec<Generated> {
    vec![
        can!("drive", kestrel::DriveFrame),
        can!("comfort", kestrel::ComfortFrame),
        can!("camera", kestrel::CameraFrame),
        network!("seat", kestrel::SeatFrame, SeenId::Lin(id) => decode(id)),
        network!("heater_line", kestrel::HeaterLineFrame, SeenId::Telegram { source, target } => decode(source, target)),
        network!("chassis", kestrel::ChassisFrame, SeenId::FlexRay { slot, cycle, on_b } => decode(slot, cycle, on_b)),
        network!(
            "sound",
            kestrel::SoundFrame,
            SeenId::Most { block, instance, function, operation } => decode(block, instance, function, operation)
        ),
        network!(
            "backbone",
            kestrel::BackboneFrame,
            SeenId::SomeIp { service, method, message_type } => decode_service(service, method, message_type),
            SeenId::Ports { protocol, from, to } => decode_port(protocol == PortProtocol::Tcp, from, to),
            SeenId::DoIp { payload_type, source, target } => decode_doip(payload_type, source, target)
        ),
    ]
}

fn heavy() -> Vec<Generated> {
    vec![can!("heavy_duty", heavy_duty::HeavyDutyFrame)]
}

fn odd() -> Vec<Generated> {
    vec![can!("crate", hostile::CrateFrame), can!("core", hostile::CoreFrame)]
}

fn bench() -> Vec<Generated> {
    vec![
        can!("bench", kinds::BenchFrame),
        network!(
            "services",
            kinds::ServicesFrame,
            SeenId::SomeIp { service, method, message_type } => decode_service(service, method, message_type),
            SeenId::Ports { protocol, from, to } => decode_port(protocol == PortProtocol::Tcp, from, to)
        ),
    ]
}

fn agree(rounds: u64) {
    let all = [
        (files::demo(), demo()),
        (files::standard("heavy_duty"), heavy()),
        (files::hostile(), odd()),
        (files::kinds(), bench()),
    ];
    for (database, networks) in all {
        let Compared { frames, readings, too_short } = compare(&database, &networks, rounds);
        assert!(
            frames > rounds / 2 && readings > rounds && too_short > rounds / 100,
            "{frames} {readings} {too_short}"
        );
    }
}

#[test]
fn the_source_says_what_the_decoder_says() {
    agree(60_000);
}

/// Minutes: `cargo test --release --workspace --test generated -- --ignored`.
#[test]
#[ignore = "ten million payloads"]
fn the_source_says_what_the_decoder_says_of_ten_million_payloads() {
    agree(10_000_000 / 4);
}
