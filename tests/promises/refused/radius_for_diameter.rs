use turnwright::*;

fn main() -> Result<(), Error> {
    let _ = physics::speed::spindle_speed("90 m/min".parse()?, Radius::from_mm(20.0)?);
    Ok(())
}
