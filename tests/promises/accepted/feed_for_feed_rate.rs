use turnwright::*;

fn main() -> Result<(), Error> {
    let _: Feed = Feed::from_mm_per_rev(0.2)?;
    Ok(())
}
