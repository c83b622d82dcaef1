//! What the shared library exports.

use std::process::Command;

use libtest_mimic::Trial;

use crate::tools::{Tool, library, printed};
use crate::{snapshot, trial};

pub fn trials() -> Vec<Trial> {
    if !cfg!(target_os = "linux") {
        return Vec::new();
    }
    vec![trial("symbols/are_those_of_the_list", &[Tool::Nm], || {
        let listed = printed(
            Command::new("nm")
                .args(["-D", "--defined-only"])
                .arg(library().1),
        )?;
        let mut names: Vec<&str> = listed
            .lines()
            .filter_map(|line| line.split_whitespace().nth(2))
            .collect();
        names.sort_unstable();
        snapshot("tests/c/symbols.txt", &(names.join("\n") + "\n"))
    })]
}
