//! What nature answers: pure functions of typed quantities, without a decision in them.
//!
//! | file | question |
//! |---|---|
//! | [`speed`] | how fast does the edge pass the work, how long does a cut take? |
//! | [`engagement`] | how thick and wide is the chip, how light may a cut be? |
//! | [`edge_in_cut`] | how much of a rounded tool's edge is engaged, and what does it take off, exactly? |
//! | [`force`], [`three_forces`] | what force does a cut take? |
//! | [`force_factors`] | what do rake, wear, speed and coolant change in it? |
//! | [`parting`] | what force does a blade take? |
//! | [`measured_force`] | which specific force does a measured cut show? |
//! | [`drive`], [`torque_curve`] | what torque and power does it take, what can the drive give, when does it stall? |
//! | [`finish`] | how rough does the tool leave the surface? |
//! | [`feed_for_finish`] | which feed leaves a wanted roughness? |
//! | [`least_chip`] | how rough does it stay where the edge no longer cuts? |
//! | [`uneven_feed`] | how rough does an uneven hand leave it? |
//! | [`profile`] | how does the surface look, point by point? |
//! | [`gaussian`] | what of it is waviness, what roughness? |
//! | [`texture`] | which parameters has a profile? |
//! | [`bar`] | how far does a bar of one diameter give way to the tool, and where most? |
//! | [`section`], [`stepped`] | how far does a bar of any sections, on any support? |
//! | [`loads`] | how does a bar bend under several loads, and under its own weight? |
//! | [`spring_back`] | what does a springing bar leave standing, and how deep may a cut be? |
//! | [`measured_taper`] | what does a measured taper tell of chuck and tailstock? |
//! | [`whirl`] | at which speed does the bar whip? |
//! | [`heat`] | how far does the work grow, how warm does a cut make it? |
//! | [`strut`], [`centre`] | how hard does it press on its centre, when would it buckle? |
//! | [`wear`] | how long does an edge last, which speed is worth it? |
//! | [`facing`] | how fast and how long does a tool cut on its way to the axis? |
//! | [`taper`] | how are slide and tailstock set for a taper? |
//! | [`tool_height`] | what does a tool off centre height do? |
//! | [`tool_overhang`] | how far does the tool give way? |
//! | [`grip`] | how hard must the jaws grip, what is left at speed? |
//! | [`speed_series`] | how are gearboxes stepped? |
//! | [`spread`] | how many parts come out good, to rework, lost? |
//! | [`budget`] | how uncertain is a size, and what makes it so? |
//! | [`aim`] | which size is the cheapest to aim for? |
//! | [`monte_carlo`] | does a budget hold when every part of it is drawn? |
//!
//! A function says which standard or book it follows and where it holds, and returns its regime
//! instead of hiding it. Powers, roots of other than two, and trigonometry go through one private
//! module, so that a faster or portable form replaces them in one place.

pub mod aim;
pub mod bar;
pub mod budget;
pub mod centre;
mod correlation;
pub mod drive;
pub mod edge_in_cut;
pub mod engagement;
pub(crate) mod evidence;
pub mod facing;
pub mod feed_for_finish;
pub mod finish;
pub mod force;
pub mod force_factors;
pub mod gaussian;
pub mod grip;
pub mod heat;
pub mod least_chip;
pub mod loads;
mod maths;
pub mod measured_force;
pub mod measured_taper;
pub mod monte_carlo;
mod normal;
mod outline_integrals;
pub mod parting;
mod polynomial;
pub mod profile;
mod random;
pub mod section;
mod side;
mod size_law;
pub mod speed;
pub mod speed_series;
pub mod spread;
pub mod spring_back;
pub mod stepped;
pub mod strut;
mod student;
pub mod taper;
pub mod texture;
pub mod three_forces;
pub mod tool_height;
pub mod tool_overhang;
pub mod torque_curve;
mod transfer;
pub mod uneven_feed;
pub mod wear;
pub mod whirl;
mod ziggurat;

#[cfg(test)]
mod corners {
    //! Every kernel at all corners of what is plausible: no result may leave the finite numbers.

    use super::bar::{self, Bar, Springs, Support};
    use super::finish::{self, ToolOutline};
    use super::force::{self, ForceLaw};
    use super::loads::Load;
    use super::section::Section;
    use super::spring_back::{self, Edge};
    use super::stepped::HeldBar;
    use super::torque_curve::TorqueCurve;
    use super::{
        centre, drive, edge_in_cut, engagement, facing, feed_for_finish, force_factors, grip, heat,
        least_chip, measured_force, parting, speed, strut, taper, three_forces, tool_height,
        tool_overhang, wear, whirl,
    };
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
    fn of_measured_and_corrected_forces_are_finite() {
        at_all_corners!(a: DepthOfCut, f: Feed, k: CuttingEdgeAngle, r: CornerRadius,
                        n: MinorCuttingEdgeAngle => {
            if let Ok(edge) = edge_in_cut::engaged_edge(a, f, k, n, r) {
                finite(edge.arc_start);
                finite(edge.arc_end);
                finite(edge.edge_length);
                finite(edge.chip_area);
                finite(edge.ridge_area);
                finite(edge.equivalent_chip_thickness);
                finite(edge.chord_angle);
            }
        });
        at_all_corners!(k_c: SpecificCuttingForce, m: ForceExponent, w: BladeWidth, f: Feed,
                        x: ForceFactor => {
            let law = force_factors::corrected(ForceLaw::new(k_c, m), x);
            finite(law.specific_force);
            finite(parting::parting_force(law, w, f, x));
            let chip = parting::blade_chip(w, f);
            let three = three_forces::ThreeLaws::new(law, law, law);
            finite(three_forces::measured_forces(three, chip).passive);
        });
        at_all_corners!(f_c: MainForce, m: ForceExponent, a: DepthOfCut, f: Feed,
                        k: CuttingEdgeAngle => {
            let chip = engagement::chip_section(a, f, k);
            let k_c = measured_force::specific_force_of_chip(f_c, chip);
            finite(k_c);
            finite(measured_force::law_through(k_c, chip.thickness, m).specific_force);
            at_all_corners!(r: CornerRadius => {
                finite(measured_force::law_of_cut(f_c, m, a, f, k, r).specific_force);
            });
            at_all_corners!(v: CuttingSpeed => {
                finite(speed::removal_rate_at(chip, v));
            });
        });
        at_all_corners!(p: Power, i: Power, e: Efficiency, v: CuttingSpeed => {
            finite_or_refused(measured_force::power_above_idle(p, i, e));
            finite(measured_force::force_of_power(p, v));
        });
        at_all_corners!(k_c: SpecificForceAtChip, q: RemovalRate => {
            finite(measured_force::power_of_removal(k_c, q));
        });
        at_all_corners!(g: RakeAngle, h: RakeAngle, v: CuttingSpeed => {
            finite_or_refused(force_factors::rake_factor(g, h));
            finite_or_refused(force_factors::carbide_speed_factor(v));
        });
        at_all_corners!(n: NormalRatio, x: ForceFactor, y: ForceFactor, s: ForceScatter => {
            finite(force_factors::corrected_ratio(n, x, y));
            force_factors::scattered(s).into_iter().for_each(finite);
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
    fn of_drives_are_finite() {
        at_all_corners!(p: Power, n_b: SpindleSpeed, n: SpindleSpeed, f: MainForce, d: Diameter => {
            let drive = TorqueCurve::new(p).with_base_speed(n_b).in_range(n_b, n);
            finite(drive.power(n));
            finite(drive.torque(n));
            if let Ok(runs) = drive.speeds_that_run(f, d) {
                runs.highest.into_iter().for_each(finite);
                runs.lowest.into_iter().for_each(finite);
            }
        });
    }

    #[test]
    fn of_warm_work_are_finite() {
        at_all_corners!(d: Diameter, l: WorkLength, a: ThermalExpansion, t: TemperatureRise => {
            finite(heat::diameter_growth(d, a, t));
            finite(heat::length_growth(l, a, t));
            finite(heat::diameter_at_20(d, a, t));
            finite(heat::length_at_20(l, a, t));
        });
        at_all_corners!(p: Power, h: HeatShare, t: Duration, m: Mass, c: SpecificHeat => {
            finite_or_refused(heat::temperature_rise(p, h, t, m, c));
        });
        at_all_corners!(e: YoungsModulus, d: Diameter, l: WorkLength, g: ThermalGrowth => {
            let bar = strut::Strut::new(e, d, l).then(d, l);
            finite(strut::buckling_load(&bar));
            finite(strut::growth_load(&bar, g, None));
            at_all_corners!(k: AxialStiffness => {
                finite(strut::growth_load(&bar, g, Some(k)));
            });
        });
        at_all_corners!(r: PassiveForce, m: Friction, f: AxialForce, a: Diameter, b: Diameter => {
            finite(centre::push_out(r, m));
            finite_or_refused(centre::cone_pressure(f, a, b));
            finite_or_refused(centre::side_pressure(r, a, b));
        });
        at_all_corners!(rho: Density, d: Diameter, l: WorkLength => {
            finite(heat::mass_of_bar(rho, d, l));
        });
    }

    #[test]
    fn of_tool_life_are_finite() {
        at_all_corners!(c: LifeConstant, n: LifeExponent, v: CuttingSpeed, t: ToolLife => {
            let law = wear::LifeLaw::new(c, n);
            finite_or_refused(wear::life_at(law, v));
            finite(wear::speed_for(law, t));
            finite_or_refused(wear::LifeLaw::through(v, t, n).map(wear::LifeLaw::constant));
            at_all_corners!(w: CuttingSpeed => {
                finite_or_refused(wear::life_after_change(t, n, v, w));
                if let Ok(fit) = wear::fit_lives(&[(v, t), (w, t), (w, ToolLife::computed_trade(60.0))]) {
                    finite(fit.scatter);
                    fit.lives.into_iter().for_each(finite);
                }
            });
            at_all_corners!(x: Duration, p: Price, h: PricePerHour => {
                if let Ok(best) = wear::cheapest_life(law, x, p, h) {
                    finite(best.life);
                    finite(best.cutting_speed);
                }
            });
        });
    }

    #[test]
    fn of_faces_and_tapers_are_finite() {
        at_all_corners!(d: Diameter, b: Diameter, f: Feed, n: SpindleSpeed, v: CuttingSpeed => {
            let held = |highest| facing::FacingPace::SurfaceSpeed { cutting_speed: v, highest };
            for pace in [facing::FacingPace::SpindleSpeed(n), held(None), held(Some(n))] {
                finite(facing::spindle_speed_at(pace, d));
                finite(facing::cutting_speed_at(pace, d));
                facing::full_speed_below(pace).into_iter().for_each(finite);
                finite_or_refused(facing::time(pace, d, None, f));
                finite_or_refused(facing::time(pace, d, Some(b), f));
            }
        });
        at_all_corners!(a: Diameter, b: Diameter, l: WorkLength, x: TaperRatio, h: HalfAngle,
                        w: IncludedAngle => {
            let tapers = [
                taper::Taper::between(a, b, l).ok(),
                Some(taper::Taper::of_ratio(x)),
                Some(taper::Taper::of_half_angle(h)),
                Some(taper::Taper::of_included_angle(w)),
            ];
            for taper in tapers.into_iter().flatten() {
                finite(taper.half_angle());
                finite(taper.included_angle());
                finite(taper.ratio());
                finite(taper.per_foot());
                finite(taper.slide_travel(l));
                finite(taper.large_for(a, l));
                finite_or_refused(taper.small_for(a, l));
                finite_or_refused(taper.length_between(a, b));
                finite(taper::set_over(taper, l));
                finite(taper::usual_set_over(taper, l));
            }
        });
        at_all_corners!(c: CompoundAngle, t: Travel, s: Travel, d: Diameter, e: ToolHeight => {
            finite(taper::from_cross_slide(c));
            finite(taper::compound_motion(c, t).infeed);
            finite_or_refused(taper::angle_for_infeed(s, t));
            finite_or_refused(tool_height::turned_diameter(d, t, e));
            finite_or_refused(tool_height::diameter_error(d, t, e));
            finite_or_refused(tool_height::rake_change(d, e));
        });
        at_all_corners!(s: SetOver, l: WorkLength => {
            finite_or_refused(taper::taper_of_set_over(s, l).map(taper::Taper::half_angle));
        });
    }

    #[test]
    fn of_grip_and_tool_are_finite() {
        at_all_corners!(f: MainForce, g: FeedForce, d: Diameter, e: Diameter, m: Friction => {
            let safety = ForceFactor::computed_trade(2.0);
            finite_or_refused(grip::grip_needed(f, g, d, e, m, safety));
        });
        at_all_corners!(f: GripForce, m: Mass, r: Radius, n: SpindleSpeed => {
            let jaws = grip::Jaws::new(3, m, r);
            if let Ok(jaws) = jaws {
                finite(grip::highest_speed(f, &jaws));
                finite_or_refused(grip::grip_at_speed(f, &jaws, n));
            }
        });
        at_all_corners!(f: MainForce, p: PassiveForce, l: Overhang, s: ShankSize, d: Diameter,
                        e: YoungsModulus => {
            finite(tool_overhang::shank_deflection(f, l, s, s, e));
            finite(tool_overhang::boring_bar_deflection(p, l, d, e));
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

    #[test]
    fn of_stepped_bars_are_finite() {
        let soft = Springs {
            chuck: Stiffness::from_trade(0.001).ok(),
            chuck_rotational: RotationalStiffness::from_trade(0.001).ok(),
            centre: Stiffness::from_trade(0.001).ok(),
        };
        let supports = [
            Support::Chuck,
            Support::ChuckAndCentre,
            Support::BetweenCentres,
        ];
        at_all_corners!(e: YoungsModulus, near: Diameter, far: Diameter, l: WorkLength, rho: Density => {
            let half = WorkLength::computed_trade(l.mm() / 2.0);
            let sections = [Section::cylinder(near, half), Section::cone(near, far, half)];
            for (support, springs) in supports.iter().flat_map(|s| [(*s, soft), (*s, Springs::default())]) {
                let bar = HeldBar::new(e, &sections, support, &springs, &[]).unwrap();
                at_all_corners!(f: PassiveForce => {
                    finite_or_refused(bar.deflection(f, half));
                    finite_or_refused(bar.centre_force(f, half));
                    let load = Load::Force { at: half, force: f };
                    let weight = Load::OwnWeight { density: rho };
                    for bent in bar.bent_by(&[load, weight], &[half, bar.length()]).unwrap() {
                        finite(bent);
                    }
                });
                finite(bar.critical_speed_floor(rho));
                finite(bar.first_critical_speed(rho).unwrap());
            }
        });
    }

    #[test]
    fn of_springing_bars_are_finite() {
        at_all_corners!(k_c: SpecificCuttingForce, m: ForceExponent, f: Feed, angle: CuttingEdgeAngle,
                        r: CornerRadius => {
            at_all_corners!(n: NormalRatio, set: DepthOfCut, k: Stiffness => {
                let edge = Edge::new(ForceLaw::new(k_c, m), f, angle, r, n);
                if let Ok(pass) = spring_back::true_depth(&edge, set, k) {
                    finite(pass.true_depth);
                    finite(pass.left);
                }
                at_all_corners!(allowed: DiameterError => {
                    if let Ok(Some(depth)) = spring_back::largest_depth(&edge, k, allowed) {
                        finite(depth);
                    }
                    if let Ok(Some(feed)) = spring_back::largest_feed(&edge, set, k, allowed) {
                        finite(feed);
                    }
                });
            });
        });
        at_all_corners!(set: DepthOfCut, share: SpringShare, bent: Deflection => {
            finite_or_refused(spring_back::spring_share(set, bent));
            finite_or_refused(spring_back::left_after_equal_infeeds(set, share, 1000));
            finite_or_refused(spring_back::left_in_the_end(set, share));
            finite(spring_back::left_after_passes(set, share, 1000));
            finite(spring_back::light_after_heavy(bent, set, share));
        });
        at_all_corners!(d: Diameter, bent: Deflection, down: TangentialDeflection => {
            finite(spring_back::diameter_error_with_sag(d, bent, down));
        });
        at_all_corners!(off: Eccentricity, n: SpindleSpeed, critical: CriticalSpeed => {
            finite_or_refused(whirl::whip(off, n, critical));
        });
    }

    #[test]
    fn of_the_least_chip_are_finite() {
        at_all_corners!(f: Feed, r: CornerRadius, least: ChipThickness => {
            finite_or_refused(least_chip::roughness_with_least_chip(f, r, least).map(|found| found.rt));
            finite(least_chip::best_feed(r, least));
        });
    }

    #[test]
    fn of_the_spread_of_sizes_are_finite() {
        use super::aim::{self, Prices};
        use super::budget::{self, Budget, Component};
        use super::spread::{self, SizeSpread};
        use crate::standards::limits::{Feature, Limits};

        let sure = |outcome: spread::Outcome| {
            let all = [outcome.good, outcome.rework, outcome.scrap].map(Probability::value);
            assert!(all.iter().all(|p| (0.0..=1.0).contains(p)), "{all:?}");
            // Three roundings of a sum of shares.
            assert!((all.iter().sum::<f64>() - 1.0).abs() < 1e-15, "{all:?}");
        };
        at_all_corners!(low: Diameter, high: Diameter, mean: Diameter, u: StandardUncertainty => {
            let Ok(limits) = Limits::new(low, high) else { continue };
            let found = spread::capability(limits, mean, u);
            finite(found.cp);
            finite(found.cpk);
            finite(spread::chance_that_good(mean, limits, u));
            at_all_corners!(a: HalfWidth, scrap: PriceScrap, rework: PriceRework => {
                let prices = Prices::new(scrap, rework);
                for spread in [SizeSpread::normal(u), SizeSpread::uniform(a), SizeSpread::normal_and_uniform(u, a)] {
                    for feature in [Feature::Shaft, Feature::Hole] {
                        sure(spread::outcome(limits, mean, spread, feature));
                        finite(aim::expected_price(limits, mean, spread, prices, feature));
                        if let Ok(best) = aim::best_aim(limits, spread, prices, feature) {
                            finite(best.aim);
                            finite(best.expected_price);
                            sure(best.outcome);
                        }
                        sure(aim::best_aim_in_zone(limits, spread, prices, feature).outcome);
                    }
                    if let Some(largest) = aim::largest_standard_uncertainty(limits, spread, prices) {
                        finite(largest);
                    }
                }
            });
        });
        at_all_corners!(u: StandardUncertainty, a: HalfWidth, c: Sensitivity, nu: DegreesOfFreedom,
                        p: Confidence => {
            finite(budget::coverage_factor(Some(nu), p));
            finite(budget::coverage_factor(None, p));
            let parts = vec![
                Component::standard("read", u).with_sensitivity(c).with_degrees_of_freedom(nu),
                Component::uniform("set", a),
            ];
            if let Ok(budget) = Budget::new(parts) {
                finite(budget.combined());
                finite(budget.expanded(p));
                finite(budget.coverage_factor(p));
                assert!(budget.share(0).is_some_and(f64::is_finite));
            }
        });
    }
}
