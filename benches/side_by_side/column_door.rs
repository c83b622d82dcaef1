//! The column door of C beside the typed loop.

use std::hint::black_box;

use turnwright::ffi::{tw_arc_height_column, tw_column, tw_out_column, tw_status};
use turnwright::physics::finish::{ToolOutline, arc_height, theoretical_roughness};
use turnwright::unit::kinds;
use turnwright::{CornerRadius, Feed, Quantity, Rt};

use crate::raw::raw_arc_height;
use crate::tools::{Outcome, allocations, duel, near, report};

/// The column door beside the typed loop, and that neither allocates.
pub fn columns(
    feeds: &[f64],
    radii: &[f64],
    typed_feeds: &[Feed],
    typed_radii: &[CornerRadius],
) -> Outcome<()> {
    let (mut through, mut typed) = (vec![0.0; feeds.len()], vec![0.0; feeds.len()]);
    let unit = |kind: usize| kinds()[kind].units()[0].code();
    let column = |values: &[f64], quantity, unit| tw_column {
        data: values.as_ptr().cast(),
        stride_bytes: 8,
        count: values.len(),
        quantity,
        unit,
    };
    let call = |feeds: &[f64], out: &mut [f64]| {
        let (feed, radius) = (
            column(feeds, Feed::ROW.code(), unit(2)),
            column(radii, CornerRadius::ROW.code(), unit(0)),
        );
        let rt = tw_out_column {
            data: out.as_mut_ptr().cast(),
            stride_bytes: 8,
            count: out.len(),
            quantity: Rt::ROW.code(),
            unit: unit(1),
        };
        // SAFETY: the columns live as long as the call and do not overlap.
        unsafe {
            tw_arc_height_column(
                &feed,
                &radius,
                &rt,
                std::ptr::null_mut(),
                0,
                std::ptr::null_mut(),
            )
        }
    };
    let expected: f64 = feeds
        .iter()
        .zip(radii)
        .filter_map(|(f, r)| raw_arc_height(*f, *r))
        .sum();
    let times = duel(
        60,
        feeds.len(),
        || {
            assert_eq!(call(black_box(feeds), &mut through), tw_status::TW_OK);
            assert!(near(black_box(&through).iter().sum(), expected));
        },
        || {
            let (feeds, radii) = (black_box(typed_feeds), black_box(typed_radii));
            for ((f, r), out) in feeds.iter().zip(radii).zip(&mut typed) {
                *out = arc_height(*f, *r).map_or(f64::NAN, Rt::um);
            }
            assert!(near(black_box(&typed).iter().sum(), expected));
        },
    );
    report(
        "ffi/arc_height_column",
        "C column",
        "typed",
        "ns/row",
        times,
        "none set",
    );

    let mut bad = feeds.to_vec();
    bad.iter_mut().step_by(3).for_each(|feed| *feed = f64::NAN);
    bad.iter_mut().step_by(7).for_each(|feed| *feed = 9.0);
    let outline = ToolOutline::new("0.8 mm".parse()?, "95 deg".parse()?, "5 deg".parse()?)?;
    let count = allocations(|| {
        assert_eq!(call(&bad, &mut through), tw_status::TW_ROWS_BAD);
        assert_eq!(call(feeds, &mut through), tw_status::TW_OK);
        for ((f, r), out) in typed_feeds.iter().zip(typed_radii).zip(&mut typed) {
            *out = arc_height(*f, *r).map_or(f64::NAN, Rt::um)
                + theoretical_roughness(*f, &outline).ra.um();
        }
    });
    println!(
        "ffi+physics/allocations in 4 columns of {} rows, bad rows among them: {count}, goal 0",
        feeds.len()
    );
    assert_eq!(count, 0, "a kernel or a column allocates");
    Ok(())
}
