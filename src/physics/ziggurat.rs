//! Many draws of the normal law and of those that follow from it.
//!
//! The ziggurat of Marsaglia and Tsang (Journal of Statistical Software 5, 2000, from memory) with
//! 256 layers; layer and value come from different bits (Doornik 2005, from memory). Its tables
//! are made at the start of a run with mathematics that is the same on every machine.

use super::maths::{portable, sqrt};
use super::random::Draws;

const LAYERS: usize = 256;
/// Where the tail begins, and the area of a layer (from memory; a test sums them up).
const TAIL: f64 = 3.654_152_885_361_009;
const AREA: f64 = 0.004_928_673_233_974_655;

/// A stream of draws.
pub(super) struct Ziggurat {
    draws: Draws,
    /// The right edges of the layers, from the lowest up, and zero.
    edges: [f64; LAYERS + 1],
    /// exp(-x^2/2) there.
    heights: [f64; LAYERS + 1],
}

impl Ziggurat {
    pub(super) fn new(seed: u64) -> Self {
        let height = |x: f64| portable::exp(-0.5 * x * x);
        let mut edges = [0.0; LAYERS + 1];
        // The lowest layer is as wide as a rectangle of its area, the tail included.
        edges[0] = AREA / height(TAIL);
        edges[1] = TAIL;
        for i in 2..LAYERS {
            let x = edges[i - 1];
            edges[i] = sqrt(-2.0 * portable::ln(AREA / x + height(x)));
        }
        Self {
            draws: Draws::new(seed),
            edges,
            heights: edges.map(height),
        }
    }

    /// Uniform, above -1 and below 1.
    #[inline]
    pub(super) fn both_ways(&mut self) -> f64 {
        two_sided(self.draws.next())
    }

    /// Uniform, above 0 and below 1.
    #[inline]
    fn uniform(&mut self) -> f64 {
        ((self.draws.next() >> 12) as f64 + 0.5) / (1_u64 << 52) as f64
    }

    /// Of the standard normal law.
    #[inline]
    pub(super) fn normal(&mut self) -> f64 {
        let bits = self.draws.next();
        let layer = (bits & 0xff) as usize;
        let x = two_sided(bits) * self.edges[layer];
        if x.abs() < self.edges[layer + 1] {
            return x;
        }
        self.outside(layer, x)
    }

    /// The one draw of a hundred that does not lie wholly inside of its layer.
    #[cold]
    fn outside(&mut self, mut layer: usize, mut x: f64) -> f64 {
        loop {
            if layer == 0 {
                return self.tail().copysign(x);
            }
            let (low, high) = (self.heights[layer], self.heights[layer + 1]);
            if low + self.uniform() * (high - low) < portable::exp(-0.5 * x * x) {
                return x;
            }
            let bits = self.draws.next();
            layer = (bits & 0xff) as usize;
            x = two_sided(bits) * self.edges[layer];
            if x.abs() < self.edges[layer + 1] {
                return x;
            }
        }
    }

    /// Beyond the last edge (Marsaglia 1964, from memory).
    fn tail(&mut self) -> f64 {
        loop {
            let beyond = -portable::ln(self.uniform()) / TAIL;
            if -2.0 * portable::ln(self.uniform()) > beyond * beyond {
                return TAIL + beyond;
            }
        }
    }

    /// Of the arcsine law over -1 to 1.
    pub(super) fn arcsine(&mut self) -> f64 {
        portable::cos(std::f64::consts::PI * self.uniform())
    }

    /// Of Student's law: a normal draw over the root of a chi-squared one by its degrees.
    pub(super) fn student(&mut self, nu: f64) -> f64 {
        let z = self.normal();
        z / sqrt(2.0 * self.gamma(0.5 * nu) / nu)
    }

    /// Of the gamma law (Marsaglia and Tsang, ACM Transactions on Mathematical Software 26, 2000,
    /// from memory).
    fn gamma(&mut self, shape: f64) -> f64 {
        if shape < 1.0 {
            let power = portable::pow(self.uniform(), 1.0 / shape);
            return self.gamma(shape + 1.0) * power;
        }
        let d = shape - 1.0 / 3.0;
        let c = 1.0 / sqrt(9.0 * d);
        loop {
            let x = self.normal();
            let root = 1.0 + c * x;
            if root <= 0.0 {
                continue;
            }
            let (v, square) = (root * root * root, x * x);
            let u = self.uniform();
            if u < 1.0 - 0.0331 * square * square
                || portable::ln(u) < 0.5 * square + d * (1.0 - v + portable::ln(v))
            {
                return d * v;
            }
        }
    }
}

/// The upper 53 bits as a number above -1 and below 1; never zero.
#[inline]
fn two_sided(bits: u64) -> f64 {
    ((bits as i64 >> 11) as f64 + 0.5) / (1_u64 << 52) as f64
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn the_layers_have_one_area_and_end_at_the_top() {
        let z = Ziggurat::new(0);
        for i in 1..LAYERS {
            let area = z.edges[i] * (z.heights[i + 1] - z.heights[i]);
            // The constants have sixteen digits; the error gathers from layer to layer, and no count shows it.
            assert!((area / AREA - 1.0).abs() < 1e-8, "{i} {area}");
        }
        // The lowest: rectangle and tail, sqrt(pi/2) erfc(r/sqrt 2).
        let tail = (std::f64::consts::PI / 2.0).sqrt()
            * portable::erfc(TAIL * std::f64::consts::FRAC_1_SQRT_2);
        assert!(((TAIL * z.heights[1] + tail) / AREA - 1.0).abs() < 1e-13);
    }

    fn moments(count: u32, mut draw: impl FnMut() -> f64) -> (f64, f64, f64) {
        let (mut mean, mut square, mut fourth) = (0.0, 0.0, 0.0);
        for _ in 0..count {
            let x = draw();
            mean += x;
            square += x * x;
            fourth += x * x * x * x;
        }
        let n = f64::from(count);
        (mean / n, square / n, fourth / n)
    }

    #[test]
    fn draws_have_the_moments_of_their_laws() {
        let mut z = Ziggurat::new(11);
        let n = 400_000;
        let root = f64::from(n).sqrt();
        // Textbook moments; bounds of 4.5 standard errors.
        let (mean, square, fourth) = moments(n, || z.normal());
        assert!(mean.abs() < 4.5 / root, "{mean}");
        assert!(
            (square - 1.0).abs() < 4.5 * 2.0_f64.sqrt() / root,
            "{square}"
        );
        assert!(
            (fourth - 3.0).abs() < 4.5 * 96.0_f64.sqrt() / root,
            "{fourth}"
        );
        let (mean, square, _) = moments(n, || z.both_ways());
        assert!(mean.abs() < 4.5 * (1.0_f64 / 3.0).sqrt() / root, "{mean}");
        assert!(
            (square - 1.0 / 3.0).abs() < 4.5 * (4.0_f64 / 45.0).sqrt() / root,
            "{square}"
        );
        let (mean, square, _) = moments(n, || z.arcsine());
        assert!(mean.abs() < 4.5 * 0.5_f64.sqrt() / root, "{mean}");
        assert!(
            (square - 0.5).abs() < 4.5 * 0.125_f64.sqrt() / root,
            "{square}"
        );
        // Student's law: nu/(nu - 2), fourth moment 3 nu^2/((nu - 2)(nu - 4)).
        let (_, square, _) = moments(n, || z.student(12.0));
        let spread = (3.0 * 144.0 / 80.0 - 1.44_f64).sqrt();
        assert!((square - 1.2).abs() < 4.5 * spread / root, "{square}");
        // With one degree of freedom half of all lie within +-1.
        let within = (0..n).filter(|_| z.student(1.0).abs() < 1.0).count() as f64 / f64::from(n);
        assert!((within - 0.5).abs() < 4.5 * 0.5 / root, "{within}");
    }

    #[test]
    fn the_tail_is_filled_as_it_should_be() {
        let mut z = Ziggurat::new(5);
        let n = 2_000_000;
        // Q(3) and Q(4) to both sides, from tables of the normal law.
        for (edge, share) in [(3.0, 0.002_699_796), (4.0, 6.334_25e-5)] {
            let found = (0..n).filter(|_| z.normal().abs() > edge).count() as f64 / f64::from(n);
            let error = (share / f64::from(n)).sqrt();
            assert!((found - share).abs() < 4.5 * error, "{edge} {found}");
        }
    }

    #[test]
    fn the_stream_is_the_same_everywhere() {
        let mut z = Ziggurat::new(7);
        let bits: u64 = (0..1000).fold(0, |all: u64, _| {
            all.rotate_left(1) ^ z.normal().to_bits() ^ z.student(3.5).to_bits()
        });
        // Recorded once.
        assert_eq!(bits, RECORDED, "{bits}");
    }

    const RECORDED: u64 = 15_325_447_703_226_411_513;
}
