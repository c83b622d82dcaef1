//! Tapers: their angle and ratio, and how slide, tailstock and attachment are set for one.
//!
//! Symbols: D large diameter, d small diameter, l length between them along the axis, alpha
//! included angle, 1:x ratio, theta angle of the compound slide to the axis, t slide travel.

use std::f64::consts::FRAC_PI_2;

use uom::si::f64::Length;

use super::maths;
use crate::error::{Error, ErrorKind};
use crate::quantity::{
    CompoundAngle, CrossSlideAngle, Diameter, DiameterError, HalfAngle, IncludedAngle, Quantity,
    SetOver, TaperRatio, Travel, WorkLength,
};

/// A taper: how much the diameter changes along the axis.
///
/// tan(alpha/2) = (D - d)/(2 l), x = l/(D - d)
///
/// # Units
/// The types carry them.
/// # Range
/// A straight cone whose axis is that of the lathe.
/// # Source
/// Geometry; ratio and angle as in ISO 3040 (from memory).
/// # Example
/// ```
/// use turnwright::physics::taper::Taper;
/// let taper = Taper::between("40 mm".parse()?, "30 mm".parse()?, "100 mm".parse()?)?;
/// assert!((taper.half_angle().degrees() - 2.8624).abs() < 1e-4);
/// assert_eq!(taper.ratio().value(), 10.0);
/// # Ok::<(), turnwright::Error>(())
/// ```
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Taper {
    /// 1/x: the change of the diameter over the length.
    slope: f64,
}

impl Taper {
    /// The taper between two diameters.
    ///
    /// # Errors
    /// `small`, when it is not smaller than the large one, or so near that no taper is left.
    pub fn between(large: Diameter, small: Diameter, length: WorkLength) -> Result<Self, Error> {
        // In the trade's unit: 40 and 38 mm differ by 2 mm exactly, the same sizes in metres do not.
        let slope = (large.mm() - small.mm()) / length.mm();
        // The same bounds as those of a ratio that is given.
        if slope > 0.0 && TaperRatio::ROW.accepts(1.0 / slope) {
            return Ok(Self { slope });
        }
        Err(Error::new(
            ErrorKind::Contradiction,
            "small",
            small.to_string(),
            format!("a diameter below {large} that makes a taper over {length}"),
            "the small diameter is the one at the thin end; equal ones are no taper",
        ))
    }

    /// The taper 1:x.
    #[must_use]
    pub fn of_ratio(ratio: TaperRatio) -> Self {
        Self {
            slope: 1.0 / ratio.value(),
        }
    }

    /// The taper of a half angle.
    #[must_use]
    pub fn of_half_angle(half_angle: HalfAngle) -> Self {
        Self {
            slope: 2.0 * maths::tan(maths::radians(half_angle.angle())),
        }
    }

    /// The taper of an included angle.
    #[must_use]
    pub fn of_included_angle(included_angle: IncludedAngle) -> Self {
        Self {
            slope: 2.0 * maths::tan(maths::radians(included_angle.angle()) / 2.0),
        }
    }

    /// The angle between side and axis.
    #[must_use]
    pub fn half_angle(self) -> HalfAngle {
        HalfAngle::computed(maths::angle(self.half()))
    }

    fn half(self) -> f64 {
        maths::atan2(self.slope, 2.0)
    }

    /// The angle between the two sides.
    #[must_use]
    pub fn included_angle(self) -> IncludedAngle {
        IncludedAngle::computed(maths::angle(2.0 * self.half()))
    }

    /// The x of 1:x.
    #[must_use]
    pub fn ratio(self) -> TaperRatio {
        TaperRatio::computed_trade(1.0 / self.slope)
    }

    /// How much the diameter changes over a length.
    ///
    /// Over 12 in it is the taper per foot.
    #[must_use]
    pub fn change_over(self, length: WorkLength) -> DiameterError {
        DiameterError::computed(length.length() * self.slope)
    }

    /// How much the diameter changes over a foot.
    ///
    /// ```
    /// use turnwright::physics::taper::Taper;
    /// let taper = Taper::between("1.25 in".parse()?, "1 in".parse()?, "6 in".parse()?)?;
    /// assert!((taper.per_foot().inch() - 0.5).abs() < 1e-12);
    /// # Ok::<(), turnwright::Error>(())
    /// ```
    #[must_use]
    pub fn per_foot(self) -> DiameterError {
        self.change_over(WorkLength::computed_trade(304.8))
    }

    /// The small diameter of a taper of a length.
    ///
    /// # Errors
    /// `length`, when the taper comes to a point before.
    pub fn small_for(self, large: Diameter, length: WorkLength) -> Result<Diameter, Error> {
        let small = large.mm() - self.change_over(length).mm();
        Diameter::from_trade(small).map_err(|_| {
            Error::new(
                ErrorKind::Contradiction,
                "length",
                length.to_string(),
                match small > 0.0 {
                    true => format!(
                        "a length after which at least {} mm of diameter are left",
                        Diameter::ROW.least()
                    ),
                    false => format!(
                        "less than the {:.3} mm after which this taper comes to a point",
                        large.mm() / self.slope
                    ),
                },
                "shorten the taper, or give the small diameter and the ratio",
            )
        })
    }

    /// The large diameter of a taper of a length.
    #[must_use]
    pub fn large_for(self, small: Diameter, length: WorkLength) -> Diameter {
        Diameter::computed_trade(small.mm() + self.change_over(length).mm())
    }

    /// The length of the taper between two diameters.
    ///
    /// # Errors
    /// `small`, when it is not smaller than the large one.
    pub fn length_between(self, large: Diameter, small: Diameter) -> Result<WorkLength, Error> {
        if small >= large {
            return Err(Error::new(
                ErrorKind::Contradiction,
                "small",
                small.to_string(),
                format!("a diameter below {large}"),
                "the small diameter is the one at the thin end",
            ));
        }
        Ok(WorkLength::computed_trade(
            (large.mm() - small.mm()) / self.slope,
        ))
    }

    /// The setting of the compound slide: its travel follows the side of the taper.
    ///
    /// theta = alpha/2
    #[must_use]
    pub fn compound_angle(self) -> CompoundAngle {
        CompoundAngle::computed(maths::angle(self.half()))
    }

    /// The travel of the compound slide over a length of the taper.
    ///
    /// t = l / cos(alpha/2)
    #[must_use]
    pub fn slide_travel(self, length: WorkLength) -> Travel {
        Travel::computed(length.length() / maths::cos(self.half()))
    }
}

/// The angle of the compound slide as a scale reads it that is zero along the cross slide.
///
/// 90 deg - theta
///
/// # Units
/// The types carry them.
/// # Range
/// Scales differ from lathe to lathe: prove the setting with an indicator.
/// # Source
/// Geometry.
/// # Example
/// ```
/// use turnwright::physics::taper::from_cross_slide;
/// assert_eq!(from_cross_slide("30 deg".parse()?).degrees(), 60.0);
/// # Ok::<(), turnwright::Error>(())
/// ```
#[must_use]
pub fn from_cross_slide(compound_angle: CompoundAngle) -> CrossSlideAngle {
    CrossSlideAngle::computed_trade(90.0 - compound_angle.degrees())
}

/// The angle of the compound slide to the axis as read on a scale that is zero along the cross slide.
///
/// # Errors
/// `compound_angle_from_cross_slide`, when the slide stands square to the axis: it would not move
/// along it.
///
/// # Example
/// ```
/// use turnwright::physics::taper::from_axis;
/// assert_eq!(from_axis("60 deg".parse()?)?.degrees(), 30.0);
/// # Ok::<(), turnwright::Error>(())
/// ```
pub fn from_axis(angle: CrossSlideAngle) -> Result<CompoundAngle, Error> {
    CompoundAngle::from_degrees(90.0 - angle.degrees())
        .map_err(|error| error.at("compound_angle_from_cross_slide"))
}

/// What a travel of the compound slide does.
#[derive(Debug, Clone, Copy, PartialEq)]
#[non_exhaustive]
pub struct SlideMotion {
    /// Towards the axis: the change of the radius.
    pub infeed: Travel,
    /// Along the axis.
    pub shift: Travel,
}

/// How far the tool moves in and along by a travel of the compound slide.
///
/// in = t sin(theta), along = t cos(theta)
///
/// # Units
/// The types carry them; the travel is of the slide, not the reading of a dial of diameters.
/// # Range
/// Any angle up to 90 deg.
/// # Source
/// Geometry.
/// # Example
/// ```
/// use turnwright::physics::taper::compound_motion;
/// let moved = compound_motion("5.75 deg".parse()?, "0.05 mm".parse()?);
/// assert!((moved.infeed.mm() - 0.00501).abs() < 1e-5);
/// # Ok::<(), turnwright::Error>(())
/// ```
#[must_use]
#[inline]
pub fn compound_motion(compound_angle: CompoundAngle, travel: Travel) -> SlideMotion {
    let (theta, t) = (maths::radians(compound_angle.angle()), travel.length());
    SlideMotion {
        infeed: Travel::computed(t * maths::sin(theta)),
        // The cosine of a right angle is a few 1e-17 off nothing; a slide square to the axis does not shift.
        shift: Travel::computed(t * maths::sin(FRAC_PI_2 - theta).max(0.0)),
    }
}

/// The angle of the compound slide at which a travel moves the tool in by a share of it.
///
/// theta = asin(in / t): for a tenth on the radius asin 0.1 = 5.739 deg, for a tenth on the diameter
/// asin 0.05 = 2.866 deg
///
/// # Units
/// The types carry them.
/// # Range
/// A setting by the scale is good to a few tenths of a degree: prove it with an indicator.
/// # Errors
/// `infeed`, when it is nothing or more than the travel.
/// # Source
/// Geometry. The tangent (5.711 deg) is the wrong function: it takes 0.0995.
/// # Example
/// ```
/// use turnwright::physics::taper::angle_for_infeed;
/// let theta = angle_for_infeed("0.01 mm".parse()?, "0.1 mm".parse()?)?;
/// assert!((theta.degrees() - 5.7392).abs() < 1e-4);
/// # Ok::<(), turnwright::Error>(())
/// ```
pub fn angle_for_infeed(infeed: Travel, travel: Travel) -> Result<CompoundAngle, Error> {
    let (x, t) = (infeed.length(), travel.length());
    let inside = x > Length::default() && x <= t;
    let theta = if inside {
        maths::asin(maths::number(x / t))
    } else {
        0.0
    };
    CompoundAngle::from_angle(maths::angle(theta)).map_err(|_| {
        Error::new(
            ErrorKind::Contradiction,
            "infeed",
            infeed.to_string(),
            match inside {
                true => format!("a share of the travel of {travel} that an angle can be set for"),
                false => format!("more than nothing and at most the travel of {travel}"),
            },
            "the tool moves in by a part of what the slide travels",
        )
    })
}

/// How far the tailstock is set over for a taper between centres.
///
/// s = L_c sin(alpha/2)
///
/// # Units
/// L_c is the length between the points of the two centres, not that of the taper.
/// # Range
/// Work between centres only. Towards the operator the small end comes to the tailstock.
/// # Source
/// Geometry: the axis of the work turns by half the angle about the headstock's centre.
/// # Example
/// ```
/// use turnwright::physics::taper::{set_over, Taper};
/// let taper = Taper::between("40 mm".parse()?, "38 mm".parse()?, "80 mm".parse()?)?;
/// assert!((set_over(taper, "300 mm".parse()?).mm() - 3.74971).abs() < 1e-5);
/// # Ok::<(), turnwright::Error>(())
/// ```
#[must_use]
#[inline]
pub fn set_over(taper: Taper, between_centres: WorkLength) -> SetOver {
    SetOver::computed(between_centres.length() * maths::sin(taper.half()))
}

/// The set-over in the usual form, with the tangent for the sine.
///
/// s = L_c (D - d) / (2 l)
///
/// # Units
/// As [`set_over`].
/// # Range
/// Too large by 0.06 % at a half angle of 2 deg.
/// # Source
/// Usual form of the trade; common practice, no source.
/// # Example
/// ```
/// use turnwright::physics::taper::{usual_set_over, Taper};
/// let taper = Taper::between("40 mm".parse()?, "38 mm".parse()?, "80 mm".parse()?)?;
/// assert_eq!(usual_set_over(taper, "300 mm".parse()?).mm(), 3.75);
/// # Ok::<(), turnwright::Error>(())
/// ```
#[must_use]
#[inline]
pub fn usual_set_over(taper: Taper, between_centres: WorkLength) -> SetOver {
    SetOver::computed(between_centres.length() * taper.slope / 2.0)
}

/// The taper that a set-over of the tailstock turns.
///
/// sin(alpha/2) = s / L_c
///
/// # Errors
/// `set_over`, when it is nothing, towards the back, or as long as the work.
///
/// # Example
/// ```
/// use turnwright::physics::taper::taper_of_set_over;
/// let taper = taper_of_set_over("3.75 mm".parse()?, "300 mm".parse()?)?;
/// assert!((taper.ratio().value() - 39.997).abs() < 1e-3);
/// # Ok::<(), turnwright::Error>(())
/// ```
pub fn taper_of_set_over(set_over: SetOver, between_centres: WorkLength) -> Result<Taper, Error> {
    let share = maths::number(set_over.length() / between_centres.length());
    let half = (share > 0.0 && share < 1.0).then(|| maths::angle(maths::asin(share)));
    half.and_then(|half| HalfAngle::from_angle(half).ok())
        .map(Taper::of_half_angle)
        .ok_or_else(|| {
            Error::new(
                ErrorKind::Contradiction,
                "set_over",
                set_over.to_string(),
                format!("more than nothing and less than the {between_centres} between centres"),
                "give how far the tailstock stands off the axis, towards the operator",
            )
        })
}

#[cfg(test)]
#[allow(clippy::unwrap_used)]
mod tests {
    use super::*;
    use proptest::prelude::*;

    fn read<T: std::str::FromStr<Err = Error>>(text: &str) -> T {
        text.parse().unwrap()
    }

    fn near(a: f64, b: f64, relative: f64) -> bool {
        (a - b).abs() <= relative * b.abs()
    }

    proptest! {
        #[test]
        fn angle_ratio_and_diameters_say_the_same_taper(
            small in 1.0..200.0_f64, more in 0.01..100.0_f64, l in 1.0..500.0_f64,
        ) {
            let (d_1, d_2) = (Diameter::from_mm(small + more).unwrap(), Diameter::from_mm(small).unwrap());
            let length = WorkLength::from_mm(l).unwrap();
            let taper = Taper::between(d_1, d_2, length).unwrap();
            let again = [
                Taper::of_ratio(taper.ratio()),
                Taper::of_half_angle(taper.half_angle()),
                Taper::of_included_angle(taper.included_angle()),
            ];
            for again in again {
                prop_assert!(near(again.slope, taper.slope, 1e-13));
            }
            // The difference of two diameters keeps fewer digits than each of them.
            let lost = 1e-12 * (1.0 + small / more);
            prop_assert!(near(taper.small_for(d_1, length).unwrap().mm(), small, lost));
            prop_assert!(near(taper.large_for(d_2, length).mm(), d_1.mm(), lost));
            prop_assert!(near(taper.length_between(d_1, d_2).unwrap().mm(), l, lost));
        }

        #[test]
        fn travel_in_and_along_make_a_right_angle(theta in 0.001..90.0_f64, t in 0.01..100.0_f64) {
            let (theta, t) = (CompoundAngle::from_degrees(theta).unwrap(), Travel::from_mm(t).unwrap());
            let moved = compound_motion(theta, t);
            prop_assert!(near(moved.infeed.mm().hypot(moved.shift.mm()), t.mm(), 1e-14));
            let back = angle_for_infeed(moved.infeed, t).unwrap();
            // Near a right angle the sine is flat, and the angle is known to the root of a rounding.
            prop_assert!((back.degrees() - theta.degrees()).abs() < 3e-6);
            let other = from_cross_slide(theta);
            if theta.degrees() < 89.9 {
                prop_assert!(near(from_axis(other).unwrap().degrees(), theta.degrees(), 1e-9));
            }
        }

        #[test]
        fn the_compound_slide_at_the_half_angle_follows_the_side(x in 1.0..100.0_f64, l in 5.0..200.0_f64) {
            let taper = Taper::of_ratio(TaperRatio::from_value(x).unwrap());
            let length = WorkLength::from_mm(l).unwrap();
            let moved = compound_motion(taper.compound_angle(), taper.slide_travel(length));
            prop_assert!(near(moved.shift.mm(), l, 1e-13));
            prop_assert!(near(2.0 * moved.infeed.mm(), taper.change_over(length).mm(), 1e-12));
        }

        #[test]
        fn a_set_over_turns_the_taper_it_was_reckoned_for(x in 1.0..200.0_f64, l in 50.0..2000.0_f64) {
            let taper = Taper::of_ratio(TaperRatio::from_value(x).unwrap());
            let centres = WorkLength::from_mm(l).unwrap();
            let s = set_over(taper, centres);
            let back = taper_of_set_over(s, centres).unwrap();
            prop_assert!(near(back.ratio().value(), x, 1e-12));
            prop_assert!(usual_set_over(taper, centres) > s);
        }
    }

    #[test]
    fn what_is_no_taper_is_refused() {
        for small in ["40 mm", "41 mm"] {
            let error = Taper::between(read("40 mm"), read(small), read("50 mm")).unwrap_err();
            assert_eq!(error.field(), "small");
        }
        let taper = Taper::of_ratio(read("5"));
        let error = taper.small_for(read("20 mm"), read("100 mm")).unwrap_err();
        assert_eq!(error.field(), "length");
        assert!(taper.length_between(read("20 mm"), read("20 mm")).is_err());
        assert!(angle_for_infeed(read("0 mm"), read("0 mm")).is_err());
        assert!(angle_for_infeed(read("2 mm"), read("1 mm")).is_err());
        assert!(from_axis(read("90 deg")).is_err());
        for s in ["0 mm", "-1 mm", "300 mm"] {
            assert!(taper_of_set_over(read(s), read("300 mm")).is_err());
        }
    }
}
