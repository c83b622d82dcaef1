use turnwright::*;

fn main() -> Result<(), Error> {
    let _ = physics::force::torque(PassiveForce::from_newton(90.0)?, "40 mm".parse()?);
    Ok(())
}
