//! The description `uds` against what is published of ISO 14229-1.

use wirelore_tests::payloads::Described;

/// The codes of ISO 14229-1:2013, as two enumerations of them at docs.rs and the quotation at blog.csdn.net/123813275 have them: all numbers
/// below 0x94 that are no reserved ones.
const REFUSALS: [(u8, &str); 41] = [
    (0x10, "general_reject"),
    (0x11, "service_not_supported"),
    (0x12, "function_not_supported"),
    (0x13, "wrong_length"),
    (0x14, "response_too_long"),
    (0x21, "busy"),
    (0x22, "conditions_not_correct"),
    (0x24, "request_sequence_error"),
    (0x25, "no_response_from_subnet"),
    (0x26, "failure_prevents_execution"),
    (0x31, "request_out_of_range"),
    (0x33, "security_access_denied"),
    (0x34, "authentication_required"),
    (0x35, "invalid_key"),
    (0x36, "exceeded_attempts"),
    (0x37, "delay_not_expired"),
    (0x70, "transfer_not_accepted"),
    (0x71, "transfer_suspended"),
    (0x72, "programming_failure"),
    (0x73, "wrong_block_counter"),
    (0x78, "response_pending"),
    (0x7E, "function_not_in_session"),
    (0x7F, "service_not_in_session"),
    (0x81, "engine_speed_too_high"),
    (0x82, "engine_speed_too_low"),
    (0x83, "engine_runs"),
    (0x84, "engine_does_not_run"),
    (0x85, "engine_run_time_too_low"),
    (0x86, "temperature_too_high"),
    (0x87, "temperature_too_low"),
    (0x88, "vehicle_speed_too_high"),
    (0x89, "vehicle_speed_too_low"),
    (0x8A, "pedal_too_high"),
    (0x8B, "pedal_too_low"),
    (0x8C, "gear_not_neutral"),
    (0x8D, "gear_not_engaged"),
    (0x8F, "brake_switch_open"),
    (0x90, "lever_not_in_park"),
    (0x91, "converter_clutch_locked"),
    (0x92, "voltage_too_high"),
    (0x93, "voltage_too_low"),
];

#[test]
fn refusals() {
    let uds = Described::standard("uds");
    for (code, word) in REFUSALS {
        let said = uds.read("uds_answers", &format!("7F 22 {code:02X}"));
        assert_eq!(
            (said.word("service"), said.word("refused_service"), said.word("refusal")),
            ("refused", "read_data", word)
        );
    }
}

/// ISO 14229-1 (from memory): P2 in milliseconds, P2* in steps of 10 ms.
#[test]
fn how_long_an_answer_may_take() {
    let said = Described::standard("uds").read("uds_answers", "50 03 00 32 01 F4");
    assert_eq!((said.word("service"), said.word("session")), ("session_control_answer", "extended"));
    assert_eq!(
        (said.shown("p2_server_max"), said.shown("p2_star_server_max")),
        ("50 ms".to_owned(), "5000 ms".to_owned())
    );
}

/// U0100-87 and the order of the status bits from memory of SAE J2012 and ISO 14229-1; 11 as the failure type "circuit short to ground" is in
/// a table of failure types there. 2F is bits 0, 1, 2, 3 and 5.
#[test]
fn trouble_codes_with_failure_type_and_status() {
    let uds = Described::standard("uds");
    let said = uds.read("uds_answers", "59 02 FF C1 00 87 2F 01 35 11 80");
    assert_eq!((said.word("report"), said.number("availability_mask")), ("codes_by_status", 255.0));
    assert_eq!((said.shown("code[1]"), said.shown("code[2]")), ("U0100-87".to_owned(), "P0135-11".to_owned()));
    let bits = [
        "test_failed",
        "failed_this_cycle",
        "pending",
        "confirmed",
        "not_tested_since_clear",
        "failed_since_clear",
        "not_tested_this_cycle",
        "warning_indicator",
    ];
    let status = |element: usize| bits.map(|bit| said.number(&format!("{bit}[{element}]")));
    assert_eq!(status(1), [1.0, 1.0, 1.0, 1.0, 0.0, 1.0, 0.0, 0.0]);
    assert_eq!(status(2), [0.0, 0.0, 0.0, 0.0, 0.0, 0.0, 0.0, 1.0]);
    assert!(!said.has("code[3]") && !said.too_short);

    let none = uds.read("uds_answers", "59 02 FF");
    assert!(!none.has("code[1]") && !none.too_short && none.without_page.is_none());
    let number = uds.read("uds_answers", "59 01 FF 01 00 03");
    assert_eq!((number.word("code_format"), number.number("number_of_codes")), ("iso_14229_1", 3.0));
    let supported = uds.read("uds_answers", "59 0A FF 92 34 00 00 F1 23 00 00");
    assert_eq!(
        (supported.shown("code[1]"), supported.shown("code[2]")),
        ("B1234-00".to_owned(), "U3123-00".to_owned())
    );
    let snapshot = uds.read("uds_answers", "59 04 C1 00 87 2F 01 02 12 34 56");
    assert_eq!(
        (snapshot.shown("recorded_code"), snapshot.shown("records")),
        ("U0100-87".to_owned(), "01 02 12 34 56".to_owned())
    );
}

/// ISO 14229-1 (from memory): 22 F1 90 asks for the identification number. The number is invented.
#[test]
fn data_by_identifier() {
    let uds = Described::standard("uds");
    let request = uds.read("uds_requests", "22 F1 90");
    assert_eq!((request.word("service"), request.word("identifier")), ("read_data", "vin"));
    let answer = uds.read("uds_answers", "62 F1 90 5A 5A 39 47 50 30 30 52 35 35 42 31 32 33 34 35 36");
    assert_eq!(answer.shown("vin"), "ZZ9GP00R55B123456");
    assert_eq!(uds.read("uds_answers", "62 F1 8C 53 4E 31").shown("serial_number"), "SN1");
    let vin = "5A 5A 39 47 50 30 30 52 35 35 42 31 32 33 34 35 36";
    let both = uds.read_rows("uds_answers", &format!("62 F1 86 03 F1 90 {vin} F1 8C 53 4E 31"));
    assert_eq!(both.len(), 3);
    assert_eq!((both[0].word("active_session"), both[1].shown("vin")), ("extended", "ZZ9GP00R55B123456".to_owned()));
    assert_eq!(both[2].shown("serial_number"), "SN1");
    assert_eq!(uds.read("uds_answers", "62 F1 86 03").word("active_session"), "extended");
    let own = uds.read("uds_answers", "62 12 34 AB CD");
    assert_eq!((own.number("identifier"), own.shown("data")), (f64::from(0x1234), "AB CD".to_owned()));
    assert_eq!(uds.read("uds_requests", "2E F1 98 01 02").shown("repair_shop_code"), "01 02");
}

/// Requests and their answers, from memory of ISO 14229-1.
#[test]
fn other_services() {
    let uds = Described::standard("uds");
    let rows = [
        ("uds_requests", "10 02", "session", "programming"),
        ("uds_requests", "10 03", "session", "extended"),
        ("uds_requests", "11 01", "reset", "hard"),
        ("uds_requests", "28 03 01", "communication", "neither"),
        ("uds_requests", "2F 12 34 03 01", "control", "adjust"),
        ("uds_requests", "31 01 02 03", "routine", "start"),
        ("uds_requests", "85 02", "code_setting", "off"),
        ("uds_requests", "87 03", "link", "change"),
        ("uds_requests", "19 02 08", "report", "codes_by_status"),
        ("uds_requests", "3E 80", "service", "tester_present"),
        ("uds_answers", "51 01", "reset", "hard"),
        ("uds_answers", "54", "service", "clear_codes_answer"),
        ("uds_answers", "68 03", "communication", "neither"),
        ("uds_answers", "71 03 02 03 00", "routine", "results"),
        ("uds_answers", "C5 02", "code_setting", "off"),
        ("uds_answers_29", "7E 00", "service", "tester_present_answer"),
        ("uds_requests_to_all_29", "14 FF FF FF", "service", "clear_codes"),
    ];
    for (frame, message, signal, word) in rows {
        let said = uds.read(frame, message);
        assert_eq!((said.word(signal), said.too_short, said.without_page.clone()), (word, false, None), "{message}");
    }
    // Bit 7 of the sub-function: no answer wanted.
    assert_eq!(uds.read("uds_requests", "3E 80").number("suppress_answer"), 1.0);
    assert_eq!(uds.read("uds_requests", "3E 00").number("suppress_answer"), 0.0);
    assert_eq!(uds.read("uds_requests", "19 02 08").number("mask_confirmed"), 1.0);
    let download = uds.read("uds_requests", "34 00 44 00 01 00 00 00 00 20 00");
    assert_eq!((download.number("size_bytes"), download.number("address_bytes")), (4.0, 4.0));
    // What may be left out is not missing.
    assert_eq!(uds.read("uds_answers", "67 02").shown("security_data"), "");
    assert_eq!(uds.read("uds_answers", "67 01 11 22").shown("security_data"), "11 22");
}

/// The example at the head of the description: both sorts of service in one frame of one's own, and another unit beside it.
#[test]
fn both_descriptions_share_a_frame() {
    let both = Described::by(
        "use standard obd\n\
         use standard uds\n\
         network plug can 500 kbit/s\n\
         frame answers on plug id 0x7E8..0x7EF, carried by iso_tp {\n\
             signal service in byte 0\n\
             when service is 0x41..0x4A {\n\
                 use layout obd_answer at byte 0\n\
             }\n\
             otherwise {\n\
                 use layout uds_answer at byte 0\n\
             }\n\
         }\n\
         frame brake_answers on plug id 0x7A8, carried by iso_tp {\n\
             signal service in byte 0, states uds_service\n\
             use layout uds_answer at byte 0\n\
         }\n",
    );
    assert_eq!(both.read("answers", "41 0C 1A F8").shown("engine_speed"), "1726 rpm");
    assert_eq!(both.read("answers", "50 03 00 32 01 F4").shown("p2_server_max"), "50 ms");
    let refused = both.read("answers", "7F 22 31");
    assert_eq!((refused.word("refusal"), refused.without_page.is_none()), ("request_out_of_range", true));
    assert_eq!(both.read("brake_answers", "59 02 FF C1 00 87 2F").shown("code[1]"), "U0100-87");
}
