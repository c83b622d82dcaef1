//! Calls of the C interface beside C functions that do the same.

/// The same work in C, with the same checks.
pub const PEER: &str = r#"
#include <turnwright.h>

static tw_status refused(double *out, tw_status status)
{
    *out = NAN;
    return status;
}

static tw_status out_of_range(double *out, double given)
{
    return refused(out, isfinite(given) ? TW_OUT_OF_RANGE : TW_NOT_FINITE);
}

tw_status peer_arc_height(tw_feed feed, tw_corner_radius radius, tw_rt *rt, tw_error *detail)
{
    double f = feed.mm_per_rev, r = radius.mm, quarter, below;
    if (detail && (detail->struct_size < 8 || detail->struct_size > 4096)) return TW_BAD_STRUCT_SIZE;
    if (!rt) return TW_NULL_POINTER;
    if (!(f >= 0.001 && f <= 10.0)) return out_of_range(&rt->um, f);
    if (!((r >= 0.005 && r <= 50.0) || r == 0.0)) return out_of_range(&rt->um, r);
    quarter = f * f / 4.0;
    below = r * r - quarter;
    if (below <= 0.0) return refused(&rt->um, TW_CONTRADICTION);
    rt->um = quarter / (r + sqrt(below)) * 1000.0;
    if (detail) detail->status = TW_OK;
    return TW_OK;
}

tw_status peer_spindle_speed_for(tw_cutting_speed speed, tw_diameter diameter, tw_spindle_speed *n,
                                 tw_error *detail)
{
    double v = speed.m_per_min, d = diameter.mm;
    if (detail && (detail->struct_size < 8 || detail->struct_size > 4096)) return TW_BAD_STRUCT_SIZE;
    if (!n) return TW_NULL_POINTER;
    if (!(v >= 0.1 && v <= 10000.0)) return out_of_range(&n->rpm, v);
    if (!(d >= 0.1 && d <= 5000.0)) return out_of_range(&n->rpm, d);
    n->rpm = v * 1000.0 / (3.141592653589793 * d);
    if (detail) detail->status = TW_OK;
    return TW_OK;
}
"#;

#[cfg(unix)]
pub mod c {
    //! Calls through shared libraries, ours and the peer's, loaded the same way.

    use std::ffi::{CString, c_char, c_int, c_void};
    use std::hint::black_box;
    use std::os::unix::ffi::OsStrExt;
    use std::path::Path;

    use turnwright::ffi::{
        tw_corner_radius, tw_cutting_speed, tw_diameter, tw_error, tw_feed, tw_rt, tw_spindle_speed,
    };

    use super::PEER;
    use crate::tools::{Outcome, compiled, duel, near, report, shared_library};

    unsafe extern "C" {
        fn dlopen(path: *const c_char, flags: c_int) -> *mut c_void;
        fn dlsym(library: *mut c_void, name: *const c_char) -> *mut c_void;
    }

    const RTLD_NOW: c_int = 2;

    type ArcHeight =
        unsafe extern "C" fn(tw_feed, tw_corner_radius, *mut tw_rt, *mut tw_error) -> i32;
    type SpindleSpeed = unsafe extern "C" fn(
        tw_cutting_speed,
        tw_diameter,
        *mut tw_spindle_speed,
        *mut tw_error,
    ) -> i32;

    fn load(library: &Path) -> Outcome<*mut c_void> {
        let path = CString::new(library.as_os_str().as_bytes())?;
        // SAFETY: a NUL-ended path.
        let handle = unsafe { dlopen(path.as_ptr(), RTLD_NOW) };
        if handle.is_null() {
            return Err(format!("{} does not load", library.display()).into());
        }
        Ok(handle)
    }

    fn symbol(library: *mut c_void, name: &str) -> Outcome<*mut c_void> {
        let name = CString::new(name)?;
        // SAFETY: a library that is loaded, and a NUL-ended name.
        let place = unsafe { dlsym(library, name.as_ptr()) };
        if place.is_null() {
            return Err(format!("{name:?} is not in the library").into());
        }
        Ok(place)
    }

    pub fn calls() -> Outcome<()> {
        const TIMES: usize = 100_000;
        let (ours, peer) = (
            load(&shared_library()?)?,
            load(&compiled("side_by_side", PEER)?)?,
        );
        // SAFETY: functions of these types, by the header.
        let arc = unsafe {
            [
                std::mem::transmute::<*mut c_void, ArcHeight>(symbol(ours, "tw_arc_height")?),
                std::mem::transmute::<*mut c_void, ArcHeight>(symbol(peer, "peer_arc_height")?),
            ]
        };
        // SAFETY: as above.
        let speed = unsafe {
            [
                std::mem::transmute::<*mut c_void, SpindleSpeed>(symbol(
                    ours,
                    "tw_spindle_speed_for",
                )?),
                std::mem::transmute::<*mut c_void, SpindleSpeed>(symbol(
                    peer,
                    "peer_spindle_speed_for",
                )?),
            ]
        };
        let arc_calls = |call: ArcHeight| {
            let mut rt = tw_rt { um: 0.0 };
            for _ in 0..TIMES {
                let (feed, radius) = black_box((0.2, 0.8));
                // SAFETY: the output lives as long as the call.
                let status = unsafe {
                    call(
                        tw_feed { mm_per_rev: feed },
                        tw_corner_radius { mm: radius },
                        &mut rt,
                        std::ptr::null_mut(),
                    )
                };
                assert!(status == 0 && near(rt.um, 6.274_606_680_621_9));
            }
        };
        let speed_calls = |call: SpindleSpeed| {
            let mut n = tw_spindle_speed { rpm: 0.0 };
            for _ in 0..TIMES {
                let (v, d) = black_box((28.0, 38.0));
                // SAFETY: as above.
                let status = unsafe {
                    call(
                        tw_cutting_speed { m_per_min: v },
                        tw_diameter { mm: d },
                        &mut n,
                        std::ptr::null_mut(),
                    )
                };
                assert!(status == 0 && near(n.rpm, 28e3 / (std::f64::consts::PI * 38.0)));
            }
        };
        let times = duel(150, TIMES, || arc_calls(arc[0]), || arc_calls(arc[1]));
        report(
            "ffi/tw_arc_height",
            "shared",
            "C function",
            "ns/call",
            times,
            "1.1",
        );
        let times = duel(
            150,
            TIMES,
            || speed_calls(speed[0]),
            || speed_calls(speed[1]),
        );
        report(
            "ffi/tw_spindle_speed_for",
            "shared",
            "C function",
            "ns/call",
            times,
            "1.1",
        );
        Ok(())
    }
}
