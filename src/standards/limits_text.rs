//! Limits as a drawing writes them: `40 +0.000 -0.016 mm`, `40 +/-0.02 mm`, `30 h7 mm`.

use super::limit_deviations::LimitDeviations;
use super::limits::Limits;
use super::stated_limits::Stated;
use super::tolerance_class::looks_like_class;
use crate::error::{Error, ErrorKind};
use crate::quantity::slips::{NO_DIAMETER, without_diameter};
use crate::quantity::{Diameter, HalfWidth, LowerDeviation, UpperDeviation, unit::kind_rows};

const FORMS: &str = "a size with its limits, such as \"40 +0.000 -0.016 mm\", \"1.25 +/-0.0005 in\" or \"30 h7 mm\"";

#[derive(Debug, Clone, PartialEq)]
enum Piece {
    Number(String),
    PlusMinus,
    Class(String),
    Unit(String),
}

#[cold]
fn unreadable(text: &str, remedy: &str) -> Error {
    let short: String = text.chars().take(60).collect();
    Error::new(
        ErrorKind::Unreadable,
        "limits",
        format!("{short:?}"),
        FORMS,
        remedy,
    )
}

/// Blanks put where one piece ends and the next begins.
fn spaced(text: &str) -> String {
    let mut out = String::with_capacity(2 * text.len());
    let text = text
        .replace('\u{2212}', "-")
        .replace('\u{b1}', "+/-")
        .replace("+/-", " \u{b1} ");
    let mut before = ' ';
    for c in text.chars() {
        // A sign inside of a number is that of its exponent, or the hyphen of 1-1/2.
        let starts = match c {
            '+' => !matches!(before, 'e' | 'E'),
            '-' => {
                before.is_whitespace()
                    || out.rsplit(' ').next().is_some_and(|last| {
                        last.starts_with(['+', '-']) && !last.ends_with(['e', 'E'])
                    })
            }
            _ => false,
        };
        if starts {
            out.push(' ');
        }
        out.push(c);
        before = c;
    }
    out
}

/// The number in front of a word, and what follows it: a nominal size has no exponent, so that
/// `30e8` is a size with a class.
fn number_end(word: &str) -> usize {
    let signed = word.starts_with(['+', '-']);
    let bytes = word.as_bytes();
    let mut at = usize::from(signed);
    while let Some(byte) = bytes.get(at) {
        let exponent = signed
            && matches!(byte, b'e' | b'E')
            && match bytes.get(at + 1) {
                Some(b'+' | b'-') => bytes.get(at + 2).is_some_and(u8::is_ascii_digit),
                next => next.is_some_and(u8::is_ascii_digit),
            };
        match byte {
            b'0'..=b'9' | b'.' | b',' | b'/' => at += 1,
            b'-' if !signed => at += 1,
            _ if exponent => at += 2,
            _ => break,
        }
    }
    at
}

fn pieces(text: &str) -> Result<Vec<Piece>, Error> {
    let mut pieces = Vec::new();
    for word in spaced(text).split_whitespace() {
        if word == "\u{b1}" {
            pieces.push(Piece::PlusMinus);
            continue;
        }
        let (number, rest) = word.split_at(number_end(word));
        if !number.is_empty() {
            pieces.push(Piece::Number(number.to_owned()));
        }
        if rest.is_empty() {
            continue;
        }
        let micro = rest.replace(['\u{b5}', '\u{3bc}'], "u");
        pieces.push(if kind_rows::Length.spelled(&micro).is_some() {
            Piece::Unit(micro)
        } else if looks_like_class(rest) {
            Piece::Class(rest.to_owned())
        } else {
            return Err(unreadable(
                text,
                "write size, deviations and unit with blanks between them",
            ));
        });
    }
    Ok(pieces)
}

/// The unit that comes next at or after `from`.
fn unit_after<'a>(pieces: &'a [Piece], from: usize, text: &str) -> Result<&'a str, Error> {
    pieces[from..]
        .iter()
        .find_map(|piece| match piece {
            Piece::Unit(unit) => Some(unit.as_str()),
            _ => None,
        })
        .ok_or_else(|| {
            let short: String = text.chars().take(60).collect();
            let of_class = pieces.iter().any(|piece| matches!(piece, Piece::Class(_)));
            Error::new(
                ErrorKind::MissingUnit,
                "limits",
                format!("{short:?}"),
                FORMS,
                if of_class {
                    format!("write the unit behind the class, mm or in: \"{short} mm\"")
                } else {
                    String::from("write the unit behind the deviations, such as mm or in")
                },
            )
        })
}

fn is_zero(number: &str) -> bool {
    number.parse() == Ok(0.0)
}

/// Reads the text form.
pub(super) fn read(text: &str) -> Result<Stated, Error> {
    let text = text.trim();
    unmended(text).map_err(|error| match without_diameter(text) {
        Some(rest) if unmended(rest).is_ok() => {
            error.with_remedy(format!("write \"{rest}\", {NO_DIAMETER}"))
        }
        _ => error,
    })
}

/// The same, its error without the remedy for the sign of a diameter.
fn unmended(text: &str) -> Result<Stated, Error> {
    if text.is_empty() || text.len() > 120 {
        return Err(unreadable(text, "write the size and its limits"));
    }
    let pieces = pieces(text)?;
    // Both parts of `1 1/2`, each without a sign; a lone zero behind a size is a deviation.
    let unsigned = |piece: &Piece| matches!(piece, Piece::Number(n) if !n.starts_with(['+', '-']));
    let mut size = String::new();
    let mut at = 0;
    while let Some(Piece::Number(number)) = pieces.get(at).filter(|piece| unsigned(piece)) {
        if at > 0 && !number.contains('/') {
            break;
        }
        if at > 0 {
            size.push(' ');
        }
        size.push_str(number);
        at += 1;
    }
    if at == 0 {
        return Err(unreadable(text, "begin with the nominal size"));
    }
    let nominal: Diameter = format!("{size} {}", unit_after(&pieces, at, text)?).parse()?;
    let mut from = at;
    if matches!(pieces.get(from), Some(Piece::Unit(_))) {
        from += 1;
    }
    let with_unit = |at: usize, number: &str| -> Result<String, Error> {
        Ok(format!("{number} {}", unit_after(&pieces, at, text)?))
    };
    let ends = |after: usize| match &pieces[after..] {
        [] | [Piece::Unit(_)] => Ok(()),
        _ => Err(unreadable(
            text,
            "write one size, its deviations or its class, and the unit; nothing else",
        )),
    };
    match &pieces[from..] {
        [Piece::Class(class), ..] => {
            ends(from + 1)?;
            Stated::of_class(nominal, class.parse()?)
        }
        [Piece::PlusMinus, Piece::Number(half), ..] => {
            let half: HalfWidth = with_unit(from + 2, half)?.parse()?;
            ends(from + 2)?;
            Stated::symmetric(nominal, half)
        }
        [Piece::Number(upper), rest @ ..] => {
            let signed = |number: &str| number.starts_with(['+', '-']) || is_zero(number);
            // `+20 um -10 um`: a unit of its own for each.
            let second = from + 1 + usize::from(matches!(rest.first(), Some(Piece::Unit(_))));
            let Some(Piece::Number(lower)) = pieces.get(second) else {
                return Err(unreadable(
                    text,
                    "write both deviations, upper one first, also where one is 0: \"40 0 -0.016 mm\"",
                ));
            };
            if !signed(upper) || !signed(lower) {
                return Err(unreadable(text, "write the sign of each deviation"));
            }
            let upper: UpperDeviation = with_unit(from + 1, upper)?.parse()?;
            let lower: LowerDeviation = with_unit(second + 1, lower)?.parse()?;
            ends(second + 1)?;
            Stated::of_deviations(nominal, LimitDeviations::new(upper, lower)?)
        }
        _ => Err(unreadable(
            text,
            "write the deviations or the class behind the size; two sizes are a list: [\"29.967 mm\", \"30 mm\"]",
        )),
    }
}

impl std::str::FromStr for Limits {
    type Err = Error;

    fn from_str(text: &str) -> Result<Self, Error> {
        Ok(read(text)?.limits)
    }
}

#[cfg(test)]
#[allow(clippy::unwrap_used)]
mod tests {
    use super::*;

    fn zone(smallest: &str, largest: &str) -> Limits {
        Limits::new(smallest.parse().unwrap(), largest.parse().unwrap()).unwrap()
    }

    #[test]
    fn the_writings_of_a_drawing_are_understood() {
        for (text, smallest, largest) in [
            ("40 +0.000 -0.016 mm", "39.984 mm", "40 mm"),
            ("40 +0,000 -0.016 mm", "", ""),
            ("40 0 -0.016 mm", "39.984 mm", "40 mm"),
            ("40 +0.02 0 mm", "40 mm", "40.02 mm"),
            ("40 +0.042 +0.026 mm", "40.026 mm", "40.042 mm"),
            ("40 -0.007 -0.020mm", "39.98 mm", "39.993 mm"),
            ("40 \u{2212}0.007 \u{2212}0.020 mm", "39.98 mm", "39.993 mm"),
            ("40+0.02-0.01 mm", "39.99 mm", "40.02 mm"),
            ("40 mm +0 -16 um", "39.984 mm", "40 mm"),
            ("40 mm +20 um -16 um", "39.984 mm", "40.02 mm"),
            ("40 mm +0 -16 \u{b5}m", "39.984 mm", "40 mm"),
            ("40 +2e-2 -1e-2 mm", "39.99 mm", "40.02 mm"),
            ("1.25 +0.0005 -0.0010 in", "1.249 in", "1.2505 in"),
            ("1 1/4 +0.0005 -0.0010 in", "1.249 in", "1.2505 in"),
            ("1-1/4 +0.0005 -0.0010\"", "1.249 in", "1.2505 in"),
            ("3/4 +/- 0.001 in", "0.749 in", "0.751 in"),
            ("40 +/-0.02 mm", "39.98 mm", "40.02 mm"),
            ("40 \u{b1}0.02 mm", "39.98 mm", "40.02 mm"),
            ("40\u{b1}0.02mm", "39.98 mm", "40.02 mm"),
            ("30 h7 mm", "29.979 mm", "30 mm"),
            ("30 mm h7", "29.979 mm", "30 mm"),
            ("30h7 mm", "29.979 mm", "30 mm"),
            ("30e8 mm", "29.927 mm", "29.96 mm"),
            ("30 H7 mm", "30 mm", "30.021 mm"),
            ("1 in h6", "25.387 mm", "25.4 mm"),
        ] {
            let found = text.parse::<Limits>();
            if smallest.is_empty() {
                // A comma is refused, here as everywhere.
                assert!(found.unwrap_err().remedy().contains("point"), "{text}");
                continue;
            }
            let (found, wanted) = (found.unwrap(), zone(smallest, largest));
            // Inch sizes are sums of rounded ones: they compare to 1e-9 mm, as all sizes do.
            for (found, wanted) in [
                (found.smallest(), wanted.smallest()),
                (found.largest(), wanted.largest()),
            ] {
                assert!((found.mm() - wanted.mm()).abs() <= 1e-9, "{text}: {found}");
            }
        }
    }

    #[test]
    fn a_size_with_the_sign_of_a_diameter_is_told_without_it() {
        for (text, told) in [
            ("\u{d8}30 h7 mm", "30 h7 mm"),
            ("\u{2300} 1.25 +/-0.0005 in", "1.25 +/-0.0005 in"),
            ("dia 40 +0.000 -0.016 mm", "40 +0.000 -0.016 mm"),
        ] {
            let error = text.parse::<Limits>().unwrap_err();
            let remedy = format!("write \"{told}\", without the sign");
            assert!(error.remedy().starts_with(&remedy), "{error}");
        }
        let error = "\u{d8}30 mm".parse::<Limits>().unwrap_err();
        assert!(!error.remedy().contains("\"30 mm\""), "{error}");
    }

    #[test]
    fn what_says_too_little_or_too_much_is_refused() {
        use ErrorKind::{Contradiction, MissingUnit, OutOfRange, UnknownName, Unreadable};
        for (text, kind, words) in [
            ("", Unreadable, "size"),
            ("40 mm", Unreadable, "deviations"),
            ("40 +0.02 -0.01", MissingUnit, "mm or in"),
            ("40 mm +0.02 -0.01", MissingUnit, "mm or in"),
            ("40 h7", MissingUnit, "mm or in"),
            ("40 -0.016 mm", Unreadable, "both"),
            ("40 -0.016 +0 mm", Contradiction, "upper deviation first"),
            (
                "40 -0.020 -0.007 mm",
                Contradiction,
                "upper deviation first",
            ),
            ("40 +0.02 +0.02 mm", Contradiction, "upper deviation first"),
            ("40 0.02 0.01 mm", Unreadable, "sign"),
            ("40 +/-0 mm", OutOfRange, "above zero"),
            ("40 +/- mm", Unreadable, "deviations"),
            ("40 h7 +0.02 -0.01 mm", Unreadable, "nothing else"),
            ("40 +0.02 -0.01 h7 mm", Unreadable, "nothing else"),
            ("40 +0.02 -0.01 -0.03 mm", Unreadable, "nothing else"),
            ("40 mm h7 mm mm", Unreadable, "nothing else"),
            ("30 i7 mm", UnknownName, "another letter"),
            ("h7 30 mm", Unreadable, "nominal size"),
            ("mm", Unreadable, "nominal size"),
            ("40 to 41 mm", Unreadable, "blanks"),
            ("0.5 +0 -0.45 mm", Contradiction, "unit"),
            ("\u{b1}\u{b1}\u{b1} mm", Unreadable, "nominal size"),
        ] {
            let error = text.parse::<Limits>().unwrap_err();
            assert_eq!(error.kind(), kind, "{text}: {error}");
            assert!(error.remedy().contains(words), "{text}: {error}");
        }
    }
}
