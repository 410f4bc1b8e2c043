//! What the tester asks the engine unit, and what that answers: the same on CAN and over IP.

use super::super::content::Value;
use super::super::world::World;

/// Signals and values, by the names that the description gives them where it uses its layouts.
pub(super) type Told = Vec<(String, Value)>;

/// A question and its answer.
pub(super) struct Exchange {
    pub(super) question: Told,
    pub(super) answer: Told,
}

/// Services of ISO 14229-1 (from memory), and their answers.
const READ_CODES: u8 = 0x19;
const READ_DATA: u8 = 0x22;
const CODES: u8 = 0x59;
const DATA: u8 = 0x62;
const REFUSED: u8 = 0x7F;
/// "Request out of range".
const OUT_OF_RANGE: u8 = 0x31;

/// How many exchanges there are.
pub(super) const EXCHANGES: usize = 4;

/// An exchange by its number. The tester asks who the van is, how warm the engine is, for something that the unit does not know, and for
/// its trouble codes: the thermostat, and a voice that is not heard on the network. Both codes are of the public list (SAE J2012, from
/// memory); that this van has them is invented.
pub(super) fn exchange(number: usize, world: &World, prefix: &str) -> Exchange {
    let told = |values: &[(&str, Value)]| {
        values.iter().map(|(name, value)| (format!("{prefix}{name}"), *value)).collect::<Told>()
    };
    let read = |wanted| told(&[("service", Value::State(READ_DATA)), ("wanted", Value::Code(wanted))]);
    let data = |item, rest: &[(&str, Value)]| {
        [told(&[("service", Value::State(DATA)), ("item", Value::Code(item))]), told(rest)].concat()
    };
    match number {
        0 => Exchange { question: read(0xF190), answer: data(0xF190, &[("vin", Value::Text("0KESTRELVAN000117"))]) },
        1 => {
            let (coolant, oil) = (Value::Number(world.engine.coolant_c), Value::Number(world.engine.oil_c));
            Exchange { question: read(0x1001), answer: data(0x1001, &[("coolant", coolant), ("oil", oil)]) }
        }
        2 => Exchange {
            question: read(0x1002),
            answer: told(&[
                ("service", Value::State(REFUSED)),
                ("refused_service", Value::State(READ_DATA)),
                ("reason", Value::State(OUT_OF_RANGE)),
            ]),
        },
        _ => Exchange {
            question: told(&[
                ("service", Value::State(READ_CODES)),
                ("report", Value::State(2)),
                ("asked_status", Value::State(0x0D)),
            ]),
            answer: told(&[
                ("service", Value::State(CODES)),
                ("told_report", Value::State(2)),
                ("status_mask", Value::State(0x0D)),
                ("code[1]", Value::Code(0x01_2800)),
                ("failed[1]", Value::State(0)),
                ("pending[1]", Value::State(1)),
                ("stored[1]", Value::State(1)),
                ("code[2]", Value::Code(0xC1_0087)),
                ("failed[2]", Value::State(0)),
                ("pending[2]", Value::State(0)),
                ("stored[2]", Value::State(1)),
            ]),
        },
    }
}
