//! Quantities from text and to text.
//!
//! `40 mm`, `40mm`, `1 1/2 in`, `5/8 in`, `0.2 mm/rev`: a number and its unit. A bare number is
//! refused, and so is a unit of another kind; both errors name the units that would do. Printed is
//! the shortest decimal that reads back as the stored value.

use std::borrow::Cow;
use std::fmt;

use super::unit::{Kind, Unit, Units, kind_rows, kinds};
use super::{Row, slips};
use crate::error::{Error, ErrorKind, number_end};

/// A number as short as it reads back, with an exponent beyond a thousand million.
pub(crate) fn plain_number(value: f64) -> String {
    if value.abs() > 1e9 {
        format!("{value:e}")
    } else {
        value.to_string()
    }
}

/// A number as written: numerator over denominator, so that a fraction is divided once.
pub(super) struct Written {
    pub(super) numerator: f64,
    pub(super) denominator: f64,
}

/// Reads `text` as a quantity of `row`, in its trade unit, unchecked against its range.
pub(super) fn read(row: &Row, text: &str) -> Result<f64, Error> {
    unmended(row, text).map_err(|error| slips::remedied(row, text, error))
}

/// The same, its error without the remedy for a slip of the pen.
pub(super) fn unmended(row: &Row, text: &str) -> Result<f64, Error> {
    let trimmed = text.trim();
    if let Some(size) = trimmed.strip_prefix('\u{2212}') {
        return unmended(row, &format!("-{size}"));
    }
    if trimmed.is_empty() || trimmed.len() > 80 {
        return Err(unreadable(row, text, "write a number and a unit"));
    }
    let (written, rest) = number(row, trimmed)?;
    // Most people write a unit as the table does.
    if written.denominator == 1.0
        && let Some(unit) = row.kind().spelled(rest.trim())
    {
        return Ok(unit.to_trade(written.numerator, 1.0));
    }
    let spelling = spelling(rest);
    if spelling.is_empty() && !std::ptr::eq(row.kind(), &kind_rows::Number) {
        return Err(Error::new(
            ErrorKind::MissingUnit,
            row.name(),
            format!("{trimmed:?}"),
            format!("{} with its unit: {}", row.what(), row.kind().unit_names()),
            format!(
                "write for example \"{trimmed} {}\"",
                row.kind().units()[0].text()
            ),
        ));
    }
    let unit = row
        .kind()
        .spelled(&spelling)
        .ok_or_else(|| wrong_unit(row, trimmed, rest, &spelling))?;
    if written.denominator != 1.0 && !std::ptr::eq(row.kind(), &kind_rows::Length) {
        return Err(unreadable(
            row,
            text,
            "write a decimal number: fractions are for lengths only",
        ));
    }
    Ok(unit.to_trade(written.numerator, written.denominator))
}

/// The number in front, and what follows it.
pub(super) fn number<'a>(row: &Row, text: &'a str) -> Result<(Written, &'a str), Error> {
    let unsigned = text.trim_start_matches(['+', '-']);
    let begins = |word: &str| {
        let head = unsigned.get(..word.len());
        head.is_some_and(|head| head.eq_ignore_ascii_case(word))
    };
    if begins("nan") || begins("inf") {
        return Err(Error::new(
            ErrorKind::NotFinite,
            row.name(),
            format!("{text:?}"),
            format!("a finite {}", row.kind().name()),
            "write a number",
        ));
    }
    let end = decimal_end(text);
    let (head, tail) = text.split_at(end);
    if tail.starts_with(',') {
        return Err(unreadable(row, text, "write the decimal point as a point"));
    }
    let whole: f64 = head
        .parse()
        .map_err(|_| unreadable(row, text, "write a number and a unit"))?;
    if !whole.is_finite() {
        return Err(unreadable(row, text, "write a smaller number"));
    }
    // A slash between digits is a fraction: `5/8` after the number itself, `1 1/2` after a space.
    if let Some((denominator, rest)) = tail.strip_prefix('/').and_then(digits) {
        return fraction(row, text, 0.0, head, denominator).map(|written| (written, rest));
    }
    if let Some((numerator, rest)) = tail
        .strip_prefix(|c: char| c.is_whitespace() || c == '-')
        .map(str::trim_start)
        .and_then(digits)
        && let Some((denominator, rest)) = rest.strip_prefix('/').and_then(digits)
    {
        return fraction(row, text, whole, numerator, denominator).map(|written| (written, rest));
    }
    Ok((
        Written {
            numerator: whole,
            denominator: 1.0,
        },
        tail,
    ))
}

fn fraction(
    row: &Row,
    text: &str,
    whole: f64,
    numerator: &str,
    denominator: &str,
) -> Result<Written, Error> {
    let trouble = || {
        unreadable(
            row,
            text,
            "write a fraction of whole numbers, such as 1 1/2 in or 5/8 in",
        )
    };
    let (numerator, negative) = match numerator.strip_prefix('-') {
        Some(positive) => (positive, true),
        None => (numerator, false),
    };
    if whole.fract() != 0.0 || numerator.contains(['.', 'e', 'E']) {
        return Err(trouble());
    }
    let n: u32 = numerator.parse().map_err(|_| trouble())?;
    let d: u32 = denominator.parse().map_err(|_| trouble())?;
    if d == 0 {
        return Err(trouble());
    }
    let (n, d) = (f64::from(n), f64::from(d));
    let size = whole.abs() * d + n;
    let negative = negative || whole.is_sign_negative();
    Ok(Written {
        numerator: if negative { -size } else { size },
        denominator: d,
    })
}

fn digits(text: &str) -> Option<(&str, &str)> {
    let end = text.bytes().take_while(u8::is_ascii_digit).count();
    (end > 0).then(|| text.split_at(end))
}

/// Where the decimal number in front of `text` ends.
pub(super) fn decimal_end(text: &str) -> usize {
    let sign = usize::from(text.starts_with(['+', '-']));
    sign + number_end(&text[sign..])
}

/// A unit's spelling with one form for micro signs, superscripts, multiplication and space.
pub(super) fn spelling(text: &str) -> Cow<'_, str> {
    let text = text.trim();
    // Most people write a unit as the table does.
    let plain = |byte: u8| byte.is_ascii_alphanumeric() || byte == b'/';
    if text.bytes().all(plain) {
        return Cow::Borrowed(text);
    }
    let mut out = String::with_capacity(text.len());
    for c in text.chars() {
        match c {
            '\u{b5}' | '\u{3bc}' => out.push('u'),
            '\u{b2}' => out.push('2'),
            '\u{b3}' => out.push('3'),
            '\u{207b}' | '\u{2212}' => out.push('-'),
            '\u{b9}' => out.push('1'),
            '^' => {}
            c if c.is_whitespace() || matches!(c, '*' | '\u{b7}' | '\u{22c5}') => {
                if !out.ends_with(['.', '/', '(']) {
                    out.push('.');
                }
            }
            '/' | '(' | ')' => {
                if out.ends_with('.') {
                    out.pop();
                }
                out.push(c);
            }
            other => out.push(other),
        }
    }
    Cow::Owned(out)
}

fn wrong_unit(row: &Row, text: &str, rest: &str, spelling: &str) -> Error {
    if std::ptr::eq(row.kind(), &kind_rows::Number) {
        return Error::new(
            ErrorKind::WrongUnit,
            row.name(),
            format!("{text:?}"),
            format!("{}, a plain number", row.what()),
            format!("write the number alone, such as {}", row.example()),
        );
    }
    let elsewhere = kinds().iter().find(|kind| kind.spelled(spelling).is_some());
    let expected = format!("{} in {}", row.what(), row.kind().unit_names());
    let (given, remedy) = match elsewhere {
        Some(kind) => (
            format!("{text:?}, {}", kind.what()),
            format!("give {}, not {}", row.what(), kind.what()),
        ),
        None => (
            format!("{text:?} with the unit {:?}", rest.trim()),
            match crate::error::nearest(spelling, row.kind().units().iter().map(Unit::text)) {
                // A letter in front may be a power of ten: kPa is not a slip for MPa.
                Some(near) if near.chars().next() == spelling.chars().next() => {
                    format!("did you mean {near:?}?")
                }
                _ => String::from("use one of these units"),
            },
        ),
    };
    Error::new(ErrorKind::WrongUnit, row.name(), given, expected, remedy)
}

fn unreadable(row: &Row, text: &str, remedy: &str) -> Error {
    let shown: String = text.chars().take(60).collect();
    Error::new(
        ErrorKind::Unreadable,
        row.name(),
        format!("{shown:?}"),
        format!("{} such as \"{}\"", row.what(), row.example()),
        remedy,
    )
}

/// The value in the unit of `system`: the shortest decimal that reads back as `value`, or the
/// nearest where none does.
pub(crate) struct Exact {
    pub(crate) kind: &'static Kind,
    pub(crate) value: f64,
    pub(crate) system: Units,
}

impl fmt::Display for Exact {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        self.write(f, self.kind.unit(self.system).text())
    }
}

impl Exact {
    /// The text without the formatter's detour; none where the number is a long one.
    #[cfg(feature = "serde")]
    pub(super) fn short<'a>(&self, room: &'a mut [u8; ROOM]) -> Option<&'a str> {
        let unit = self.kind.unit(self.system);
        short_decimal(shortest(unit, self.value))?.text(unit.text(), room)
    }

    fn write(&self, f: &mut fmt::Formatter<'_>, behind: &str) -> fmt::Result {
        let number = shortest(self.kind.unit(self.system), self.value);
        match short_decimal(number) {
            Some(short) => short.write(f, behind),
            None => write!(f, "{number}{}{behind}", gap(behind)),
        }
    }
}

/// The same without its unit.
pub(crate) struct BareExact(pub(crate) Exact);

impl fmt::Display for BareExact {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        self.0.write(f, "")
    }
}

/// Of the decimals near `value` in `unit`, the shortest that converts back to it exactly; where that
/// would be a long one, a short one that is off by a last digit only: a sum of two inch sizes lies
/// that near to the inch size that a person means.
fn shortest(unit: &Unit, value: f64) -> f64 {
    let near = unit.from_trade(value);
    if unit.to_trade(near, 1.0) == value && unit.factor() == (1.0, 1.0) {
        return near;
    }
    let decimal = |digits: usize| format!("{near:.digits$e}").parse::<f64>().ok();
    let exact = (0..=17)
        .filter_map(|digits| decimal(digits).map(|number| (digits, number)))
        .find(|(_, number)| unit.to_trade(*number, 1.0) == value);
    match exact {
        Some((digits, number)) if digits < 12 => number,
        other => (0..10)
            .filter_map(decimal)
            .find(|number| {
                (unit.to_trade(*number, 1.0) - value).abs() <= 2.0 * f64::EPSILON * value.abs()
            })
            .or(other.map(|(_, number)| number))
            .unwrap_or(near),
    }
}

/// The value rounded as a person reads it at the machine.
pub(crate) struct People {
    pub(crate) kind: &'static Kind,
    pub(crate) value: f64,
    pub(crate) system: Units,
}

impl fmt::Display for People {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        self.write(f, self.kind.unit(self.system).text())
    }
}

impl People {
    fn write(&self, f: &mut fmt::Formatter<'_>, behind: &str) -> fmt::Result {
        let number = self.kind.unit(self.system).from_trade(self.value);
        rounded(f, number, self.kind.places(self.system), behind)
    }
}

/// The same without its unit.
pub(crate) struct Bare(pub(crate) People);

impl fmt::Display for Bare {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        self.0.write(f, "")
    }
}

/// The number to so many decimals, as `{:.1}` writes it, in fewer steps.
pub(crate) fn fixed(number: f64, places: usize) -> impl fmt::Display {
    Fixed {
        number,
        places,
        least: places,
    }
}

/// The number to so many decimals, without zeros at its end.
pub(crate) fn trimmed(number: f64, places: usize) -> impl fmt::Display {
    Fixed {
        number,
        places,
        least: 0,
    }
}

struct Fixed {
    number: f64,
    places: usize,
    /// Places that are written even where they are zeros.
    least: usize,
}

impl fmt::Display for Fixed {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        let Self {
            number,
            places,
            least,
        } = *self;
        match digits_to(number.abs(), places) {
            Some(digits) => {
                let decimal = Decimal {
                    negative: number.is_sign_negative(),
                    digits,
                    places,
                };
                decimal.without_zeros(least).write(f, "")
            }
            None => write!(f, "{number:.places$}"),
        }
    }
}

/// What stands between a number and what comes behind it, where anything does.
fn gap(behind: &str) -> &'static str {
    if behind.is_empty() { "" } else { " " }
}

/// The number to `places` decimals, without a sign at zero and without zeros at its end but for the
/// place before the last, which a person expects to see.
fn rounded(f: &mut fmt::Formatter<'_>, number: f64, places: usize, behind: &str) -> fmt::Result {
    let Some(digits) = digits_to(number.abs(), places) else {
        return write!(f, "{number:.places$}{}{behind}", gap(behind));
    };
    let least = places.min(places.saturating_sub(1).max(1));
    let negative = number < 0.0 && digits > 0;
    let decimal = Decimal {
        negative,
        digits,
        places,
    };
    decimal.without_zeros(least).write(f, behind)
}

/// A decimal number by its digits, of which so many stand behind the point.
struct Decimal {
    negative: bool,
    digits: u64,
    places: usize,
}

impl Decimal {
    /// Without zeros at its end, down to `least` places.
    fn without_zeros(mut self, least: usize) -> Self {
        while self.places > least && self.digits.is_multiple_of(10) {
            self.digits /= 10;
            self.places -= 1;
        }
        self
    }

    /// With what stands behind it, a space between.
    fn write(self, f: &mut fmt::Formatter<'_>, behind: &str) -> fmt::Result {
        let mut room = [0; ROOM];
        f.write_str(self.text(behind, &mut room).ok_or(fmt::Error)?)
    }

    /// The same as text; none where there is no room for what stands behind it.
    fn text<'a>(self, behind: &str, room: &'a mut [u8; ROOM]) -> Option<&'a str> {
        let mut at = ROOM.checked_sub(behind.len())?;
        room[at..].copy_from_slice(behind.as_bytes());
        // Twenty digits of an u64, or as many places and a zero; a point, a sign and a space.
        if at < 24 + self.places {
            return None;
        }
        // From the last digit to the first, the point between, at least one digit before it.
        let mut put = |byte: u8| {
            at -= 1;
            room[at] = byte;
        };
        if !behind.is_empty() {
            put(b' ');
        }
        let (mut digits, mut place) = (self.digits, 0);
        while digits > 0 || place <= self.places {
            if place == self.places && place > 0 {
                put(b'.');
            }
            put(b'0' + (digits % 10) as u8);
            digits /= 10;
            place += 1;
        }
        if self.negative {
            put(b'-');
        }
        std::str::from_utf8(&room[at..]).ok()
    }
}

/// Bytes of a decimal number with its unit.
pub(super) const ROOM: usize = 64;

/// Powers of ten, exact as all up to the 22nd are.
const POWERS: [f64; 10] = [1e0, 1e1, 1e2, 1e3, 1e4, 1e5, 1e6, 1e7, 1e8, 1e9];

/// The digits of a number to `places` decimals, rounded as it is printed; none where they are too many.
fn digits_to(number: f64, places: usize) -> Option<u64> {
    if let Some(power) = POWERS.get(places)
        && (0.0..1e12).contains(&(number * power))
    {
        let scaled = number * power;
        let whole = scaled as u64;
        let over = scaled - whole as f64 - 0.5;
        // The product is off by a last digit: where that may turn the rounding, what it is off by decides,
        // and of two that are as near the even one.
        let up = match over.abs() > 1e-3 {
            true => over > 0.0,
            false => match over + number.mul_add(*power, -scaled) {
                0.0 => !whole.is_multiple_of(2),
                over => over > 0.0,
            },
        };
        return Some(whole + u64::from(up));
    }
    format!("{number:.places$}").replace('.', "").parse().ok()
}

/// A number that a decimal of few places and at most fifteen digits is read back as: that decimal is the
/// shortest, for two of so few digits are never read as one number.
fn short_decimal(number: f64) -> Option<Decimal> {
    const FEW: [usize; 2] = [6, 9];
    let size = number.abs();
    FEW.into_iter().find_map(|places| {
        let scaled = (size * POWERS[places]).round();
        let short = scaled < 1e15 && scaled / POWERS[places] == size;
        short.then(|| {
            Decimal {
                negative: number.is_sign_negative(),
                digits: scaled as u64,
                places,
            }
            .without_zeros(0)
        })
    })
}

/// The system of units of `text`, if it is a length, a feed or a roughness.
#[cfg(feature = "json")]
pub(crate) fn system_of_length(text: &str) -> Option<Units> {
    let text = text.trim();
    if !text.starts_with(|c: char| c.is_ascii_digit() || matches!(c, '+' | '-' | '.' | '\u{2212}'))
    {
        return None;
    }
    let unit = text.trim_start_matches(|c: char| {
        !c.is_ascii_alphabetic() && c != '\u{b5}' && c != '\u{3bc}' && c != '"'
    });
    let spelling = spelling(unit);
    for kind in [&kind_rows::Length, &kind_rows::Roughness, &kind_rows::Feed] {
        if let Some(unit) = kind.spelled(&spelling) {
            let inch = ["in", "ft", "thou", "uin", "in/rev"].contains(&unit.text());
            return Some(if inch { Units::Inch } else { Units::Metric });
        }
    }
    system_of_limits(text)
}

/// The system of units of a size with its limits: `30 h7 mm`, `1.25 in +0.5 -1 thou`. Metric where
/// any unit of it is.
///
/// Other quantities have units of several words too (`28.8 N m`): only a text with a signed number or
/// a class behind the size is one of limits.
#[cfg(feature = "json")]
fn system_of_limits(text: &str) -> Option<Units> {
    let class = |word: &str| {
        let letters = word.bytes().take_while(u8::is_ascii_alphabetic).count();
        let digits = word.len() - letters;
        (1..=2).contains(&letters)
            && (1..=2).contains(&digits)
            && word.as_bytes()[letters..].iter().all(u8::is_ascii_digit)
    };
    let mut limits = false;
    let mut found = None;
    for (at, word) in text.split_whitespace().enumerate() {
        limits |= at > 0 && word.starts_with(['+', '-', '\u{b1}', '\u{2212}']);
        let rest = word
            .trim_start_matches(|c: char| c.is_ascii_digit() || "+-./\u{b1}\u{2212}".contains(c));
        limits |= class(rest);
        if let Some(unit) = kind_rows::Length.spelled(&spelling(rest)) {
            let inch = ["in", "ft", "thou", "uin"].contains(&unit.text());
            found = match (found, inch) {
                (None | Some(Units::Inch), true) => Some(Units::Inch),
                _ => Some(Units::Metric),
            };
        }
    }
    found.filter(|_| limits)
}

/// The inch view of a quantity's metric text.
#[cfg(feature = "json")]
pub(crate) fn inch_view(metric: &str) -> String {
    let Some((number, unit)) = metric.split_once(' ') else {
        return metric.to_owned();
    };
    let kind = kinds().iter().find(|kind| kind.units()[0].text() == unit);
    match (kind, number.parse()) {
        (Some(kind), Ok(value)) => Exact {
            kind,
            value,
            system: Units::Inch,
        }
        .to_string(),
        _ => metric.to_owned(),
    }
}

#[cfg(test)]
mod numbers {
    use super::{fixed, short_decimal};
    use proptest::prelude::*;
    use std::fmt;

    struct Short(f64);

    impl fmt::Display for Short {
        fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
            match short_decimal(self.0) {
                Some(short) => short.write(f, ""),
                None => f.write_str("long"),
            }
        }
    }

    /// Numbers as they are printed: decimals, halves of a last place, and any others.
    fn number() -> impl Strategy<Value = f64> {
        let decimal = (-1_000_000_000_i64..1_000_000_000, 0_i32..10)
            .prop_map(|(digits, places)| digits as f64 / 10_f64.powi(places));
        let half = (-100_000_i64..100_000, 0_i32..6)
            .prop_map(|(twice, places)| twice as f64 / 2.0 / 10_f64.powi(places));
        prop_oneof![decimal, half, any::<f64>()]
    }

    proptest! {
        #[test]
        fn numbers_are_written_as_the_standard_library_writes_them(number in number(), places in 0_usize..12) {
            prop_assert_eq!(fixed(number, places).to_string(), format!("{number:.places$}"));
            let short = Short(number).to_string();
            prop_assert!(short == "long" || short == number.to_string(), "{} for {}", short, number);
        }
    }

    #[test]
    fn a_number_of_few_digits_is_written_short() {
        for number in [
            0.0,
            -0.0,
            40.0,
            -0.02,
            29.967,
            123_456_789.123_456,
            0.000_011_5,
        ] {
            assert_eq!(Short(number).to_string(), number.to_string());
        }
        // A tenth decimal is not.
        for number in [0.000_000_000_1, 1.0 / 3.0] {
            assert_eq!(Short(number).to_string(), "long");
        }
    }
}

#[cfg(all(test, feature = "json"))]
mod tests {
    use super::{Units, system_of_length};

    #[test]
    fn limits_are_in_the_system_of_their_units_and_other_units_of_several_words_in_none() {
        for (text, system) in [
            ("30 h7 mm", Some(Units::Metric)),
            ("30 mm h7", Some(Units::Metric)),
            ("1.25 in h7", Some(Units::Inch)),
            ("1.25h7 in", Some(Units::Inch)),
            ("1.25 in +0.5 -1 thou", Some(Units::Inch)),
            ("1.25 in +0.02 -0.02 mm", Some(Units::Metric)),
            ("40 mm \u{b1}16 \u{b5}m", Some(Units::Metric)),
            ("28.8 N m", None),
            ("20 lbf in", None),
            ("40 kN m/rad", None),
            ("11.5 um/(m K)", None),
            ("h7", None),
        ] {
            assert_eq!(system_of_length(text), system, "{text}");
        }
    }
}
