//! Reading of documents: raw text fields first, then quantities with the field's path on every error.
//!
//! The serde format hands over a [`Tree`]; a shop item or question takes its fields out of it by
//! name through [`Fields`]. What is left over is refused, with the nearest known name.

use std::borrow::Cow;
use std::cell::RefCell;
use std::fmt;
use std::ops::RangeInclusive;

use serde::de::{self, Deserialize, DeserializeSeed, Deserializer, MapAccess, SeqAccess, Visitor};

use super::text::plain_number;
use super::{Quantity, unit::kind_rows};
use crate::error::{Error, ErrorKind, any_of, nearest};

/// Names that the trade has for a field, and ours.
const SLIPS: &[(&str, &str)] = &[
    ("nose_radius", "corner_radius"),
    ("tip_radius", "corner_radius"),
    ("approach_angle", "cutting_edge_angle"),
    ("rake", "rake_angle"),
    ("rpm", "spindle_speed"),
    ("surface_speed", "cutting_speed"),
    ("doc", "depth_of_cut"),
    ("depth", "depth_of_cut"),
    ("wear", "edge"),
    ("tolerance", "limits"),
];

/// Our name of a field, by one that the trade has for it.
fn ours(name: &str) -> Option<&'static str> {
    SLIPS
        .iter()
        .find(|(slip, _)| *slip == name)
        .map(|(_, ours)| *ours)
}

/// A document as it was written, duplicates and all.
#[derive(Debug, Clone, PartialEq)]
pub(crate) enum Tree<'t> {
    Nothing,
    Flag(bool),
    Number(f64),
    /// As it stands in the document, where it stands there without an escape.
    Text(Cow<'t, str>),
    List(Vec<Tree<'t>>),
    Group(Vec<(Cow<'t, str>, Tree<'t>)>),
}

impl Tree<'_> {
    fn shown(&self) -> String {
        match self {
            Self::Nothing => String::from("null"),
            Self::Flag(flag) => flag.to_string(),
            Self::Number(number) => plain_number(*number),
            Self::Text(text) => format!("{:?}", text.chars().take(60).collect::<String>()),
            Self::List(items) => format!("a list of {}", items.len()),
            Self::Group(_) => String::from("an object"),
        }
    }
}

impl<'de> Deserialize<'de> for Tree<'de> {
    fn deserialize<D: Deserializer<'de>>(d: D) -> Result<Self, D::Error> {
        struct Grow;
        impl<'de> Visitor<'de> for Grow {
            type Value = Tree<'de>;
            fn expecting(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
                f.write_str("a document")
            }
            fn visit_unit<E>(self) -> Result<Tree<'de>, E> {
                Ok(Tree::Nothing)
            }
            fn visit_none<E>(self) -> Result<Tree<'de>, E> {
                Ok(Tree::Nothing)
            }
            fn visit_some<D: Deserializer<'de>>(self, d: D) -> Result<Tree<'de>, D::Error> {
                d.deserialize_any(Grow)
            }
            fn visit_newtype_struct<D: Deserializer<'de>>(
                self,
                d: D,
            ) -> Result<Tree<'de>, D::Error> {
                d.deserialize_any(Grow)
            }
            fn visit_bool<E>(self, flag: bool) -> Result<Tree<'de>, E> {
                Ok(Tree::Flag(flag))
            }
            fn visit_i64<E>(self, number: i64) -> Result<Tree<'de>, E> {
                Ok(Tree::Number(number as f64))
            }
            fn visit_u64<E>(self, number: u64) -> Result<Tree<'de>, E> {
                Ok(Tree::Number(number as f64))
            }
            fn visit_f64<E>(self, number: f64) -> Result<Tree<'de>, E> {
                Ok(Tree::Number(number))
            }
            fn visit_str<E>(self, text: &str) -> Result<Tree<'de>, E> {
                Ok(Tree::Text(Cow::Owned(text.to_owned())))
            }
            fn visit_borrowed_str<E>(self, text: &'de str) -> Result<Tree<'de>, E> {
                Ok(Tree::Text(Cow::Borrowed(text)))
            }
            fn visit_string<E>(self, text: String) -> Result<Tree<'de>, E> {
                Ok(Tree::Text(Cow::Owned(text)))
            }
            fn visit_seq<A: SeqAccess<'de>>(self, mut seq: A) -> Result<Tree<'de>, A::Error> {
                let mut items = Vec::new();
                while let Some(item) = seq.next_element_seed(Item(items.len()))? {
                    items.push(item);
                }
                Ok(Tree::List(items))
            }
            fn visit_map<A: MapAccess<'de>>(self, mut map: A) -> Result<Tree<'de>, A::Error> {
                let mut entries = Vec::with_capacity(MOST_HAVE);
                while let Some(Name(name)) = map.next_key()? {
                    let value = map.next_value();
                    let value = value.map_err(|fault| within(&name, &fault))?;
                    entries.push((name, value));
                }
                Ok(Tree::Group(entries))
            }
        }
        d.deserialize_any(Grow)
    }
}

/// No more fields have most objects.
const MOST_HAVE: usize = 8;

/// The name of a field, as it stands in the document where it can be.
struct Name<'t>(Cow<'t, str>);

impl<'de> Deserialize<'de> for Name<'de> {
    fn deserialize<D: Deserializer<'de>>(d: D) -> Result<Self, D::Error> {
        struct Grow;
        impl<'de> Visitor<'de> for Grow {
            type Value = Name<'de>;
            fn expecting(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
                f.write_str("a string")
            }
            fn visit_str<E>(self, text: &str) -> Result<Name<'de>, E> {
                Ok(Name(Cow::Owned(text.to_owned())))
            }
            fn visit_borrowed_str<E>(self, text: &'de str) -> Result<Name<'de>, E> {
                Ok(Name(Cow::Borrowed(text)))
            }
            fn visit_string<E>(self, text: String) -> Result<Name<'de>, E> {
                Ok(Name(Cow::Owned(text)))
            }
        }
        d.deserialize_str(Grow)
    }
}

/// The item of a list with this number, from 0. What is wrong between the items is not its fault.
struct Item(usize);

impl<'de> DeserializeSeed<'de> for Item {
    type Value = Tree<'de>;
    fn deserialize<D: Deserializer<'de>>(self, d: D) -> Result<Tree<'de>, D::Error> {
        Tree::deserialize(d).map_err(|fault| within(&format!("[{}]", self.0), &fault))
    }
}

/// Before the path of a fault in the text itself, on its way up.
const IN: &str = "in ";

/// The fault, and in which field or item it lies: a path that grows on the way up.
#[cold]
fn within<E: de::Error>(place: &str, fault: &E) -> E {
    let words = fault.to_string();
    match words.strip_prefix(IN) {
        Some(deeper) if deeper.starts_with('[') => E::custom(format!("{IN}{place}{deeper}")),
        Some(deeper) => E::custom(format!("{IN}{place}.{deeper}")),
        None => E::custom(format!("{IN}{place}: {words}")),
    }
}

/// The path of a fault in the text itself, empty at the top, and the words for it.
#[cfg(feature = "json")]
pub(crate) fn fault(words: &str) -> (&str, &str) {
    words
        .strip_prefix(IN)
        .and_then(|words| words.rsplit_once(": "))
        .unwrap_or(("", words))
}

/// Implements `Deserialize` for items that are read from a tree: the same door as a document's.
macro_rules! deserialize_through_tree {
    ($($item:ty),* $(,)?) => { $(
        impl<'de> serde::Deserialize<'de> for $item {
            fn deserialize<D: serde::Deserializer<'de>>(d: D) -> Result<Self, D::Error> {
                let tree = <$crate::quantity::fields::Tree as serde::Deserialize>::deserialize(d)?;
                Self::read(&tree, "").map_err(serde::de::Error::custom)
            }
        }
    )* };
}
pub(crate) use deserialize_through_tree;

/// The fields of one object, taken out by name.
pub(crate) struct Fields<'a> {
    path: String,
    entries: &'a [(Cow<'a, str>, Tree<'a>)],
    known: RefCell<Vec<&'static str>>,
    /// All names that will be asked for, where they are told beforehand.
    all: &'static [&'static str],
}

impl<'a> Fields<'a> {
    /// The fields of `tree`, which stands at `path`; `what` says in words what it is.
    pub(crate) fn of(tree: &'a Tree<'a>, path: &str, what: &str) -> Result<Self, Error> {
        let Tree::Group(entries) = tree else {
            return Err(Error::new(
                ErrorKind::Unreadable,
                path,
                tree.shown(),
                format!("{what} as an object with named fields"),
                "write { \"name\": value, ... }",
            ));
        };
        for (at, (name, _)) in entries.iter().enumerate() {
            if entries[..at].iter().any(|(earlier, _)| earlier == name) {
                return Err(Error::new(
                    ErrorKind::DuplicateField,
                    join(path, name),
                    "the field twice",
                    "each field once",
                    "strike one of the two",
                ));
            }
        }
        Ok(Self {
            path: path.to_owned(),
            entries,
            known: RefCell::new(Vec::with_capacity(16)),
            all: &[],
        })
    }

    /// With all the names that will be asked for: a misspelt field is then told of before another that
    /// is missing because of it.
    #[cfg(feature = "json")]
    pub(crate) fn knowing(mut self, all: &'static [&'static str]) -> Self {
        self.all = all;
        self
    }

    /// The path of the field `name` from the top of the document.
    pub(crate) fn path(&self, name: &str) -> String {
        join(&self.path, name)
    }

    /// The raw field, if it is there and not null.
    pub(crate) fn tree(&self, name: &'static str) -> Option<&'a Tree<'a>> {
        self.known.borrow_mut().push(name);
        self.entries
            .iter()
            .find(|(entry, _)| entry == name)
            .map(|(_, tree)| tree)
            .filter(|tree| **tree != Tree::Nothing)
    }

    /// True when the field is there; does not count as taking it.
    pub(crate) fn has(&self, name: &str) -> bool {
        self.entries
            .iter()
            .any(|(entry, tree)| entry == name && *tree != Tree::Nothing)
    }

    /// The raw field, which must be there.
    pub(crate) fn need(&self, name: &'static str, what: &str) -> Result<&'a Tree<'a>, Error> {
        self.tree(name).ok_or_else(|| self.missing(name, what))
    }

    /// An item read by `read` from the field, if it is there.
    pub(crate) fn item<T>(
        &self,
        name: &'static str,
        read: impl FnOnce(&'a Tree<'a>, &str) -> Result<T, Error>,
    ) -> Result<Option<T>, Error> {
        self.tree(name)
            .map(|tree| read(tree, &self.path(name)))
            .transpose()
    }

    /// An item read by `read` from the field, which must be there.
    pub(crate) fn need_item<T>(
        &self,
        name: &'static str,
        what: &str,
        read: impl FnOnce(&'a Tree<'a>, &str) -> Result<T, Error>,
    ) -> Result<T, Error> {
        read(self.need(name, what)?, &self.path(name))
    }

    /// A value that is read at once, if the field is there: its path is put together only for an error.
    fn value<T>(
        &self,
        name: &'static str,
        read: impl Fn(&'a Tree<'a>, &str) -> Result<T, Error>,
    ) -> Result<Option<T>, Error> {
        self.tree(name)
            .map(|tree| read(tree, "").or_else(|_| read(tree, &self.path(name))))
            .transpose()
    }

    /// A quantity, if the field is there.
    pub(crate) fn quantity<Q: Quantity>(&self, name: &'static str) -> Result<Option<Q>, Error> {
        self.value(name, quantity)
    }

    /// A quantity, which must be there.
    pub(crate) fn need_quantity<Q: Quantity>(&self, name: &'static str) -> Result<Q, Error> {
        self.quantity(name)?.ok_or_else(|| {
            let what = format!("{} such as \"{}\"", Q::ROW.what(), Q::ROW.example());
            self.missing(name, &what)
        })
    }

    /// A list of quantities, if the field is there.
    pub(crate) fn quantities<Q: Quantity>(
        &self,
        name: &'static str,
    ) -> Result<Option<Vec<Q>>, Error> {
        self.item(name, |tree, path| list_of_values(tree, path, quantity))
    }

    /// Text, if the field is there.
    pub(crate) fn text(&self, name: &'static str) -> Result<Option<&'a str>, Error> {
        self.value(name, text)
    }

    /// A name that is printed again, if the field is there.
    pub(crate) fn name(&self, field: &'static str) -> Result<Option<&'a str>, Error> {
        self.value(field, name)
    }

    /// A whole number, if the field is there.
    pub(crate) fn count(&self, name: &'static str) -> Result<Option<u32>, Error> {
        self.count_in(name, 0..=u32::MAX, "write a number of that range")
    }

    /// A whole number of a range, if the field is there; `remedy` is for one outside of it.
    pub(crate) fn count_in(
        &self,
        name: &'static str,
        range: RangeInclusive<u32>,
        remedy: &str,
    ) -> Result<Option<u32>, Error> {
        let (least, largest) = (*range.start(), *range.end());
        self.value(name, |tree, path| {
            let (kind, remedy) = match tree {
                Tree::Number(number) if number.fract() != 0.0 => {
                    (ErrorKind::Unreadable, "write a whole number")
                }
                Tree::Number(number)
                    if (f64::from(least)..=f64::from(largest)).contains(number) =>
                {
                    return Ok(*number as u32);
                }
                Tree::Number(_) => (ErrorKind::OutOfRange, remedy),
                _ => (
                    ErrorKind::Unreadable,
                    "write the number without quotes and without a unit",
                ),
            };
            Err(Error::new(
                kind,
                path,
                tree.shown(),
                format!("a whole number from {least} to {largest}"),
                remedy,
            ))
        })
    }

    /// Yes or no, if the field is there.
    pub(crate) fn flag(&self, name: &'static str) -> Result<Option<bool>, Error> {
        self.value(name, |tree, path| match tree {
            Tree::Flag(flag) => Ok(*flag),
            other => Err(Error::new(
                ErrorKind::Unreadable,
                path,
                other.shown(),
                "true or false",
                "write true or false, without quotes",
            )),
        })
    }

    /// One of a closed set of names, if the field is there.
    pub(crate) fn choice<T: Copy>(
        &self,
        name: &'static str,
        set: &[(&'static str, T)],
    ) -> Result<Option<T>, Error> {
        self.value(name, |tree, path| choice(tree, path, set))
    }

    /// Refuses by name a field that a later version will take.
    #[cfg(feature = "json")]
    pub(crate) fn later(&self, name: &'static str, what: &str, remedy: &str) -> Result<(), Error> {
        match self.tree(name) {
            None => Ok(()),
            Some(_) => Err(Error::not_offered(&self.path(name), what, remedy)),
        }
    }

    /// Refuses whatever was not taken.
    pub(crate) fn finish(self) -> Result<(), Error> {
        match self.entries.iter().find(|(name, tree)| {
            // A field of null is left out, wherever it is looked for.
            let left_out = *tree == Tree::Nothing && self.all.contains(&&**name);
            !left_out && !self.known.borrow().contains(&&**name)
        }) {
            None => Ok(()),
            Some((name, _)) => Err(self.unknown(name, None)),
        }
    }

    /// The error for a needed field that is not there: if a field with nearly this name is, then
    /// that one is misspelt.
    pub(crate) fn missing(&self, name: &str, what: &str) -> Error {
        let strangers = self
            .entries
            .iter()
            .map(|(entry, _)| &**entry)
            .filter(|entry| !self.known.borrow().contains(entry));
        let slipped = strangers.clone().find(|entry| ours(entry) == Some(name));
        if let Some(misspelt) = slipped.or_else(|| nearest(name, strangers)) {
            return self.unknown(misspelt, Some(name));
        }
        let stranger = |entry: &&(Cow<'_, str>, Tree<'_>)| {
            !self.all.contains(&&*entry.0) && !self.known.borrow().contains(&&*entry.0)
        };
        if let Some((stranger, _)) = self.entries.iter().find(stranger)
            && !self.all.is_empty()
        {
            return self.unknown(stranger, None);
        }
        Error::new(
            ErrorKind::MissingField,
            self.path(name),
            "nothing",
            what,
            format!("add the field {name:?}"),
        )
    }

    fn unknown(&self, name: &str, meant: Option<&str>) -> Error {
        let mut known = self.known.borrow().clone();
        let untaken = self.all.iter().filter(|name| !known.contains(name));
        let untaken: Vec<&'static str> = untaken.copied().collect();
        known.extend(untaken);
        unknown_field(self.path(name), name, &known, meant)
    }

    /// Refuses a field that would be passed over and is a slip of one that is read, or one of those that stand
    /// `within` another.
    #[cfg(feature = "json")]
    pub(crate) fn passed_over(&self, within: &str, theirs: &[&str]) -> Result<(), Error> {
        let known = self.known.borrow();
        for (name, _) in self.entries {
            if known.contains(&&**name) {
                continue;
            }
            if theirs.contains(&&**name) {
                return Err(Error::new(
                    ErrorKind::UnknownField,
                    self.path(name),
                    format!("the field {name:?} beside {within:?}"),
                    format!("it as one of the fields of {within:?}"),
                    format!("move it into {within:?}"),
                ));
            }
            if let Some(meant) = nearest(name, known.iter().copied()) {
                return Err(unknown_field(self.path(name), name, &known, Some(meant)));
            }
        }
        Ok(())
    }
}

/// The error for a field of another name than those that are `known`.
pub(crate) fn unknown_field(
    path: String,
    name: &str,
    known: &[&str],
    meant: Option<&str>,
) -> Error {
    let slip = ours(name).filter(|ours| known.contains(ours));
    let meant = meant
        .or(slip)
        .or_else(|| nearest(name, known.iter().copied()));
    Error::new(
        ErrorKind::UnknownField,
        path,
        format!("the field {name:?}"),
        format!("one of the fields {}", any_of(known.iter().copied())),
        match meant {
            Some(near) => format!("did you mean {near:?}?"),
            None => String::from("strike the field or correct its name"),
        },
    )
}

pub(crate) fn join(path: &str, name: &str) -> String {
    if path.is_empty() {
        name.to_owned()
    } else {
        [path, ".", name].concat()
    }
}

/// A quantity from its text; plain ratios from a number.
pub(crate) fn quantity<Q: Quantity>(tree: &Tree, path: &str) -> Result<Q, Error> {
    match tree {
        Tree::Text(text) => text.parse().map_err(|error: Error| error.at(path)),
        Tree::Number(number) if std::ptr::eq(Q::ROW.kind(), &kind_rows::Number) => {
            Q::from_trade(*number).map_err(|error| error.at(path))
        }
        Tree::Number(number) => {
            // The text door's own words for a bare number, with the units that would do.
            plain_number(*number)
                .parse()
                .map_err(|error: Error| error.at(path))
        }
        other => Err(Error::new(
            ErrorKind::Unreadable,
            path,
            other.shown(),
            format!("{} such as \"{}\"", Q::ROW.what(), Q::ROW.example()),
            "write a number and its unit in quotes",
        )),
    }
}

/// Longest name that is printed: longer ones would break the lines of a sheet.
const LONGEST_NAME: usize = 40;

/// A name that a person gives and reads again on a sheet.
pub(crate) fn name<'a>(tree: &'a Tree<'a>, path: &str) -> Result<&'a str, Error> {
    let given = text(tree, path)?;
    printable(given, path)?;
    Ok(given)
}

/// Refuses a name that would not stand in one line as it was given: a sheet must hold no line that the library did
/// not write.
pub(crate) fn printable(name: &str, path: &str) -> Result<(), Error> {
    let (kind, remedy) = match name.chars().find(|c| c.is_control()) {
        Some('\0') => (ErrorKind::Unreadable, "leave the NUL out"),
        Some(_) => (
            ErrorKind::Unreadable,
            "leave line breaks, tabs and other control characters out",
        ),
        None if name.trim().is_empty() => (
            ErrorKind::Unreadable,
            "write what stands on the machine, or leave the names out",
        ),
        None if name.chars().count() > LONGEST_NAME => {
            (ErrorKind::Unreadable, "write a shorter name")
        }
        None => return Ok(()),
    };
    let shown: String = name.chars().take(60).collect();
    Err(Error::new(
        kind,
        path,
        format!("{shown:?}"),
        format!("a name of 1 to {LONGEST_NAME} characters that can be printed"),
        remedy,
    ))
}

/// Text of a field.
pub(crate) fn text<'a>(tree: &'a Tree<'a>, path: &str) -> Result<&'a str, Error> {
    match tree {
        Tree::Text(text) => Ok(text),
        other => Err(Error::new(
            ErrorKind::Unreadable,
            path,
            other.shown(),
            "text",
            "write the text in quotes",
        )),
    }
}

/// The items of a list, each with its place in the path, counted from 0.
pub(crate) fn list<'a, T>(
    tree: &'a Tree<'a>,
    path: &str,
    read: impl Fn(&'a Tree<'a>, &str) -> Result<T, Error>,
) -> Result<Vec<T>, Error> {
    match tree {
        Tree::List(items) => items
            .iter()
            .enumerate()
            .map(|(at, item)| read(item, &format!("{path}[{at}]")))
            .collect(),
        other => Err(Error::new(
            ErrorKind::Unreadable,
            path,
            other.shown(),
            "a list",
            "write [ ..., ... ]",
        )),
    }
}

/// The same of values that are read at once: a path is put together only for an error.
fn list_of_values<'a, T>(
    tree: &'a Tree<'a>,
    path: &str,
    read: impl Fn(&'a Tree<'a>, &str) -> Result<T, Error>,
) -> Result<Vec<T>, Error> {
    if let Tree::List(items) = tree
        && let Ok(found) = items.iter().map(|item| read(item, "")).collect()
    {
        return Ok(found);
    }
    list(tree, path, read)
}

/// One of a closed set of names.
pub(crate) fn choice<T: Copy>(
    tree: &Tree,
    path: &str,
    set: &[(&'static str, T)],
) -> Result<T, Error> {
    let given = text(tree, path)?;
    set.iter()
        .find(|(name, _)| *name == given)
        .map(|(_, value)| *value)
        .ok_or_else(|| {
            let names = || set.iter().map(|(name, _)| *name);
            Error::new(
                ErrorKind::UnknownName,
                path,
                tree.shown(),
                format!("one of {}", any_of(names())),
                match nearest(given, names()) {
                    Some(near) => format!("did you mean {near:?}?"),
                    None => String::from("use one of these names"),
                },
            )
        })
}
