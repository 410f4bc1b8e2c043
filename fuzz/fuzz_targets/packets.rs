//! Any packets, streams, datagrams and single-wire bytes: reading ends, memory stays within its bounds, and each byte is told once.
#![no_main]

use libfuzzer_sys::fuzz_target;
use wirelore_transport::cut::{Cut, Cutter, Framing};
use wirelore_transport::doip::{self, DoIp};
use wirelore_transport::ethernet::{Carried, read};
use wirelore_transport::someip::sd::Discovery;
use wirelore_transport::someip::tp::Reassembler;
use wirelore_transport::someip::{self, SomeIp};
use wirelore_transport::tcp::{Limits, Streams};
use wirelore_transport::uart::{CheckByte, Cutter as UartCutter, Event, Form, GAP_NS, Size, TelegramForm};

const MOST_BYTES: usize = 1000;
const LIMITS: Limits = Limits { streams: 4, waiting_bytes: 300, all_waiting_bytes: 500 };

const TELEGRAM: TelegramForm = TelegramForm {
    source_byte: Some(0),
    target_byte: Some(2),
    size: Some(Size { byte: 1, counts_from: 2 }),
    check: CheckByte::Xor,
};

// The input is a row of records: what it is, how many bytes, the bytes.
fuzz_target!(|input: &[u8]| {
    let mut streams = Streams::new(LIMITS, (Cutter::<SomeIp>::new(MOST_BYTES), Cutter::<DoIp>::new(MOST_BYTES)));
    let mut segmented = Reassembler::new(MOST_BYTES);
    let (mut all_stream, mut all_uart) = (Vec::new(), Vec::new());
    let mut rest = input;
    while let [what, length, behind @ ..] = rest {
        let (bytes, behind) = behind.split_at(behind.len().min(usize::from(*length)));
        rest = behind;
        match what % 4 {
            0 => packet(bytes, &mut streams, &mut segmented),
            1 => all_stream.push(bytes),
            2 => datagram(bytes, &mut segmented),
            _ => all_uart.extend_from_slice(bytes),
        }
    }
    streams.finish(&mut |_, (someip, doip), piece| {
        someip.piece(piece, &mut |_| {});
        doip.piece(piece, &mut |_| {});
    });
    segmented.finish(&mut |_| {});
    stream::<SomeIp>(&all_stream);
    stream::<DoIp>(&all_stream);
    [Form::Kline, Form::Telegram(TELEGRAM), Form::Telegram(TelegramForm { size: None, ..TELEGRAM })]
        .into_iter()
        .for_each(|form| uart(form, &all_uart));
});

fn packet(bytes: &[u8], streams: &mut Streams<(Cutter<SomeIp>, Cutter<DoIp>)>, segmented: &mut Reassembler<()>) {
    match read(bytes).map(|packet| packet.carried) {
        Ok(Carried::Tcp(segment)) => {
            streams.feed(None, &segment, &mut |_, (someip, doip), piece| {
                someip.piece(piece, &mut |_| {});
                doip.piece(piece, &mut |_| {});
            });
            assert!(streams.waiting_bytes() <= LIMITS.all_waiting_bytes, "more bytes wait than may");
        }
        Ok(Carried::Udp { payload, .. }) => datagram(payload, segmented),
        _ => {}
    }
}

fn datagram(bytes: &[u8], segmented: &mut Reassembler<()>) {
    for message in someip::Datagram::new(bytes).flatten() {
        let read = someip::Message::read(message).expect("its length was looked at");
        let mut written = Vec::new();
        assert!(read.write(&mut written));
        assert_eq!(written, message);
        if read.header.segmented {
            segmented.feed((), None, &read, &mut |_| {});
        }
        if let Ok(discovery) = Discovery::read(read.payload) {
            let mut written = Vec::new();
            discovery.write(&mut written);
            assert_eq!(Discovery::read(&written), Ok(discovery));
        }
    }
    for message in doip::Datagram::new(bytes).flatten() {
        if let Ok(read) = doip::Message::read(message) {
            let mut written = Vec::new();
            assert!(read.write(&mut written));
            assert_eq!(written, message);
        }
    }
}

fn stream<F: Framing>(pieces: &[&[u8]]) {
    let mut told = 0;
    let mut tell = |cut: Cut<'_, F::Fault>| match cut {
        Cut::Message { bytes, .. } => told += bytes.len() as u64,
        Cut::Skipped { bytes, .. } => told += bytes,
        Cut::Unfinished { held, .. } => told += held as u64,
    };
    let mut cutter = Cutter::<F>::new(MOST_BYTES);
    pieces.iter().for_each(|piece| cutter.bytes(None, piece, &mut tell));
    cutter.finish(&mut tell);
    assert_eq!(told, pieces.iter().map(|piece| piece.len() as u64).sum::<u64>());
}

/// Pauses and bytes in turn.
fn uart(form: Form, bytes: &[u8]) {
    let (mut told, mut time_ns) = (Vec::new(), 0);
    let mut tell = |event: Event<'_>| match event {
        Event::Message { bytes, .. } | Event::Damaged { bytes, .. } => told.extend_from_slice(bytes),
    };
    let mut cutter = UartCutter::new(form, GAP_NS);
    for [pause, byte] in bytes.as_chunks().0 {
        time_ns += i64::from(*pause) * 1_000_000;
        cutter.byte((*pause < 255).then_some(time_ns), *byte, &mut tell);
    }
    cutter.finish(&mut tell);
    let sent: Vec<u8> = bytes.as_chunks().0.iter().map(|[_, byte]| *byte).collect();
    assert_eq!(told, sent);
}
