use turnwright::*;

fn main() -> Result<(), Error> {
    let _ = physics::bar::Bar::new(YoungsModulus::from_gpa(210.0)?, "20 mm".parse()?, "100 mm".parse()?);
    Ok(())
}
