//! A tester at the connector asks the engine unit, before the engine is started. It reads, and writes nothing.

use wirelore_log::{Kind, Medium};
use wirelore_model::Identifier;
use wirelore_transport::iso_tp::{Layout, segment};

use super::super::DriveError;
use super::super::content::Value;
use super::super::encoder::Encoder;
use super::super::world::{STEP_NS, World};
use super::Packet;
use super::questions::{EXCHANGES, exchange};
use crate::noise::Noise;

/// The first question, and how long it is to the next: at times when the wire is free.
const FIRST_NS: u64 = 2_600_000_000;
const EVERY_NS: u64 = 150_000_000;
/// From a question to the answer's beginning, from there to the tester's "go on", and from each frame of the answer to the next, at least.
const ANSWER_NS: u64 = 11_300_000;
const GO_ON_NS: u64 = 1_450_000;
const APART_NS: u64 = 6_100_000;
/// "Go on, without a pause from me, 5 ms between frames" (ISO 15765-2).
const GO_ON: [u8; 8] = [0x30, 0x00, 0x05, 0xCC, 0xCC, 0xCC, 0xCC, 0xCC];

/// The tester and the unit that it asks.
pub(super) struct Tester<'a> {
    encoder: Encoder<'a>,
    asked: usize,
    noise: Noise,
    pub(super) packets: Vec<Packet>,
}

impl<'a> Tester<'a> {
    pub(super) fn new(encoder: Encoder<'a>) -> Self {
        Self { encoder, asked: 0, noise: Noise::new(0x7465_7374), packets: Vec::new() }
    }

    pub(super) fn step(&mut self, now_ns: u64, world: &World) -> Result<(), DriveError> {
        let begin_ns = FIRST_NS + self.asked as u64 * EVERY_NS;
        if self.asked == EXCHANGES || begin_ns >= now_ns + STEP_NS {
            return Ok(());
        }
        let exchange = exchange(self.asked, world, "");
        let (asking_id, question) = self.message("engine_questions", &exchange.question)?;
        let (answering_id, answer) = self.message("engine_answers", &exchange.answer)?;
        let mut time_ns = begin_ns + self.noise.up_to(300_000);
        for frame in frames(&question)? {
            self.push(time_ns, asking_id, frame);
        }
        time_ns += ANSWER_NS + self.noise.up_to(2_000_000);
        for (number, frame) in frames(&answer)?.into_iter().enumerate() {
            if number == 1 {
                time_ns += GO_ON_NS;
                self.push(time_ns, asking_id, GO_ON.to_vec());
            }
            time_ns += if number > 0 { APART_NS + self.noise.up_to(400_000) } else { 0 };
            self.push(time_ns, answering_id, frame);
        }
        self.asked += 1;
        Ok(())
    }

    fn message(&self, frame: &str, told: &[(String, Value)]) -> Result<(u32, Vec<u8>), DriveError> {
        match self.encoder.named(frame, told)? {
            (Identifier::Can { first, .. }, payload) => Ok((*first, payload)),
            _ => Err(DriveError::Missing { what: format!("identifier of {frame}") }),
        }
    }

    fn push(&mut self, time_ns: u64, id: u32, payload: Vec<u8>) {
        self.packets.push(Packet { time_ns, id, kind: Kind::Data, medium: Medium::Can, payload });
    }
}

fn frames(message: &[u8]) -> Result<Vec<Vec<u8>>, DriveError> {
    let mut frames = Vec::new();
    segment(message, &Layout::default(), &mut |frame| frames.push(frame.to_vec()))
        .map_err(|error| DriveError::Missing { what: format!("way to send a message: {error}") })?;
    Ok(frames)
}
