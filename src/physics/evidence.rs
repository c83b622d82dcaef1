//! How well one cause explains a row of differences.

use crate::quantity::{DiameterError, StandardUncertainty};

use super::maths;

/// What one cause would do: a shape along the places measured, and how large it usually is.
///
/// The difference at place i is theta s_i + lambda, theta normal with mean mu and standard deviation tau,
/// lambda normal with mean zero and its own.
#[derive(Debug, Clone)]
pub(crate) struct Explanation {
    /// s_i, in parts of its size.
    pub(crate) shape: Vec<f64>,
    /// mu.
    pub(crate) usual: DiameterError,
    /// tau.
    pub(crate) scatter: StandardUncertainty,
    /// The standard deviation of a level that comes beside the shape, if one does.
    pub(crate) level: Option<StandardUncertainty>,
}

/// The logarithm of the likelihood of differences y under an explanation, the size of the cause and the
/// level beside it integrated out.
///
/// y is normal with mean mu s and covariance tau^2 s s^T + l^2 1 1^T + u^2 I, so that with r = (y - mu s)/u,
/// the columns c_1 = tau s/u and c_2 = l 1/u of C, and M = I + C^T C,
/// 2 ln L = - r.r + (C^T r).(M^-1 C^T r) - ln det M - 2 n ln u, the constant n ln(2 pi) left out.
///
/// # Source
/// Marginal likelihood of a linear model with a normal prior; the inverse and the determinant of a
/// matrix of low rank beside the unit matrix (Sherman and Morrison 1950, Woodbury 1950, from memory).
pub(crate) fn log_likelihood(
    differences: &[DiameterError],
    explanation: &Explanation,
    measuring: StandardUncertainty,
) -> f64 {
    let (u, tau) = (measuring.mm(), explanation.scatter.mm());
    let mu = explanation.usual.mm();
    let beside = explanation.level.map_or(0.0, |level| level.mm()) / u;
    let (mut rr, mut sr, mut ss) = (0.0, 0.0, 0.0);
    let (mut lr, mut ls, mut ll) = (0.0, 0.0, 0.0);
    for (y, s) in differences.iter().zip(&explanation.shape) {
        let (r, s) = ((y.mm() - mu * s) / u, tau * s / u);
        rr += r * r;
        sr += s * r;
        ss += s * s;
        lr += beside * r;
        ls += beside * s;
        ll += beside * beside;
    }
    let determinant = (1.0 + ss) * (1.0 + ll) - ls * ls;
    let explained =
        (sr * sr * (1.0 + ll) - 2.0 * sr * lr * ls + lr * lr * (1.0 + ss)) / determinant;
    -0.5 * (rr - explained + maths::ln(determinant)) - differences.len() as f64 * maths::ln(u)
}

/// The most likely size of a cause, given the differences: its prior mean corrected by what was seen.
///
/// theta = mu + tau^2 s.r/u^2 / (1 + tau^2 s.s/u^2). Beside a level both s and r are taken less their means:
/// the limit of a level of which nothing is known, so that the size follows from how the places differ, and
/// a level of all of them changes nothing.
pub(crate) fn likely_size(
    differences: &[DiameterError],
    explanation: &Explanation,
    measuring: StandardUncertainty,
) -> DiameterError {
    let (u, tau) = (measuring.mm(), explanation.scatter.mm());
    let mu = explanation.usual.mm();
    let rows = || differences.iter().zip(&explanation.shape);
    let (r0, s0) = match explanation.level {
        None => (0.0, 0.0),
        Some(_) => {
            let n = rows().count().max(1) as f64;
            let (r, s) = rows().fold((0.0, 0.0), |(r, s), (y, shape)| {
                (r + y.mm() - mu * shape, s + shape)
            });
            (r / n, s / n)
        }
    };
    let (mut sr, mut ss) = (0.0, 0.0);
    for (y, s) in rows() {
        sr += (s - s0) * (y.mm() - mu * s - r0) / (u * u);
        ss += (s - s0) * (s - s0) / (u * u);
    }
    DiameterError::computed_trade(mu + tau * tau * sr / (1.0 + tau * tau * ss))
}

/// The share of each explanation: its odds times its likelihood, over their sum.
///
/// # Source
/// Bayes' rule; the largest likelihood is taken out before it is raised, so that none overflows.
pub(crate) fn shares(odds_and_logs: &[(f64, f64)]) -> Vec<f64> {
    let weights: Vec<f64> = odds_and_logs
        .iter()
        .map(|(odds, log)| maths::ln(*odds) + log)
        .collect();
    let most = weights.iter().copied().fold(f64::NEG_INFINITY, f64::max);
    let raised: Vec<f64> = weights.iter().map(|w| maths::exp(w - most)).collect();
    let all: f64 = raised.iter().sum();
    raised.iter().map(|w| w / all).collect()
}

#[cfg(test)]
mod tests {
    use super::*;

    fn differences(mm: &[f64]) -> Vec<DiameterError> {
        mm.iter()
            .map(|mm| DiameterError::from_mm(*mm).unwrap())
            .collect()
    }

    fn explanation(shape: &[f64], usual: f64, scatter: f64) -> Explanation {
        Explanation {
            shape: shape.to_vec(),
            usual: DiameterError::from_mm(usual).unwrap(),
            scatter: StandardUncertainty::from_mm(scatter).unwrap(),
            level: None,
        }
    }

    /// scipy 1.17: multivariate_normal([0.01, 0.02, 0.03], 0.02**2 * outer(s, s) + 0.004**2 * eye(3))
    /// .logpdf(y) + 1.5 ln(2 pi), with s = (0.2, 0.6, 1.0) and mean mu s, mu = 0.03.
    #[test]
    fn it_is_that_of_the_full_covariance() {
        let y = differences(&[0.012, 0.019, 0.041]);
        let found = log_likelihood(
            &y,
            &explanation(&[0.2, 0.6, 1.0], 0.03, 0.02),
            StandardUncertainty::from_mm(0.004).unwrap(),
        );
        assert!((found - CHECK).abs() < 1e-9, "{found}");
    }
    const CHECK: f64 = 13.390678839914239;

    /// Eliminated in exact fractions: -(r^T C^-1 r + ln det C)/2, C = 0.02^2 s s^T + 0.05^2 1 1^T + 0.004^2 I,
    /// s = (0.2, 0.6, 1.0), r = y - 0.03 s; the same program gives the value above without a level.
    #[test]
    fn it_is_that_of_the_full_covariance_beside_a_level_too() {
        let beside = Explanation {
            level: Some(StandardUncertainty::from_mm(0.05).unwrap()),
            ..explanation(&[0.2, 0.6, 1.0], 0.03, 0.02)
        };
        let found = log_likelihood(
            &differences(&[0.042, 0.049, 0.071]),
            &beside,
            StandardUncertainty::from_mm(0.004).unwrap(),
        );
        assert!((found - BESIDE_A_LEVEL).abs() < 1e-9, "{found}");
    }
    const BESIDE_A_LEVEL: f64 = 10.959592904674231;

    #[test]
    fn a_level_of_all_differences_leaves_the_size_of_what_stands_beside_a_level() {
        let u = StandardUncertainty::from_mm(0.002).unwrap();
        let beside = Explanation {
            level: Some(StandardUncertainty::from_mm(0.05).unwrap()),
            ..explanation(&[0.1, 0.5, 0.9], 0.0, 10.0)
        };
        for level in [-0.08, 0.0, 0.03] {
            let y = differences(&[level + 0.01, level + 0.05, level + 0.09]);
            let found = likely_size(&y, &beside, u).mm();
            assert!((found - 0.1).abs() < 1e-7, "{level}: {found}");
        }
    }

    #[test]
    fn without_scatter_the_size_is_the_usual_one_and_with_much_that_of_least_squares() {
        let y = differences(&[0.01, 0.02, 0.03]);
        let u = StandardUncertainty::from_mm(0.004).unwrap();
        let small = explanation(&[1.0, 1.0, 1.0], 0.05, 1e-9);
        let large = explanation(&[1.0, 1.0, 1.0], 0.05, 10.0);
        // What the scatter leaves of the prior: 0.03 mm (0.004/10)^2 / 3 at the most.
        assert!((likely_size(&y, &small, u).mm() - 0.05).abs() < 1e-9);
        assert!((likely_size(&y, &large, u).mm() - 0.02).abs() < 1e-8);
    }
}
