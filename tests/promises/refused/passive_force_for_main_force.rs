use turnwright::*;

fn main() -> Result<(), Error> {
    let _ = physics::drive::torque(PassiveForce::from_newton(90.0)?, "40 mm".parse()?);
    Ok(())
}
