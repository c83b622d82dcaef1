//! Going along a held bar with its state: deflection, slope, bending moment and shear force.
//!
//! With y the deflection, M = E I y'' and V = M', a piece of the bar takes the state at its one end
//! to the state at its other by a linear map. The two figures that the head leaves open and the
//! reactions of the steadies are unknown; each is carried along as a column of its own, until the
//! conditions at the supports and at the end settle them. State and columns are plain numbers: y over
//! the length L of the bar, M L/(E I)_0, V L^2/(E I)_0 with (E I)_0 that of the first piece.
//!
//! Source: transfer matrices of any text on vibration or structures (Pestel and Leckie, from memory);
//! derived again.

use uom::si::f64::Length;

use super::bar::{BendingStiffness, Compliance};
use super::maths;
use super::stepped::{Head, HeldBar, Span};
use crate::error::Error;

/// Deflection, slope, bending moment, shear force.
pub(super) type State = [f64; 4];

/// Lengths and stiffness by which the figures of a bar become plain numbers.
#[derive(Debug, Clone, Copy)]
pub(super) struct Scale {
    pub(super) length: Length,
    pub(super) ei: BendingStiffness,
}

impl Scale {
    pub(super) fn of(bar: &HeldBar) -> Result<Self, Error> {
        let first = bar
            .spans
            .first()
            .ok_or_else(|| Error::internal("a bar without a section"))?;
        Ok(Self {
            length: bar.length,
            ei: first.piece.stiffness(Length::default()),
        })
    }

    /// A compliance against a force, over L^3/(E I)_0.
    pub(super) fn compliance(&self, give: Compliance) -> f64 {
        let l = self.length;
        maths::number(give / (l * l * l / self.ei))
    }
}

/// The columns on their way along the bar; the last is that of the loads.
pub(super) struct March<'a> {
    bar: &'a HeldBar,
    scale: Scale,
    pub(super) columns: Vec<State>,
    /// Conditions met so far, one row each: factors of the unknowns, then the right side.
    rows: Vec<Vec<f64>>,
    next_prop: usize,
}

impl<'a> March<'a> {
    /// At the head, before the first piece.
    pub(super) fn begin(bar: &'a HeldBar, scale: Scale) -> Self {
        let steadies = bar.props.iter().filter(|prop| !prop.is_centre).count();
        let mut columns = vec![[0.0; 4]; steadies + 3];
        let head: [State; 2] = match bar.head {
            Head::Chuck(give, tilt) => {
                let tilt = maths::number(tilt / (scale.length / scale.ei));
                [
                    [-scale.compliance(give), 0.0, 0.0, 1.0],
                    [0.0, tilt, 1.0, 0.0],
                ]
            }
            Head::Centre(give) => [
                [-scale.compliance(give), 0.0, 0.0, 1.0],
                [0.0, 1.0, 0.0, 0.0],
            ],
        };
        for (column, state) in columns.iter_mut().zip(head) {
            *column = state;
        }
        Self {
            bar,
            scale,
            columns,
            rows: Vec::with_capacity(steadies + 2),
            next_prop: 0,
        }
    }

    /// Takes all columns through a piece.
    pub(super) fn through(&mut self, step: impl Fn(State) -> State) {
        for column in &mut self.columns {
            *column = step(*column);
        }
    }

    /// Meets the steadies that stand at the end of a span.
    pub(super) fn meet(&mut self, span: &Span) {
        while let Some(prop) = self.bar.props.get(self.next_prop) {
            if prop.at > span.end || prop.is_centre {
                return;
            }
            // y + s R = 0 with the reaction R, which adds to the shear force.
            let own = 2 + self.rows.len();
            let give = self.scale.compliance(prop.give);
            let mut row: Vec<f64> = self.columns.iter().map(|column| column[0]).collect();
            if let Some(factor) = row.get_mut(own) {
                *factor += give;
            }
            self.rows.push(row);
            if let Some(column) = self.columns.get_mut(own) {
                *column = [0.0, 0.0, 0.0, 1.0];
            }
            self.next_prop += 1;
        }
    }

    /// Meets the end of the bar: all conditions, as rows.
    pub(super) fn end(mut self) -> Vec<Vec<f64>> {
        let moment = self.columns.iter().map(|column| column[2]).collect();
        let last = match self.bar.props.last().filter(|prop| prop.is_centre) {
            // The centre takes the shear force: y = s V.
            Some(centre) => {
                let give = self.scale.compliance(centre.give);
                self.columns
                    .iter()
                    .map(|column| column[0] - give * column[3])
                    .collect()
            }
            None => self.columns.iter().map(|column| column[3]).collect(),
        };
        self.rows.extend([moment, last]);
        self.rows
    }
}

/// Brings rows to a triangle with partial pivoting; the determinant of their square part.
pub(super) fn triangle(rows: &mut [Vec<f64>]) -> f64 {
    let mut determinant = 1.0;
    for at in 0..rows.len() {
        let largest = (at..rows.len())
            .max_by(|a, b| rows[*a][at].abs().total_cmp(&rows[*b][at].abs()))
            .unwrap_or(at);
        if largest != at {
            rows.swap(at, largest);
            determinant = -determinant;
        }
        let (upper, lower) = rows.split_at_mut(at + 1);
        let pivot = &upper[at];
        determinant *= pivot[at];
        if pivot[at] == 0.0 {
            return 0.0;
        }
        for row in lower {
            let factor = row[at] / pivot[at];
            for (value, above) in row.iter_mut().zip(pivot).skip(at) {
                *value -= factor * above;
            }
        }
    }
    determinant
}

/// The unknowns of rows whose last column is the loads': A x + b = 0. None where they are not fixed.
pub(super) fn unknowns(mut rows: Vec<Vec<f64>>) -> Option<Vec<f64>> {
    if triangle(&mut rows) == 0.0 {
        return None;
    }
    let mut found = vec![0.0; rows.len()];
    for at in (0..rows.len()).rev() {
        let row = &rows[at];
        let loads = row.last().copied().unwrap_or_default();
        let known: f64 = row
            .iter()
            .zip(&found)
            .skip(at + 1)
            .map(|(factor, value)| factor * value)
            .sum();
        found[at] = -(loads + known) / row[at];
    }
    Some(found)
}
