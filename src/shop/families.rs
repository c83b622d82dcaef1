//! Words for whole families of metals, and the materials that are usually meant by them.
//!
//! A family is no material: steels differ by a factor of two in force. Its word is refused, and
//! these are named. Which ones are usual in a small shop: judgement, no source.

use super::designation::plain;

const FAMILIES: &[(&[&str], &[&str])] = &[
    (
        &["steel", "mild steel", "carbon steel"],
        &["s235", "c15", "c45", "11smn30"],
    ),
    (
        &["free-cutting steel", "free-machining steel"],
        &["11smn30", "11smnpb30", "44smn28"],
    ),
    (
        &["alloy steel", "alloyed steel"],
        &["42crmo4", "16mncr5", "34crmo4"],
    ),
    (
        &["tool steel", "silver steel", "drill rod"],
        &["c105u", "90mncrv8", "100cr6"],
    ),
    (
        &["stainless", "stainless steel"],
        &["x8crnis18_9", "x5crni18_10", "x2crnimo17_12_2"],
    ),
    (
        &["cast iron", "iron", "grey iron", "gray iron"],
        &["gjl200", "gjl250", "gjs400"],
    ),
    (
        &["aluminium", "aluminum"],
        &["aw6082", "aw6061", "aw2011", "aw7075"],
    ),
    (&["brass"], &["cuzn39pb3", "cuzn37"]),
    (&["bronze", "gunmetal"], &["cusn8", "cusn7zn4pb7"]),
    (&["copper"], &["cu_etp"]),
    (&["titanium"], &["ti_grade2", "ti_grade5"]),
    (&["plastic", "plastics"], &["pom", "pa6", "peek"]),
];

/// The keys that are usually meant by the word for a family.
pub(super) fn usual(text: &str) -> &'static [&'static str] {
    let wanted = plain(text);
    FAMILIES
        .iter()
        .find(|(words, _)| words.iter().any(|word| plain(word) == wanted))
        .map_or(&[], |(_, keys)| keys)
}

#[cfg(test)]
#[allow(clippy::unwrap_used)]
mod tests {
    use super::*;
    use crate::shop::material::Material;

    #[test]
    fn every_key_is_in_the_catalogue_and_no_word_names_a_material() {
        for (words, keys) in FAMILIES {
            for key in *keys {
                assert_eq!(Material::named(key).unwrap().key(), *key);
            }
            for word in *words {
                let error = Material::named(word).unwrap_err();
                assert!(error.remedy().contains(keys[0]), "{word}: {error}");
            }
        }
    }
}
