use turnwright::*;

fn main() -> Result<(), Error> {
    let _ = physics::bar::Bar::new(SpecificCuttingForce::from_mpa(1900.0)?, "20 mm".parse()?, "100 mm".parse()?);
    Ok(())
}
