//! Tests of sources and loaders.

use super::*;
use crate::Span;

fn at(text: &str, start: u32) -> (u32, u32) {
    let mut sources = Sources::default();
    let file = sources.add("a.lore", text);
    sources.line_column(Site { file, span: Span::new(start, start) })
}

#[test]
fn lines_and_columns_count_from_one_and_in_characters() {
    let text = "ab\n°C x\r\n\nend";
    assert_eq!(at(text, 0), (1, 1));
    assert_eq!(at(text, 2), (1, 3));
    assert_eq!(at(text, 3), (2, 1));
    assert_eq!(at(text, 5), (2, 2));
    assert_eq!(at(text, 10), (3, 1));
    assert_eq!(at(text, 11), (4, 1));
    assert_eq!(at(text, 14), (4, 4));
    assert_eq!(at("", 0), (1, 1));
    assert_eq!(at("a\n", 2), (2, 1));
}

#[test]
fn the_lines_of_a_site_have_no_line_end() {
    let mut sources = Sources::default();
    let text = "one\r\ntwo\nthree";
    let file = sources.add("a.lore", text);
    let lines = |start, end| &text[sources.lines_of(Site { file, span: Span::new(start, end) })];
    assert_eq!(lines(1, 2), "one");
    assert_eq!(lines(6, 11), "two\nthree");
    assert_eq!(lines(14, 14), "three");
}

#[test]
fn memory_paths_count_from_the_using_file() {
    let loader =
        MemoryLoader::default().with("van.lore", "v").with("body/doors.lore", "d").with("body/locks.lore", "l");
    assert_eq!(loader.load("van.lore", None).unwrap().key, "van.lore");
    assert_eq!(loader.load("./body/doors.lore", Some("van.lore")).unwrap().text, "d");
    assert_eq!(loader.load("locks.lore", Some("body/doors.lore")).unwrap().key, "body/locks.lore");
    assert_eq!(loader.load("../van.lore", Some("body/doors.lore")).unwrap().key, "van.lore");
    let missing = loader.load("seats.lore", Some("body/doors.lore")).unwrap_err();
    assert_eq!(missing.to_string(), "there is no file `body/seats.lore`");
}

/// A folder of its own for one test, taken away afterwards.
struct Folder(std::path::PathBuf);

impl Folder {
    fn new(name: &str) -> Self {
        let path = std::env::temp_dir().join(format!("wirelore-lang-{}-{name}", std::process::id()));
        std::fs::create_dir_all(path.join("body")).unwrap();
        Self(path)
    }

    fn write(&self, name: &str, bytes: &[u8]) -> String {
        let path = self.0.join(name);
        std::fs::write(&path, bytes).unwrap();
        path.to_string_lossy().into_owned()
    }
}

impl Drop for Folder {
    fn drop(&mut self) {
        let _ = std::fs::remove_dir_all(&self.0);
    }
}

#[test]
fn files_are_found_from_the_using_file_and_known_by_one_key() {
    let folder = Folder::new("use");
    let van = folder.write("van.lore", b"use \"body/doors.lore\"\n");
    folder.write("body/doors.lore", "# \u{FC}\n".as_bytes());
    let van = FileLoader.load(&van, None).unwrap();
    let doors = FileLoader.load("body/doors.lore", Some(&van.key)).unwrap();
    assert_eq!(doors.text, "# ü\n");
    let back = FileLoader.load("../body/../van.lore", Some(&doors.key)).unwrap();
    assert_eq!(back.key, van.key);
}

#[test]
fn unreadable_files_are_told_apart() {
    let folder = Folder::new("bad");
    let latin = folder.write("latin.lore", b"vehicle t\xFCr");
    let huge = folder.write("huge.lore", &vec![b'#'; LONGEST_TEXT + 1]);
    let gone = folder.0.join("gone.lore");
    assert!(matches!(FileLoader.load(&latin, None), Err(LoadError::NotText { byte_offset: 9, .. })));
    assert!(matches!(FileLoader.load(&huge, None), Err(LoadError::TooLarge { .. })));
    assert!(matches!(FileLoader.load(&gone.to_string_lossy(), None), Err(LoadError::NotFound { .. })));
    assert!(matches!(FileLoader.load(&folder.0.to_string_lossy(), None), Err(LoadError::Unreadable { .. })));
}

#[test]
fn files_beside_descriptions_are_told_for_what_they_are() {
    let folder = Folder::new("beside");
    let cases: [(&str, &[u8], &str); 10] = [
        ("a.pcapng", b"\x0A\x0D\x0D\x0A\x1C\0\0\0", "decode van.lore drive.pcapng"),
        ("a.pcap", b"\xD4\xC3\xB2\xA1\x02\0\x04\0", "decode van.lore drive.pcapng"),
        ("a.gz", b"\x1F\x8B\x08\0", "decode van.lore drive.pcapng"),
        ("a.csv", b"time_s,id_hex,data_hex\n0.00,2F1,02\n", "decode van.lore drive.pcapng"),
        ("b.csv", b"\"Time\";\"id\"\r\n", "decode van.lore drive.pcapng"),
        ("a.json", b"{\n  \"wirelore\": {", "compiled description"),
        ("a.lorebin", b"\xF1LOREBIN\x01\0\0\0", "compiled description"),
        ("a.lorec", b"\xF1LOREC\r\n\x01\0\0\0", "table for controllers"),
        ("latin.lore", b"vehicle t\xFCr", ""),
        ("timeout.lore", b"timeout 100 ms, every 3 ms", ""),
    ];
    for (name, bytes, help) in cases {
        let path = folder.write(name, bytes);
        let checked = crate::check(&[&path], &FileLoader);
        let told = checked.diagnostics[0].help.first().map_or("", String::as_str);
        assert!(if help.is_empty() { !told.contains("wirelore") } else { told.contains(help) }, "{name}: {told}");
        assert_eq!(checked.unreadable(), name != "timeout.lore", "{name}");
        let user = folder.write("user.lore", format!("use \"{name}\"\n").as_bytes());
        assert!(!crate::check(&[&user], &FileLoader).unreadable(), "used: {name}");
    }
    let huge = folder.write("huge.pcap", &[b"\xA1\xB2\xC3\xD4".as_slice(), &vec![0; LONGEST_TEXT + 1]].concat());
    assert!(matches!(FileLoader.load(&huge, None), Err(LoadError::NoDescription { .. })));
}

#[test]
fn whoever_named_a_missing_file_is_told_where_to_look() {
    let loader = MemoryLoader::default().with("van.lore", "use \"doors.lore\"\n");
    let checked = crate::check(&["vna.lore"], &loader);
    assert_eq!(checked.diagnostics[0].help, ["look at the name and the folder"]);
    assert!(checked.unreadable() && checked.has_errors());
    let checked = crate::check(&["van.lore"], &loader);
    assert_eq!(checked.diagnostics[0].help, ["a path is taken relative to the file that it stands in"]);
    assert!(!checked.unreadable() && checked.has_errors());
    assert!(!crate::check_text("van.lore", "").unreadable());
}
