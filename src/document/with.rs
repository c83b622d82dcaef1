//! What comes with a sheet where the field `with` asks for it: its pictures, its page to print.

use crate::error::{Error, ErrorKind};
use crate::plan::Sheet;
use crate::quantity::fields::{Fields, Tree, list, text};

/// What is asked for beside the sheet.
#[derive(Debug, Clone, Copy, Default)]
pub(super) struct With {
    picture: bool,
    page: bool,
}

enum One {
    Picture,
    Page,
}

impl With {
    /// Takes the field `with`, if it is there.
    pub(super) fn take(f: &Fields<'_>) -> Result<Self, Error> {
        let mut with = Self::default();
        let asked = f.item("with", |tree, path| list(tree, path, one))?;
        for one in asked.into_iter().flatten() {
            match one {
                One::Picture => with.picture = true,
                One::Page => with.page = true,
            }
        }
        if !cfg!(feature = "picture") && (with.picture || with.page) {
            return Err(no_pictures(&f.path("with")));
        }
        Ok(with)
    }

    /// The sheet, with what was asked for.
    #[cfg(feature = "picture")]
    pub(super) fn on(self, sheet: Sheet) -> Result<Sheet, Error> {
        sheet.carrying(self.picture, self.page)
    }

    /// The sheet as it is: whatever else is asked for was refused at the door.
    #[cfg(not(feature = "picture"))]
    pub(super) fn on(self, sheet: Sheet) -> Result<Sheet, Error> {
        Ok(sheet)
    }
}

/// What a build without pictures says of them.
#[cold]
pub(super) fn no_pictures(field: &str) -> Error {
    Error::not_offered(
        field,
        "pictures and pages, which this build leaves out",
        "build the library with its feature \"picture\", or leave the field out",
    )
}

fn one(tree: &Tree, path: &str) -> Result<One, Error> {
    match text(tree, path)? {
        "picture" => Ok(One::Picture),
        "page" => Ok(One::Page),
        other => Err(Error::new(
            ErrorKind::UnknownName,
            path,
            format!("{other:?}"),
            "\"picture\" or \"page\"",
            "name what is to come with the sheet",
        )),
    }
}
