use turnwright::*;

fn main() -> Result<(), Error> {
    let _ = WantedFinish::Ra(Ra::from_um(6.3)?);
    Ok(())
}
