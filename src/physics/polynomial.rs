//! Where a polynomial of the sixth degree is stationary.

/// The places between `low` and `high` where the derivative of a polynomial of the sixth degree
/// changes its sign; unused slots hold `high`.
///
/// Between two neighbouring zeros of its own derivative a polynomial has at most one zero: so the
/// zeros of the fifth derivative (a straight line) bracket those of the fourth, and so on down.
pub(super) fn stationary(polynomial: [f64; 7], low: f64, high: f64) -> [f64; 7] {
    let mut brackets = [high; 7];
    for order in (1..6).rev() {
        let derivative = derivative(polynomial, order);
        let mut zeros = [high; 7];
        let mut slots = zeros.iter_mut();
        let mut left = low;
        for right in brackets {
            if let Some(zero) = zero_between(&derivative, left, right)
                && let Some(slot) = slots.next()
            {
                *slot = zero;
            }
            left = right;
        }
        brackets = zeros;
    }
    brackets
}

fn derivative(polynomial: [f64; 7], order: usize) -> [f64; 7] {
    let mut result = [0.0; 7];
    for (power, (slot, coefficient)) in result
        .iter_mut()
        .zip(polynomial.iter().skip(order))
        .enumerate()
    {
        let factor: usize = (power + 1..=power + order).product();
        *slot = coefficient * factor as f64;
    }
    result
}

/// Halves the bracket to the last digit, if the sign changes in it.
fn zero_between(polynomial: &[f64; 7], mut left: f64, mut right: f64) -> Option<f64> {
    let value = |x: f64| polynomial.iter().rev().fold(0.0, |sum, c| sum * x + c);
    let rising = value(left) < 0.0;
    if left >= right || rising == (value(right) < 0.0) {
        return None;
    }
    for _ in 0..60 {
        let middle = 0.5 * (left + right);
        if (value(middle) < 0.0) == rising {
            left = middle;
        } else {
            right = middle;
        }
    }
    Some(0.5 * (left + right))
}
