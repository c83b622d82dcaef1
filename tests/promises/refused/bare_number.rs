use turnwright::*;

fn main() -> Result<(), Error> {
    let _ = Stock::new(34.0, "120 mm".parse()?);
    Ok(())
}
