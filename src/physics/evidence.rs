//! How well one cause explains a row of differences.

use crate::quantity::{DiameterError, StandardUncertainty};

use super::maths;

/// What one cause would do: a shape along the places measured, and how large it usually is.
///
/// The difference at place i is theta s_i, theta normal with mean mu and standard deviation tau.
#[derive(Debug, Clone)]
pub(crate) struct Explanation {
    /// s_i, in parts of its size.
    pub(crate) shape: Vec<f64>,
    /// mu.
    pub(crate) usual: DiameterError,
    /// tau.
    pub(crate) scatter: StandardUncertainty,
}

/// The logarithm of the likelihood of differences y under an explanation, the size of the cause
/// integrated out.
///
/// y is normal with mean mu s and covariance tau^2 s s^T + u^2 I, so that with r = y - mu s
/// 2 ln L = - r.r/u^2 + (s.r/u^2)^2/(s.s/u^2 + 1/tau^2) - ln(1 + tau^2 s.s/u^2) - 2 n ln u,
/// the constant n ln(2 pi) left out.
///
/// # Source
/// Marginal likelihood of a linear model with a normal prior; the inverse and the determinant of a
/// matrix of rank one beside the unit matrix (Sherman and Morrison 1950, from memory).
pub(crate) fn log_likelihood(
    differences: &[DiameterError],
    explanation: &Explanation,
    measuring: StandardUncertainty,
) -> f64 {
    let (u, tau) = (measuring.mm(), explanation.scatter.mm());
    let mu = explanation.usual.mm();
    let (mut rr, mut sr, mut ss) = (0.0, 0.0, 0.0);
    for (y, s) in differences.iter().zip(&explanation.shape) {
        let r = (y.mm() - mu * s) / u;
        rr += r * r;
        sr += s * r / u;
        ss += s * s / (u * u);
    }
    let explained = sr * sr * tau * tau / (1.0 + tau * tau * ss);
    -0.5 * (rr - explained + maths::ln(1.0 + tau * tau * ss))
        - differences.len() as f64 * maths::ln(u)
}

/// The most likely size of a cause, given the differences: its prior mean corrected by what was seen.
///
/// theta = mu + tau^2 s.r/u^2 / (1 + tau^2 s.s/u^2)
pub(crate) fn likely_size(
    differences: &[DiameterError],
    explanation: &Explanation,
    measuring: StandardUncertainty,
) -> DiameterError {
    let (u, tau) = (measuring.mm(), explanation.scatter.mm());
    let mu = explanation.usual.mm();
    let (mut sr, mut ss) = (0.0, 0.0);
    for (y, s) in differences.iter().zip(&explanation.shape) {
        sr += s * (y.mm() - mu * s) / (u * u);
        ss += s * s / (u * u);
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
