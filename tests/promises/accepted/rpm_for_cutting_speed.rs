use turnwright::*;

fn main() -> Result<(), Error> {
    let _ = physics::speed::spindle_speed(CuttingSpeed::from_m_per_min(90.0)?, "40 mm".parse()?);
    Ok(())
}
