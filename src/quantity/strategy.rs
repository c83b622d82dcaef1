//! Strategies for property tests: every quantity over its whole plausible range.

use super::Quantity;
use proptest::prelude::*;

/// The whole plausible range; the logarithm is uniform where the range spans decades, the ends
/// and zero come up often.
pub(super) fn whole_range<Q: Quantity + std::fmt::Debug + 'static>() -> BoxedStrategy<Q> {
    let (least, largest) = (Q::ROW.least(), Q::ROW.largest());
    let ends = prop_oneof![Just(least), Just(largest)];
    let inside: BoxedStrategy<f64> = if least > 0.0 {
        (least.ln()..=largest.ln())
            .prop_map(move |x| x.exp().clamp(least, largest))
            .boxed()
    } else {
        (least..=largest).boxed()
    };
    let zero = if Q::ROW.accepts(0.0) { 0.0 } else { least };
    prop_oneof![1 => ends, 1 => Just(zero), 18 => inside]
        .prop_filter_map("inside the range", |value| Q::from_trade(value).ok())
        .boxed()
}
