//! `materials.csv` as a table, read by the compiler.
//!
//! Nothing is left to do when a program starts: the cells are pieces of one constant text, the
//! figures are checked numbers. A bad line does not compile; the message names its key.

use super::figure::{BuiltUpEdge, Iso513Group, Prone, SpeedBand};
use crate::provenance::{Sourced, Standing};
use crate::quantity::{
    BrinellHardness, CuttingSpeed, Density, ForceExponent, Quantity, SpecificCuttingForce,
    SpecificHeat, ThermalExpansion, YoungsModulus,
};

/// One line of the file.
#[derive(Clone, Copy)]
pub(super) struct Line {
    pub(super) key: &'static str,
    pub(super) names: &'static str,
    pub(super) group: Iso513Group,
    pub(super) condition: &'static str,
    pub(super) hardness: Option<Sourced<BrinellHardness>>,
    pub(super) density: Option<Sourced<Density>>,
    pub(super) youngs_modulus: Option<Sourced<YoungsModulus>>,
    pub(super) specific_force: Sourced<SpecificCuttingForce>,
    pub(super) exponent: Sourced<ForceExponent>,
    pub(super) high_speed_steel: Option<Sourced<SpeedBand>>,
    pub(super) carbide: Option<Sourced<SpeedBand>>,
    pub(super) built_up_edge: Sourced<BuiltUpEdge>,
    pub(super) expansion: Option<Sourced<ThermalExpansion>>,
    pub(super) specific_heat: Option<Sourced<SpecificHeat>>,
    pub(super) notes: &'static str,
}

/// All lines, in the order of the file.
pub(super) static CATALOGUE: [Line; LINES] = read();

const FILE: &str = include_str!("materials.csv");

/// The heading that the columns below were written for.
const HEADING: &str = "key,name,iso513_group,condition,hardness_hb_typ,density_kg_m3,\
    youngs_modulus_gpa,kc11_mpa,mc,vc_hss_m_min_low,vc_hss_m_min_high,vc_carbide_m_min_low,\
    vc_carbide_m_min_high,bue_prone,bue_vc_low_m_min,bue_vc_high_m_min,expansion_um_m_k,\
    specific_heat_j_kg_k,source_kc,source_vc,source_E,source_bue,notes\n";

const COLUMNS: usize = 23;

/// The file has no column for the source of the hardness.
const SOURCE_HARDNESS: &str = "from memory, typical for the condition named, unverified page";

/// What ends a cell, and what ends a line, once the quotes are gone. No cell holds either.
const CELL: u8 = 0x1f;
const END: u8 = 0x1e;

/// The file without its quotes; the rest is zeros. Cells are pieces of this text.
const PLAIN: &str = match std::str::from_utf8(&UNQUOTED.0) {
    Ok(text) => text,
    Err(_) => "",
};
const LINES: usize = UNQUOTED.1 - 1;
const UNQUOTED: ([u8; FILE.len()], usize) = unquote(FILE.as_bytes());

/// The text without quotes, commas between cells made [`CELL`], and the number of lines.
const fn unquote<const N: usize>(file: &[u8]) -> ([u8; N], usize) {
    let mut plain = [0; N];
    let (mut from, mut to, mut lines) = (0, 0, 0);
    let mut quoted = false;
    while from < file.len() {
        let mut byte = file[from];
        from += 1;
        if byte == b'"' {
            // Two quotes inside of quotes are one that belongs to the text.
            if quoted && from < file.len() && file[from] == b'"' {
                from += 1;
            } else {
                quoted = !quoted;
                continue;
            }
        } else if !quoted && byte == b',' {
            byte = CELL;
        } else if !quoted && byte == b'\n' {
            byte = END;
            lines += 1;
        }
        plain[to] = byte;
        to += 1;
    }
    assert!(!quoted, "materials.csv: a quote is not closed");
    (plain, lines)
}

// The compiler reads 35 kB once; the lint guards against loops that never end.
#[allow(long_running_const_eval)]
const fn read() -> [Line; LINES] {
    assert!(
        same(FILE.split_at(HEADING.len()).0, HEADING),
        "materials.csv: the heading is not the one that catalogue.rs reads"
    );
    let first = after_line(PLAIN);
    let mut lines = [line(first); LINES];
    let mut rest = first;
    let mut i = 0;
    while i < LINES {
        lines[i] = line(rest);
        rest = after_line(rest);
        i += 1;
    }
    lines
}

/// What follows the first line of `text`.
const fn after_line(text: &'static str) -> &'static str {
    let mut i = 0;
    while text.as_bytes()[i] != END {
        i += 1;
    }
    text.split_at(i + 1).1
}

/// The cells of the first line of `text`.
const fn cells(text: &'static str) -> [&'static str; COLUMNS] {
    let mut cells = [""; COLUMNS];
    let (mut column, mut start, mut i) = (0, 0, 0);
    loop {
        let byte = text.as_bytes()[i];
        if byte == CELL || byte == END {
            if column < COLUMNS {
                cells[column] = text.split_at(i).0.split_at(start).1;
            }
            column += 1;
            start = i + 1;
        }
        if byte == END {
            break;
        }
        i += 1;
    }
    if column != COLUMNS {
        fail(cells[0], "not as many cells as the heading");
    }
    cells
}

/// A number of the quantity `$t`, or nothing for a blank cell.
macro_rules! figure {
    ($t:ident, $key:expr, $cell:expr, $source:expr) => {
        match number($key, $cell) {
            None => None,
            Some(value) => {
                if !<$t as Quantity>::ROW.accepts(value) {
                    fail($key, concat!(stringify!($t), " outside of its range"));
                }
                Some(sourced($t::computed_trade(value), $source))
            }
        }
    };
}

/// The first line of `text`.
const fn line(text: &'static str) -> Line {
    let [
        key,
        names,
        group,
        condition,
        hardness,
        density,
        youngs_modulus,
        specific_force,
        exponent,
        hss_low,
        hss_high,
        carbide_low,
        carbide_high,
        prone,
        edge_low,
        edge_high,
        expansion,
        specific_heat,
        source_force,
        source_speed,
        source_other,
        source_edge,
        notes,
    ] = cells(text);
    if key.is_empty() || names.is_empty() {
        fail(key, "a key and a name are needed");
    }
    let (Some(specific_force), Some(exponent)) = (
        figure!(SpecificCuttingForce, key, specific_force, source_force),
        figure!(ForceExponent, key, exponent, source_force),
    ) else {
        fail(key, "a specific force and its exponent are needed")
    };
    Line {
        key,
        names,
        group: group_of(key, group),
        condition,
        hardness: figure!(BrinellHardness, key, hardness, SOURCE_HARDNESS),
        density: figure!(Density, key, density, source_other),
        youngs_modulus: figure!(YoungsModulus, key, youngs_modulus, source_other),
        specific_force,
        exponent,
        high_speed_steel: match band(key, hss_low, hss_high) {
            Some(band) => Some(sourced(band, source_speed)),
            None => None,
        },
        carbide: match band(key, carbide_low, carbide_high) {
            Some(band) => Some(sourced(band, source_speed)),
            None => None,
        },
        built_up_edge: sourced(
            BuiltUpEdge {
                prone: prone_of(key, prone),
                band: band(key, edge_low, edge_high),
            },
            source_edge,
        ),
        expansion: figure!(ThermalExpansion, key, expansion, source_other),
        specific_heat: figure!(SpecificHeat, key, specific_heat, source_other),
        notes,
    }
}

/// A band of speeds, or nothing where both cells are blank.
const fn band(key: &str, low: &str, high: &str) -> Option<SpeedBand> {
    let speeds = CuttingSpeed::ROW;
    match (number(key, low), number(key, high)) {
        (Some(low), Some(high)) => {
            if !(speeds.accepts(low) && speeds.accepts(high) && low <= high) {
                fail(key, "a band of speeds outside of the range or upside down");
            }
            Some(SpeedBand::known(
                CuttingSpeed::computed_trade(low),
                CuttingSpeed::computed_trade(high),
            ))
        }
        (None, None) => None,
        _ => fail(key, "half a band of speeds"),
    }
}

/// A decimal number, rounded once: its digits over a power of ten, both exact. Blank is nothing.
const fn number(key: &str, cell: &str) -> Option<f64> {
    if cell.is_empty() {
        return None;
    }
    let digits = cell.as_bytes();
    let (mut mantissa, mut scale, mut point) = (0_u64, 1_u64, false);
    let mut i = 0;
    while i < digits.len() {
        match digits[i] {
            b'.' if !point && i > 0 && i + 1 < digits.len() => point = true,
            digit @ b'0'..=b'9' if mantissa < 1_000_000_000_000 => {
                mantissa = mantissa * 10 + (digit - b'0') as u64;
                if point {
                    scale *= 10;
                }
            }
            _ => fail(key, "a cell that is no decimal number"),
        }
        i += 1;
    }
    Some(mantissa as f64 / scale as f64)
}

/// A constant; how its source begins says how far to trust it.
const fn sourced<T: Copy>(value: T, source: &'static str) -> Sourced<T> {
    let standing = if starts(source, "from memory") {
        Standing::FromMemory
    } else if starts(source, "common practice") {
        Standing::CommonPractice
    } else if starts(source, "estimate") {
        Standing::Estimate
    } else {
        Standing::Published
    };
    Sourced::new(value, source, standing)
}

const fn group_of(key: &str, cell: &str) -> Iso513Group {
    match cell.as_bytes() {
        b"P" => Iso513Group::P,
        b"M" => Iso513Group::M,
        b"K" => Iso513Group::K,
        b"N" => Iso513Group::N,
        b"S" => Iso513Group::S,
        b"H" => Iso513Group::H,
        _ => fail(key, "a group that ISO 513 does not have"),
    }
}

const fn prone_of(key: &str, cell: &str) -> Prone {
    match cell.as_bytes() {
        b"yes" => Prone::Yes,
        b"weak" => Prone::Weak,
        b"no" => Prone::No,
        _ => fail(key, "bue_prone other than yes, weak or no"),
    }
}

const fn same(a: &str, b: &str) -> bool {
    a.len() == b.len() && starts(a, b)
}

const fn starts(text: &str, with: &str) -> bool {
    let (text, with) = (text.as_bytes(), with.as_bytes());
    let mut i = 0;
    while i < with.len() {
        if i == text.len() || text[i] != with[i] {
            return false;
        }
        i += 1;
    }
    true
}

/// Ends the compilation (never a running program) with the key of the line and what is wrong in it.
#[allow(clippy::panic)]
const fn fail(key: &str, what: &str) -> ! {
    let mut message = [b' '; 160];
    let parts = ["materials.csv, line of ", key, ": ", what];
    let (mut part, mut to) = (0, 0);
    while part < parts.len() {
        let mut i = 0;
        while i < parts[part].len() && to < message.len() {
            message[to] = parts[part].as_bytes()[i];
            to += 1;
            i += 1;
        }
        part += 1;
    }
    match std::str::from_utf8(message.split_at(to).0) {
        Ok(message) => panic!("{}", message),
        Err(_) => panic!("materials.csv: a bad line"),
    }
}

#[cfg(test)]
#[allow(clippy::unwrap_used)]
mod tests {
    use super::*;
    use std::collections::HashMap;

    /// The file again, read in another way: character by character, at run time.
    fn plainly() -> Vec<HashMap<String, String>> {
        let mut table: Vec<Vec<String>> = Vec::new();
        for line in FILE.lines() {
            let mut row = Vec::new();
            let mut rest = line;
            loop {
                let cell;
                if let Some(quoted) = rest.strip_prefix('"') {
                    let end = (0..quoted.len())
                        .find(|&i| {
                            let after = &quoted[i..];
                            let quotes = after.chars().take_while(|c| *c == '"').count();
                            let before = quoted[..i].chars().rev().take_while(|c| *c == '"');
                            quotes % 2 == 1 && before.count() == 0
                        })
                        .unwrap();
                    let run = quoted[end..].chars().take_while(|c| *c == '"').count();
                    cell = quoted[..end + run - 1].replace("\"\"", "\"");
                    rest = &quoted[end + run..];
                } else {
                    let end = rest.find(',').unwrap_or(rest.len());
                    cell = rest[..end].to_owned();
                    rest = &rest[end..];
                }
                row.push(cell);
                match rest.strip_prefix(',') {
                    Some(after) => rest = after,
                    None => break,
                }
            }
            table.push(row);
        }
        let heading = table.remove(0);
        table
            .into_iter()
            .map(|row| {
                assert_eq!(row.len(), heading.len());
                heading.iter().cloned().zip(row).collect()
            })
            .collect()
    }

    #[test]
    fn every_line_equals_the_file_read_in_another_way() {
        let table = plainly();
        // Counted in the file: 63 materials.
        assert_eq!((table.len(), CATALOGUE.len()), (63, 63));
        for (line, cells) in CATALOGUE.iter().zip(&table) {
            let text = |column: &str| cells[column].as_str();
            let value = |column: &str| match text(column) {
                "" => None,
                digits => Some(digits.parse::<f64>().unwrap()),
            };
            let pair = |low: &str, high: &str| value(low).zip(value(high));
            let speeds = |band: SpeedBand| (band.low().m_per_min(), band.high().m_per_min());
            assert_eq!(line.key, text("key"));
            assert_eq!(line.names, text("name"));
            assert_eq!(line.group.name(), text("iso513_group"));
            assert_eq!(line.condition, text("condition"));
            assert_eq!(line.notes, text("notes"));
            assert_eq!(
                line.hardness.map(|x| x.value.value()),
                value("hardness_hb_typ")
            );
            assert_eq!(
                line.density.map(|x| x.value.kg_per_m3()),
                value("density_kg_m3")
            );
            assert_eq!(
                line.youngs_modulus.map(|x| x.value.gpa()),
                value("youngs_modulus_gpa")
            );
            assert_eq!(Some(line.specific_force.value.mpa()), value("kc11_mpa"));
            assert_eq!(Some(line.exponent.value.value()), value("mc"));
            assert_eq!(
                line.high_speed_steel.map(|x| speeds(x.value)),
                pair("vc_hss_m_min_low", "vc_hss_m_min_high")
            );
            assert_eq!(
                line.carbide.map(|x| speeds(x.value)),
                pair("vc_carbide_m_min_low", "vc_carbide_m_min_high")
            );
            let edge = line.built_up_edge.value;
            assert_eq!(edge.prone().name(), text("bue_prone"));
            assert_eq!(
                edge.band().map(speeds),
                pair("bue_vc_low_m_min", "bue_vc_high_m_min")
            );
            assert_eq!(
                line.expansion.map(|x| x.value.um_per_m_k()),
                value("expansion_um_m_k")
            );
            assert_eq!(
                line.specific_heat.map(|x| x.value.j_per_kg_k()),
                value("specific_heat_j_kg_k")
            );
            assert_eq!(line.specific_force.source, text("source_kc"));
            assert_eq!(line.exponent.source, text("source_kc"));
            assert_eq!(line.carbide.unwrap().source, text("source_vc"));
            assert_eq!(line.density.unwrap().source, text("source_E"));
            assert_eq!(line.youngs_modulus.unwrap().source, text("source_E"));
            assert_eq!(line.expansion.unwrap().source, text("source_E"));
            assert_eq!(line.specific_heat.unwrap().source, text("source_E"));
            assert_eq!(line.built_up_edge.source, text("source_bue"));
        }
    }

    #[test]
    fn every_standing_follows_from_its_source() {
        let check = |source: &str, standing: Standing| {
            let begins = [
                ("from memory", Standing::FromMemory),
                ("common practice", Standing::CommonPractice),
                ("estimate", Standing::Estimate),
            ];
            let (_, expected) = begins
                .into_iter()
                .find(|(begin, _)| source.starts_with(begin))
                .unwrap();
            assert_eq!(standing, expected, "{source}");
        };
        for line in &CATALOGUE {
            check(line.specific_force.source, line.specific_force.standing);
            check(line.exponent.source, line.exponent.standing);
            check(line.built_up_edge.source, line.built_up_edge.standing);
            for x in line.high_speed_steel.iter().chain(&line.carbide) {
                check(x.source, x.standing);
            }
            if let Some(x) = line.youngs_modulus {
                check(x.source, x.standing);
            }
            if let Some(x) = line.hardness {
                check(x.source, x.standing);
            }
        }
    }

    /// The line of C45 with one piece of it replaced.
    fn spoilt(good: &str, bad: &str) -> &'static str {
        let line = FILE.lines().find(|line| line.starts_with("c45,")).unwrap();
        assert!(line.contains(good));
        let file = format!("{}\n", line.replacen(good, bad, 1));
        let (plain, lines) = unquote::<4096>(file.as_bytes());
        assert_eq!(lines, 1);
        Box::leak(String::from_utf8(plain.to_vec()).unwrap().into_boxed_str())
    }

    #[test]
    fn the_good_line_reads() {
        assert_eq!(
            line(spoilt("c45", "c45")).specific_force.value.mpa(),
            2220.0
        );
    }

    #[test]
    #[should_panic(expected = "line of c45: SpecificCuttingForce outside of its range")]
    fn a_figure_outside_its_range_does_not_compile() {
        line(spoilt(",2220,", ",2,"));
    }

    #[test]
    #[should_panic(expected = "line of c45: a cell that is no decimal number")]
    fn a_cell_that_is_no_number_does_not_compile() {
        line(spoilt(",2220,", ",22x0,"));
    }

    #[test]
    #[should_panic(expected = "line of c45: not as many cells")]
    fn a_missing_cell_does_not_compile() {
        line(spoilt(",2220,", ","));
    }

    #[test]
    #[should_panic(expected = "line of c45: a band of speeds outside of the range or upside down")]
    fn a_band_upside_down_does_not_compile() {
        line(spoilt(",22,35,", ",35,22,"));
    }
}
