//! What nature answers: pure functions of typed quantities, without a decision in them.
//!
//! | file | question |
//! |---|---|
//! | [`speed`] | how fast does the edge pass the work, how long does a cut take? |
//! | [`engagement`] | how thick and wide is the chip, how light may a cut be? |
//! | [`force`] | what force does a cut take? |
//! | [`drive`] | what torque and power does it take, what can the drive give? |
//! | [`finish`] | how rough does the tool leave the surface? |
//! | [`feed_for_finish`] | which feed leaves a wanted roughness? |
//! | [`least_chip`] | how rough does it stay where the edge no longer cuts? |
//! | [`uneven_feed`] | how rough does an uneven hand leave it? |
//! | [`profile`] | how does the surface look, point by point? |
//! | [`gaussian`] | what of it is waviness, what roughness? |
//! | [`texture`] | which parameters has a profile? |
//! | [`bar`] | how far does the bar give way to the tool, and where most? |
//!
//! A function says which standard or book it follows and where it holds, and returns its regime
//! instead of hiding it. Powers, roots of other than two, and trigonometry go through one private
//! module, so that a faster or portable form replaces them in one place.

pub mod bar;
pub mod drive;
pub mod engagement;
pub mod feed_for_finish;
pub mod finish;
pub mod force;
pub mod gaussian;
pub mod least_chip;
mod maths;
mod outline_integrals;
mod polynomial;
pub mod profile;
mod random;
pub mod speed;
pub mod texture;
pub mod uneven_feed;

#[cfg(test)]
mod corners {
    //! Every kernel at all corners of what is plausible: no result may leave the finite numbers.

    use super::bar::{self, Bar, Springs, Support};
    use super::finish::{self, ToolOutline};
    use super::force::{self, ForceLaw};
    use super::{drive, engagement, feed_for_finish, speed};
    use crate::quantity::*;

    /// The least and the largest plausible value, and zero where it is allowed.
    fn ends<Q: Quantity>() -> Vec<Q> {
        [0.0, Q::ROW.least(), Q::ROW.largest()]
            .into_iter()
            .filter_map(|value| Q::from_trade(value).ok())
            .collect()
    }

    fn finite<Q: Quantity>(value: Q) {
        assert!(
            value.trade().is_finite(),
            "{} {}",
            Q::ROW.name(),
            value.trade()
        );
    }

    fn finite_or_refused<Q: Quantity>(value: Result<Q, crate::error::Error>) {
        if let Ok(value) = value {
            finite(value);
        }
    }

    /// Calls the body with every combination of the ends of the quantities named.
    macro_rules! at_all_corners {
        ($body:block) => { $body };
        ($name:ident: $quantity:ty $(, $more:ident: $rest:ty)* => $body:block) => {
            for $name in ends::<$quantity>() {
                at_all_corners!($($more: $rest),* => $body);
            }
        };
        (=> $body:block) => { $body };
    }

    #[test]
    fn of_speed_are_finite() {
        at_all_corners!(v: CuttingSpeed, d: Diameter, n: SpindleSpeed => {
            finite(speed::spindle_speed(v, d));
            finite(speed::cutting_speed(n, d));
        });
        at_all_corners!(f: Feed, n: SpindleSpeed, d: Diameter, a: DepthOfCut => {
            finite(speed::feed_rate(f, n));
            finite(speed::facing_time(d, f, n));
            finite_or_refused(speed::removal_rate(d, a, f, n));
            finite_or_refused(speed::mean_diameter(d, a));
        });
        at_all_corners!(f: Feed, n: SpindleSpeed, l: WorkLength, t: Travel => {
            finite(speed::time_of_cut(l, f, n));
            finite_or_refused(speed::handwheel_rate(f, n, t));
        });
    }

    #[test]
    fn of_engagement_are_finite() {
        at_all_corners!(a: DepthOfCut, f: Feed, k: CuttingEdgeAngle, r: CornerRadius => {
            let chip = engagement::chip_section(a, f, k);
            finite(chip.thickness);
            finite(chip.width);
            finite(engagement::largest_edge_angle(a, k, r));
            finite_or_refused(engagement::thickest_chip(a, f, r));
        });
        at_all_corners!(h: ChipThickness, f: Feed, r: CornerRadius => {
            finite_or_refused(engagement::least_depth(h, f, r));
        });
        at_all_corners!(r_n: EdgeRadius => {
            finite(engagement::least_chip_thickness(r_n));
        });
    }

    #[test]
    fn of_force_are_finite() {
        at_all_corners!(k_c: SpecificCuttingForce, m: ForceExponent, a: DepthOfCut, f: Feed,
                        k: CuttingEdgeAngle => {
            let law = ForceLaw::new(k_c, m);
            let chip = engagement::chip_section(a, f, k);
            finite(force::specific_force_at(law, chip.thickness));
            finite(force::main_force(law, chip));
            at_all_corners!(r: CornerRadius, k_n: NormalRatio => {
                let forces = force::cutting_forces(law, a, f, k, r, k_n);
                finite(forces.main);
                finite(forces.feed);
                finite(forces.passive);
                finite(force::effective_edge_angle(&forces));
            });
            at_all_corners!(v: CuttingSpeed, p: Power => {
                finite(drive::largest_depth_for_power(law, f, k, v, p));
            });
        });
        at_all_corners!(f: MainForce, v: CuttingSpeed, d: Diameter => {
            finite(drive::cutting_power(f, v));
            finite(drive::torque(f, d));
        });
        at_all_corners!(p: Power, e: Efficiency, n: SpindleSpeed, n_b: SpindleSpeed => {
            finite(drive::motor_power(p, e));
            finite(drive::spindle_power(p, e));
            finite(drive::torque_at(p, n));
            finite(drive::drive_power(p, n_b, n));
        });
    }

    #[test]
    fn of_finish_are_finite() {
        // Beside the corners the slimmest tool that a double can tell from none.
        let mut angles: Vec<(f64, f64)> = vec![(150.0, 29.999_999_999_999_996), (90.0, 89.999)];
        at_all_corners!(k: CuttingEdgeAngle, m: MinorCuttingEdgeAngle => {
            angles.push((k.degrees(), m.degrees()));
        });
        for (k, m) in angles {
            at_all_corners!(r: CornerRadius, f: Feed => {
                let outline = ToolOutline::new(
                    r,
                    CuttingEdgeAngle::computed_trade(k),
                    MinorCuttingEdgeAngle::computed_trade(m),
                );
                let Ok(outline) = outline else { continue };
                let finish = finish::theoretical_roughness(f, &outline);
                finite(finish.rt);
                finite(finish.rz);
                finite(finish.ra);
                finite(finish.rq);
                at_all_corners!(ra: Ra, rt: Rt, rz: Rz => {
                    finite_or_refused(feed_for_finish::feed_for_ra(ra, &outline));
                    finite_or_refused(feed_for_finish::feed_for_rt(rt, &outline));
                    finite_or_refused(feed_for_finish::feed_for_rz(rz, &outline));
                });
            });
        }
        at_all_corners!(r: CornerRadius, f: Feed, ra: Ra, rz: Rz => {
            if let Ok(finish) = finish::arc_roughness(f, r) {
                finite(finish.rt);
                finite(finish.ra);
                finite(finish.rq);
            }
            finite_or_refused(finish::arc_height(f, r));
            finite_or_refused(finish::least_minor_angle_for_arc(f, r));
            finite_or_refused(feed_for_finish::feed_for_ra_arc(ra, r));
            finite_or_refused(feed_for_finish::feed_for_rz_arc(rz, r));
        });
    }

    #[test]
    fn of_the_bar_are_finite() {
        fn or_rigid<Q: Quantity>() -> Vec<Option<Q>> {
            ends::<Q>().into_iter().map(Some).chain([None]).collect()
        }
        let mut springs = Vec::new();
        for chuck in or_rigid() {
            for chuck_rotational in or_rigid() {
                for centre in or_rigid() {
                    springs.push(Springs {
                        chuck,
                        chuck_rotational,
                        centre,
                    });
                }
            }
        }
        at_all_corners!(e: YoungsModulus, d: Diameter, l: Overhang, f: PassiveForce => {
            let solid = Bar::new(e, d, l);
            let bore = Diameter::computed_trade(d.mm() * (1.0 - 1e-15));
            for bar in [Ok(solid), solid.with_bore(bore)].into_iter().flatten() {
                for springs in &springs {
                    for at in [WorkLength::ROW.least(), l.mm()] {
                        let at = WorkLength::computed_trade(at);
                        let from = WorkLength::computed_trade(WorkLength::ROW.least());
                        finite_or_refused(bar::centre_force(&bar, springs, f, at));
                        for support in [Support::Chuck, Support::ChuckAndCentre] {
                            finite_or_refused(bar::deflection(&bar, support, springs, f, at));
                            let worst = bar::worst_station(&bar, springs, support, f, from, at);
                            if let Ok((station, bent)) = worst {
                                finite(station);
                                finite(bent);
                            }
                        }
                    }
                }
            }
        });
    }
}
