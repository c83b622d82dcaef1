//! What must be said beside a parting cut.

use crate::caution::{Caution, Severity};
use crate::provenance::{Provenance, Sourced, Standing};
use crate::quantity::{BladeWidth, Diameter, Feed, WorkLength, round_size};

/// The feeds at which parting blades cut well.
pub const PARTING_FEED: Sourced<[Feed; 2]> = Sourced::new(
    [Feed::computed_trade(0.03), Feed::computed_trade(0.1)],
    "common practice, no source: 0.03 to 0.1 mm/rev with blades of high-speed steel",
    Standing::CommonPractice,
);

/// Blade width over the diameter parted, from and to.
pub const WIDTH_OVER_DIAMETER: Sourced<[f64; 2]> = Sourced::new(
    [0.05, 0.1],
    "common practice, no source: about 0.05 to 0.1 of the diameter",
    Standing::CommonPractice,
);

/// How far a blade may stand out, over its width.
pub const OVERHANG_OVER_WIDTH: Sourced<f64> = Sourced::new(
    8.0,
    "common practice, no source: below 8 blade widths",
    Standing::CommonPractice,
);

/// Length of a part over the diameter at which it is parted, up to which it is parted right through.
pub const THROUGH_UP_TO: Sourced<f64> = Sourced::new(
    3.0,
    "common practice, no source: a free end stands out 3 diameters in any but light cuts",
    Standing::CommonPractice,
);

/// Share of the diameter that is left as a core where a part is not parted through, and the least of it.
pub const CORE: Sourced<(f64, Diameter)> = Sourced::new(
    (1.0 / 3.0, Diameter::computed_trade(5.0)),
    "judgement: a third of the diameter, 5 mm at least, stays for the saw",
    Standing::Estimate,
);

/// The core at which the groove ends, of a part of this length on a bar of this diameter; none where it is
/// parted right through.
///
/// A long part that hangs on a shrinking neck sags and whips, climbs on the blade or is thrown.
///
/// # Example
/// ```
/// use turnwright::{advice::parting::core_of, Provenance, Quantity};
/// let mut put = Provenance::default();
/// let core = core_of("3 in".parse()?, "3/4 in".parse()?, &mut put);
/// assert!(core.is_some_and(|core| (core.inch() - 0.25).abs() < 1e-12));
/// assert_eq!(core_of("2 in".parse()?, "3/4 in".parse()?, &mut put), None);
/// # Ok::<(), turnwright::Error>(())
/// ```
#[must_use]
pub fn core_of(
    part: WorkLength,
    diameter: Diameter,
    provenance: &mut Provenance,
) -> Option<Diameter> {
    let longest = provenance.open(
        "length of a part that is parted through, over its diameter",
        &THROUGH_UP_TO,
    );
    if part.mm() <= longest * diameter.mm() {
        return None;
    }
    let (share, least) = CORE.value;
    provenance.record(
        "least core left for the saw",
        &least,
        CORE.source,
        CORE.standing,
    );
    let core = (share * diameter.mm()).max(least.mm().min(0.5 * diameter.mm()));
    Some(Diameter::computed_trade(round_size(core)))
}

/// What to see to before a part is parted off, and what of this cut is unusual.
///
/// # Example
/// ```
/// use turnwright::{advice::parting::cautions, Provenance};
/// let told = cautions("20 mm".parse()?, "2 mm".parse()?, "0.05 mm/rev".parse()?, &mut Provenance::default());
/// assert!(told.iter().any(|caution| caution.code() == "nobody_catches"));
/// assert!(!told.iter().any(|caution| caution.code() == "parting_feed"));
/// # Ok::<(), turnwright::Error>(())
/// ```
#[must_use]
pub fn cautions(
    diameter: Diameter,
    width: BladeWidth,
    feed: Feed,
    provenance: &mut Provenance,
) -> Vec<Caution> {
    let reach = provenance.open("overhang of a blade over its width", &OVERHANG_OVER_WIDTH);
    let mut told = vec![
        Caution::new(
            Severity::Danger,
            "nobody_catches",
            "Nobody catches the part: it comes off spinning and hot, and hooks on the blade. Let it drop into a tray, \
             keep hands and rags away and the guard closed. The manual of the lathe and the rules of the shop hold.",
        ),
        Caution::new(
            Severity::Danger,
            "centre_withdrawn",
            "Never part right through between chuck and centre: the halves close on the blade and it breaks or throws \
             the part. Withdraw the centre, or leave a core and saw it with the spindle stopped.",
        ),
        Caution::new(
            Severity::Warning,
            "near_the_jaws",
            "Part off near the jaws, with the turned end outside: a groove far from them chatters and the work climbs on \
             the blade. The blade stays clear of the jaws over its whole way.",
        ),
        Caution::new(
            Severity::Warning,
            "lock_carriage",
            "Lock the carriage; blade square to the axis, at centre height, and not farther out than it must.",
        ),
        Caution::new(
            Severity::Note,
            "slower_to_the_middle",
            "The cutting speed falls to nothing in the middle, at the same spindle speed; the force stays. Feed gently \
             over the last bit.",
        ),
    ];
    let [slow, fast] = PARTING_FEED.value;
    if feed < slow || feed > fast {
        provenance.record(
            "feed of parting blades",
            &format!("{slow} to {fast}"),
            PARTING_FEED.source,
            PARTING_FEED.standing,
        );
        told.push(Caution::new(
            if feed < slow {
                Severity::Note
            } else {
                Severity::Warning
            },
            "parting_feed",
            if feed < slow {
                "A feed this fine rubs and hardens the groove; the usual one keeps a chip coming."
            } else {
                "This feed is coarse for a parting blade of high-speed steel: it may dig in."
            },
        ));
    }
    let [narrow, wide] = WIDTH_OVER_DIAMETER.value;
    let ratio = width.mm() / diameter.mm();
    if ratio < narrow || ratio > wide {
        provenance.record(
            "blade width over diameter",
            &format!("{narrow} to {wide}"),
            WIDTH_OVER_DIAMETER.source,
            WIDTH_OVER_DIAMETER.standing,
        );
        told.push(Caution::new(
            Severity::Note,
            "blade_width",
            if ratio < narrow {
                "The blade is narrow for this diameter: it wanders, and clears its chips badly."
            } else {
                "The blade is wide for this diameter: it takes more force than it must, and chatters sooner."
            },
        ));
    }
    // A blade that goes to the middle stands out by the radius at least.
    if diameter.mm() / 2.0 > reach * width.mm() {
        told.push(Caution::new(
            Severity::Warning,
            "blade_overhang",
            format!(
                "To reach the middle the blade stands out more than {reach} times its width: take a wider one, or part \
                 in steps, opening the groove as you go."
            ),
        ));
    }
    told
}

#[cfg(test)]
#[allow(clippy::unwrap_used)]
mod tests {
    use super::*;

    fn codes(diameter: f64, width: f64, feed: f64) -> Vec<&'static str> {
        cautions(
            Diameter::from_mm(diameter).unwrap(),
            BladeWidth::from_mm(width).unwrap(),
            Feed::from_mm_per_rev(feed).unwrap(),
            &mut Provenance::default(),
        )
        .iter()
        .map(Caution::code)
        .collect()
    }

    #[test]
    fn the_usual_words_always_stand_and_the_others_where_they_belong() {
        for cut in [(20.0, 2.0, 0.05), (60.0, 2.0, 0.2), (20.0, 4.0, 0.01)] {
            let told = codes(cut.0, cut.1, cut.2);
            for always in [
                "nobody_catches",
                "centre_withdrawn",
                "near_the_jaws",
                "lock_carriage",
            ] {
                assert!(told.contains(&always));
            }
        }
        assert_eq!(codes(20.0, 2.0, 0.05).len(), 5);
        let long = codes(60.0, 2.0, 0.2);
        assert!(long.contains(&"blade_overhang") && long.contains(&"parting_feed"));
        assert!(codes(20.0, 4.0, 0.01).contains(&"blade_width"));
    }
}
