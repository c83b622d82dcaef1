//! Slips of the pen in the text of a quantity: what to write instead, where that is certain.
//!
//! Each mend is of a way in which people write and which is not read: the sign of a diameter, a fraction
//! in one character, a power of ten. What comes out is told only where it reads and lies in the range, so
//! that no remedy is refused in its turn.

use super::Row;
use super::text::{decimal_end, number, plain_number, spelling, trimmed, unmended};
use super::unit::{Kind, kind_rows};
use crate::error::{Error, ErrorKind};

/// A text with one slip less, and in what it differs; or the whole remedy where no one text will do.
enum Mend {
    Text(String, &'static str),
    Remedy(String),
}
use Mend::{Remedy, Text};

/// In this order: a sign before a number hides the number, and a unit comes last.
const MENDS: [fn(&Row, &str) -> Option<Mend>; 18] = [
    blanks,
    invisible,
    named,
    diameter,
    roughness,
    radius,
    plus_minus,
    minus,
    letter_for_zero,
    vulgar_fraction,
    separators,
    power_of_ten,
    ratio,
    size_with_limits,
    several_units,
    fraction,
    percent,
    unit,
];

/// The error with a remedy that fits the slip, where there is a certain one.
#[cold]
pub(super) fn remedied(row: &Row, text: &str, error: Error) -> Error {
    match remedy(row, text.trim()) {
        Some(remedy) => error.with_remedy(remedy),
        None => error,
    }
}

fn remedy(row: &Row, given: &str) -> Option<String> {
    let (mut text, mut how) = (given.to_owned(), Vec::new());
    for mend in MENDS {
        match mend(row, &text) {
            Some(Text(mended, difference)) => {
                text = mended;
                how.push(difference);
            }
            Some(Remedy(remedy)) => return Some(remedy),
            None => {}
        }
    }
    if text == given {
        return None;
    }
    // A mark of inches would be read as the end of the text to write.
    if let Some(size) = text.strip_suffix('"') {
        text = format!("{} in", size.trim_end());
    }
    match unmended(row, &text) {
        Ok(value) if row.accepts(value) => {
            let text = if is_plain(row) {
                text
            } else {
                format!("\"{text}\"")
            };
            how.retain(|difference| !difference.is_empty());
            let how = how.iter().map(|difference| format!(", {difference}"));
            Some(format!("write {text}{}", how.collect::<String>()))
        }
        Ok(_) => Some(format!(
            "\"{text}\" would be read, but {} is from {}: check number and unit",
            row.what(),
            row.range()
        )),
        Err(error) if error.kind() == ErrorKind::MissingUnit => Some(error.remedy().to_owned()),
        _ => None,
    }
}

fn is(kind: &Kind, other: &Kind) -> bool {
    std::ptr::eq(kind, other)
}

fn is_plain(row: &Row) -> bool {
    is(row.kind(), &kind_rows::Number)
}

fn begins_with_digit(text: &str) -> bool {
    let text = text.strip_prefix('.').unwrap_or(text);
    text.starts_with(|c: char| c.is_ascii_digit() || in_digits(c).is_some())
}

/// Of one kind, so that those behind need to know one.
fn blanks(_: &Row, text: &str) -> Option<Mend> {
    let wide = |c: char| c.is_whitespace() && c != ' ';
    text.contains(wide)
        .then(|| Text(text.replace(wide, " "), ""))
}

fn invisible(_: &Row, text: &str) -> Option<Mend> {
    let hidden = |c: char| {
        matches!(
            c,
            '\u{ad}' | '\u{200b}'..='\u{200f}' | '\u{2060}' | '\u{feff}'
        )
    };
    let mended = || {
        Text(
            text.replace(hidden, ""),
            "without the character that is not seen",
        )
    };
    text.contains(hidden).then(mended)
}

/// `f = 0.2 mm/rev`.
fn named(_: &Row, text: &str) -> Option<Mend> {
    let (name, value) = text.split_once('=')?;
    let name = name.trim();
    let is_name = name.starts_with(char::is_alphabetic)
        && name.chars().all(|c| c.is_alphanumeric() || c == '_');
    is_name.then(|| Text(value.trim().to_owned(), "the value alone"))
}

/// The text without a word in front of its number or at its end.
fn without<'a>(text: &'a str, word: &str) -> Option<&'a str> {
    let same = |part: Option<&str>| part.is_some_and(|part| part.eq_ignore_ascii_case(word));
    if same(text.get(..word.len())) {
        let rest = text[word.len()..].trim_start_matches([' ', ':']);
        return begins_with_digit(rest).then_some(rest);
    }
    let from = text.len().checked_sub(word.len())?;
    if !same(text.get(from..)) {
        return None;
    }
    let front = &text[..from];
    let apart = front.ends_with(|c: char| c.is_whitespace() || c.is_ascii_digit() || c == '"');
    let of_letters = word.starts_with(|c: char| c.is_ascii_alphabetic());
    let rest = front.trim_end();
    ((apart || !of_letters) && begins_with_digit(rest)).then_some(rest)
}

/// Signs and words for a diameter; a letter alone is one in front of a number only.
const DIAMETER: [&str; 11] = [
    "\u{d8}", "\u{f8}", "\u{2300}", "\u{2205}", "\u{3a6}", "\u{3c6}", "diameter", "diam.", "diam",
    "dia.", "dia",
];
const RADIUS: [&str; 2] = ["radius", "r"];

/// How a text without one of them differs.
pub(crate) const NO_DIAMETER: &str = "without the sign or the word for a diameter";

/// The text without the sign or the word for a diameter that it has.
pub(crate) fn without_diameter(text: &str) -> Option<&str> {
    let letter = || {
        let rest = text.strip_prefix(['D', 'd'])?.trim_start();
        begins_with_digit(rest).then_some(rest)
    };
    let rest = DIAMETER.iter().find_map(|word| without(text, word));
    rest.or_else(letter)
}

fn diameter(row: &Row, text: &str) -> Option<Mend> {
    let rest = without_diameter(text)?;
    match row.name() {
        "diameter" | "diameter_error" | "tolerance" => Some(Text(rest.to_owned(), NO_DIAMETER)),
        _ => Some(Remedy(format!("give {}, not a diameter", row.what()))),
    }
}

fn radius(row: &Row, text: &str) -> Option<Mend> {
    let rest = RADIUS.iter().find_map(|word| without(text, word))?;
    match row.name() {
        "radius" | "corner_radius" | "edge_radius" => Some(Text(
            rest.to_owned(),
            "without the letter or the word for a radius",
        )),
        "diameter" => twice(row, rest).map(|twice| Text(twice, "the diameter for this radius")),
        _ => Some(Remedy(format!("give {}, not a radius", row.what()))),
    }
}

/// The quantity twice, in its own unit.
fn twice(row: &Row, text: &str) -> Option<String> {
    let (written, rest) = number(row, text).ok()?;
    let (size, parts) = (2.0 * written.numerator, written.denominator);
    Some(format!("{} {}", mixed(size, parts), rest.trim()))
}

/// A number as a whole with a fraction, in its lowest terms: `1 1/2`.
fn mixed(size: f64, parts: f64) -> String {
    if parts == 1.0 {
        return plain_number(size);
    }
    let (mut size, mut parts) = (size, parts);
    while size % 2.0 == 0.0 && parts % 2.0 == 0.0 {
        (size, parts) = (size / 2.0, parts / 2.0);
    }
    let (whole, rest) = ((size / parts).trunc(), size % parts);
    match (whole == 0.0, rest == 0.0) {
        (_, true) => whole.to_string(),
        (true, _) => format!("{rest}/{parts}"),
        _ => format!("{whole} {}/{parts}", rest.abs()),
    }
}

/// `Ra 1.6 um`.
fn roughness(row: &Row, text: &str) -> Option<Mend> {
    let names = ["Ra", "Rz", "Rq", "Rt"];
    let (name, rest) = names
        .iter()
        .find_map(|name| Some((name, without(text, name)?)))?;
    if row.name().eq_ignore_ascii_case(name) {
        return Some(Text(rest.to_owned(), "without its name"));
    }
    let of_this_kind = is(row.kind(), &kind_rows::Roughness);
    of_this_kind.then(|| Remedy(format!("give {}, not {name}", row.what())))
}

const BOTH_SIGNS: [&str; 5] = ["\u{b1}", "+/-", "+-", "+\u{2212}", "-/+"];

fn plus_minus(row: &Row, text: &str) -> Option<Mend> {
    let both = |sign: &&str| text.strip_prefix(*sign);
    let rest = BOTH_SIGNS.iter().find_map(both)?.trim_start();
    match row.name() {
        "half_width"
        | "instrument_uncertainty"
        | "standard_uncertainty"
        | "force_scatter"
        | "life_scatter" => Some(Text(rest.to_owned(), "without the two signs")),
        "tolerance" => twice(row, rest).map(|twice| Text(twice, "the whole width")),
        "upper_deviation" | "lower_deviation" => unmended(row, rest).ok().map(|_| {
            Remedy(format!(
                "write \"{rest}\" as the upper and \"-{rest}\" as the lower deviation, or \"{rest}\" as plus_minus"
            ))
        }),
        _ => Some(Remedy(format!(
            "write {} without the two signs: one number and its unit",
            row.what()
        ))),
    }
}

/// A dash for a minus sign, or a blank behind one.
fn minus(_: &Row, text: &str) -> Option<Mend> {
    let dashes = ['\u{2010}', '\u{2011}', '\u{2012}', '\u{2013}', '\u{2014}'];
    let rest = text.strip_prefix(dashes).or_else(|| {
        let rest = text.strip_prefix(['-', '\u{2212}'])?;
        rest.starts_with(' ').then_some(rest)
    })?;
    let rest = rest.trim_start();
    begins_with_digit(rest).then(|| Text(format!("-{rest}"), "with a plain minus sign before it"))
}

fn letter_for_zero(_: &Row, text: &str) -> Option<Mend> {
    let of_number = |c: char| c.is_ascii_digit() || ".,+-Oo".contains(c);
    let end = text.find(|c| !of_number(c)).unwrap_or(text.len());
    let (token, rest) = text.split_at(end);
    // A small letter at the end may be a sign of a degree.
    let token_is_number = token.contains(['O', 'o'])
        && token.contains(|c: char| c.is_ascii_digit())
        && !token.ends_with('o');
    token_is_number.then(|| {
        Text(
            format!("{}{rest}", token.replace(['O', 'o'], "0")),
            "with the digit 0, not the letter",
        )
    })
}

/// The fraction that a character is.
fn in_digits(c: char) -> Option<&'static str> {
    Some(match c {
        '\u{bd}' => "1/2",
        '\u{bc}' => "1/4",
        '\u{be}' => "3/4",
        '\u{2150}' => "1/7",
        '\u{2151}' => "1/9",
        '\u{2152}' => "1/10",
        '\u{2153}' => "1/3",
        '\u{2154}' => "2/3",
        '\u{2155}' => "1/5",
        '\u{2156}' => "2/5",
        '\u{2157}' => "3/5",
        '\u{2158}' => "4/5",
        '\u{2159}' => "1/6",
        '\u{215a}' => "5/6",
        '\u{215b}' => "1/8",
        '\u{215c}' => "3/8",
        '\u{215d}' => "5/8",
        '\u{215e}' => "7/8",
        _ => return None,
    })
}

fn vulgar_fraction(_: &Row, text: &str) -> Option<Mend> {
    let mut out = String::with_capacity(text.len() + 8);
    for c in text.chars() {
        match (c, in_digits(c)) {
            (_, Some(fraction)) => {
                if out.ends_with(|c: char| c.is_ascii_digit()) {
                    out.push(' ');
                }
                out.push_str(fraction);
            }
            ('\u{2044}' | '\u{2215}', _) => out.push('/'),
            (c, None) => out.push(c),
        }
    }
    let found = out != text;
    found.then_some(Text(out, "its fraction in digits and a slash"))
}

/// Commas, points, blanks and apostrophes between the digits of one number.
fn separators(_: &Row, text: &str) -> Option<Mend> {
    const THOUSANDS: &str = "without what parts its thousands";
    let unsigned = text.trim_start_matches(['+', '-']);
    let sign = &text[..text.len() - unsigned.len()];
    let (first, mut rest) = digits(unsigned);
    let mut groups: Vec<(char, &str)> = Vec::new();
    while let Some(by) = rest.chars().next().filter(|c| ",. '\u{2019}".contains(*c)) {
        let (group, after) = digits(&rest[by.len_utf8()..]);
        let decimal_too = matches!(by, ',' | '.');
        if group.is_empty() || !decimal_too && (group.len() != 3 || after.starts_with('/')) {
            break;
        }
        groups.push((by, group));
        rest = after;
    }
    if rest.starts_with('/') {
        return None;
    }
    let (&(last, end), front) = groups.split_last()?;
    let thousands = |groups: &[(char, &str)]| {
        let by = groups.first().map(|(by, _)| *by);
        (1..=3).contains(&first.len())
            && first != "0"
            && groups
                .iter()
                .all(|(other, group)| Some(*other) == by && group.len() == 3)
    };
    let whole = |groups: &[(char, &str)]| -> String {
        let groups = groups.iter().map(|(_, group)| *group);
        std::iter::once(first).chain(groups).collect()
    };
    let decimal = matches!(last, ',' | '.') && front.iter().all(|(by, _)| *by != last);
    if decimal && !front.is_empty() && thousands(front) {
        let how = match last {
            ',' => "with a decimal point, and without what parts its thousands",
            _ => THOUSANDS,
        };
        return Some(Text(format!("{sign}{}.{end}{rest}", whole(front)), how));
    }
    if last == '.' && front.is_empty() {
        return None;
    }
    let parted = thousands(&groups);
    if last == ',' && front.is_empty() {
        let point = format!("{sign}{first}.{end}{rest}");
        return Some(match parted {
            false => Text(point, "with a decimal point"),
            true => Remedy(format!(
                "leave the comma out, \"{sign}{first}{end}{rest}\", or write the decimal point as a point: \"{point}\""
            )),
        });
    }
    parted.then(|| Text(format!("{sign}{}{rest}", whole(&groups)), THOUSANDS))
}

fn digits(text: &str) -> (&str, &str) {
    let end = text.bytes().take_while(u8::is_ascii_digit).count();
    text.split_at(end)
}

/// `1.6 x 10^-3 mm`.
fn power_of_ten(_: &Row, text: &str) -> Option<Mend> {
    const TIMES: [char; 7] = ['\u{d7}', 'x', 'X', '*', '\u{b7}', '\u{22c5}', '\u{2022}'];
    let (head, tail) = text.split_at(decimal_end(text));
    if !head.contains(|c: char| c.is_ascii_digit()) {
        return None;
    }
    let tail = tail.trim_start();
    let (size, tail, mut sure) = if let Some(tail) = tail.strip_prefix(['e', 'E']) {
        (head, tail, true)
    } else if let Some(tail) = tail.strip_prefix(TIMES) {
        (head, tail.trim_start().strip_prefix("10")?, false)
    } else if head == "10" {
        ("1", tail, false)
    } else {
        return None;
    };
    let mut rest = tail.trim_start();
    for raised in ["^", "**"] {
        if let Some(after) = rest.strip_prefix(raised) {
            (rest, sure) = (after.trim_start(), true);
        }
    }
    let mut exponent = String::new();
    for c in rest.chars() {
        let superscript =
            "\u{2070}\u{b9}\u{b2}\u{b3}\u{2074}\u{2075}\u{2076}\u{2077}\u{2078}\u{2079}"
                .chars()
                .position(|digit| digit == c);
        match (c, superscript) {
            ('-' | '\u{2212}' | '\u{2013}' | '\u{207b}', _) if exponent.is_empty() => {
                exponent.push('-');
                sure = true;
            }
            ('+' | '\u{207a}', _) if exponent.is_empty() => {
                exponent.push('+');
                sure = true;
            }
            (_, Some(digit)) => {
                exponent.push_str(&digit.to_string());
                sure = true;
            }
            (digit, None) if digit.is_ascii_digit() => exponent.push(digit),
            _ => break,
        }
    }
    let length: usize = rest
        .chars()
        .take(exponent.chars().count())
        .map(char::len_utf8)
        .sum();
    let rest = rest[length..].trim_start();
    let power = exponent.trim_start_matches('+');
    let ends = exponent.ends_with(|c: char| c.is_ascii_digit());
    (sure && ends).then(|| {
        Text(
            format!("{size}e{power} {rest}").trim_end().to_owned(),
            "with an e before the power of ten",
        )
    })
}

/// `1:10` where x of 1:x is asked.
fn ratio(row: &Row, text: &str) -> Option<Mend> {
    if row.name() != "taper_ratio" {
        return None;
    }
    let parts = |by: &&str| text.split_once(*by);
    let (one, x) = [":", "\u{2236}", "/", " in ", " to "]
        .iter()
        .find_map(parts)?;
    let (one, x) = (one.trim(), x.trim());
    let (size, length): (f64, f64) = (one.parse().ok()?, x.parse().ok()?);
    Some(match (size == 1.0, size > 0.0 && length > 0.0) {
        (true, _) => Text(x.to_owned(), "the x of 1:x"),
        // Turned round, or steeper than any taper on a lathe: who knows.
        (false, true) if length <= 1.0 => Remedy(String::from(
            "write the x of 1:x, the length over the change of the diameter",
        )),
        (false, true) => Remedy(format!("write the x of 1:x, {x} divided by {one}")),
        _ => return None,
    })
}

/// `30 +/-0.1 mm` or `30 mm h7` where a size alone is asked.
fn size_with_limits(row: &Row, text: &str) -> Option<Mend> {
    if !is(row.kind(), &kind_rows::Length) {
        return None;
    }
    let (_, rest) = number(row, text).ok()?;
    let size = &text[..text.len() - rest.len()];
    let rest = rest.trim_start();
    let unit_of = |word: &str| row.kind().spelled(&spelling(word)).is_some();
    let word_end = rest
        .find(|c: char| c.is_whitespace() || "+-\u{b1}\u{2212}".contains(c))
        .unwrap_or(rest.len());
    let (first, after) = rest.split_at(word_end);
    let (unit, behind) = match unit_of(first) {
        true => (Some(first), after.trim_start()),
        false => (None, rest),
    };
    let signed = behind.starts_with(['+', '-', '\u{b1}', '\u{2212}'])
        && behind.contains(|c: char| c.is_ascii_digit());
    let class = behind.split_whitespace().next().is_some_and(|word| {
        let letters = word.bytes().take_while(u8::is_ascii_alphabetic).count();
        let digits = word.bytes().skip(letters);
        (1..=2).contains(&letters)
            && (1..=2).contains(&digits.len())
            && digits.clone().all(|byte| byte.is_ascii_digit())
    });
    if !(signed || class) {
        return None;
    }
    let last = text.trim_start_matches(|c: char| !c.is_whitespace());
    let unit = unit.or_else(|| {
        let word = last.split_whitespace().next_back()?;
        let word = word.trim_start_matches(|c: char| !c.is_alphabetic() && c != '"');
        unit_of(word).then_some(word)
    })?;
    let alone = format!("{} {unit}", size.trim_end());
    let fits = unmended(row, &alone).is_ok_and(|value| row.accepts(value));
    fits.then(|| {
        Remedy(format!(
            "write the size alone, \"{alone}\": limits have a field of their own"
        ))
    })
}

/// `5 ft 6 in`, `5\u{b0}30'`.
fn several_units(row: &Row, text: &str) -> Option<Mend> {
    if is(row.kind(), &kind_rows::Length) {
        return feet_and_inches(row, text);
    }
    if is(row.kind(), &kind_rows::Angle) {
        return minutes_of_arc(text);
    }
    None
}

/// The text behind one of some words.
fn behind<'a>(text: &'a str, words: &[&str]) -> Option<&'a str> {
    let text = text.trim_start();
    words.iter().find_map(|word| text.strip_prefix(word))
}

fn feet_and_inches(row: &Row, text: &str) -> Option<Mend> {
    let (feet, rest) = number(row, text).ok()?;
    let rest = behind(
        rest,
        &["feet", "foot", "ft.", "ft", "'", "\u{2032}", "\u{2019}"],
    )?;
    let (inches, unit) = number(row, rest.trim_start_matches([' ', '-', ','])).ok()?;
    let inch = ["in.", "\u{201d}", "''", "\u{2019}\u{2019}"].contains(&unit.trim())
        || row
            .kind()
            .spelled(unit.trim())
            .is_some_and(|unit| unit.text() == "in");
    let whole = feet.denominator == 1.0 && feet.numerator >= 0.0 && inches.numerator >= 0.0;
    (inch && whole).then(|| {
        let size = 12.0 * feet.numerator * inches.denominator + inches.numerator;
        Text(
            format!("{} in", mixed(size, inches.denominator)),
            "in one unit",
        )
    })
}

fn minutes_of_arc(text: &str) -> Option<Mend> {
    let part = |text: &str| {
        let text = text.trim_start();
        let end = decimal_end(text);
        let value: f64 = text[..end].parse().ok()?;
        (0.0..60.0)
            .contains(&value)
            .then(|| (value, text[end..].to_owned()))
    };
    let end = decimal_end(text);
    let whole: f64 = text[..end].parse().ok()?;
    let rest = behind(&text[end..], &["deg", "\u{b0}", "\u{ba}", "\u{2da}"])?;
    let (minutes, rest) = part(rest)?;
    let rest = behind(&rest, &["'", "\u{2032}", "\u{2019}", "min"])?;
    let seconds = match rest.trim() {
        "" => 0.0,
        rest => {
            let (seconds, rest) = part(rest)?;
            let ends = ["\"", "\u{2033}", "\u{201d}", "''", "s"].contains(&rest.trim());
            ends.then_some(seconds)?
        }
    };
    let beyond = minutes / 60.0 + seconds / 3600.0;
    let angle = if text.starts_with('-') {
        whole - beyond
    } else {
        whole + beyond
    };
    Some(Text(
        format!("{} deg", trimmed(angle, 6)),
        "in decimal degrees",
    ))
}

/// A fraction of another unit than one of length, where it is a decimal number too.
fn fraction(row: &Row, text: &str) -> Option<Mend> {
    if is(row.kind(), &kind_rows::Length) {
        return None;
    }
    let (written, rest) = number(row, text).ok()?;
    let mut parts = written.denominator;
    for factor in [2.0, 5.0] {
        while parts % factor == 0.0 {
            parts /= factor;
        }
    }
    let exact = written.denominator != 1.0 && parts == 1.0;
    exact.then(|| {
        let decimal = written.numerator / written.denominator;
        Text(
            format!("{}{rest}", plain_number(decimal)),
            "as a decimal number: fractions are for lengths only",
        )
    })
}

fn percent(row: &Row, text: &str) -> Option<Mend> {
    if !is_plain(row) {
        return None;
    }
    let (written, rest) = number(row, text).ok()?;
    let of_hundred = ["%", "percent", "per cent"].contains(&rest.trim());
    let value = written.numerator / written.denominator;
    let share = row.share_of_percent(value).filter(|_| of_hundred)?;
    Some(Remedy(share))
}

/// Other ways to write a unit that leave no doubt.
const UNITS: [(&str, &[&str]); 33] = [
    (
        "mm",
        &[
            "millimeter",
            "millimeters",
            "millimetre",
            "millimetres",
            "mms",
        ],
    ),
    (
        "um",
        &[
            "micron",
            "microns",
            "micrometer",
            "micrometers",
            "micrometre",
            "micrometres",
        ],
    ),
    (
        "cm",
        &["centimeter", "centimeters", "centimetre", "centimetres"],
    ),
    ("m", &["meter", "meters", "metre", "metres"]),
    (
        "in",
        &[
            "ins",
            "in.",
            "\u{201d}",
            "\u{201c}",
            "''",
            "\u{2019}\u{2019}",
        ],
    ),
    ("ft", &["feet", "foot", "ft.", "\u{2019}"]),
    ("thou", &["thous", "thousandth", "thousandths", "mils"]),
    ("uin", &["microinch", "microinches"]),
    (
        "mm/rev",
        &[
            "mm per rev",
            "mm per revolution",
            "mm/revolution",
            "mm/turn",
            "mm per turn",
        ],
    ),
    (
        "in/rev",
        &[
            "ipr",
            "in per rev",
            "in per revolution",
            "in/revolution",
            "inch/rev",
            "inches/rev",
            "in/turn",
            "\"/rev",
        ],
    ),
    ("mm/min", &["mm per min", "mm per minute", "mm/minute"]),
    (
        "in/min",
        &[
            "ipm",
            "in per min",
            "in per minute",
            "inch/min",
            "inches/min",
            "in/minute",
        ],
    ),
    (
        "m/min",
        &[
            "m per min",
            "m per minute",
            "m/minute",
            "meters/min",
            "metres/min",
        ],
    ),
    (
        "ft/min",
        &[
            "fpm",
            "sfm",
            "sfpm",
            "ft per min",
            "ft per minute",
            "feet/min",
            "feet per minute",
            "ft/minute",
        ],
    ),
    ("m/s", &["m per s", "m/sec", "m per second"]),
    (
        "rpm",
        &[
            "turns per minute",
            "revolutions per minute",
            "rev per minute",
            "r.p.m.",
            "rev per min",
            "rev/minute",
            "revs/min",
            "turns/min",
            "1/minute",
        ],
    ),
    ("rev/s", &["Hz", "rps", "revs/s", "rev/sec"]),
    ("deg", &["degree", "degrees", "\u{ba}", "\u{2da}"]),
    ("rad", &["radian", "radians"]),
    ("MPa", &["megapascal", "megapascals"]),
    ("psi", &["PSI", "lb/in2", "lbf/in2"]),
    ("ksi", &["KSI"]),
    ("N", &["newton", "newtons"]),
    ("lbf", &["lb", "lbs", "pound", "pounds"]),
    ("kW", &["KW", "kw", "kilowatt", "kilowatts"]),
    ("hp", &["HP", "Hp", "horsepower", "bhp"]),
    (
        "lbf ft",
        &[
            "ft lbf", "ft lb", "lb ft", "ft-lb", "lb-ft", "ft-lbf", "lbf-ft",
        ],
    ),
    (
        "lbf in",
        &[
            "in lbf", "in lb", "lb in", "in-lb", "lb-in", "in-lbf", "lbf-in",
        ],
    ),
    ("lbf/in", &["lb/in", "lbs/in"]),
    ("s", &["sec", "secs", "second", "seconds"]),
    ("min", &["mins", "minute", "minutes"]),
    ("h", &["hr", "hrs", "hour", "hours"]),
    ("lb", &["lbs", "pound", "pounds", "lbm"]),
];

fn unit(row: &Row, text: &str) -> Option<Mend> {
    let (_, rest) = number(row, text).ok()?;
    let size = text[..text.len() - rest.len()].trim_end();
    let rest = rest.trim();
    let known = |word: &str| row.kind().spelled(&spelling(word)).is_some();
    if rest.is_empty() || known(rest) {
        return None;
    }
    let bare = rest.trim_end_matches(['.', ',', ';', ':']).trim_end();
    if bare != rest && !bare.is_empty() && known(bare) {
        return Some(Text(
            format!("{size} {bare}"),
            "with nothing behind its unit",
        ));
    }
    let words: Vec<&str> = bare.split_whitespace().collect();
    let words = words.join(" ");
    // Long words leave no doubt in capitals either; of short ones, a capital may be another unit.
    let same = |other: &str| {
        let long = other.len() > 4;
        other == words || other == rest || long && other.eq_ignore_ascii_case(&words)
    };
    let meant = |(unit, others): &&(&str, &[&str])| {
        row.kind().spelled(unit).is_some() && others.iter().any(|other| same(other))
    };
    let (unit, _) = UNITS.iter().find(meant)?;
    Some(Text(format!("{size} {unit}"), ""))
}
