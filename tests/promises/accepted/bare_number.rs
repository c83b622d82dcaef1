use turnwright::*;

fn main() -> Result<(), Error> {
    let _ = Stock::new("34 mm".parse()?, "120 mm".parse()?);
    Ok(())
}
