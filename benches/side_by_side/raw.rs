//! Formulas on bare numbers, the peers of typed kernels.

/// R_t in um from mm, on bare numbers.
#[inline]
pub fn raw_arc_height(feed: f64, radius: f64) -> Option<f64> {
    let quarter = feed * feed / 4.0;
    let below = radius * radius - quarter;
    if below <= 0.0 {
        return None;
    }
    Some(quarter / (radius + below.sqrt()) * 1000.0)
}

/// The same with the refusal in words that a caller needs, which keeps a loop from running several
/// rows at once.
#[inline]
pub fn raw_arc_height_or_words(feed: f64, radius: f64) -> Result<f64, String> {
    #[cold]
    #[inline(never)]
    fn too_coarse(feed: f64, radius: f64) -> String {
        format!("{feed} with {radius}")
    }
    raw_arc_height(feed, radius).ok_or_else(|| too_coarse(feed, radius))
}

/// n in 1/min from m/min and mm, on bare numbers.
#[inline]
pub fn raw_spindle_speed(cutting_speed: f64, diameter: f64) -> f64 {
    1000.0 * cutting_speed / (std::f64::consts::PI * diameter)
}

/// F_c in N from MPa and mm, on bare numbers.
#[inline]
pub fn raw_main_force(specific: f64, exponent: f64, thickness: f64, width: f64) -> f64 {
    specific * thickness.powf(-exponent) * width * thickness
}

/// R_t in um and the best feed in mm with a least chip, on bare numbers, with the regime and the refusal
/// in words that a caller needs.
#[inline]
pub fn raw_rt_with_least_chip(
    feed: f64,
    radius: f64,
    least: f64,
) -> Result<(f64, f64, bool), String> {
    #[cold]
    #[inline(never)]
    fn sharp(radius: f64) -> String {
        format!("{radius}")
    }
    if radius <= 0.0 {
        return Err(sharp(radius));
    }
    let rt = feed * feed / (8.0 * radius) + 0.5 * least * (1.0 + radius * least / (feed * feed));
    let best = (2.0 * radius * least).sqrt();
    Ok((rt * 1000.0, best, feed >= best))
}

/// The deflection in mm of a bar in a chuck, on bare numbers: GPa, mm, kN/mm, kN m/rad, N.
#[inline]
pub fn raw_deflection(
    e: f64,
    d: f64,
    overhang: f64,
    [chuck, tilt]: [Option<f64>; 2],
    force: f64,
    at: f64,
) -> Result<f64, String> {
    #[cold]
    #[inline(never)]
    fn beyond(at: f64, overhang: f64) -> String {
        format!("{at} with {overhang}")
    }
    if at > overhang {
        return Err(beyond(at, overhang));
    }
    let ei = e * 1e3 * std::f64::consts::PI / 64.0 * (d * d) * (d * d);
    let moved = chuck.map_or(0.0, |k| 1.0 / (k * 1e3));
    let tilted = tilt.map_or(0.0, |k| 1.0 / (k * 1e6));
    Ok(force * (at * at * (2.0 * at) / (6.0 * ei) + moved + at * at * tilted))
}
