//! Scalar calls and their column twins against the kernels of Rust, bit for bit.

use libtest_mimic::Trial;

/// One trial a pair: rows through the range and beyond; statuses and answers of the column, of the
/// scalar call and of the kernel of Rust are the same. Whole numbers stand behind the figures that
/// are read; one that is answered stands in angle brackets.
macro_rules! kernels {
    ($($name:literal $scalar:ident $column:ident
       [$($a:ident $c:ident $field:ident $q:ident $low:literal $high:literal),+]
       $(($($whole:expr),+))?
       [$($o:ident $oc:ident $of:ident $oq:ident),+]
       $(<$number:ident>)?
       $rust:block;)*) => {
        pub fn pairs() -> Vec<libtest_mimic::Trial> {
            vec![$(
                $crate::trial(concat!("kernels/", $name), &[], || {
                    const ROWS: usize = 3_000;
                    let mut numbers = $crate::columns::Numbers(23);
                    $( let $a = numbers.column($low, $high, ROWS); )+
                    $( let mut $o = vec![0.0; ROWS]; )+
                    $( let mut $number = vec![-1; ROWS]; )?
                    let mut statuses = vec![-1; ROWS];
                    let status = unsafe {
                        $column(
                            $( &$crate::columns::input::<$q>(&$a, &$q::ROW.kind().units()[0]), )+
                            $( $($whole,)+ )?
                            $( &$crate::columns::output::<$oq>(&mut $o), )+
                            $( $number.as_mut_ptr(), 4, )?
                            statuses.as_mut_ptr(),
                            4,
                            std::ptr::null_mut(),
                        )
                    };
                    $crate::check(status == turnwright::ffi::tw_status::TW_ROWS_BAD, || format!("{status:?}"))?;
                    let columns: Vec<Vec<f64>> = vec![
                        $( $o, )+
                        $( $number.into_iter().map(f64::from).collect(), )?
                    ];
                    let mut good = 0;
                    for row in 0..ROWS {
                        $( let mut $o = $oc { $of: 0.0 }; )+
                        $( let mut $number = -1; )?
                        let alone = unsafe {
                            $scalar(
                                $( $c { $field: $a[row] }, )+
                                $( $($whole,)+ )?
                                $( &mut $o, )+
                                $( &mut $number, )?
                                std::ptr::null_mut(),
                            )
                        };
                        let scalar = vec![$( $o.$of, )+ $( f64::from($number), )?];
                        let rust = || {
                            $( let $a = $q::from_trade($a[row]).ok()?; )+
                            $rust
                        };
                        let words = || {
                            let column: Vec<f64> = columns.iter().map(|one| one[row]).collect();
                            let given = [$( $a[row] ),+];
                            format!("row {row}: {given:?} {column:?} {scalar:?} {:?} {alone:?}", rust())
                        };
                        $crate::check(statuses[row] == alone as i32, words)?;
                        $crate::check(columns.iter().zip(&scalar).all(|(a, b)| $crate::columns::same(a[row], *b)), words)?;
                        let kernel = rust();
                        $crate::check((alone == turnwright::ffi::tw_status::TW_OK) == kernel.is_some(), words)?;
                        if let Some(kernel) = kernel {
                            good += 1;
                            $crate::check(kernel.len() == scalar.len(), words)?;
                            $crate::check(kernel.iter().zip(&scalar).all(|(a, b)| $crate::columns::same(*a, *b)), words)?;
                        }
                    }
                    $crate::check(good > ROWS / 20 && good < ROWS, || format!("{good} good rows"))
                }),
            )*]
        }
    };
}

// Below the macro, which they use.
mod bar;
mod chip;
mod dial;
mod drive;
mod force;
mod heat;
mod holding;
mod life;
mod limits;
mod refused;
mod speed;
mod taper;
mod texture;
mod tool;
mod uncertainty;

pub fn trials() -> Vec<Trial> {
    let all = [
        speed::pairs(),
        speed::by_hand(),
        dial::pairs(),
        dial::by_hand(),
        drive::pairs(),
        chip::pairs(),
        force::pairs(),
        bar::pairs(),
        bar::by_hand(),
        holding::pairs(),
        holding::by_hand(),
        heat::pairs(),
        life::pairs(),
        taper::pairs(),
        tool::pairs(),
        texture::pairs(),
        texture::by_hand(),
        limits::pairs(),
        uncertainty::pairs(),
        refused::by_hand(),
    ];
    all.into_iter().flatten().collect()
}
