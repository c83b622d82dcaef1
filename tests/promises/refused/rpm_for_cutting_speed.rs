use turnwright::*;

fn main() -> Result<(), Error> {
    let _ = physics::speed::spindle_speed(SpindleSpeed::from_rpm(90.0)?, "40 mm".parse()?);
    Ok(())
}
