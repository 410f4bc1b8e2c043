//! Frames as a person uses them: decoded, verified, changed, encoded.

use wirelore_bits::typed::{Damage, NotEncoded, Reading, Repeated};
use wirelore_bits::{Fit, Ratio};
use wirelore_decode::{Checks, ChecksumVerdict, Decoder, Given, Origin, ProtectionVerdict, Sender, Verdict, encode};
use wirelore_log::Channel;
use wirelore_model::{Database, Frame, FrameId, NetworkId, SeenId};
use wirelore_tests::noise::Noise;

use super::files::{demo, kinds};
use super::kestrel::{self, WheelSpeeds};
use super::kinds::{self as kind, Lists};

#[test]
fn speeds_are_read_changed_and_sent() {
    let speeds = WheelSpeeds::decode(&[0xE8, 0x03, 0, 0, 0, 0, 0, 0]).expect("8 bytes");
    assert_eq!((speeds.front_left, speeds.front_left()), (1000, Reading::Value(50.0)));
    assert_eq!((WheelSpeeds::ID, WheelSpeeds::LENGTH, WheelSpeeds::PERIOD.as_millis()), (0x1B4, 8, 20));
    assert!(WheelSpeeds::decode(&[0; 7]).is_err());

    let mut speeds = WheelSpeeds { front_right: 0x1FFF, alive: 14, ..speeds };
    assert_eq!(speeds.front_right(), Reading::NoReading);
    assert_eq!(speeds.set_front_left(62.5), Fit::Exact);
    assert_eq!(speeds.set_rear_left(409.55), Fit::OutOfRange, "that is the raw number of no reading");
    speeds.alive = WheelSpeeds::next_alive(speeds.alive);
    assert_eq!(speeds.alive, 0);
    assert_eq!(WheelSpeeds { rear_right: 0x2000, ..speeds }.encode(), Err(NotEncoded::DoesNotFit("rear_right")));

    let value = |text: &str| Given::Value { number: Ratio::from_decimal(text).expect("a decimal"), unit: None };
    let given = [
        ("front_left", value("62.5")),
        ("front_right", Given::NoReading),
        ("rear_left", value("0")),
        ("rear_right", value("0")),
    ];
    let database = demo();
    let (id, _) = frame_of(&database, "wheel_speeds");
    let encoded = encode(&database, id, &given).expect("it can be encoded").payload;
    assert_eq!(speeds.encode().expect("all of it fits").as_slice(), encoded);
}

/// All single wrong bits are found (Koopman, Chakravarty 2004: a CRC finds all of them).
#[test]
fn a_wrong_bit_is_found() {
    let payload = WheelSpeeds::decode(&[0x5A; 8]).expect("8 bytes").encode().expect("every number is in its bits");
    assert_eq!(WheelSpeeds::verify(&payload), Ok(()));
    for bit in 0..64 {
        let mut damaged = payload;
        damaged[bit / 8] ^= 1 << (bit % 8);
        assert!(matches!(WheelSpeeds::verify(&damaged), Err(Damage::Sum { signal: "check", .. })), "bit {bit}");
    }
}

fn frame_of<'d>(database: &'d Database, name: &str) -> (FrameId, &'d Frame) {
    database.frame_named(name).unwrap_or_else(|| panic!("{name} is described"))
}

/// Whether the decoder's running checks say something against a payload.
fn is_damaged(decoder: &Decoder, database: &Database, name: &str, id: u32, payload: &[u8]) -> bool {
    let (frame, _) = frame_of(database, name);
    let sender = Sender { channel: Channel(0), network: NetworkId(0), frame, source: None };
    let origin = Origin { id: Some(SeenId::Can { id, extended: false }), header: None };
    let mut damaged = false;
    Checks::default().frame(decoder, sender, origin, payload, |_, verdict| {
        damaged |= match verdict {
            Verdict::Counter(_) => false,
            Verdict::Checksum(verdict) => verdict != ChecksumVerdict::Right,
            Verdict::Protection(verdict) => matches!(
                verdict,
                ProtectionVerdict::NotACount
                    | ProtectionVerdict::WrongSum { .. }
                    | ProtectionVerdict::WrongDataId { .. }
                    | ProtectionVerdict::WrongLength { .. }
                    | ProtectionVerdict::TooShort
            ),
        };
    });
    damaged
}

/// The identifier that goes into sums that need one.
const ID: u32 = 0x107;

/// What looks at a payload.
type Verify<'v> = &'v dyn Fn(&[u8]) -> Result<(), Damage>;

/// Encodes what was decoded from noise, decodes that, and encodes it again; then damages it and asks both sides.
fn goes_round<P: AsRef<[u8]> + PartialEq + std::fmt::Debug>(
    database: &Database,
    (name, length): (&str, u64),
    encoded_again: impl Fn(&[u8]) -> Result<P, NotEncoded>,
    verify: Option<Verify<'_>>,
) {
    let decoder = Decoder::new(database).expect("it can be decoded");
    let mut chance = Noise::new(length);
    let mut encoded_frames = 0;
    for round in 0..400_u32 {
        let noise: Vec<u8> = (0..length).map(|_| chance.bits() as u8).collect();
        // What noise says need not fit: a count that is none of the protection's.
        let Ok(payload) = encoded_again(&noise) else { continue };
        assert_eq!(encoded_again(payload.as_ref()).as_ref(), Ok(&payload), "{name} {noise:02X?}");
        encoded_frames += 1;
        let Some(verify) = verify else { continue };
        assert_eq!(verify(payload.as_ref()), Ok(()), "{name} {payload:02X?}");
        let mut damaged = payload.as_ref().to_vec();
        for _ in 0..round % 3 {
            let at = chance.below(damaged.len() as u64) as usize;
            damaged[at] ^= chance.bits() as u8;
        }
        let theirs = is_damaged(&decoder, database, name, ID, &damaged);
        assert_eq!(verify(&damaged).is_err(), theirs, "{name} {damaged:02X?}");
    }
    assert!(encoded_frames > 20, "{name}: {encoded_frames}");
}

macro_rules! plain {
    ($database:expr, $name:literal, $frame:ty, $length:literal) => {
        goes_round($database, ($name, $length), |payload| <$frame>::decode(payload)?.encode(), None)
    };
}

macro_rules! verified {
    ($database:expr, $name:literal, $frame:ty, $length:literal) => {
        goes_round($database, ($name, $length), |payload| <$frame>::decode(payload)?.encode(), Some(&<$frame>::verify))
    };
}

#[test]
fn frames_go_round() {
    let van = demo();
    verified!(&van, "wheel_speeds", kestrel::WheelSpeeds, 8);
    verified!(&van, "brake_state", kestrel::BrakeState, 8);
    verified!(&van, "vehicle_motion", kestrel::VehicleMotion, 8);
    verified!(&van, "steering_wheel", kestrel::SteeringWheel, 8);
    verified!(&van, "park_brake_state", kestrel::ParkBrakeState, 5);
    verified!(&van, "belts", kestrel::Belts, 3);
    verified!(&van, "shift_request", kestrel::ShiftRequest, 8);
    plain!(&van, "engine_state", kestrel::EngineState, 8);
    plain!(&van, "doors", kestrel::Doors, 6);
    plain!(&van, "height_state", kestrel::HeightState, 8);
    plain!(&van, "volume", kestrel::Volume, 3);
    let bench = kinds();
    plain!(&bench, "wide", kind::Wide, 24);
    plain!(&bench, "numbers", kind::Numbers, 32);
    verified!(&bench, "protected_1", kind::Protected1, 8);
    verified!(&bench, "protected_2", kind::Protected2, 16);
    verified!(&bench, "protected_5", kind::Protected5, 48);
    verified!(&bench, "protected_7", kind::Protected7, 32);
    let encoded_again = |payload: &[u8]| kind::Sums::decode(payload)?.encode(ID);
    goes_round(&bench, ("sums", 12), encoded_again, Some(&|payload| kind::Sums::verify(payload, ID)));
}

/// Frames of several lengths, with pages, lists and texts.
#[test]
fn frames_of_several_lengths_go_round() {
    fn into<E>(encode: impl FnOnce(&mut [u8]) -> Result<usize, E>) -> Result<Vec<u8>, E> {
        let mut room = [0xEE; 64];
        let length = encode(&mut room)?;
        Ok(room[..length].to_vec())
    }
    let mut chance = Noise::new(5);
    let mut went_round = [0; 4];
    for _ in 0..4000 {
        let mut noise: Vec<u8> = (0..chance.below(34)).map(|_| chance.bits() as u8).collect();
        if let Some(first) = noise.first_mut() {
            *first = [0xFF, 1, *first & 7, 3][chance.below(4) as usize];
        }
        macro_rules! round {
            ($at:literal, $frame:ty) => {
                if let Ok(frame) = <$frame>::decode(&noise) {
                    if let Ok(payload) = into(|room| frame.encode_into(room)) {
                        let again = <$frame>::decode(&payload).expect("what was encoded is long enough");
                        assert_eq!(into(|room| again.encode_into(room)), Ok(payload.clone()), "{noise:02X?}");
                        assert!(payload.len() <= noise.len().max(2), "{payload:02X?} of {noise:02X?}");
                        went_round[$at] += 1;
                    }
                }
            };
        }
        round!(0, kind::Lists<'_>);
        round!(1, kind::StatedLists<'_>);
        round!(2, kind::Texts<'_>);
        round!(3, kind::Pages);
    }
    assert!(went_round.iter().all(|times| *times > 100), "{went_round:?}");
}

#[test]
fn lists_are_counted() {
    let element = |sort| kind::lists::SortElement {
        sort,
        when_sort: kind::lists::WhenSort::Is0To127(kind::lists::SortIs0To127 { low: 9 }),
    };
    let listed = [element(1), element(2)];
    let lists = Lists { count: 2, sort_elements: Repeated::Listed(&listed) };
    let mut room = [0; 20];
    let length = lists.encode_into(&mut room).expect("it fits");
    let again = Lists::decode(&room[..length]).expect("it is whole");
    assert_eq!(again.sort_elements.iter().map(|element| element.sort).collect::<Vec<_>>(), [1, 2]);
    assert_eq!(Lists { count: 3, ..lists }.encode_into(&mut room), Err(NotEncoded::OtherCount("count")));
    assert!(matches!(lists.encode_into(&mut room[..3]), Err(NotEncoded::Room(_))));
    let other = [element(200)];
    let lists = Lists { count: 1, sort_elements: Repeated::Listed(&other) };
    assert_eq!(lists.encode_into(&mut room), Err(NotEncoded::OtherPage), "200 asks for the other page");
}
