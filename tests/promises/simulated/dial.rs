//! Chance with a seed, and a cross slide with its dial: marks, backlash, screw, and the hand that
//! brings them to their line.

/// Numbers that look random and are the same on every machine: SplitMix64 (Steele, Lea and Flood
/// 2014, from memory).
#[derive(Debug, Clone)]
pub struct Chance(u64);

impl Chance {
    pub fn new(seed: u64) -> Self {
        Self(seed)
    }

    fn next(&mut self) -> u64 {
        self.0 = self.0.wrapping_add(0x9E37_79B9_7F4A_7C15);
        let mut z = self.0;
        z = (z ^ (z >> 30)).wrapping_mul(0xBF58_476D_1CE4_E5B9);
        z = (z ^ (z >> 27)).wrapping_mul(0x94D0_49BB_1331_11EB);
        z ^ (z >> 31)
    }

    /// From 0 up to 1.
    pub fn share(&mut self) -> f64 {
        (self.next() >> 11) as f64 / (1_u64 << 53) as f64
    }

    pub fn between(&mut self, low: f64, high: f64) -> f64 {
        low + (high - low) * self.share()
    }

    /// Anything within `half` of zero.
    pub fn within(&mut self, half: f64) -> f64 {
        self.between(-half, half)
    }

    /// Normal, by Box and Muller.
    pub fn normal(&mut self, deviation: f64) -> f64 {
        let r = (-2.0 * (1.0 - self.share()).ln()).sqrt();
        deviation * r * (std::f64::consts::TAU * self.share()).cos()
    }

    pub fn one_of<T: Copy>(&mut self, list: &[T]) -> T {
        list[(self.share() * list.len() as f64) as usize]
    }

    pub fn one_in(&mut self, share: f64) -> bool {
        self.share() < share
    }
}

// The magnitudes by which a hand and a machine err are those that the plan takes from judgement,
// written anew: what is tried here is what the plan makes of them, not whether they are right.

/// A mark is brought to its line within a tenth of a mark.
const LINE: f64 = 0.1;
/// A ring is set by tenths within two tenths of a mark.
const TENTHS: f64 = 0.2;
/// Coming in from the same side, a slide stops within 2 % of its backlash.
const BACKLASH_LEFT: f64 = 0.02;
/// A cross screw is off by up to a thousandth of its travel.
const SCREW: f64 = 0.001;
/// A light touch finds the surface within a hundredth of a millimetre.
const TOUCH: f64 = 0.01;

/// What a dial is: travel of the slide for a mark in mm, marks in a turn, backlash in mm.
#[derive(Debug, Clone, Copy)]
pub struct Dial {
    pub per_mark: f64,
    pub marks: i64,
    pub backlash: f64,
    pub settable: bool,
}

/// A cross slide. Its place is counted inwards from where the tip touched the bar, in mm by the screw.
#[derive(Debug, Clone)]
pub struct Slide {
    pub dial: Dial,
    /// What the screw really moves for a mark: another dial than was thought makes it another.
    really: f64,
    screw: f64,
    /// Radius of the tip at place 0.
    touched: f64,
    /// Place at which the dial reads 0.
    zero: f64,
    /// What of that comes from turns that were miscounted.
    miscounted: f64,
    place: f64,
    /// Approaches that did not move inwards by more than the backlash.
    pub outwards: usize,
}

impl Slide {
    pub fn new(dial: Dial, really: f64, chance: &mut Chance) -> Self {
        Self {
            dial,
            really,
            screw: 1.0 + chance.within(SCREW),
            touched: 0.0,
            zero: 0.0,
            miscounted: 0.0,
            place: -1e3,
            outwards: 0,
        }
    }

    /// Touches a bar of this radius, and sets the dial there to `mark`.
    pub fn touch(&mut self, radius: f64, mark: f64, chance: &mut Chance) {
        self.touched = radius + chance.within(TOUCH);
        self.place = 0.0;
        self.set_ring(mark, chance);
    }

    /// Turns the ring to `mark`, the handle held.
    pub fn set_ring(&mut self, mark: f64, chance: &mut Chance) {
        let error = match mark == mark.round() {
            true => chance.within(LINE),
            false => chance.within(TENTHS),
        };
        self.zero = self.place - (mark + error) * self.really;
        self.miscounted = 0.0;
    }

    /// As the words of a sheet have it, always by tenths.
    pub fn set_ring_by_tenths(&mut self, mark: f64, chance: &mut Chance) {
        self.zero = self.place - (mark + chance.within(TENTHS)) * self.really;
        self.miscounted = 0.0;
    }

    pub fn withdraw(&mut self) {
        self.place -= self.dial.marks as f64 * self.really;
    }

    /// Comes in to a mark, or between two.
    pub fn come_in(&mut self, mark: f64, chance: &mut Chance) {
        let line = match mark == mark.round() {
            true => LINE,
            false => TENTHS,
        };
        let error =
            chance.within(line) * self.really + chance.within(BACKLASH_LEFT * self.dial.backlash);
        let to = self.zero + mark * self.really + error;
        if to <= self.place + self.dial.backlash {
            self.outwards += 1;
        }
        self.place = to;
    }

    /// A turn of the handle that was counted and not made, or made and not counted.
    pub fn miscount(&mut self, turns: f64) {
        let off = turns * self.dial.marks as f64 * self.really;
        self.zero += off;
        self.miscounted += off;
    }

    /// Turns counted anew from where the tip touches.
    pub fn count_anew(&mut self) {
        self.zero -= self.miscounted;
        self.miscounted = 0.0;
    }

    /// Radius of the tip.
    pub fn tip(&self) -> f64 {
        self.touched - self.place * self.screw
    }
}
