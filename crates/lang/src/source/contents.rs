//! What the bytes of a file are that was taken for a description and is none.

/// Files that stand beside descriptions, and are mistaken for them.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
#[non_exhaustive]
pub enum Contents {
    /// Frames that were recorded at a vehicle.
    Recording,
    /// A description that was compiled.
    Compiled,
    /// A flat table for controllers, of which no description can be made again.
    FlatTable,
}

/// How recordings begin: gzip (RFC 1952), Zstandard (RFC 8878), pcapng (draft-ietf-opsawg-pcapng), and pcap with its two resolutions
/// (draft-ietf-opsawg-pcap) in both byte orders.
const RECORDINGS: [&[u8]; 7] = [
    b"\x1F\x8B\x08",
    b"\x28\xB5\x2F\xFD",
    b"\x0A\x0D\x0D\x0A",
    b"\xA1\xB2\xC3\xD4",
    b"\xD4\xC3\xB2\xA1",
    b"\xA1\xB2\x3C\x4D",
    b"\x4D\x3C\xB2\xA1",
];

/// How a compiled description begins.
const LOREBIN: &[u8] = b"\xF1LOREBIN";

/// How a flat table begins.
const LOREC: &[u8] = b"\xF1LOREC\r\n";

/// A line of headings is looked at no further than this, in bytes.
const LONGEST_HEADINGS: usize = 4096;

impl Contents {
    /// What the bytes are, if they are plainly no description.
    pub(super) fn of(bytes: &[u8]) -> Option<Self> {
        if RECORDINGS.iter().any(|first| bytes.starts_with(first)) {
            return Some(Self::Recording);
        }
        let start = bytes.strip_prefix("\u{FEFF}".as_bytes()).unwrap_or(bytes).trim_ascii_start();
        let is_json =
            start.strip_prefix(b"{").is_some_and(|inside| inside.trim_ascii_start().starts_with(b"\"wirelore\""));
        if is_json || bytes.starts_with(LOREBIN) {
            return Some(Self::Compiled);
        }
        if bytes.starts_with(LOREC) {
            return Some(Self::FlatTable);
        }
        begins_with_headings(start).then_some(Self::Recording)
    }
}

/// Whether the first line names columns of which the first is the time: `time_s,id_hex,data_hex`.
fn begins_with_headings(start: &[u8]) -> bool {
    let line = start.split(|byte| matches!(byte, b'\n' | b'\r')).next().unwrap_or_default();
    let mut cells = line[..line.len().min(LONGEST_HEADINGS)].split(|byte| matches!(byte, b',' | b';' | b'\t'));
    let first = cells.next().unwrap_or_default().trim_ascii().to_ascii_lowercase();
    let first = first.strip_prefix(b"\"").unwrap_or(&first);
    cells.next().is_some() && first.starts_with(b"time") && !first.starts_with(b"timeout")
}
