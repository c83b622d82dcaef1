//! Correlations between the components of a budget, and whether they can hold together.

use super::maths::sqrt;
use crate::error::{Error, ErrorKind};
use crate::quantity::Correlation;

/// Pairs of components with their coefficients.
#[derive(Debug, Clone, Default)]
pub(super) struct Correlations(Vec<(usize, usize, f64)>);

impl Correlations {
    /// True where no two components go together: a coefficient of zero says just that.
    pub(super) fn is_empty(&self) -> bool {
        self.0.iter().all(|(_, _, r)| *r == 0.0)
    }

    /// The partners of a component, with the coefficients.
    pub(super) fn of(&self, i: usize) -> impl Iterator<Item = (usize, f64)> + '_ {
        self.given(i).filter(|(_, r)| *r != 0.0)
    }

    /// The same, with coefficients of zero.
    fn given(&self, i: usize) -> impl Iterator<Item = (usize, f64)> + '_ {
        self.0.iter().filter_map(move |&(first, second, r)| {
            if first == i {
                Some((second, r))
            } else if second == i {
                Some((first, r))
            } else {
                None
            }
        })
    }

    /// Adds pairs of components of these names.
    pub(super) fn add(
        &mut self,
        names: &[&str],
        more: &[(usize, usize, Correlation)],
    ) -> Result<(), Error> {
        let refuse = |given: String, expected: &str, remedy: &str| {
            Error::new(
                ErrorKind::Contradiction,
                "correlations",
                given,
                expected,
                remedy,
            )
        };
        for &(first, second, r) in more {
            let (Some(one), Some(other)) = (names.get(first), names.get(second)) else {
                return Err(refuse(
                    format!("components {first} and {second} of {}", names.len()),
                    "two components of the budget, counted from 0",
                    "give the places of two components in their list",
                ));
            };
            if first == second {
                return Err(refuse(
                    format!("\"{one}\" with itself"),
                    "two different components",
                    "leave it out: a component is always correlated with itself",
                ));
            }
            if self.given(first).any(|(partner, _)| partner == second) {
                return Err(refuse(
                    format!("\"{one}\" and \"{other}\" twice"),
                    "one coefficient for a pair of components",
                    "keep one of the two",
                ));
            }
            self.0.push((first, second, r.value()));
        }
        if self.factor(names.len()).is_none() {
            return Err(refuse(
                String::from("coefficients of which one belies the others"),
                "correlations that can hold together: no combination of the components has a negative variance",
                "check the coefficients: two components that both follow a third follow each other too",
            ));
        }
        Ok(())
    }

    /// The lower triangle, row by row, whose product with its transpose is the matrix of
    /// coefficients (Cholesky); none where there is no such triangle.
    pub(super) fn factor(&self, count: usize) -> Option<Vec<f64>> {
        let mut rows = vec![0.0; count * count];
        for i in 0..count {
            rows[i * count + i] = 1.0;
        }
        for &(first, second, r) in &self.0 {
            rows[first.max(second) * count + first.min(second)] = r;
        }
        for i in 0..count {
            for j in 0..=i {
                let known: f64 = (0..j)
                    .map(|k| rows[i * count + k] * rows[j * count + k])
                    .sum();
                let rest = rows[i * count + j] - known;
                if i == j {
                    // Rounding of coefficients that are exactly on the edge, such as 1.
                    if rest < -1e-12 {
                        return None;
                    }
                    rows[i * count + i] = if rest > 1e-12 { sqrt(rest) } else { 0.0 };
                } else if rows[j * count + j] > 0.0 {
                    rows[i * count + j] = rest / rows[j * count + j];
                } else if rest.abs() < 1e-6 {
                    rows[i * count + j] = 0.0;
                } else {
                    return None;
                }
            }
        }
        Some(rows)
    }
}
