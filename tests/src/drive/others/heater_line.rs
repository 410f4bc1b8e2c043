//! The line of the water heater: the gateway asks once a second, and the heater answers, a byte after the other.

use wirelore_model::{Database, Identifier};
use wirelore_transport::uart::{Addressing, write_kline};

use super::super::DriveError;
use super::super::content::{Value, Values, number, word};
use super::super::encoder::Encoder;
use super::super::world::{STEP_NS, World};
use super::{Line, bits_ns, hex, network};
use crate::noise::Noise;

/// The first question, and the first one that is not asked any more.
const SPAN_NS: std::ops::Range<u64> = 8_040_000_000..30_000_000_000;
/// From one question to the next.
const EVERY_NS: u64 = 1_000_000_000;
/// Between two bytes of a question, between two of an answer, and between question and answer (ISO 14230-2, from memory: P4 5 to 20 ms,
/// P1 0 to 20 ms, P2 25 to 50 ms).
const QUESTION_PAUSE_NS: u64 = 5_200_000;
const ANSWER_PAUSE_NS: u64 = 900_000;
const ANSWER_NS: u64 = 27_000_000;
/// The answer in which a spark of the glow plug turns a bit round.
const SPARK_IN: u64 = 9;

/// The line.
pub(super) struct HeaterLine<'a> {
    encoder: Encoder<'a>,
    byte_ns: u64,
    next_ns: u64,
    asked: u64,
    noise: Noise,
    pub(super) lines: Vec<Line>,
}

impl<'a> HeaterLine<'a> {
    pub(super) fn new(database: &'a Database, encoder: Encoder<'a>) -> Result<Self, DriveError> {
        // Start bit, eight bits, stop bit.
        let byte_ns = bits_ns(network(database, "heater_line")?, 10)?;
        let noise = Noise::new(0x6865_6174);
        Ok(Self { encoder, byte_ns, next_ns: SPAN_NS.start, asked: 0, noise, lines: Vec::new() })
    }

    pub(super) fn step(&mut self, now_ns: u64, world: &World) -> Result<(), DriveError> {
        if self.next_ns >= now_ns + STEP_NS || self.next_ns >= SPAN_NS.end {
            return Ok(());
        }
        let (question, answer) = exchange(self.asked, world);
        let (begin_ns, late_ns) = (self.next_ns + self.noise.up_to(400_000), self.noise.up_to(9_000_000));
        let bytes = self.message("heater_question", &question)?;
        let asked_ns = self.bytes(begin_ns, QUESTION_PAUSE_NS, &bytes);
        let mut bytes = self.message(answer.0, &answer.1)?;
        if self.asked == SPARK_IN {
            bytes[5] ^= 0x10;
        }
        self.bytes(asked_ns + ANSWER_NS + late_ns, ANSWER_PAUSE_NS, &bytes);
        self.asked += 1;
        self.next_ns += EVERY_NS;
        Ok(())
    }

    /// A message with its header and its check byte.
    fn message(&self, frame: &str, values: &[(&str, Value)]) -> Result<Vec<u8>, DriveError> {
        let missing = || DriveError::Missing { what: format!("pair of addresses of {frame}") };
        let (identifier, mut data) = self.encoder.named(frame, values)?;
        let Identifier::Telegram { source: Some(source), target: Some(target), starts } = identifier else {
            return Err(missing());
        };
        // What a message is recognised by is no signal of it.
        data[..starts.len()].copy_from_slice(starts);
        let mut bytes = Vec::new();
        let is_whole = write_kline(Addressing::Physical, (*target, *source), &data, &mut bytes);
        if is_whole { Ok(bytes) } else { Err(missing()) }
    }

    /// Writes bytes down, each when its last bit has passed; tells when that was.
    fn bytes(&mut self, begin_ns: u64, pause_ns: u64, bytes: &[u8]) -> u64 {
        let mut time_ns = begin_ns;
        for (number, byte) in bytes.iter().enumerate() {
            time_ns += self.byte_ns + if number > 0 { pause_ns } else { 0 };
            self.lines.push((time_ns, hex(&[*byte])));
        }
        time_ns
    }
}

/// A question, and the frame with the values of its answer.
fn exchange(asked: u64, world: &World) -> (Values, (&'static str, Values)) {
    // The key bytes that ISO 14230-2 gives to headers with addresses and lengths in the format byte (from memory).
    const KEY_BYTES: Value = Value::Bytes(&[0xEF, 0x8F]);
    let heater = &world.water_heater;
    match asked {
        0 => (vec![word("question", 0x81)], ("heater_ready", vec![("key_bytes", KEY_BYTES)])),
        n if n.is_multiple_of(4) => {
            let values = vec![number("starts", heater.starts.into()), number("burning_time", heater.burning_h)];
            (page(2), ("heater_life", values))
        }
        _ => {
            let values = vec![
                word("burner", heater.burner as u8),
                number("water", heater.water_c),
                number("fan", heater.fan_percent),
                number("glow_current", heater.glow_a),
                number("heater_supply", world.body.battery_v - 0.1),
            ];
            (page(1), ("heater_burner", values))
        }
    }
}

fn page(wanted: u8) -> Values {
    vec![word("question", 0x21), number("wanted_page", wanted.into())]
}
