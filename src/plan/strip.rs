//! The strip under a picture: how far the bar springs along each surface, in the lengths of the picture.

use super::paper::{DASHED, LINE, PLAIN, THICK, THIN, WHOLE, width_of};
use super::picture::Drawing;
use super::turning::plain;
use crate::quantity::DiameterError;

/// Height of the strip.
const STRIP: f64 = 20.0;

impl Drawing<'_> {
    /// How far the bar springs in the last cut of each surface, under the lengths it belongs to.
    pub(super) fn strip(&mut self, mut y: f64) -> f64 {
        let (seen, u) = (self.seen, self.units);
        if seen.springs.is_empty() {
            return self
                .paper
                .lines(y, PLAIN, "Only the face is turned in this clamping.");
        }
        y = self.paper.lines(
            y,
            PLAIN,
            "Spring of the bar in the last cut of each surface, gone over once: by so much the diameter comes out larger than where \
             nothing springs. The dashed line is the width of its zone. What is alike all along is taken out where the \
             ring is set on a size measured after a like cut.",
        );
        let most = seen.springs.iter().map(|s| s.range().1.mm());
        let most = most.fold(0.0, f64::max);
        let narrowest = seen.springs.iter().map(|s| s.zone.mm());
        let narrowest = narrowest.fold(f64::INFINITY, f64::min);
        let top = 1.05 * most.max(narrowest);
        let (high, zero) = (y + 4.0, y + 4.0 + STRIP);
        let at = |mm: f64| zero - STRIP * mm / top;
        let left = self.x(seen.jaws);
        self.paper.line(
            "strip",
            &[(left, high), (left, zero), (self.x(0.0), zero)],
            THIN,
            WHOLE,
        );
        for (mm, text) in [
            (0.0, String::from("0")),
            (
                narrowest,
                plain(DiameterError::computed_trade(narrowest), u).to_string(),
            ),
        ] {
            let width = width_of(&text, PLAIN);
            // A zone far narrower than the spring would have its figure on that of the zero.
            if mm > 0.0 && zero - at(mm) < LINE {
                continue;
            }
            self.paper
                .line("tick", &[(left - 1.2, at(mm)), (left, at(mm))], THIN, WHOLE);
            self.paper
                .text((left - 2.0 - width, at(mm) + 0.35 * PLAIN), PLAIN, &text);
        }
        for spring in &seen.springs {
            let curve: Vec<_> = spring
                .at
                .iter()
                .map(|(depth, spring)| (self.x(*depth), at(spring.mm())))
                .collect();
            let zone = spring.zone.mm();
            if let (Some(first), Some(last)) = (curve.first(), curve.last())
                && zone <= top
            {
                let zone = [(first.0, at(zone)), (last.0, at(zone))];
                self.paper.line("zone", &zone, THIN, DASHED);
            }
            if let (Some(first), Some(last)) = (curve.first(), curve.last()) {
                for x in [first.0, last.0] {
                    self.paper
                        .line("tick", &[(x, zero), (x, zero + 0.8)], THIN, WHOLE);
                }
            }
            self.paper.line("spring", &curve, THICK, WHOLE);
        }
        let mut y = zero + 1.5;
        for spring in &seen.springs {
            y += LINE;
            let (low, high) = spring.range();
            let share = 100.0 * (high.mm() - low.mm()) / spring.zone.mm();
            let text = format!(
                "dia {}: zone {}, spring {} to {}, that is {share:.0} % of the zone between its places",
                plain(spring.nominal, u),
                plain(spring.zone, u),
                plain(low, u),
                plain(high, u),
            );
            y = self.paper.lines(y, PLAIN, &text);
        }
        y
    }
}
