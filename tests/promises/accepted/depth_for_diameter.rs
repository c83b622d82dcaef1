use turnwright::*;

fn main() -> Result<(), Error> {
    let _ = Stock::new(Diameter::from_mm(34.0)?, "120 mm".parse()?);
    Ok(())
}
