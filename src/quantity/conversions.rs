//! Conversions between meanings, by name only: radius and diameter, depth and diameter, deflection
//! and error of the diameter.

use super::{Deflection, DepthOfCut, Diameter, DiameterError, Quantity, Radius, round_size};
use crate::error::{Error, ErrorKind};

impl Diameter {
    /// Half of this diameter.
    ///
    /// ```
    /// let d = turnwright::Diameter::from_mm(40.0)?;
    /// assert_eq!(d.radius().mm(), 20.0);
    /// # Ok::<(), turnwright::Error>(())
    /// ```
    #[must_use]
    pub fn radius(self) -> Radius {
        Radius::computed_trade(self.0 / 2.0)
    }

    /// What is left after a cut of `depth` all round.
    ///
    /// ```
    /// use turnwright::{DepthOfCut, Diameter};
    /// let d = Diameter::from_mm(40.0)?.after_cut(DepthOfCut::from_mm(1.5)?)?;
    /// assert_eq!(d.mm(), 37.0);
    /// # Ok::<(), turnwright::Error>(())
    /// ```
    ///
    /// # Errors
    /// When nothing plausible would be left.
    pub fn after_cut(self, depth: DepthOfCut) -> Result<Self, Error> {
        Self::from_trade(self.0 - 2.0 * depth.0).map_err(|_| {
            Error::new(
                ErrorKind::Contradiction,
                "depth_of_cut",
                depth.to_string(),
                format!("a depth that leaves some of the diameter {self}"),
                "a depth of cut is radial: the diameter falls by twice the depth",
            )
        })
    }

    /// The depth of cut that leaves `smaller`, if any metal is to go.
    #[must_use]
    pub fn depth_to(self, smaller: Self) -> Option<DepthOfCut> {
        let depth = round_size(self.0 - smaller.0) / 2.0;
        (depth > 0.0).then(|| DepthOfCut::computed_trade(depth))
    }

    /// This diameter and `error` more.
    #[must_use]
    pub fn with_error(self, error: DiameterError) -> Self {
        Self::computed_trade(self.0 + error.0)
    }
}

impl Radius {
    /// Twice this radius.
    ///
    /// ```
    /// let r = turnwright::Radius::from_mm(20.0)?;
    /// assert_eq!(r.diameter().mm(), 40.0);
    /// # Ok::<(), turnwright::Error>(())
    /// ```
    #[must_use]
    pub fn diameter(self) -> Diameter {
        Diameter::computed_trade(self.0 * 2.0)
    }
}

impl Deflection {
    /// What this deflection adds to the diameter: twice as much.
    ///
    /// ```
    /// let bent = turnwright::Deflection::from_mm(0.02)?;
    /// assert_eq!(bent.diameter_error().mm(), 0.04);
    /// # Ok::<(), turnwright::Error>(())
    /// ```
    #[must_use]
    pub fn diameter_error(self) -> DiameterError {
        DiameterError::computed_trade(self.0 * 2.0)
    }
}
