//! Data flows one way: a room uses the rooms before it, never one after it.

use std::fs;
use std::path::Path;

const ROOMS: [&str; 11] = [
    "error",
    "caution",
    "provenance",
    "quantity",
    "standards",
    "shop",
    "physics",
    "advice",
    "plan",
    "document",
    "ffi",
];

fn sources(folder: &Path, found: &mut Vec<std::path::PathBuf>) {
    for entry in fs::read_dir(folder).unwrap() {
        let path = entry.unwrap().path();
        if path.is_dir() {
            sources(&path, found);
        } else if path.extension().is_some_and(|e| e == "rs") {
            found.push(path);
        }
    }
}

fn room_of(path: &Path, src: &Path) -> Option<usize> {
    let first = path.strip_prefix(src).unwrap().iter().next()?.to_str()?;
    ROOMS
        .iter()
        .position(|room| *room == first.trim_end_matches(".rs"))
}

/// The room after each `crate::` of the code, comments left out.
fn used(text: &str) -> Vec<(usize, String)> {
    let mut found = Vec::new();
    for (number, line) in text.lines().enumerate() {
        let code = line.split("//").next().unwrap_or_default();
        for (at, _) in code.match_indices("crate::") {
            // `$crate::` of an exported macro names the same rooms.
            let rest = &code[at + "crate::".len()..];
            if rest.starts_with('{') {
                found.push((number + 1, String::from("{ several rooms in one path }")));
                continue;
            }
            let room: String = rest
                .chars()
                .take_while(|c| c.is_alphanumeric() || *c == '_')
                .collect();
            found.push((number + 1, room));
        }
    }
    found
}

#[test]
fn a_room_uses_only_the_rooms_before_it() {
    let src = Path::new(env!("CARGO_MANIFEST_DIR")).join("src");
    let mut files = Vec::new();
    sources(&src, &mut files);
    let mut seen = 0;
    for file in &files {
        let Some(room) = room_of(file, &src) else {
            continue;
        };
        let text = fs::read_to_string(file).unwrap();
        assert!(
            !text.contains("super::super"),
            "{} climbs two rooms",
            file.display()
        );
        for (line, used) in used(&text) {
            let Some(other) = ROOMS.iter().position(|name| *name == used) else {
                panic!(
                    "{}:{line}: `crate::{used}` is no room; name the room, not a root re-export",
                    file.display()
                );
            };
            assert!(
                other <= room,
                "{}:{line}: {} uses {}, which comes after it",
                file.display(),
                ROOMS[room],
                ROOMS[other]
            );
            seen += 1;
        }
    }
    assert!(seen > 200, "only {seen} paths were looked at");
}

#[test]
fn every_room_stands_in_the_front_door_in_order() {
    let front = include_str!("../../src/lib.rs");
    let places: Vec<usize> = ROOMS
        .iter()
        .map(|room| front.find(&format!("pub mod {room};")).unwrap())
        .collect();
    assert!(places.is_sorted(), "{places:?}");
}

#[test]
fn no_source_reaches_into_a_uom_quantity_without_its_unit() {
    let src = Path::new(env!("CARGO_MANIFEST_DIR")).join("src/physics");
    let mut files = Vec::new();
    sources(&src, &mut files);
    for file in &files {
        let text = fs::read_to_string(file).unwrap();
        let code = text.split("#[cfg(test)]").next().unwrap_or_default();
        for (number, line) in code.lines().enumerate() {
            // `uom`'s `.value` is in base units and says so nowhere; ours are called, `Sourced` ones are constants.
            let bad = line.match_indices(".value").any(|(at, _)| {
                let rest = &line[at + ".value".len()..];
                let before = &line[..at];
                !rest.starts_with('(') && !before.ends_with(|c: char| c.is_ascii_uppercase())
            });
            assert!(!bad, "{}:{}: {line}", file.display(), number + 1);
        }
    }
}
