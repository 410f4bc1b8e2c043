//! The entertainment ring: control messages, each whole in a line.

use wirelore_model::Identifier;

use super::super::DriveError;
use super::super::content::{Value, number};
use super::super::encoder::Encoder;
use super::super::sound::Sound;
use super::super::world::{STEP_NS, World};
use super::{Line, hex};
use crate::noise::Noise;

/// From the radio's wish to the amplifier's answer, at least.
const ANSWER_NS: u64 = 14_000_000;
/// How much longer anything may take on the ring.
const JITTER_NS: u64 = 3_000_000;
/// How often the player tells how far it has read ahead.
const BUFFER_NS: u64 = 5_000_000_000;
/// The instance that speaks where the description takes any.
const USUAL_INSTANCE: u8 = 2;

/// The ring.
pub(super) struct Ring<'a> {
    encoder: Encoder<'a>,
    before: Option<Sound>,
    noise: Noise,
    pub(super) lines: Vec<Line>,
}

impl<'a> Ring<'a> {
    pub(super) fn new(encoder: Encoder<'a>) -> Self {
        Self { encoder, before: None, noise: Noise::new(0x7269_6E67), lines: Vec::new() }
    }

    pub(super) fn step(&mut self, now_ns: u64, world: &World) -> Result<(), DriveError> {
        let sound = world.sound.clone();
        let before = self.before.replace(sound.clone());
        let is_new = |part: fn(&Sound) -> u32| before.as_ref().is_none_or(|before| part(before) != part(&sound));
        let (wish, volume) = (is_new(|sound| sound.wished.into()), is_new(|sound| sound.loudness().into()));
        let (second, track) = (is_new(|sound| sound.track_s), is_new(|sound| sound.track.into()));
        if wish && now_ns > 0 {
            self.send(now_ns, "volume_wish", &[number("wished_volume", sound.wished.into())])?;
        }
        if wish || volume {
            let values = [
                number("wished", sound.wished.into()),
                number("added", sound.added.into()),
                number("loudness", sound.loudness().into()),
            ];
            self.send(now_ns + if wish { ANSWER_NS } else { 0 }, "volume", &values)?;
        }
        if second {
            let values = [
                number("track_number", sound.track.into()),
                number("track_minutes", (sound.track_s / 60).into()),
                number("track_seconds", (sound.track_s % 60).into()),
            ];
            self.send(now_ns, "track_time", &values)?;
        }
        if track {
            self.send(now_ns + STEP_NS, "track_title", &[("title", Value::Text(title(sound.track)))])?;
        }
        if (now_ns + BUFFER_NS / 2).is_multiple_of(BUFFER_NS) {
            self.send(now_ns, "player_buffer", &[number("read_ahead", 71.0 + f64::from(sound.track_s % 7))])?;
        }
        Ok(())
    }

    fn send(&mut self, time_ns: u64, frame: &str, values: &[(&str, Value)]) -> Result<(), DriveError> {
        let (identifier, payload) = self.encoder.named(frame, values)?;
        let Identifier::Most { block, instance, function, operation } = identifier else {
            return Err(DriveError::Missing { what: format!("function of {frame}") });
        };
        let (instance, operation) = (instance.unwrap_or(USUAL_INSTANCE), operation.unwrap_or_default());
        let time_ns = time_ns + self.noise.up_to(JITTER_NS);
        let id = format!("{block:02X}.{instance:02X}.{function:03X}.{operation:X}");
        self.lines.push((time_ns, format!("{id},{}", hex(&payload))));
        Ok(())
    }
}

fn title(track: u8) -> &'static str {
    if track.is_multiple_of(2) { "Nebel über dem Fluss" } else { "Die letzte Lieferung" }
}
