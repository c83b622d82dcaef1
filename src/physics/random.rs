//! Numbers drawn from a seed, the same on every machine, and the normal law.
//!
//! The generator is SplitMix64 (Steele, Lea and Flood 2014, from memory). Normal deviates are the
//! quantile of a uniform one by Wichura's algorithm AS 241 (Applied Statistics 37, 1988, from
//! memory), with a logarithm of sums and products only: no machine's library has a say in the last
//! digit.

use std::f64::consts::{FRAC_1_SQRT_2, LN_2, PI};

use super::maths;

/// A stream of numbers.
pub(super) struct Draws(u64);

impl Draws {
    pub(super) fn new(seed: u64) -> Self {
        Self(seed)
    }

    #[inline]
    pub(super) fn next(&mut self) -> u64 {
        self.0 = self.0.wrapping_add(0x9e37_79b9_7f4a_7c15);
        let mut z = self.0;
        z = (z ^ (z >> 30)).wrapping_mul(0xbf58_476d_1ce4_e5b9);
        z = (z ^ (z >> 27)).wrapping_mul(0x94d0_49bb_1331_11eb);
        z ^ (z >> 31)
    }

    /// Uniform, above 0 and below 1.
    fn uniform(&mut self) -> f64 {
        ((self.next() >> 12) as f64 + 0.5) / (1_u64 << 52) as f64
    }

    /// Of the standard normal law.
    pub(super) fn normal(&mut self) -> f64 {
        quantile(self.uniform())
    }

    /// Of the standard normal law, within `most` either way: what lies beyond is drawn again.
    pub(super) fn normal_within(&mut self, most: f64) -> f64 {
        loop {
            let z = self.normal();
            if z.abs() < most {
                return z;
            }
        }
    }
}

/// The value below which a share `p` of the standard normal law lies, 0 < p < 1.
pub(super) fn quantile(p: f64) -> f64 {
    let q = p - 0.5;
    if q.abs() <= 0.425 {
        let r = 0.180_625 - q * q;
        return q * ratio(r, &MIDDLE);
    }
    let z = upper_quantile(if q < 0.0 { p } else { 1.0 - p });
    if q < 0.0 { -z } else { z }
}

/// The value above which a small share of the standard normal law lies.
pub(super) fn upper_quantile(share: f64) -> f64 {
    if share > 0.075 {
        return -quantile(share);
    }
    let r = (-ln(share)).sqrt();
    if r <= 5.0 {
        ratio(r - 1.6, &TAIL)
    } else {
        ratio(r - 5.0, &FAR)
    }
}

fn ratio(r: f64, [above, below]: &[[f64; 8]; 2]) -> f64 {
    let value = |c: &[f64; 8]| c.iter().rev().fold(0.0, |sum, c| sum * r + c);
    value(above) / value(below)
}

/// The share of the standard normal law above x, for x of 2 and more: phi(x) over a continued fraction.
pub(super) fn share_above(x: f64) -> f64 {
    let fraction = (1..200).rev().fold(x, |below, k| x + f64::from(k) / below);
    maths::exp(-x * x / 2.0) / ((2.0 * PI).sqrt() * fraction)
}

/// The natural logarithm by sums and products alone: x = m 2^k, ln m = 2 artanh((m - 1)/(m + 1)).
fn ln(x: f64) -> f64 {
    let bits = x.to_bits();
    let mut exponent = f64::from((bits >> 52) as i32 - 1022);
    // Between a half and one.
    let mut m = f64::from_bits((bits & ((1 << 52) - 1)) | (1022 << 52));
    if m < FRAC_1_SQRT_2 {
        m *= 2.0;
        exponent -= 1.0;
    }
    let s = (m - 1.0) / (m + 1.0);
    let square = s * s;
    // s is below 0.172: the first term left out is below 1e-18.
    let series = (0..12).rev().fold(0.0, |sum, k| {
        sum * square + 1.0 / (2.0 * f64::from(k) + 1.0)
    });
    exponent * LN_2 + 2.0 * s * series
}

const MIDDLE: [[f64; 8]; 2] = [
    [
        3.387_132_872_796_366_6,
        133.141_667_891_784_38,
        1_971.590_950_306_551_4,
        13_731.693_765_509_46,
        45_921.953_931_549_87,
        67_265.770_927_008_7,
        33_430.575_583_588_13,
        2_509.080_928_730_122_7,
    ],
    [
        1.0,
        42.313_330_701_600_91,
        687.187_007_492_057_9,
        5_394.196_021_424_751,
        21_213.794_301_586_597,
        39_307.895_800_092_71,
        28_729.085_735_721_943,
        5_226.495_278_852_854,
    ],
];

const TAIL: [[f64; 8]; 2] = [
    [
        1.423_437_110_749_683_6,
        4.630_337_846_156_546,
        5.769_497_221_460_691,
        3.647_848_324_763_204_5,
        1.270_458_252_452_368_4,
        0.241_780_725_177_450_6,
        0.022_723_844_989_269_184,
        7.745_450_142_783_414e-4,
    ],
    [
        1.0,
        2.053_191_626_637_759,
        1.676_384_830_183_803_8,
        0.689_767_334_985_1,
        0.148_103_976_427_480_08,
        0.015_198_666_563_616_457,
        5.475_938_084_995_345e-4,
        1.050_750_071_644_416_9e-9,
    ],
];

const FAR: [[f64; 8]; 2] = [
    [
        6.657_904_643_501_103,
        5.463_784_911_164_114,
        1.784_826_539_917_291_3,
        0.296_560_571_828_504_87,
        0.026_532_189_526_576_124,
        0.001_242_660_947_388_078_4,
        2.711_555_568_743_487_6e-5,
        2.010_334_399_292_288_1e-7,
    ],
    [
        1.0,
        0.599_832_206_555_887_9,
        0.136_929_880_922_735_8,
        0.014_875_361_290_850_615,
        7.868_691_311_456_133e-4,
        1.846_318_317_510_054_8e-5,
        1.421_511_758_316_446e-7,
        2.044_263_103_389_939_8e-15,
    ],
];

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn the_stream_is_the_same_everywhere() {
        // The first outputs of SplitMix64 for the seed 1234567, as published with it, from memory.
        let mut draws = Draws::new(1_234_567);
        assert_eq!(draws.next(), 6_457_827_717_110_365_317);
        assert_eq!(draws.next(), 3_203_168_211_198_807_973);
        assert_eq!(draws.next(), 9_817_491_932_198_370_423);
        // Bits recorded once: sums, products and roots are the same on every machine.
        let mut draws = Draws::new(7);
        let bits: u64 = (0..1000).fold(0, |all, _| all.rotate_left(1) ^ draws.normal().to_bits());
        assert_eq!(bits, RECORDED);
    }

    const RECORDED: u64 = 2_576_604_240_375_271_773;

    #[test]
    fn quantiles_are_those_of_the_normal_law() {
        // Any table of the normal law: 97.5 %, 95 %, 99.9 %; and far out, scipy.special.ndtri.
        for (p, z) in [
            (0.975, 1.959_963_984_540_054),
            (0.95, 1.644_853_626_951_472_2),
            (0.999, 3.090_232_306_167_813),
            (0.6, 0.253_347_103_135_799_7),
            (0.5, 0.0),
        ] {
            assert!((quantile(p) - z).abs() < 2e-15 * (1.0 + z), "{p}");
            assert!((quantile(1.0 - p) + z).abs() < 1e-13, "{p}");
        }
        assert!((upper_quantile(1e-20) - 9.262_340_089_798_408).abs() < 1e-14);
        for share in [1e-12, 1e-6, 0.01, 0.02] {
            let back = share_above(upper_quantile(share));
            // A share's relative error is that of z, times z^2.
            assert!((back / share - 1.0).abs() < 1e-13, "{share} {back}");
        }
    }

    #[test]
    fn the_logarithm_is_one() {
        for x in [1e-300, 1e-17, 0.1, 0.5, 0.7, 0.71, 1.0, 1.4, 3.0, 1e9] {
            assert!(
                (ln(x) - f64::ln(x)).abs() <= 4e-16 * f64::ln(x).abs(),
                "{x}"
            );
        }
    }

    #[test]
    fn draws_have_their_mean_and_deviation() {
        let mut draws = Draws::new(3);
        let many: Vec<f64> = (0..100_000).map(|_| draws.normal()).collect();
        let mean = many.iter().sum::<f64>() / 1e5;
        let square = many.iter().map(|z| z * z).sum::<f64>() / 1e5;
        // Four standard deviations of either: 4/sqrt(n), 4 sqrt(2/n).
        assert!(mean.abs() < 0.0127 && (square - 1.0).abs() < 0.0179);
        assert!((0..1000).all(|_| draws.normal_within(2.0).abs() < 2.0));
    }
}
