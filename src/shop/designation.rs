//! The designations that stand in the catalogue's list of names, and when a name is one of them.

/// One designation out of the catalogue's list of names.
#[derive(Clone, Copy)]
pub(super) struct Designation {
    text: &'static str,
    /// What follows the text, for the upper end of `AISI 1015 to 1018`.
    last: &'static str,
    /// Only near to the material: `near ASTM A36`, `AISI L6 class`.
    pub(super) near: bool,
}

impl Designation {
    pub(super) fn is(&self, text: &str) -> bool {
        letters(self.text)
            .chain(letters(self.last))
            .eq(letters(text))
    }

    pub(super) fn shown(&self) -> String {
        match self.last {
            "" => self.text.to_owned(),
            last => format!("{} {last}", self.text),
        }
    }
}

/// The designations that stand in a list such as
/// `S235JR (1.0038), near ASTM A36, AISI 1018 hot rolled`.
///
/// Commas and brackets part them. `AISI 1018 hot rolled` and `EN AW-6082 T6` may be called without
/// what follows the number, and of `AISI 1015 to 1018` both ends are designations.
pub(super) fn designations(names: &'static str) -> impl Iterator<Item = Designation> {
    names
        .split([',', '(', ')'])
        .map(str::trim)
        // What is without a capital and a figure says how it is made (cast, unfilled), except
        // that the full name of a plastic stands so in brackets.
        .filter(move |text| {
            text.contains(|c: char| c.is_ascii_uppercase() || c.is_ascii_digit())
                || (!text.is_empty() && names.contains(&format!("({text})")))
        })
        .flat_map(|whole| {
            let text = whole.strip_prefix("near ").unwrap_or(whole);
            let text = text.strip_suffix(" class").unwrap_or(text);
            let upper = text.split_once(" to ").and_then(|(lower, upper)| {
                let text = lower.rsplit_once(' ')?.0;
                Some(Designation {
                    text,
                    last: upper,
                    near: is_hedged(whole),
                })
            });
            shortenings(text)
                .map(move |text| Designation {
                    text,
                    last: "",
                    near: is_hedged(whole),
                })
                .chain(upper)
        })
}

/// Whether the list says that this is another material, only near to the one meant.
fn is_hedged(designation: &str) -> bool {
    designation.starts_with("near ") || designation.ends_with(" class")
}

/// `text`, and what is left of it without its last words, as long as a figure is among it.
fn shortenings(text: &'static str) -> impl Iterator<Item = &'static str> {
    std::iter::successors(Some(text), |text| {
        let shorter = text.rsplit_once(' ')?.0;
        shorter
            .contains(|c: char| c.is_ascii_digit())
            .then_some(shorter)
    })
}

/// Whether two names differ in nothing that matters.
pub(super) fn alike(a: &str, b: &str) -> bool {
    letters(a).eq(letters(b))
}

/// The letters of a name that matter: small, without spaces, hyphens and underscores.
fn letters(text: &str) -> impl Iterator<Item = char> {
    text.chars()
        .filter(|c| !c.is_whitespace() && *c != '-' && *c != '_')
        .flat_map(char::to_lowercase)
}

pub(super) fn plain(text: &str) -> String {
    letters(text).collect()
}
