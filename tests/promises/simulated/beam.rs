//! A bar in the chuck, by finite elements of its own: Euler-Bernoulli beam elements, cubic in between,
//! with the springs of the chuck at one end and that of the centre at the other; between two centres nothing holds
//! against tilting.

/// What holds a bar: in N/mm and N mm/rad; without a centre the end is free.
#[derive(Debug, Clone, Copy)]
pub struct Held {
    pub modulus: f64,
    pub chuck: f64,
    pub chuck_rotational: f64,
    pub centre: Option<f64>,
}

/// Rows of the band that hold the diagonal and what lies to the left of it: an element couples four
/// neighbouring freedoms.
const BAND: usize = 4;

/// By how much a unit force at each place moves the bar there, in mm/N.
///
/// `sections` are diameters and lengths from the jaws outwards in mm, `places` distances from the jaws.
pub fn compliances(held: &Held, sections: &[(f64, f64)], places: &[f64]) -> Vec<f64> {
    let mut cuts = vec![0.0];
    let mut end = 0.0;
    for (_, length) in sections {
        end += length;
        cuts.push(end);
    }
    cuts.extend(places.iter().map(|at| at.clamp(0.0, end)));
    cuts.sort_by(f64::total_cmp);
    // Cubic elements are exact between nodes; a node at every step and place is all that is needed.
    cuts.dedup_by(|a, b| (*a - *b).abs() < 1e-9);
    let n = 2 * cuts.len();
    let mut k = vec![[0.0; BAND]; n];
    let mut add = |i: usize, j: usize, value: f64| {
        let (low, high) = (i.min(j), i.max(j));
        k[high][BAND - 1 - (high - low)] += value;
    };
    for e in 0..cuts.len() - 1 {
        let (from, to) = (cuts[e], cuts[e + 1]);
        let (middle, l) = (0.5 * (from + to), to - from);
        let mut start = 0.0;
        let mut diameter = sections[sections.len() - 1].0;
        for (d, length) in sections {
            start += length;
            if middle < start {
                diameter = *d;
                break;
            }
        }
        let ei = held.modulus * std::f64::consts::PI * diameter.powi(4) / 64.0;
        let s = ei / l.powi(3);
        let m = [
            [12.0, 6.0 * l, -12.0, 6.0 * l],
            [6.0 * l, 4.0 * l * l, -6.0 * l, 2.0 * l * l],
            [-12.0, -6.0 * l, 12.0, -6.0 * l],
            [6.0 * l, 2.0 * l * l, -6.0 * l, 4.0 * l * l],
        ];
        for (i, row) in m.iter().enumerate() {
            for (j, value) in row.iter().enumerate().take(i + 1) {
                add(2 * e + i, 2 * e + j, s * value);
            }
        }
    }
    add(0, 0, held.chuck);
    add(1, 1, held.chuck_rotational);
    if let Some(centre) = held.centre {
        add(n - 2, n - 2, centre);
    }
    let lower = cholesky(k);
    places
        .iter()
        .map(|at| {
            let at = at.clamp(0.0, end);
            let node = cuts.iter().position(|c| (c - at).abs() < 2e-9).unwrap();
            let mut f = vec![0.0; n];
            f[2 * node] = 1.0;
            solve(&lower, &mut f);
            f[2 * node]
        })
        .collect()
}

fn cholesky(mut k: Vec<[f64; BAND]>) -> Vec<[f64; BAND]> {
    for i in 0..k.len() {
        for j in i.saturating_sub(BAND - 1)..=i {
            let mut sum = k[i][BAND - 1 - (i - j)];
            for m in i.saturating_sub(BAND - 1)..j {
                if j - m < BAND {
                    sum -= k[i][BAND - 1 - (i - m)] * k[j][BAND - 1 - (j - m)];
                }
            }
            k[i][BAND - 1 - (i - j)] = if i == j {
                sum.sqrt()
            } else {
                sum / k[j][BAND - 1]
            };
        }
    }
    k
}

fn solve(lower: &[[f64; BAND]], f: &mut [f64]) {
    let n = f.len();
    for i in 0..n {
        for j in i.saturating_sub(BAND - 1)..i {
            f[i] -= lower[i][BAND - 1 - (i - j)] * f[j];
        }
        f[i] /= lower[i][BAND - 1];
    }
    for i in (0..n).rev() {
        for j in i + 1..(i + BAND).min(n) {
            f[i] -= lower[j][BAND - 1 - (j - i)] * f[j];
        }
        f[i] /= lower[i][BAND - 1];
    }
}

/// So stiff that what it leaves is below a part in 1e9 of any bar here.
const RIGID: f64 = 1e17;

fn clamped(centre: Option<f64>) -> Held {
    Held {
        modulus: 210_000.0,
        chuck: RIGID,
        chuck_rotational: RIGID * 1e3,
        centre,
    }
}

/// Roark's Formulas for Stress and Strain, table of beams (from memory): a cantilever bends by
/// F l^3 / 3 E I under its load; one propped at its free end, loaded at a from the clamped end, by
/// F a^3 b^2 (4 l - a) / 12 E I l^3 under the load, b = l - a.
#[test]
fn the_simulated_bar_bends_as_text_books_have_it() {
    let (d, l) = (20.0_f64, 150.0_f64);
    let ei = 210_000.0 * std::f64::consts::PI * d.powi(4) / 64.0;
    let places: Vec<f64> = (1..=9).map(|i| l * f64::from(i) / 10.0).collect();
    let free = compliances(&clamped(None), &[(d, l)], &places);
    for (a, found) in places.iter().zip(&free) {
        let book = a.powi(3) / (3.0 * ei);
        assert!((found / book - 1.0).abs() < 1e-9, "{a}: {found} {book}");
    }
    let propped = compliances(&clamped(Some(RIGID)), &[(d, l)], &places);
    for (a, found) in places.iter().zip(&propped) {
        let b = l - a;
        let book = a.powi(3) * b * b * (4.0 * l - a) / (12.0 * ei * l.powi(3));
        assert!((found / book - 1.0).abs() < 1e-9, "{a}: {found} {book}");
    }
    // Simply supported at both ends it bends by F a^2 b^2 / 3 E I l under its load.
    let between = Held {
        chuck_rotational: 0.0,
        ..clamped(Some(RIGID))
    };
    let between = compliances(&between, &[(d, l)], &places);
    for (a, found) in places.iter().zip(&between) {
        let book = (a * (l - a)).powi(2) / (3.0 * ei * l);
        assert!((found / book - 1.0).abs() < 1e-6, "{a}: {found} {book}");
    }
    // A spring that gives as much as the bar, at its end: 1/k + l^3 / 3 E I; turning: l^2 / k more.
    let held = Held {
        modulus: 210_000.0,
        chuck: 30_000.0,
        chuck_rotational: 4e8,
        centre: None,
    };
    let found = compliances(&held, &[(d, l)], &[l])[0];
    let book = l.powi(3) / (3.0 * ei) + 1.0 / 30_000.0 + l * l / 4e8;
    assert!((found / book - 1.0).abs() < 1e-9, "{found} {book}");
}

/// Castigliano's theorem over two lengths of a stepped cantilever: the integral of (l - x)^2 / E I.
#[test]
fn a_stepped_simulated_bar_bends_by_the_sum_of_its_lengths() {
    let ei = |d: f64| 210_000.0 * std::f64::consts::PI * d.powi(4) / 64.0;
    let found = compliances(&clamped(None), &[(30.0, 40.0), (18.0, 60.0)], &[100.0])[0];
    let book = (100.0_f64.powi(3) - 60.0_f64.powi(3)) / (3.0 * ei(30.0))
        + 60.0_f64.powi(3) / (3.0 * ei(18.0));
    assert!((found / book - 1.0).abs() < 1e-9, "{found} {book}");
}
