//! Texts that mean something to what reads them - a browser, a spreadsheet, a terminal - in every place of a description and a recording
//! where a text can stand: each output says them, and none of them acts.

mod csv;
mod elements;
#[cfg(target_os = "linux")]
mod terminal;

use std::fs;
use std::path::Path;
use std::process::{Command, Output};

use parquet::arrow::arrow_reader::ParquetRecordBatchReaderBuilder;

/// One text of each kind.
const TEXTS: [&str; 14] = [
    "<script>alert(1)</script>",
    "\"><svg onload=\"alert(1)\">",
    "' onmouseover='alert(1)",
    "</title></style></svg>--><img src=x onerror=alert(1)>",
    "]]>&#60;b&#62;&lt;",
    "=HYPERLINK(\"http://127.0.0.1/\",\"speed\")",
    "+1+1",
    "-2+3",
    "@SUM(1,2)",
    "\t=1",
    "two\r\nlines",
    "\u{1B}[5mblink\u{1B}]0;title\u{7}\u{8}\u{7F}",
    "\u{9B}5m \u{85}\u{90}",
    "\u{202E}desrever\u{2066}\u{200F}",
];

/// A description with the text wherever there can be one, with a frame whose verdicts have commas in them.
fn description(text: &str) -> String {
    let quoted = quoted(text);
    let note = text.replace(['\r', '\n'], " ");
    format!(
        "vehicle van {quoted}, called {quoted}, from document {quoted}\n\
         ## {note}\n\
         network drive {quoted} can_fd 500 kbit/s, data 2 Mbit/s, terminators hub, {quoted}\n\
         network comfort {quoted} can 125 kbit/s, guessed {quoted}\n\
         ## {note}\n\
         ecu hub {quoted} on drive, comfort, likely {quoted}\n\
         ecu engine {quoted} on drive\n\
         wire engine -> hub {quoted}\n\
         states gears {quoted} {{ 0 park {quoted}, 1 drive {quoted} }}\n\
         ## {note}\n\
         frame words {quoted} on drive id 0x100, likely {quoted} {{\n\
         sent by engine\nread by hub\nevery 10 ms\nlength 64\n\
         ## {note}\n\
         signal text {quoted} in bytes 0..54 text utf8\n\
         signal gear {quoted} in byte 60, states gears\n\
         signal speed {quoted} in byte 61 signed = raw * 0.5 {quoted}, guessed {quoted}\n\
         }}\n\
         frame seat on drive id 0x125 {{\nlength 8\nprotected by e2e 1 low, data id 0x26, delta up to 3\n}}\n"
    )
}

/// A text as the language writes it.
fn quoted(text: &str) -> String {
    let letters = text.chars().map(|letter| match letter {
        '"' | '\\' => format!("\\{letter}"),
        letter if letter.is_control() || !letter.is_ascii() => format!("\\u{{{:X}}}", u32::from(letter)),
        letter => letter.to_string(),
    });
    format!("\"{}\"", letters.collect::<String>())
}

/// A recording whose payloads hold the text, and whose channel is called so.
fn log(text: &str) -> String {
    let mut payload = text.as_bytes().to_vec();
    assert!(payload.len() <= 55, "{text:?}");
    payload.resize(64, 0);
    payload[60] = 1;
    payload[61] = 0xFD;
    let hex: String = payload.iter().map(|byte| format!("{byte:02X}")).collect();
    let channel = text.replace('"', "\"\"").replace(['\r', '\n'], " ");
    let mut log = format!("time,channel,id,data\n0.1,\"{channel}\",0x100,{hex}\n");
    // Counts 0, 1 and 4 under a right checksum, as this program writes them.
    for (time, data) in [("0.2", "F000000000000000"), ("0.3", "AD01000000000000"), ("0.4", "9904000000000000")] {
        log.push_str(&format!("{time},\"{channel}\",0x125,{data}\n"));
    }
    log
}

struct Bench {
    folder: tempfile::TempDir,
}

impl Bench {
    fn of(text: &str) -> Self {
        let folder = tempfile::tempdir().expect("a folder");
        fs::write(folder.path().join("van.lore"), description(text)).expect("written");
        fs::write(folder.path().join("drive.csv"), log(text)).expect("written");
        Self { folder }
    }

    fn path(&self) -> &Path {
        self.folder.path()
    }

    fn run(&self, line: &str) -> Output {
        let mut command = Command::new(env!("CARGO_BIN_EXE_wirelore-under-test"));
        command.current_dir(self.path()).args(line.split(' ')).output().expect("the command starts")
    }

    /// What a run prints that has to be done.
    #[track_caller]
    fn printed(&self, line: &str) -> String {
        let output = self.run(line);
        assert!(matches!(output.status.code(), Some(0 | 1)), "{line}: {}", String::from_utf8_lossy(&output.stderr));
        String::from_utf8(output.stdout).expect("UTF-8")
    }
}

#[test]
fn csv_reads_back_as_it_was() {
    for text in TEXTS {
        let bench = Bench::of(text);
        let long = csv::read(&bench.printed("decode van.lore drive.csv --to csv"));
        csv::assert_even(&long);
        let row =
            |signal: &str| long.iter().find(|row| row[3] == signal).unwrap_or_else(|| panic!("{signal}: {long:?}"));
        assert_eq!((&row("text")[4][..], &row("speed")[4][..], &row("speed")[5][..]), (text, "-1.5", text));
        assert_eq!((&row("gear")[4][..], &row("gear")[6][..]), ("1", "drive"));
        assert_eq!(long.last().map(|row| &row[6][..]), Some("protection right, 2 lost before"));
        let grid = csv::read(&bench.printed("decode van.lore drive.csv --to csv --shape grid --every 1s"));
        csv::assert_even(&grid);
        assert!(grid[1].iter().any(|cell| cell == text), "{grid:?}");
        let frames = csv::read(
            &bench.printed("decode van.lore drive.csv --to csv --shape frames --states --signals words.* -o -"),
        );
        csv::assert_even(&frames);
        assert!(frames[1].iter().any(|cell| cell == text), "{frames:?}");
        assert!(frames[0].iter().any(|cell| *cell == format!("speed [{text}]")), "{frames:?}");
        for line in
            ["budget van.lore --frames --to csv", "budget van.lore --units --to csv", "budget van.lore --to csv"]
        {
            csv::assert_even(&csv::read(&bench.printed(line)));
        }
        csv::assert_even(&csv::read(&bench.printed("budget van.lore drive.csv --frames --to csv --quiet")));
    }
}

/// What spreadsheets take for a formula is told by OWASP, "CSV Injection" (from memory).
#[test]
fn formulas_are_guarded_on_request_and_numbers_stay_numbers() {
    for text in TEXTS {
        let bench = Bench::of(text);
        let is_formula = text.starts_with(['=', '+', '-', '@', '\t', '\r', '\n']);
        let guarded = if is_formula { format!("'{text}") } else { text.to_owned() };
        for line in [
            "decode van.lore drive.csv --to csv --guard-formulas",
            "decode van.lore drive.csv --to csv --guard-formulas --shape grid --every 1s",
            "decode van.lore drive.csv --to csv --guard-formulas --shape frames --signals words.* -o -",
        ] {
            let table = csv::read(&bench.printed(line));
            csv::assert_even(&table);
            let cells = || table.iter().flatten();
            assert!(cells().any(|cell| *cell == guarded) && cells().any(|cell| cell == "-1.5"), "{line}: {table:?}");
            let acts =
                |cell: &&String| cell.starts_with(['=', '+', '-', '@', '\t', '\r']) && cell.parse::<f64>().is_err();
            assert_eq!(cells().find(acts), None, "{line}");
        }
        csv::assert_even(&csv::read(&bench.printed("budget van.lore drive.csv --to csv --quiet --guard-formulas")));
    }
    let bench = Bench::of("=1");
    for line in ["decode van.lore drive.csv --to jsonl --guard-formulas", "budget van.lore --to json --guard-formulas"]
    {
        let output = bench.run(line);
        assert_eq!(output.status.code(), Some(2), "{output:?}");
        assert!(String::from_utf8_lossy(&output.stderr).contains("--guard-formulas goes with --to csv"), "{output:?}");
    }
}

#[test]
fn json_reads_back_as_it_was_and_hides_nothing() {
    for text in TEXTS {
        let bench = Bench::of(text);
        let lines = bench.printed("decode van.lore drive.csv --to jsonl");
        let rows: Vec<serde_json::Value> =
            lines.lines().map(|line| serde_json::from_str(line).expect("JSON")).collect();
        let row = |signal: &str| rows.iter().find(|row| row["signal"] == signal).expect("it is there");
        assert_eq!((&row("text")["value"], &row("speed")["unit"]), (&text.into(), &text.into()));
        assert!(!lines.contains(|letter: char| letter.is_control() && letter != '\n'), "{lines:?}");
        for line in ["budget van.lore drive.csv --to json --quiet", "check van.lore --to sarif"] {
            let _: serde_json::Value = serde_json::from_str(&bench.printed(line)).expect("JSON");
        }
        for line in bench.printed("check van.lore --to jsonl").lines() {
            let _: serde_json::Value = serde_json::from_str(line).expect("JSON");
        }
        bench.printed("compile van.lore -o van.json");
        let stored: serde_json::Value =
            serde_json::from_slice(&fs::read(bench.path().join("van.json")).expect("it is there")).expect("JSON");
        assert!(stored.to_string().contains(&serde_json::Value::from(text).to_string()), "{text:?}");
    }
}

/// A picture or page with hostile texts has the same elements with the same attributes as one with harmless texts.
#[test]
fn pictures_and_pages_have_no_other_elements() {
    let pictures = [
        "map van.lore --to svg",
        "map van.lore --to html",
        "map van.lore --to html --certainty --blank",
        "map van.lore --to svg --certainty --listen words --mark hub",
        "budget van.lore --to svg",
        "budget van.lore --to html",
    ];
    let harmless = Bench::of("words");
    let expected = pictures.map(|line| elements::of(&harmless.printed(line)));
    for text in TEXTS {
        let bench = Bench::of(text);
        for (line, expected) in pictures.iter().zip(&expected) {
            let picture = bench.printed(line);
            let found = elements::of(&picture);
            let other: Vec<_> = found.difference(expected).collect();
            assert!(other.is_empty(), "{line}, {text:?}: {other:?}");
            let acts = |letter: char| {
                (letter.is_control() && letter != '\n')
                    || matches!(letter, '\u{202A}'..='\u{202E}' | '\u{2066}' | '\u{2067}' | '\u{200F}')
            };
            assert!(!picture.contains(acts), "{line}, {text:?}");
        }
    }
}

#[test]
fn metadata_of_parquet_is_what_was_written() {
    for text in TEXTS {
        let bench = Bench::of(text);
        bench.printed("decode van.lore drive.csv -o words.parquet --signals words.* --quiet");
        let file = fs::File::open(bench.path().join("words.parquet")).expect("it is there");
        let reader = ParquetRecordBatchReaderBuilder::try_new(file).expect("it is Parquet");
        let field = reader.schema().field_with_name("speed").expect("a column").clone();
        assert_eq!(field.metadata().get("unit").map(String::as_str), Some(text));
    }
}

/// Names become names of files, and those of a stored description were not read by the compiler.
#[test]
fn no_name_leads_out_of_the_folder() {
    let bench = Bench::of("words");
    bench.printed("compile van.lore -o van.json");
    let stored = fs::read_to_string(bench.path().join("van.json")).expect("it is there");
    for name in ["../out", "/tmp/out", "a/b", "..", "", "a\\\\b", "a\\u0000b", "a b", "<b>", "=a"] {
        let changed = stored.replace("\"words\"", &format!("\"{name}\""));
        assert_ne!(changed, stored);
        fs::write(bench.path().join("bad.json"), changed).expect("written");
        let output = bench.run("decode bad.json drive.csv --to parquet -o tables");
        assert_eq!(output.status.code(), Some(2), "{name}: {output:?}");
        assert!(!bench.path().join("tables").exists(), "{name}");
    }
}

/// `use` reads what its user may read, and shows of a file that is no description no more than the lines with mistakes.
#[test]
fn use_of_a_file_that_is_no_description() {
    let bench = Bench::of("words");
    let outside = tempfile::tempdir().expect("a folder");
    let secret = outside.path().join("secret.txt");
    fs::write(&secret, "user = someone\n".repeat(3)).expect("written");
    fs::write(
        bench.path().join("thief.lore"),
        format!("use \"{}\"\nuse \"/dev/zero\"\nuse \"/proc/self/mem\"\n", secret.display()),
    )
    .expect("written");
    let output = bench.run("check thief.lore");
    assert!(matches!(output.status.code(), Some(1 | 2)), "{output:?}");
    assert!(output.stdout.len() < 10_000);
    assert_eq!(fs::read_to_string(&secret).expect("it is there"), "user = someone\n".repeat(3));
}
