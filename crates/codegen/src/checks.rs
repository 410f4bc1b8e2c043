//! Checksums and protections: calculated when a frame is written, compared when one came.

use wirelore_model::{ByteSpan, Checksum, ChecksumAlgorithm, Content, Frame, MixedByte, Protection, Role};

use crate::docs::literal;
use crate::plan::{FramePlan, Group, Switch};
use crate::signal::Field;
use crate::writer::Writer;

/// What a group and the pages inside check.
pub(crate) struct Checked<'w, 'd> {
    plan: &'w FramePlan<'d>,
    group: &'w Group<'d>,
}

/// The static of a CRC that is given by its parameters.
pub(crate) fn own_crc_name(at: usize) -> String {
    format!("CRC_{}", at + 1)
}

impl<'w, 'd> Checked<'w, 'd> {
    pub(crate) fn of(plan: &'w FramePlan<'d>, group: &'w Group<'d>) -> Self {
        Self { plan, group }
    }

    /// Whether there is anything to check in the group or in the pages inside.
    pub(crate) fn has_any(group: &Group<'_>) -> bool {
        let inside = |switch: &Switch<'_>| match switch {
            Switch::Pages(pages) => pages.pages.iter().any(|(_, group)| Self::has_any(group)),
            Switch::Single { group, .. } => Self::has_any(group),
            Switch::Repeated(_) => false,
        };
        group.fields.iter().any(Field::checks) || group.switches.iter().any(inside)
    }

    /// Whether there is a protection among that.
    pub(crate) fn has_protection(group: &Group<'_>) -> bool {
        let inside = |switch: &Switch<'_>| match switch {
            Switch::Pages(pages) => pages.pages.iter().any(|(_, group)| Self::has_protection(group)),
            Switch::Single { group, .. } => Self::has_protection(group),
            Switch::Repeated(_) => false,
        };
        group.fields.iter().any(|field| field.checks() && field.signal.protection().is_some())
            || group.switches.iter().any(inside)
    }

    /// Whether a checksum of the frame needs its identifier.
    pub(crate) fn needs_identifier(frame: &Frame) -> bool {
        frame.signals.iter().any(|signal| matches!(&signal.role, Role::Checksum(sum) if sum.needs_identifier()))
    }

    pub(crate) fn write(&self, writer: &mut Writer) {
        if !Self::has_any(self.group) {
            return;
        }
        for field in &self.group.fields {
            match &field.signal.role {
                Role::Checksum(checksum) => self.write_sum(writer, field, checksum),
                Role::Protection(protection) if field.checks() => write_protection(writer, protection),
                Role::Protection(_) | Role::Value | Role::Counter(_) => {}
            }
        }
        self.write_check_parts(writer);
        self.write_seal_sums(writer);
        if Self::has_protection(self.group) {
            self.write_seal_protection(writer);
        }
    }

    /// The arguments of the functions that need the identifier.
    fn arguments(&self) -> (&'static str, &'static [&'static str]) {
        if Self::needs_identifier(self.plan.frame) {
            ("(payload, identifier)", &["identifier: u32"])
        } else {
            ("(payload)", &[])
        }
    }

    fn write_sum(&self, writer: &mut Writer, field: &Field<'_>, checksum: &Checksum) {
        let Content::Number { field: place, .. } = &field.signal.content else { return };
        let mut parameters = vec!["payload: &[u8]"];
        if Self::needs_identifier(self.plan.frame) {
            parameters.push(if checksum.needs_identifier() { "identifier: u32" } else { "_identifier: u32" });
        }
        writer.gap();
        writer.function(&format!("fn {}", sum_name(field)), &parameters, "Option<u64>");
        let (is_sum, algorithm) = self.algorithm(checksum.algorithm);
        writer.line(format!("let sum = {algorithm};"));
        writer.line(match checksum.start {
            None => "let state = sum.start();".to_owned(),
            Some(start) if is_sum => format!("let state = 0x{start:X};"),
            Some(start) => format!("let state = sum.start_from(0x{start:X});"),
        });
        checksum.first.iter().for_each(|byte| self.write_mixed(writer, *byte));
        for ByteSpan { first, last } in &checksum.over {
            let end = last.map_or(String::new(), |last| (last + 1).to_string());
            writer.line(format!("let bytes = payload.get({first}..{end})?;"));
            writer.line("let state = sum.update(state, bytes);");
        }
        checksum.then.iter().for_each(|byte| self.write_mixed(writer, *byte));
        let mask = u64::MAX >> 64_u32.saturating_sub(place.width().into()).min(63);
        writer.line(format!("Some(sum.finish(state) & 0x{mask:X})"));
        writer.close("}");
    }

    fn write_mixed(&self, writer: &mut Writer, byte: MixedByte) {
        match byte {
            MixedByte::Byte(byte) => writer.line(format!("let state = sum.update(state, &[0x{byte:02X}]);")),
            MixedByte::Identifier(index) => {
                writer.line(format!("let byte = identifier.to_le_bytes()[{}];", index.min(3)));
                writer.line("let state = sum.update(state, &[byte]);");
            }
            MixedByte::Signal(signal) => {
                let Some(place) = self.plan.places.get(&signal) else { return };
                writer.line(format!("let byte = {}.get(payload)? as u8;", place.seen_from(&self.group.name)));
                writer.line("let state = sum.update(state, &[byte]);");
            }
        }
    }

    /// Whether it is a plain sum, and the expression that gives it.
    fn algorithm(&self, algorithm: ChecksumAlgorithm) -> (bool, String) {
        let named = |name: &str| (false, format!("&typed::sums::{name}"));
        let sum = |text: &str| (true, format!("wirelore_bits::sums::ByteSum::{text}"));
        match algorithm {
            ChecksumAlgorithm::Crc8SaeJ1850 => named("CRC8_SAE_J1850"),
            ChecksumAlgorithm::Crc8Autosar => named("CRC8_AUTOSAR"),
            ChecksumAlgorithm::Crc16Ibm3740 => named("CRC16_IBM_3740"),
            ChecksumAlgorithm::Crc16Arc => named("CRC16_ARC"),
            ChecksumAlgorithm::Crc32IsoHdlc => named("CRC32_ISO_HDLC"),
            ChecksumAlgorithm::Crc32Autosar => named("CRC32_AUTOSAR"),
            ChecksumAlgorithm::Crc64Xz => named("CRC64_XZ"),
            ChecksumAlgorithm::Xor8 => sum("XOR"),
            ChecksumAlgorithm::Sum8 => sum("WRAPPING"),
            ChecksumAlgorithm::InvertedSum8 => sum("WRAPPING.inverted()"),
            ChecksumAlgorithm::InvertedCarrySum8 => sum("END_AROUND.inverted()"),
            ChecksumAlgorithm::Nibble4 => sum("WRAPPING.folded()"),
            ChecksumAlgorithm::Crc(rule) => {
                let at = self.plan.context.own_crcs.iter().position(|known| *known == rule).unwrap_or(0);
                (false, format!("&{}{}", self.plan.outside(), own_crc_name(at)))
            }
        }
    }

    fn write_check_parts(&self, writer: &mut Writer) {
        let (arguments, more) = self.arguments();
        writer.gap();
        let parameters: Vec<&str> = ["payload: &[u8]"].iter().chain(more).copied().collect();
        writer.function("fn check_parts", &parameters, "Result<(), typed::Damage>");
        for field in &self.group.fields {
            let name = literal(&field.signal.label.name);
            match &field.signal.role {
                Role::Checksum(_) => {
                    writer.line(format!("let found = Self::{}.get(payload);", field.at));
                    writer.line(format!("let right = Self::{}{arguments};", sum_name(field)));
                    writer.call("typed::sum_fits", &["found", "right", &name], "?;");
                }
                Role::Protection(_) if field.checks() => {
                    writer.open(format!("if Self::{}.get(payload).is_some() {{", field.at));
                    writer.call(&format!("Self::{}.check", PROTECTION), &["payload", &name], "?;");
                    writer.close("}");
                }
                Role::Protection(_) | Role::Value | Role::Counter(_) => {}
            }
        }
        self.write_inside(writer, Self::has_any, |writer, group| {
            writer.line(format!("{}::check_parts{arguments}?;", group.name))
        });
        writer.line("Ok(())");
        writer.close("}");
    }

    fn write_seal_sums(&self, writer: &mut Writer) {
        let (arguments, more) = self.arguments();
        writer.gap();
        let parameters: Vec<&str> = ["payload: &mut [u8]"].iter().chain(more).copied().collect();
        let text = {
            let mut body = Writer::deeper(writer);
            for field in &self.group.fields {
                if matches!(field.signal.role, Role::Checksum(_)) {
                    body.open(format!("if let Some(sum) = Self::{}{arguments} {{", sum_name(field)));
                    body.line(format!("Self::{}.put(payload, sum);", field.at));
                    body.close("}");
                }
            }
            self.write_inside(&mut body, Self::has_any, |writer, group| {
                writer.line(format!("{}::seal_sums{arguments};", group.name))
            });
            body.finish()
        };
        let parameters: Vec<String> =
            parameters.iter().map(|one| if text.is_empty() { format!("_{one}") } else { (*one).to_owned() }).collect();
        let parameters: Vec<&str> = parameters.iter().map(String::as_str).collect();
        writer.function_with("fn seal_sums", &parameters, "", &text);
    }

    /// The protection comes last: it covers the checksums too.
    fn write_seal_protection(&self, writer: &mut Writer) {
        let text = {
            let mut body = Writer::deeper(writer);
            for field in &self.group.fields {
                if field.checks() && field.signal.protection().is_some() {
                    body.line(format!("let count = Self::{}.of(payload);", field.at));
                    body.line(format!("Self::{}.protect(payload, count)?;", PROTECTION));
                }
            }
            self.write_inside(&mut body, Self::has_protection, |writer, group| {
                writer.line(format!("{}::seal_protection(payload)?;", group.name))
            });
            body.finish()
        };
        let payload = if text.is_empty() { "_payload: &mut [u8]" } else { "payload: &mut [u8]" };
        writer.gap();
        writer.function("fn seal_protection", &[payload], "Result<(), typed::NotEncoded>");
        writer.paste(&text);
        writer.line("Ok(())");
        writer.close("}");
    }

    /// Does something for each page inside that holds and has something to check.
    fn write_inside(&self, writer: &mut Writer, has: fn(&Group<'_>) -> bool, each: impl Fn(&mut Writer, &Group<'_>)) {
        for switch in &self.group.switches {
            match switch {
                Switch::Pages(pages) => {
                    let with_checks: Vec<_> =
                        pages.pages.iter().enumerate().filter(|(_, (_, group))| has(group)).collect();
                    write_for_pages(writer, &pages.select, &with_checks, &each);
                }
                Switch::Single { group, there, .. } if has(group) => {
                    writer.open(format!("if Self::{there}(payload) {{"));
                    each(writer, group);
                    writer.close("}");
                }
                _ => {}
            }
        }
    }
}

/// Does something for the page that holds, if it is one of some.
fn write_for_pages(
    writer: &mut Writer,
    select: &str,
    pages: &[(usize, &(String, Group<'_>))],
    each: &impl Fn(&mut Writer, &Group<'_>),
) {
    match pages {
        [] => {}
        [(at, (_, group))] => {
            writer.open(format!("if Self::{select}(payload) == {at} {{"));
            each(writer, group);
            writer.close("}");
        }
        several => {
            writer.open(format!("match Self::{select}(payload) {{"));
            for (at, (_, group)) in several {
                writer.open(format!("{at} => {{"));
                each(writer, group);
                writer.close("}");
            }
            writer.line("_ => {}");
            writer.close("}");
        }
    }
}

fn sum_name(field: &Field<'_>) -> String {
    field.at.replacen("AT_", "sum_of_", 1).to_lowercase()
}

/// A frame has one at most.
const PROTECTION: &str = "PROTECTION";

fn write_protection(writer: &mut Writer, protection: &Protection) {
    let data_id = match protection.data_id {
        wirelore_bits::e2e::DataId::One(id) => format!("wirelore_bits::e2e::DataId::One(0x{id:X})"),
        wirelore_bits::e2e::DataId::List(ids) => format!("typed::data_ids(0x{:X})", u128::from_be_bytes(ids)),
    };
    let end = protection.over.last.map_or("None".to_owned(), |last| format!("Some({})", last + 1));
    writer.gap();
    writer.line("/// The end-to-end protection.");
    writer.open(format!("pub const {}: typed::Protection = typed::Protection {{", PROTECTION));
    writer.line(format!("profile: wirelore_bits::e2e::Profile::{:?},", protection.profile));
    writer.line(format!("data_id: {data_id},"));
    writer.line(format!("header: {},", protection.header));
    writer.line(format!("first: {},", protection.over.first));
    writer.line(format!("end: {end},"));
    writer.close("};");
}
