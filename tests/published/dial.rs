//! Whole divisions of a dial: marks, turns, what it shows, what is left (derived).

use turnwright::advice::mark;
use turnwright::*;

use crate::case::Case;

/// The diameter at which every dial here is zeroed.
const ZERO_AT: f64 = 100.0;

pub fn answer(case: &Case) -> Result<(), String> {
    if case.has("operator_thinks") {
        wrong_kind(case)
    } else if case.has("turns_missed") {
        missed_turn(case)
    } else if case.has("marks") {
        from_zero(case)
    } else {
        whole_divisions(case)
    }
}

fn told(error: Error) -> String {
    error.to_string()
}

fn reads(word: &str) -> DialReads {
    match word {
        "diameter" => DialReads::Diameter,
        _ => DialReads::Radius,
    }
}

/// What a mark says: a diameter dial says twice the travel of its slide.
fn division(case: &Case, reads: DialReads) -> Result<Division, String> {
    let travel: Division = case.get("slide_travel_per_mark")?;
    let says = match reads {
        DialReads::Diameter => 2.0,
        _ => 1.0,
    };
    Division::from_mm(says * travel.mm()).map_err(told)
}

fn per_turn(case: &Case) -> Result<DivisionsPerTurn, String> {
    let count = match case.has("marks_per_turn") {
        true => u32::try_from(case.count("marks_per_turn")?).map_err(|e| e.to_string())?,
        // Where the case does not turn it round, any count does.
        false => 100,
    };
    DivisionsPerTurn::new(count).map_err(told)
}

fn zero_at() -> Result<Diameter, String> {
    Diameter::from_mm(ZERO_AT).map_err(told)
}

/// How much of the diameter a dial takes off in so many divisions.
fn taken_off(dial: &Dial, divisions: i64) -> Result<DiameterError, String> {
    let divisions = Divisions::new(divisions).map_err(told)?;
    let after = dial.diameter_at(zero_at()?, divisions).map_err(told)?;
    DiameterError::from_mm(ZERO_AT - after.mm()).map_err(told)
}

fn whole_divisions(case: &Case) -> Result<(), String> {
    let reads = match case.has("dial_reads") {
        true => reads(case.word("dial_reads")?),
        false => DialReads::Radius,
    };
    let dial = Dial::new(reads, division(case, reads)?, per_turn(case)?);
    let remove: DiameterError = case.get("diameter_to_remove")?;
    let target = Diameter::from_mm(ZERO_AT - remove.mm()).map_err(told)?;
    let choice = mark::choose(&dial, zero_at()?, target, None).map_err(told)?;
    let (reading, size) = (choice.mark.reading, choice.mark.size);
    case.expect_count("marks", reading.divisions().count())?;
    case.expect_count("turns", reading.turns())?;
    case.expect_count("mark", i64::from(reading.mark()))?;
    case.expect("reading_on_dial", reading.shows())?;
    let off = ZERO_AT - size.mm();
    let with_turns = match reads {
        DialReads::Diameter => off,
        _ => off / 2.0,
    };
    case.expect_trade::<Engraved>("reading_with_turns", with_turns)?;
    case.expect_trade::<DiameterError>("left_on_diameter", size.mm() - target.mm())
}

/// The same marks on the dial as it is, and as the person at it thinks it is.
fn wrong_kind(case: &Case) -> Result<(), String> {
    let truly = reads(case.word("dial_reads")?);
    let thought = reads(case.word("operator_thinks")?);
    let (division, per_turn) = (division(case, truly)?, per_turn(case)?);
    let marks = case.count("marks_turned")?;
    for (field, reads) in [("wanted_removal", thought), ("true_removal", truly)] {
        let dial = Dial::new(reads, division, per_turn);
        case.expect(field, taken_off(&dial, marks)?)?;
    }
    Ok(())
}

fn missed_turn(case: &Case) -> Result<(), String> {
    let reads = reads(case.word("dial_reads")?);
    let per_turn = per_turn(case)?;
    let dial = Dial::new(reads, division(case, reads)?, per_turn);
    let missed = case.count("turns_missed")? * i64::from(per_turn.count());
    case.expect("diameter_error", taken_off(&dial, missed)?)
}

fn from_zero(case: &Case) -> Result<(), String> {
    let marks = Divisions::new(case.count("marks")?).map_err(told)?;
    let division = Division::from_mm(0.02).map_err(told)?;
    let dial = Dial::new(DialReads::Radius, division, per_turn(case)?);
    let reading = dial.reading(Slide::CrossSlide, marks);
    case.expect_count("turns", reading.turns())?;
    case.expect_count("mark", i64::from(reading.mark()))
}
