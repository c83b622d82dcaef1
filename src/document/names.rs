//! Fields that no question has, found once a question is refused.
//!
//! A reader goes from field to field and stops at the first that it misses, which may be one that is there
//! under another name. Only then is the whole document held against the page of questions, so that a good
//! one pays nothing for it.

use super::schema::{Field, part};
use crate::error::{Error, ErrorKind};
use crate::quantity::fields::{Tree, join, unknown_field};

/// What to say in place of an error: the first field that the question does not have, where it is that the
/// error may come from.
#[cold]
pub(super) fn instead(question: &str, body: &Tree, error: Error) -> Error {
    match error.kind() {
        ErrorKind::MissingField | ErrorKind::UnknownField | ErrorKind::Contradiction => {
            let takes = part(&format!("question {question}")).map(|part| part.name);
            let found = takes.and_then(|takes| stranger(takes, body, ""));
            found.unwrap_or(error)
        }
        _ => error,
    }
}

/// The first field, from the outside in, that is not one of those that `takes` names.
fn stranger(takes: &'static str, tree: &Tree, path: &str) -> Option<Error> {
    match tree {
        Tree::Group(entries) => {
            let known = Known::of(takes)?;
            let unknown = entries.iter().find(|(name, _)| !known.has(name));
            if let Some((name, _)) = unknown {
                let names: Vec<&str> = known.fields.iter().map(|field| field.name).collect();
                return Some(unknown_field(join(path, name), name, &names, None));
            }
            entries.iter().find_map(|(name, tree)| {
                let below = join(path, name);
                let takes = match known.of_own_names {
                    Some(takes) => vec![takes],
                    None => known.takes(name),
                };
                takes.iter().find_map(|takes| stranger(takes, tree, &below))
            })
        }
        Tree::List(items) => {
            let of_items = |takes: &&'static str| takes.starts_with(['[', '<']);
            let takes = choices(takes).into_iter().find(of_items)?;
            let inner = &takes[1..takes.len() - 1];
            let mut places = items.iter().enumerate();
            places.find_map(|(at, item)| stranger(inner, item, &format!("{path}[{at}]")))
        }
        _ => None,
    }
}

/// The fields that an object may have.
#[derive(Default)]
struct Known {
    fields: Vec<Field>,
    /// What stands under names of one's own.
    of_own_names: Option<&'static str>,
    /// True where fields that are not named are passed over.
    others: bool,
}

impl Known {
    /// None where no object is taken.
    fn of(takes: &'static str) -> Option<Self> {
        let mut known = Self::default();
        for choice in choices(takes) {
            if choice.starts_with('{') {
                known.of_own_names = Some(&choice[1..choice.len() - 1]);
            } else if let Some(part) = part(choice) {
                known.fields.extend(part.fields());
                known.others |= part.others();
            }
        }
        (known.of_own_names.is_some() || !known.fields.is_empty()).then_some(known)
    }

    fn has(&self, name: &str) -> bool {
        self.others
            || self.of_own_names.is_some()
            || self.fields.iter().any(|field| field.name == name)
    }

    /// What the field of this name takes.
    fn takes(&self, name: &str) -> Vec<&'static str> {
        let of_that_name = self.fields.iter().filter(|field| field.name == name);
        of_that_name.map(|field| field.takes).collect()
    }
}

/// Each of the things that may stand there, in place of the names of others what those are.
fn choices(takes: &'static str) -> Vec<&'static str> {
    let each = takes.split(" | ");
    each.flat_map(|choice| match part(choice).and_then(|part| part.is) {
        Some(is) => choices(is),
        None => vec![choice],
    })
    .collect()
}
