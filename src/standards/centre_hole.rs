//! Centre holes: their sizes and depths, and what workshops take for which work.

use std::fmt;

use crate::error::{Error, ErrorKind, any_of};
use crate::provenance::{Recorded, Sourced, Standing};
use crate::quantity::{Diameter, WorkLength, round_size};

/// Form of a centre hole.
///
/// ```
/// use turnwright::standards::centre_hole::Form;
/// assert_eq!(Form::B.to_string(), "B");
/// ```
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize))]
#[non_exhaustive]
pub enum Form {
    /// A plain cone of 60 degrees.
    A,
    /// A cone of 60 degrees and a guard chamfer of 120 degrees, which keeps knocks off the cone.
    B,
}

impl Form {
    /// The letter of the form.
    #[must_use]
    pub const fn name(self) -> &'static str {
        match self {
            Self::A => "A",
            Self::B => "B",
        }
    }
}

impl fmt::Display for Form {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        f.pad(self.name())
    }
}

/// One size of centre hole.
///
/// ```
/// use turnwright::standards::centre_hole::form_a;
/// let size = form_a().iter().find(|size| size.pilot().mm() == 2.5).unwrap();
/// assert_eq!(size.countersink().mm(), 5.3);
/// assert_eq!(size.drilling_depth().mm(), 4.6);
/// ```
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct CentreHole {
    form: Form,
    pilot: f64,
    countersink: f64,
    guard: Option<f64>,
    cone_depth: f64,
    pilot_depth: f64,
    drilling_depth: f64,
    second_choice: bool,
    shank: f64,
}

impl CentreHole {
    /// The form.
    #[must_use]
    pub const fn form(&self) -> Form {
        self.form
    }

    /// Diameter d of the pilot: the size by which the drill is called.
    #[must_use]
    pub const fn pilot(&self) -> Diameter {
        Diameter::computed_trade(self.pilot)
    }

    /// Largest diameter D2 of the cone of 60 degrees.
    #[must_use]
    pub const fn countersink(&self) -> Diameter {
        Diameter::computed_trade(self.countersink)
    }

    /// Largest diameter D3 of the guard chamfer, form B only.
    #[must_use]
    pub const fn guard(&self) -> Option<Diameter> {
        match self.guard {
            Some(guard) => Some(Diameter::computed_trade(guard)),
            None => None,
        }
    }

    /// The largest diameter at the face: of the guard where there is one, else of the cone.
    #[must_use]
    pub const fn largest(&self) -> Diameter {
        match self.guard {
            Some(guard) => Diameter::computed_trade(guard),
            None => self.countersink(),
        }
    }

    /// From the face to where the pilot begins: the cone, and the guard chamfer where there is one.
    #[must_use]
    pub const fn cone_depth(&self) -> WorkLength {
        WorkLength::computed_trade(self.cone_depth)
    }

    /// Depth of the pilot beyond the cone, for reference.
    #[must_use]
    pub const fn pilot_depth(&self) -> WorkLength {
        WorkLength::computed_trade(self.pilot_depth)
    }

    /// How deep to drill at least, from the face to the end of the pilot.
    #[must_use]
    pub const fn drilling_depth(&self) -> WorkLength {
        WorkLength::computed_trade(self.drilling_depth)
    }

    /// Whether the standard lists the size in brackets, to be taken only if need be.
    #[must_use]
    pub const fn second_choice(&self) -> bool {
        self.second_choice
    }

    /// Shank of the drill of form A (ISO 866).
    #[must_use]
    pub const fn shank(&self) -> Diameter {
        Diameter::computed_trade(self.shank)
    }

    /// This size with where it comes from, to be opened into an answer's provenance.
    ///
    /// ```
    /// use turnwright::{standards::centre_hole::form_a, Provenance};
    /// let mut provenance = Provenance::default();
    /// let size = provenance.open("centre hole", &form_a()[4].sourced());
    /// assert_eq!(provenance.sources()[0].value, "A 2.5/5.3");
    /// assert_eq!(size.cone_depth().mm(), 2.42);
    /// ```
    #[must_use]
    pub const fn sourced(&self) -> Sourced<Self> {
        let source = match self.form {
            Form::A => "from memory of ISO 866 and ISO 6411; cone depth checked by geometry",
            Form::B => {
                "from memory of ISO 2540 and ISO 6411; depth of cone and chamfer checked by geometry"
            }
        };
        Sourced::new(*self, source, Standing::FromMemory)
    }
}

impl Recorded for CentreHole {}

impl fmt::Display for CentreHole {
    /// Form, pilot and largest diameter in millimetres, as a drawing writes it: `A 2.5/5.3`.
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        let largest = self.largest().mm();
        write!(f, "{} {}/{largest}", self.form, self.pilot)
    }
}

#[allow(clippy::too_many_arguments)]
const fn a(
    pilot: f64,
    countersink: f64,
    cone_depth: f64,
    pilot_depth: f64,
    drilling_depth: f64,
    shank: f64,
    second_choice: bool,
) -> CentreHole {
    CentreHole {
        form: Form::A,
        pilot,
        countersink,
        guard: None,
        cone_depth,
        pilot_depth,
        drilling_depth,
        second_choice,
        shank,
    }
}

static FORM_A: [CentreHole; 11] = [
    a(1.0, 2.12, 0.97, 0.9, 1.9, 3.15, false),
    a(1.25, 2.65, 1.21, 1.1, 2.3, 3.15, true),
    a(1.6, 3.35, 1.52, 1.4, 2.9, 4.0, false),
    a(2.0, 4.25, 1.95, 1.8, 3.7, 5.0, false),
    a(2.5, 5.3, 2.42, 2.2, 4.6, 6.3, false),
    a(3.15, 6.7, 3.07, 2.8, 5.9, 8.0, false),
    a(4.0, 8.5, 3.9, 3.5, 7.4, 10.0, false),
    a(5.0, 10.6, 4.85, 4.4, 9.2, 12.5, true),
    a(6.3, 13.2, 5.98, 5.5, 11.5, 16.0, false),
    a(8.0, 17.0, 7.79, 7.0, 14.8, 20.0, true),
    a(10.0, 21.2, 9.7, 8.7, 18.4, 25.0, false),
];

/// The same pilot and cone behind a guard chamfer; the pilot goes as deep beyond the cone.
const fn b(of: CentreHole, guard: f64, cone_depth: f64) -> CentreHole {
    CentreHole {
        form: Form::B,
        guard: Some(guard),
        cone_depth,
        // The sum to the hundredth of a millimetre, without the dust of a binary addition.
        drilling_depth: ((cone_depth + of.pilot_depth) * 100.0 + 0.5) as u32 as f64 / 100.0,
        ..of
    }
}

static FORM_B: [CentreHole; 11] = [
    b(FORM_A[0], 3.15, 1.27),
    b(FORM_A[1], 4.0, 1.6),
    b(FORM_A[2], 5.0, 1.99),
    b(FORM_A[3], 6.3, 2.54),
    b(FORM_A[4], 8.0, 3.2),
    b(FORM_A[5], 10.0, 4.03),
    b(FORM_A[6], 12.5, 5.05),
    b(FORM_A[7], 16.0, 6.41),
    b(FORM_A[8], 18.0, 7.36),
    b(FORM_A[9], 22.4, 9.36),
    b(FORM_A[10], 28.0, 11.66),
];

/// The centre holes of form A, the smallest first.
///
/// # Source
/// ISO 866 (drills) and ISO 6411 (holes), from memory; the cone depth agrees with its geometry, the
/// drilling depth is the sum, rounded to 0.1 mm. Sizes 0.5, 0.63 and 0.8 are left out. Shanks: ISO
/// 866, from memory.
/// # Example
/// ```
/// use turnwright::standards::centre_hole::form_a;
/// assert_eq!(form_a().first().map(|size| size.pilot().mm()), Some(1.0));
/// assert_eq!(form_a().last().map(|size| size.countersink().mm()), Some(21.2));
/// ```
#[must_use]
pub fn form_a() -> &'static [CentreHole] {
    &FORM_A
}

/// The centre holes of form B, the smallest first.
///
/// # Source
/// ISO 2540 (drills) and ISO 6411 (holes), from memory; the depth of cone and chamfer agrees with
/// its geometry (size 8: geometry 9.353, table 9.36). The drilling depth is derived: that depth and
/// the pilot depth of form A.
/// # Example
/// ```
/// use turnwright::standards::centre_hole::form_b;
/// let size = form_b().iter().find(|size| size.pilot().mm() == 4.0).unwrap();
/// assert_eq!(size.guard().map(|guard| guard.mm()), Some(12.5));
/// assert_eq!(size.cone_depth().mm(), 5.05);
/// ```
#[must_use]
pub fn form_b() -> &'static [CentreHole] {
    &FORM_B
}

/// The centre hole of a form by the diameter of its pilot.
///
/// # Units
/// The types carry them.
/// # Range
/// The sizes of [`form_a`] and [`form_b`]; compared to 1e-9 mm.
/// # Errors
/// `pilot_diameter`, when the form has no centre hole of that pilot.
/// # Source
/// As [`form_a`] and [`form_b`].
/// # Example
/// ```
/// use turnwright::standards::centre_hole::{Form, of_pilot};
/// assert_eq!(of_pilot(Form::A, "2.5 mm".parse()?)?.value.countersink().mm(), 5.3);
/// assert!(of_pilot(Form::A, "2.6 mm".parse()?).is_err());
/// # Ok::<(), turnwright::Error>(())
/// ```
pub fn of_pilot(form: Form, pilot: Diameter) -> Result<Sourced<CentreHole>, Error> {
    let holes = match form {
        Form::A => form_a(),
        Form::B => form_b(),
    };
    holes
        .iter()
        .find(|hole| round_size(hole.pilot().mm()) == round_size(pilot.mm()))
        .map(CentreHole::sourced)
        .ok_or_else(|| {
            let sizes: Vec<String> = holes
                .iter()
                .map(|hole| hole.pilot().mm().to_string())
                .collect();
            let sizes = any_of(sizes.iter().map(String::as_str));
            Error::new(
                ErrorKind::OutOfRange,
                "pilot_diameter",
                pilot.to_string(),
                format!("a pilot of form {form}, in mm: {sizes}"),
                "pass the size by which the drill is called",
            )
        })
}

/// How deep the cone of 60 degrees is, from its largest diameter to the pilot.
///
/// l = (D2 - d)/2 / tan 30 deg = (D2 - d) sqrt(3)/2
///
/// # Units
/// The types carry them.
/// # Range
/// A cone of 60 degrees included; without the guard chamfer of form B.
/// # Errors
/// `pilot_diameter`, when it is not smaller than the countersink.
/// # Source
/// Geometry; the table of ISO 6411 obeys it.
/// # Example
/// ```
/// use turnwright::standards::centre_hole::cone_depth;
/// let depth = cone_depth("5.3 mm".parse()?, "2.5 mm".parse()?)?;
/// assert!((depth.mm() - 2.42487).abs() < 1e-5);
/// # Ok::<(), turnwright::Error>(())
/// ```
pub fn cone_depth(countersink: Diameter, pilot: Diameter) -> Result<WorkLength, Error> {
    let difference = countersink.mm() - pilot.mm();
    if difference <= 0.0 {
        return Err(Error::new(
            ErrorKind::Contradiction,
            "pilot_diameter",
            pilot.to_string(),
            format!("a pilot smaller than the countersink of {countersink}"),
            "the countersink comes first, then the pilot",
        ));
    }
    Ok(WorkLength::computed_trade(difference * 3_f64.sqrt() / 2.0))
}

/// One size of combined drill and countersink in inch sizes.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct InchDrill {
    size: &'static str,
    body: Diameter,
    pilot: Diameter,
}

impl InchDrill {
    /// The number of the size.
    #[must_use]
    pub const fn size(&self) -> &'static str {
        self.size
    }

    /// Diameter of the body: no countersink gets larger.
    #[must_use]
    pub const fn body(&self) -> Diameter {
        self.body
    }

    /// Diameter of the pilot.
    #[must_use]
    pub const fn pilot(&self) -> Diameter {
        self.pilot
    }
}

const fn inches(parts: f64, of: f64) -> Diameter {
    Diameter::computed_trade(parts * 254.0 / (of * 10.0))
}

const fn inch_drill(size: &'static str, body: (f64, f64), pilot: (f64, f64)) -> InchDrill {
    InchDrill {
        size,
        body: inches(body.0, body.1),
        pilot: inches(pilot.0, pilot.1),
    }
}

/// Combined drills and countersinks of 60 degrees in inch sizes.
///
/// # Source
/// ASME B94.11M, from memory.
/// # Example
/// ```
/// use turnwright::standards::centre_hole::INCH_DRILLS;
/// let number_3 = INCH_DRILLS.value[4];
/// assert_eq!((number_3.size(), number_3.body().mm()), ("3", 6.35));
/// ```
pub static INCH_DRILLS: Sourced<[InchDrill; 10]> = Sourced::new(
    [
        inch_drill("00", (1.0, 8.0), (25.0, 1000.0)),
        inch_drill("0", (1.0, 8.0), (1.0, 32.0)),
        inch_drill("1", (1.0, 8.0), (3.0, 64.0)),
        inch_drill("2", (3.0, 16.0), (5.0, 64.0)),
        inch_drill("3", (1.0, 4.0), (7.0, 64.0)),
        inch_drill("4", (5.0, 16.0), (1.0, 8.0)),
        inch_drill("5", (7.0, 16.0), (3.0, 16.0)),
        inch_drill("6", (1.0, 2.0), (7.0, 32.0)),
        inch_drill("7", (5.0, 8.0), (1.0, 4.0)),
        inch_drill("8", (3.0, 4.0), (5.0, 16.0)),
    ],
    "from memory of ASME B94.11M",
    Standing::FromMemory,
);

/// Which centre hole a rule takes for which work.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct SizeForWork {
    from: Diameter,
    up_to: Option<Diameter>,
    size: Diameter,
}

impl SizeForWork {
    /// The smallest work diameter of the row.
    #[must_use]
    pub const fn from(&self) -> Diameter {
        self.from
    }

    /// The largest work diameter of the row; absent where the row goes on to the next, or has no
    /// end.
    #[must_use]
    pub const fn up_to(&self) -> Option<Diameter> {
        self.up_to
    }

    /// The pilot or countersink diameter that the rule takes.
    #[must_use]
    pub const fn size(&self) -> Diameter {
        self.size
    }
}

const fn between(from: f64, up_to: f64, size: f64) -> SizeForWork {
    SizeForWork {
        from: Diameter::computed_trade(from),
        up_to: Some(Diameter::computed_trade(up_to)),
        size: Diameter::computed_trade(size),
    }
}

const fn at_least(from: f64, size: f64) -> SizeForWork {
    SizeForWork {
        from: Diameter::computed_trade(from),
        up_to: None,
        size: Diameter::computed_trade(size),
    }
}

/// Pilot diameter by work diameter, as many workshops take it.
///
/// Rows touch; the rule does not say to which of two a shared end belongs. The rules differ from
/// one another by one or two sizes.
///
/// # Source
/// Common practice, no source.
/// # Example
/// ```
/// use turnwright::standards::centre_hole::PILOT_BY_PRACTICE;
/// let row = PILOT_BY_PRACTICE.value[4];
/// assert_eq!((row.from().mm(), row.size().mm()), (30.0, 3.15));
/// ```
pub static PILOT_BY_PRACTICE: Sourced<[SizeForWork; 10]> = Sourced::new(
    [
        between(5.0, 8.0, 1.0),
        between(8.0, 12.0, 1.6),
        between(12.0, 20.0, 2.0),
        between(20.0, 30.0, 2.5),
        between(30.0, 45.0, 3.15),
        between(45.0, 70.0, 4.0),
        between(70.0, 110.0, 5.0),
        between(110.0, 160.0, 6.3),
        between(160.0, 250.0, 8.0),
        at_least(250.0, 10.0),
    ],
    "common practice, no source",
    Standing::CommonPractice,
);

/// Pilot diameter by work diameter after a standard: from each diameter up, to the next row.
///
/// # Source
/// GOST 14034-74, from memory, unverified.
/// # Example
/// ```
/// use turnwright::standards::centre_hole::PILOT_BY_STANDARD;
/// let row = PILOT_BY_STANDARD.value[5];
/// assert_eq!((row.from().mm(), row.size().mm()), (30.0, 4.0));
/// ```
pub static PILOT_BY_STANDARD: Sourced<[SizeForWork; 10]> = Sourced::new(
    [
        at_least(4.0, 1.0),
        at_least(6.0, 1.6),
        at_least(10.0, 2.0),
        at_least(14.0, 2.5),
        at_least(20.0, 3.15),
        at_least(30.0, 4.0),
        at_least(40.0, 5.0),
        at_least(60.0, 6.3),
        at_least(80.0, 8.0),
        at_least(100.0, 10.0),
    ],
    "from memory of GOST 14034-74, unverified",
    Standing::FromMemory,
);

const fn inch_row(from: (f64, f64), up_to: (f64, f64), size: (f64, f64)) -> SizeForWork {
    SizeForWork {
        from: inches(from.0, from.1),
        up_to: Some(inches(up_to.0, up_to.1)),
        size: inches(size.0, size.1),
    }
}

/// Countersink diameter by work diameter in inch work; both ends belong to a row.
///
/// # Source
/// Older American lathe text books, from memory, unverified.
/// # Example
/// ```
/// use turnwright::standards::centre_hole::COUNTERSINK_IN_INCH_WORK;
/// let row = COUNTERSINK_IN_INCH_WORK.value[1];
/// assert_eq!((row.from().inch(), row.size().inch()), (0.375, 0.1875));
/// ```
pub static COUNTERSINK_IN_INCH_WORK: Sourced<[SizeForWork; 4]> = Sourced::new(
    [
        inch_row((3.0, 16.0), (5.0, 16.0), (1.0, 8.0)),
        inch_row((3.0, 8.0), (1.0, 1.0), (3.0, 16.0)),
        inch_row((5.0, 4.0), (2.0, 1.0), (1.0, 4.0)),
        inch_row((9.0, 4.0), (4.0, 1.0), (5.0, 16.0)),
    ],
    "from memory of older American lathe text books, unverified",
    Standing::FromMemory,
);

#[cfg(test)]
#[allow(clippy::unwrap_used)]
mod tests {
    use super::*;

    fn pilot(sizes: &'static [CentreHole], mm: f64) -> &'static CentreHole {
        sizes.iter().find(|size| size.pilot().mm() == mm).unwrap()
    }

    #[test]
    fn form_a_has_the_sizes_of_the_standard() {
        // ISO 866 / ISO 6411 (form A), from memory: pilot, countersink, cone depth, mm.
        for (d, countersink, depth) in [
            (1.0, 2.12, 0.97),
            (2.0, 4.25, 1.95),
            (2.5, 5.3, 2.42),
            (3.15, 6.7, 3.07),
            (4.0, 8.5, 3.90),
            (6.3, 13.2, 5.98),
            (10.0, 21.2, 9.70),
        ] {
            let size = pilot(form_a(), d);
            assert_eq!(size.countersink().mm(), countersink);
            assert!((size.cone_depth().mm() - depth).abs() <= 0.008);
        }
    }

    #[test]
    fn form_b_has_the_sizes_of_the_standard() {
        // ISO 2540 / ISO 6411 (form B), from memory: pilot, countersink, guard, depth, mm.
        for (d, countersink, guard, depth) in [
            (2.0, 4.25, 6.3, 2.54),
            (4.0, 8.5, 12.5, 5.05),
            (6.3, 13.2, 18.0, 7.36),
        ] {
            let size = pilot(form_b(), d);
            assert_eq!(size.countersink().mm(), countersink);
            assert_eq!(size.guard().map(Diameter::mm), Some(guard));
            assert!((size.cone_depth().mm() - depth).abs() <= 0.008);
        }
    }

    #[test]
    fn every_depth_agrees_with_the_geometry() {
        for (a, b) in form_a().iter().zip(form_b()) {
            // Geometry of a 60 deg cone: (D2 - d) sqrt(3)/2; the standard rounds to 0.01 mm.
            let cone = cone_depth(a.countersink(), a.pilot()).unwrap().mm();
            assert!((a.cone_depth().mm() - cone).abs() <= 0.008, "{a:?}");
            // Geometry of the 120 deg chamfer: (D3 - D2)/(2 sqrt 3).
            let chamfer = (b.largest().mm() - b.countersink().mm()) / (2.0 * 3_f64.sqrt());
            assert!(
                (b.cone_depth().mm() - cone - chamfer).abs() <= 0.008,
                "{b:?}"
            );
            let sum = a.cone_depth().mm() + a.pilot_depth().mm();
            // Rounded to 0.1 mm; the table has 9.2 for 9.25.
            assert!((a.drilling_depth().mm() - sum).abs() <= 0.0501, "{a:?}");
            let sum = b.cone_depth().mm() + b.pilot_depth().mm();
            assert!((b.drilling_depth().mm() - sum).abs() <= 1e-9, "{b:?}");
        }
    }

    #[test]
    fn a_cone_is_as_deep_as_its_geometry_says() {
        // (5.3 mm - 2.5 mm) sqrt(3)/2, computed with 50 digits.
        let expected = 2.424_871_130_596_428_2;
        let depth = cone_depth("5.3 mm".parse().unwrap(), "2.5 mm".parse().unwrap()).unwrap();
        assert!((depth.mm() / expected - 1.0).abs() < 1e-12);
    }

    #[test]
    fn a_pilot_and_a_countersink_swapped_are_refused() {
        let error = cone_depth("2.5 mm".parse().unwrap(), "5.3 mm".parse().unwrap()).unwrap_err();
        assert_eq!(error.field(), "pilot_diameter");
    }

    #[test]
    fn inch_drills_have_the_sizes_of_the_standard() {
        // ASME B94.11M, from memory: size, body in, pilot in.
        for (size, body, pilot) in [("3", 0.25, 0.109375), ("5", 0.4375, 0.1875)] {
            let drill = INCH_DRILLS.value.iter().find(|d| d.size() == size).unwrap();
            assert!((drill.body().inch() / body - 1.0).abs() < 1e-9);
            assert!((drill.pilot().inch() / pilot - 1.0).abs() < 1e-9);
        }
    }

    #[test]
    fn every_pilot_of_a_rule_is_a_size_of_the_table() {
        for row in PILOT_BY_PRACTICE
            .value
            .iter()
            .chain(&PILOT_BY_STANDARD.value)
        {
            assert!(form_a().iter().any(|size| size.pilot() == row.size()));
        }
    }
}
