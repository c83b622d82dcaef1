use turnwright::*;

fn main() -> Result<(), Error> {
    let _ = WantedFinish::Ra(Rz::from_um(6.3)?);
    Ok(())
}
