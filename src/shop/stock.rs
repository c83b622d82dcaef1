//! The bar before turning.

use crate::quantity::{Diameter, RunOut, SkinThickness, WorkLength};

/// The bar before turning.
///
/// A bright bar has no skin and hardly runs out. A hot-rolled, forged or cast one has a hard skin
/// that the first cut must go under all round, so that its edge does not rub on scale.
///
/// ```
/// use turnwright::{Diameter, Stock, WorkLength};
/// let bar = Stock::new(Diameter::from_mm(34.0)?, WorkLength::from_mm(120.0)?);
/// assert_eq!(bar.length().mm(), 120.0);
/// let rolled = bar.with_skin("0.5 mm".parse()?).with_run_out("0.3 mm".parse()?);
/// assert!(rolled.skin().is_some());
/// let inch = Stock::new("1 3/8 in".parse()?, "5 in".parse()?).with_run_out("0.01 in".parse()?);
/// assert_eq!(inch.run_out(), Some("0.01 in".parse()?));
/// # Ok::<(), turnwright::Error>(())
/// ```
#[derive(Debug, Clone, PartialEq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize))]
pub struct Stock {
    diameter: Diameter,
    length: WorkLength,
    #[cfg_attr(feature = "serde", serde(skip_serializing_if = "Option::is_none"))]
    skin: Option<SkinThickness>,
    #[cfg_attr(feature = "serde", serde(skip_serializing_if = "Option::is_none"))]
    run_out: Option<RunOut>,
}

impl Stock {
    /// A round bar of this diameter and length.
    #[must_use]
    pub fn new(diameter: Diameter, length: WorkLength) -> Self {
        Self {
            diameter,
            length,
            skin: None,
            run_out: None,
        }
    }

    crate::shop::setters_and_readers! {
        /// The thickness of the skin that the first cut must go under.
        with_skin skin: SkinThickness;
        /// The run-out as clamped: the whole travel of an indicator over one turn.
        with_run_out run_out: RunOut;
    }

    /// Its diameter.
    #[must_use]
    pub fn diameter(&self) -> Diameter {
        self.diameter
    }

    /// Its length.
    #[must_use]
    pub fn length(&self) -> WorkLength {
        self.length
    }
}

#[cfg(feature = "serde")]
impl Stock {
    pub(crate) fn read(
        tree: &crate::quantity::fields::Tree,
        path: &str,
    ) -> Result<Self, crate::error::Error> {
        let f = crate::quantity::fields::Fields::of(tree, path, "the stock")?;
        let stock = Self {
            diameter: f.need_quantity("diameter")?,
            length: f.need_quantity("length")?,
            skin: f.quantity("skin")?,
            run_out: f.quantity("run_out")?,
        };
        f.finish()?;
        Ok(stock)
    }
}
