//! A reader of comma-separated lines (RFC 4180) that knows nothing of the writer.

/// All records with all fields. A line feed alone ends a record, too.
pub(crate) fn read(text: &str) -> Vec<Vec<String>> {
    let (mut records, mut record, mut field) = (Vec::new(), Vec::new(), String::new());
    let mut letters = text.chars().peekable();
    let mut in_quotes = false;
    while let Some(letter) = letters.next() {
        match letter {
            '"' if in_quotes && letters.peek() == Some(&'"') => field.extend(letters.next()),
            '"' if in_quotes => in_quotes = false,
            '"' if field.is_empty() => in_quotes = true,
            ',' if !in_quotes => record.push(std::mem::take(&mut field)),
            '\n' if !in_quotes => {
                record.push(std::mem::take(&mut field));
                records.push(std::mem::take(&mut record));
            }
            letter => {
                assert!(in_quotes || !matches!(letter, '"' | '\r'), "outside of quotes: {letter:?} in {text:?}");
                field.push(letter);
            }
        }
    }
    assert!(field.is_empty() && record.is_empty() && !in_quotes, "the last line has no end: {text:?}");
    records
}

/// All records have as many fields as the header.
#[track_caller]
pub(crate) fn assert_even(records: &[Vec<String>]) {
    assert!(records.len() > 1, "{records:?}");
    for record in records {
        assert_eq!(record.len(), records[0].len(), "{record:?} under {:?}", records[0]);
    }
}
