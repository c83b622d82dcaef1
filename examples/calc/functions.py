"""The functions of the cells: their names, their arguments, and how they are answered.

One table for all: describe.py writes out of it what LibreOffice must know, cells.py answers by it.
Nothing here knows of LibreOffice, so that it is tested without.
"""

from __future__ import annotations

from typing import Any, Callable, Dict, List, NamedTuple, Optional, Sequence

import turnwright as tw


class Argument(NamedTuple):
    """An argument as the function wizard shows it."""

    name: str
    words: str
    needed: bool = True


class Function(NamedTuple):
    """A function of a cell; its answer takes as many values as it has arguments."""

    name: str
    words: str
    arguments: Sequence[Argument]
    answer: Callable[..., float]

    def ask(self, given: Sequence[Any]) -> float:
        """The number. What is wrong is raised as TurnwrightError and names the argument."""
        if len(given) > len(self.arguments):
            raise _wrong(
                tw.Status.MISUSE,
                self.name,
                f"{len(given)} arguments",
                f"{len(self.arguments)} of them",
                "leave the last ones out",
            )
        filled = list(given) + [None] * (len(self.arguments) - len(given))
        pairs = zip(self.arguments, filled)
        return float(self.answer(*[_one(argument, cell) for argument, cell in pairs]))


def _wrong(
    status: tw.Status, field: str, given: str, expected: str, remedy: str
) -> tw.TurnwrightError:
    return tw.TurnwrightError(status, field, given, expected, remedy)


def _one(argument: Argument, cell: Any) -> Any:
    """The content of the one cell that an argument stands for: text, number, or None for nothing."""
    if isinstance(cell, tuple):
        if len(cell) != 1 or len(cell[0]) != 1:
            given, remedy = "a range of cells", "point at one cell"
            raise _wrong(tw.Status.MISUSE, argument.name, given, "one cell", remedy)
        cell = cell[0][0]
    if isinstance(cell, str):
        cell = cell.strip()
    if cell == 0:
        # Calc hands an empty cell over as 0, and a corner radius or an exponent of 0 is a sound one.
        given = "0, which is also what an empty cell is"
        remedy = 'fill the cell; where 0 is meant, write it as text: "0 mm"'
        raise _wrong(tw.Status.MISSING_FIELD, argument.name, given, argument.words, remedy)
    if cell == "" or (cell is None and argument.needed):
        given, remedy = "nothing", "fill the cell"
        raise _wrong(tw.Status.MISSING_FIELD, argument.name, given, argument.words, remedy)
    return cell


def _support(given: Any) -> tw.Support:
    names = {support.name.lower(): support for support in tw.Support}
    if given not in names:
        expected = " or ".join(names)
        remedy = "write one of these"
        raise _wrong(tw.Status.UNKNOWN_NAME, "support", repr(given), expected, remedy)
    return names[given]


def _deflection(e: Any, d: Any, overhang: Any, support: Any, *rest: Any) -> float:
    chuck, chuck_rotational, centre, force, at, unit = rest
    found = tw.deflection(
        e,
        d,
        overhang,
        _support(support),
        force,
        at,
        chuck=chuck,
        chuck_rotational=chuck_rotational,
        centre=centre,
        unit=unit,
    )
    return found.value


def _forces(*given: Any) -> tw.Forces:
    *cut, unit = given
    return tw.cutting_forces(*cut, unit=unit)


def _dial(reads: Any, division: Any, divisions_per_turn: Any, zero_at: Any, target: Any) -> Any:
    if isinstance(divisions_per_turn, float) and divisions_per_turn.is_integer():
        divisions_per_turn = int(divisions_per_turn)
    dial = {"reads": reads, "division": division, "divisions_per_turn": divisions_per_turn}
    return tw.answer({"dial": {"dial": dial, "zero_at": zero_at, "target": target}})["dial"]


def _unit(of: str) -> Argument:
    return Argument("unit", f"unit of the result: {of}", needed=False)


_OUTLINE = (
    Argument("feed", "feed, such as 0.2 mm/rev"),
    Argument("corner_radius", "corner radius of the tool, such as 0.8 mm"),
    Argument("cutting_edge_angle", "between major edge and feed, such as 95 deg"),
    Argument("minor_cutting_edge_angle", "between minor edge and feed, such as 5 deg"),
    _unit("um (left out), uin or nm"),
)
_CUT = (
    Argument("specific_force", "for a chip of 1 mm by 1 mm, such as 1900 MPa"),
    Argument("exponent", "how it falls with the thickness, such as 0.2"),
    Argument("depth_of_cut", "depth of cut, such as 1 mm"),
    Argument("feed", "feed, such as 0.2 mm/rev"),
    Argument("cutting_edge_angle", "between major edge and feed, such as 95 deg"),
    Argument("corner_radius", "corner radius of the tool, such as 0.8 mm"),
    Argument("normal_ratio", "force normal to the edge over main force, such as 0.5"),
    _unit("N (left out), kN or lbf"),
)
_CLASS = (
    Argument("nominal", "nominal size, such as 30 mm"),
    Argument("class", "tolerance class, such as h7 (shaft) or H7 (hole)"),
    _unit("mm (left out), um, in or thou"),
)
_DIAL = (
    Argument("reads", "radius or diameter: what the dial of the cross slide counts"),
    Argument("division", "one mark of the dial, such as 0.02 mm"),
    Argument("divisions_per_turn", "marks of a whole turn, such as 100"),
    Argument("zero_at", "diameter at which the dial stands at 0, such as 40 mm"),
    Argument("target", "diameter wanted, such as 38 mm"),
)

FUNCTIONS: Dict[str, Function] = {
    function.name: function
    for function in (
        Function(
            "SPINDLESPEED",
            "Spindle speed at which a diameter passes the edge at a cutting speed",
            (
                Argument("cutting_speed", "cutting speed, such as 28 m/min"),
                Argument("diameter", "diameter before the cut, such as 38 mm"),
                _unit("rpm (left out) or rev/s"),
            ),
            lambda v, d, unit: tw.spindle_speed(v, d, unit=unit).value,
        ),
        Function(
            "FINISHRA",
            "Arithmetic mean height Ra that feed and tool leave; a real surface is never better",
            _OUTLINE,
            lambda *outline: tw.roughness(*outline[:4], unit=outline[4]).ra.value,
        ),
        Function(
            "FINISHRT",
            "Total height Rt that feed and tool leave; a real surface is never better",
            _OUTLINE,
            lambda *outline: tw.roughness(*outline[:4], unit=outline[4]).rt.value,
        ),
        Function(
            "MAINFORCE",
            "Force of a cut along the cutting speed, sharp tool",
            _CUT,
            lambda *cut: _forces(*cut).main.value,
        ),
        Function(
            "PASSIVEFORCE",
            "Force of a cut across the feed, which bends the bar, sharp tool",
            _CUT,
            lambda *cut: _forces(*cut).passive.value,
        ),
        Function(
            "CUTTINGPOWER",
            "Power of a cut at the spindle",
            (
                Argument("main_force", "main force, such as 500 N"),
                Argument("cutting_speed", "at the mean diameter, such as 28 m/min"),
                _unit("kW (left out), W or hp"),
            ),
            lambda force, v, unit: tw.cutting_power(force, v, unit=unit).value,
        ),
        Function(
            "CUTTINGTORQUE",
            "Torque of a cut at the spindle",
            (
                Argument("main_force", "main force, such as 500 N"),
                Argument("mean_diameter", "mean diameter of the cut, such as 37 mm"),
                _unit("N m (left out), kN m, lbf ft or lbf in"),
            ),
            lambda force, d, unit: tw.cutting_torque(force, d, unit=unit).value,
        ),
        Function(
            "DEFLECTION",
            "How far a round bar gives way at the tool",
            (
                Argument("youngs_modulus", "Young's modulus of the work, such as 210 GPa"),
                Argument("diameter", "diameter of the bar, such as 20 mm"),
                Argument("overhang", "length out of the jaws, such as 100 mm"),
                Argument("support", "chuck, chuck_and_centre or between_centres"),
                Argument("chuck", "stiffness of the chuck, such as 40 kN/mm, or rigid"),
                Argument("chuck_rotational", "against tilting, such as 100 kN m/rad, or rigid"),
                Argument("centre", "stiffness of the centre, such as 15 kN/mm, or rigid"),
                Argument("passive_force", "passive force, such as 80 N"),
                Argument("at", "where the tool stands, from the jaws, such as 90 mm"),
                _unit("mm (left out), um, in or thou"),
            ),
            _deflection,
        ),
        Function(
            "SMALLESTSIZE",
            "Smallest size of a tolerance class",
            _CLASS,
            lambda nominal, name, unit: tw.limits_of_class(nominal, name, unit=unit).smallest.value,
        ),
        Function(
            "LARGESTSIZE",
            "Largest size of a tolerance class",
            _CLASS,
            lambda nominal, name, unit: tw.limits_of_class(nominal, name, unit=unit).largest.value,
        ),
        Function(
            "DIALTURNS",
            "Whole turns of the cross handle from 0 to a diameter; DIALMARK has the rest",
            _DIAL,
            lambda *dial: _dial(*dial)["turns"],
        ),
        Function(
            "DIALMARK",
            "Mark of the cross dial for a diameter, after the whole turns of DIALTURNS",
            _DIAL,
            lambda *dial: _dial(*dial)["mark"],
        ),
    )
}

WITHUNIT_WORDS = "Number and unit as one text, with a decimal point whatever the language of the sheet"
WITHUNIT_ARGUMENTS = (
    Argument("number", "a number, as it stands in a cell"),
    Argument("unit", "its unit, as it stands in the head of the column, such as mm/rev"),
)
WHY_WORDS = "What is wrong with a function's arguments and how to put it right; empty where nothing is"
WHY_ARGUMENTS = (
    Argument("function", "name of the function, such as SPINDLESPEED"),
    Argument("arguments", "the arguments that it was given"),
)


def with_unit(number: Any, unit: Any) -> str:
    """`0.2` and `mm/rev` as one text. Joining them with & would write a decimal comma in some places."""
    number, unit = _one(WITHUNIT_ARGUMENTS[0], number), _one(WITHUNIT_ARGUMENTS[1], unit)
    if isinstance(number, bool) or not isinstance(number, (int, float)):
        given, remedy = repr(number), "give the number alone, or the whole text to the function"
        raise _wrong(tw.Status.UNREADABLE, "number", given, "a number", remedy)
    if not isinstance(unit, str):
        given, remedy = repr(unit), "write the unit"
        raise _wrong(tw.Status.UNREADABLE, "unit", given, "text such as mm/rev", remedy)
    digits = repr(number)
    return f"{digits[:-2] if digits.endswith('.0') else digits} {unit}"


def why(function: Any, arguments: Sequence[Any]) -> str:
    """The message of an error cell, in words; empty where the function has an answer."""
    try:
        name: Optional[str] = _one(WHY_ARGUMENTS[0], function)
        found = FUNCTIONS.get(str(name).upper())
        if found is None:
            names: List[str] = sorted(FUNCTIONS)
            given, remedy = repr(name), "write one of these names"
            raise _wrong(tw.Status.UNKNOWN_NAME, "function", given, ", ".join(names), remedy)
        found.ask(arguments)
        return ""
    except tw.TurnwrightError as error:
        return str(error)
    except ImportError as trouble:
        return str(trouble)
