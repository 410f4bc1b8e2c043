//! Lines with indentation, laid out as rustfmt lays them out.

/// A line has at most so many columns, where it can be broken.
const COLUMNS: usize = 100;

/// Arguments of a call that take more columns stand one below the other.
const ARGUMENT_COLUMNS: usize = 60;

/// Fields of a struct that take more columns stand one below the other.
const FIELD_COLUMNS: usize = 18;

/// Source text under way.
#[derive(Debug, Default)]
pub(crate) struct Writer {
    text: String,
    depth: usize,
    /// The next item is not the first of its block.
    needs_gap: bool,
}

impl Writer {
    /// The whole text.
    pub(crate) fn finish(self) -> String {
        self.text
    }

    /// A text of its own that will be pasted one level deeper than this one is.
    pub(crate) fn deeper(around: &Self) -> Self {
        Self { depth: around.depth + 1, ..Self::default() }
    }

    /// Lines that have their indentation already.
    pub(crate) fn paste(&mut self, lines: &str) {
        self.text.push_str(lines);
    }

    /// How long the text is so far, in bytes.
    pub(crate) fn len(&self) -> usize {
        self.text.len()
    }

    /// One line.
    pub(crate) fn line(&mut self, line: impl AsRef<str>) {
        let line = line.as_ref();
        if !line.is_empty() {
            self.text.extend(std::iter::repeat_n(' ', self.depth * 4));
            self.text.push_str(line);
        }
        self.text.push('\n');
    }

    /// A line that opens a block.
    pub(crate) fn open(&mut self, line: impl AsRef<str>) {
        self.line(line);
        self.depth += 1;
        self.needs_gap = false;
    }

    /// A line that ends a block.
    pub(crate) fn close(&mut self, line: &str) {
        self.depth = self.depth.saturating_sub(1);
        self.line(line);
        self.needs_gap = true;
    }

    /// A line that ends a block and opens the next one.
    pub(crate) fn close_and_open(&mut self, line: &str) {
        self.close(line);
        self.depth += 1;
    }

    /// What comes next stands behind an empty line.
    pub(crate) fn needs_gap(&mut self) {
        self.needs_gap = true;
    }

    /// An empty line, but not at the beginning of a block.
    pub(crate) fn gap(&mut self) {
        if std::mem::replace(&mut self.needs_gap, true) {
            self.line("");
        }
    }

    /// A call: `before`, the arguments in parentheses, `behind`.
    pub(crate) fn call(&mut self, before: &str, arguments: &[&str], behind: &str) {
        let inside = arguments.join(", ");
        let columns = self.depth * 4 + before.chars().count() + inside.chars().count() + behind.len() + 2;
        if inside.chars().count() <= ARGUMENT_COLUMNS && columns <= COLUMNS {
            self.line(format!("{before}({inside}){behind}"));
            return;
        }
        self.open(format!("{before}("));
        arguments.iter().for_each(|argument| self.line(format!("{argument},")));
        self.close(&format!("){behind}"));
    }

    /// An arm of a match.
    pub(crate) fn arm(&mut self, pattern: &str, value: &str) {
        let line = format!("{pattern} => {value},");
        if self.depth * 4 + line.chars().count() <= COLUMNS {
            self.line(line);
        } else {
            self.open(format!("{pattern} => {{"));
            self.line(value);
            self.close("}");
        }
    }

    /// A constant, or anything else with a value behind an equals sign.
    pub(crate) fn assign(&mut self, before: &str, value: &str) {
        let line = format!("{before} = {value};");
        if self.depth * 4 + line.chars().count() <= COLUMNS {
            self.line(line);
            return;
        }
        self.open(format!("{before} ="));
        self.line(format!("{value};"));
        self.depth = self.depth.saturating_sub(1);
    }

    /// A variable that a call gives, which may fail.
    pub(crate) fn let_call(&mut self, name: &str, function: &str, arguments: &[&str]) {
        let inside = arguments.join(", ");
        let call = format!("{function}({inside})?");
        let is_narrow =
            inside.chars().count() <= ARGUMENT_COLUMNS && (self.depth + 1) * 4 + call.chars().count() < COLUMNS;
        if is_narrow {
            self.assign(&format!("let {name}"), &call);
        } else {
            self.call(&format!("let {name} = {function}"), arguments, "?;");
        }
    }

    /// A function with a body that was written before; it may be empty.
    pub(crate) fn function_with(&mut self, name: &str, parameters: &[&str], result: &str, body: &str) {
        self.function(name, parameters, result);
        if body.is_empty() {
            self.depth = self.depth.saturating_sub(1);
            self.text.truncate(self.text.trim_end().len());
            self.text.push_str("}\n");
            self.needs_gap = true;
        } else {
            self.paste(body);
            self.close("}");
        }
    }

    /// A struct made of variables that are called like its fields.
    pub(crate) fn fields(&mut self, before: &str, names: &[&str], behind: &str) {
        let inside = names.join(", ");
        if names.is_empty() {
            self.line(format!("{before} {{}}{behind}"));
        } else if inside.chars().count() <= FIELD_COLUMNS {
            self.line(format!("{before} {{ {inside} }}{behind}"));
        } else {
            self.open(format!("{before} {{"));
            names.iter().for_each(|name| self.line(format!("{name},")));
            self.close(&format!("}}{behind}"));
        }
    }

    /// The head of a function, up to its opening brace. (`result` may be empty.)
    pub(crate) fn function(&mut self, name: &str, parameters: &[&str], result: &str) {
        let result = if result.is_empty() { String::new() } else { format!(" -> {result}") };
        let head = format!("{name}({}){result} {{", parameters.join(", "));
        if self.depth * 4 + head.chars().count() <= COLUMNS {
            self.open(head);
            return;
        }
        self.open(format!("{name}("));
        parameters.iter().for_each(|parameter| self.line(format!("{parameter},")));
        self.close(&format!("){result} {{"));
        self.depth += 1;
        self.needs_gap = false;
    }
}
