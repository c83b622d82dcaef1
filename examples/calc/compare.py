"""Compares a recalculated workbook with plain Rust (examples/twin.rs); run by check.sh.

    compare.py edges FILE              writes a workbook of bad inputs
    compare.py demo SOURCE RECKONED    every computed cell of the demonstration against Rust
    compare.py edges FILE RECKONED     every bad input is an error cell, with its words beside it

TWIN names the built twin. Formulas are read out of the workbook and reckoned anew here, what stands
in them is asked of Rust: no expected value is typed.
"""

from __future__ import annotations

import functools
import json
import math
import os
import re
import subprocess
import sys
from typing import Any, Dict, List, NamedTuple, Optional, Tuple
from xml.etree import ElementTree
from xml.sax.saxutils import quoteattr

from functions import FUNCTIONS

PREFIX = "ORG.TURNWRIGHT.CELLS."
TABLE = "{urn:oasis:names:tc:opendocument:xmlns:table:1.0}"
OFFICE = "{urn:oasis:names:tc:opendocument:xmlns:office:1.0}"
TEXT = "{urn:oasis:names:tc:opendocument:xmlns:text:1.0}"
KIND = "{urn:org:documentfoundation:names:experimental:calc:xmlns:calcext:1.0}value-type"

# What Rust calls the kernel, and which of its figures a function of a cell is.
TWINS = {
    "SPINDLESPEED": ("spindle_speed", "spindle_speed"),
    "FINISHRA": ("roughness", "ra"),
    "FINISHRT": ("roughness", "rt"),
    "MAINFORCE": ("cutting_forces", "main_force"),
    "PASSIVEFORCE": ("cutting_forces", "passive_force"),
    "CUTTINGPOWER": ("cutting_power", "power"),
    "CUTTINGTORQUE": ("cutting_torque", "torque"),
    "DEFLECTION": ("deflection", "deflection"),
    "SMALLESTSIZE": ("limits_of_class", "smallest"),
    "LARGESTSIZE": ("limits_of_class", "largest"),
    "DIALTURNS": ("dial_mark", "turns"),
    "DIALMARK": ("dial_mark", "mark"),
}


class Wrong(NamedTuple):
    """An error cell; the words that belong to it, where Rust was asked."""

    words: Optional[str] = None


class Cell(NamedTuple):
    formula: Optional[str]
    content: Any  # float, str, Wrong, or None


def cells(path: str) -> Dict[Tuple[str, int], Cell]:
    """The cells of the first sheet by column letter and row."""
    table = ElementTree.parse(path).getroot().find(f".//{TABLE}table")
    assert table is not None, path
    found: Dict[Tuple[str, int], Cell] = {}
    row_number = 0
    for row in table.iter(f"{TABLE}table-row"):
        repeated = int(row.get(f"{TABLE}number-rows-repeated", "1"))
        column = 0
        for cell in row:
            times = int(cell.get(f"{TABLE}number-columns-repeated", "1"))
            one = Cell(cell.get(f"{TABLE}formula"), content(cell))
            if one != Cell(None, None):
                # Equal neighbours are written once.
                for down in range(repeated):
                    for right in range(times):
                        found[chr(ord("A") + column + right), row_number + down + 1] = one
            column += times
        row_number += repeated
    return found


def content(cell: ElementTree.Element) -> Any:
    if cell.get(KIND) == "error":
        return Wrong()
    kind = cell.get(f"{OFFICE}value-type")
    if kind == "float":
        return float(cell.get(f"{OFFICE}value") or "nothing")
    if kind == "string":
        return "\n".join("".join(p.itertext()) for p in cell.iter(f"{TEXT}p"))
    assert kind is None, f"a cell of type {kind}"
    return None


TOKEN = re.compile(
    r'\s*(?:(?P<name>[A-Z][A-Z.]*)\(|\[\.\$?(?P<column>[A-Z])\$?(?P<row>\d+)\]'
    r'|"(?P<text>[^"]*)"|(?P<number>\d+(?:\.\d+)?)|(?P<sign>[-;()&]))'
)


class Reckoner:
    """Reckons the formulas that the demonstration uses; anything else is an error of this test."""

    def __init__(self, sheet: Dict[Tuple[str, int], Cell]) -> None:
        self.sheet = sheet
        self.used: Dict[str, int] = {}

    @functools.lru_cache(maxsize=None)
    def at(self, column: str, row: int) -> Any:
        cell = self.sheet.get((column, row), Cell(None, None))
        return cell.content if cell.formula is None else self.formula(cell.formula)

    def formula(self, text: str) -> Any:
        assert text.startswith("of:="), text
        self.tokens = tokens(text[4:])
        rest = self.tokens
        value, rest = self.expression(rest)
        assert not rest, f"{text}: {rest}"
        return value

    def expression(self, rest: List[Any]) -> Tuple[Any, List[Any]]:
        value, rest = self.operand(rest)
        while rest and rest[0] in ("-", "&"):
            sign = rest[0]
            other, rest = self.operand(rest[1:])
            if isinstance(value, Wrong) or isinstance(other, Wrong):
                value = value if isinstance(value, Wrong) else other
            else:
                value = value - other if sign == "-" else value + other
        return value, rest

    def operand(self, rest: List[Any]) -> Tuple[Any, List[Any]]:
        head, rest = rest[0], rest[1:]
        if head[0] == "cell":
            return self.at(head[1], head[2]), rest
        if head[0] == "constant":
            return head[1], rest
        assert head[0] == "call", head
        arguments: List[Any] = []
        while rest[0] != ")":
            value, rest = self.expression(rest)
            arguments.append(value)
            if rest[0] == ";":
                rest = rest[1:]
        return self.call(head[1], arguments), rest[1:]

    def call(self, name: str, arguments: List[Any]) -> Any:
        for argument in arguments:
            if isinstance(argument, Wrong):
                return argument
        self.used[name] = self.used.get(name, 0) + 1
        if name == "WITHUNIT":
            number, unit = arguments
            # Ours is only asked of numbers here; the shortest text that is read as that number.
            return f"{number:.0f} {unit}" if number == int(number) else f"{number!r} {unit}"
        if name == "WHY":
            answer = self.call(arguments[0], arguments[1:])
            return answer.words if isinstance(answer, Wrong) else ""
        return asked(name, tuple(arguments))


def tokens(text: str) -> List[Any]:
    found: List[Any] = []
    at = 0
    while at < len(text):
        token = TOKEN.match(text, at)
        assert token, f"{text[at:]} is not understood"
        at = token.end()
        if token["name"]:
            found.append(("call", token["name"].replace(PREFIX, "")))
        elif token["column"]:
            found.append(("cell", token["column"], int(token["row"])))
        elif token["text"] is not None:
            found.append(("constant", token["text"]))
        elif token["number"]:
            found.append(("constant", float(token["number"])))
        else:
            found.append(token["sign"])
    return found


@functools.lru_cache(maxsize=None)
def asked(name: str, arguments: Tuple[Any, ...]) -> Any:
    """The number that Rust has, or its error."""
    kernel, figure = TWINS[name]
    declared = FUNCTIONS[name].arguments
    texts = []
    for argument in arguments:
        whole = isinstance(argument, float) and argument.is_integer()
        texts.append(str(int(argument)) if whole else str(argument))
    unit = None
    if declared[-1].name == "unit" and len(texts) == len(declared):
        unit = texts.pop()
    question = json.dumps({"ask": kernel, "of": texts, "in": unit})
    done = subprocess.run(
        [os.environ["TWIN"]], input=question, capture_output=True, text=True, check=True
    )
    answer = json.loads(done.stdout)
    if "status" in answer:
        parts = "{field}: {given} given; expected {expected}; {remedy}"
        return Wrong(parts.format(**answer))
    return answer[figure]


def agree(ours: Any, theirs: Any) -> bool:
    if isinstance(ours, float) and isinstance(theirs, (int, float)):
        # A file of Calc keeps 15 digits at the least; what is reckoned from a cell is reckoned from
        # the double itself.
        return math.isclose(ours, theirs, rel_tol=1e-14)
    if isinstance(ours, Wrong) or isinstance(theirs, Wrong):
        return isinstance(ours, Wrong) and isinstance(theirs, Wrong)
    return bool((ours or "") == theirs)


def demo(source: str, reckoned: str) -> None:
    before, after = cells(source), cells(reckoned)
    computed = [place for place, cell in before.items() if cell.formula]
    assert all(before[place].content is None for place in computed), "values in the source"
    assert computed == [place for place, cell in after.items() if cell.formula], "cells were lost"
    reckoner = Reckoner(before)
    errors = words = 0
    for place in computed:
        wanted, seen = reckoner.at(*place), after[place].content
        assert agree(seen, wanted), f"{place}: {before[place].formula}: {seen!r}, Rust has {wanted!r}"
        errors += isinstance(wanted, Wrong)
        words += isinstance(wanted, str) and "given; expected" in wanted
    unused = (set(FUNCTIONS) | {"WHY", "WITHUNIT"}) - set(reckoner.used)
    # FINISHRT is FINISHRA with another figure of the same answer; edges has it.
    assert unused <= {"FINISHRT"}, f"the demonstration does not use {unused}"
    assert errors and words, "the demonstration shows no error"
    print(f"{len(computed)} computed cells agree with Rust, {errors} of them errors, {words} with words")


# A good question of every function, and values that are none for the argument whose place is given.
GOOD: Dict[str, List[str]] = {
    "SPINDLESPEED": ['"28 m/min"', '"38 mm"'],
    "FINISHRA": ['"0.2 mm/rev"', '"0.8 mm"', '"95 deg"', '"5 deg"'],
    "FINISHRT": ['"0.2 mm/rev"', '"0.8 mm"', '"95 deg"', '"5 deg"'],
    "MAINFORCE": ['"1900 MPa"', "0.2", '"1 mm"', '"0.2 mm/rev"', '"95 deg"', '"0.8 mm"', "0.5"],
    "PASSIVEFORCE": ['"1900 MPa"', '"0.2"', '"1 mm"', '"0.2 mm/rev"', '"95 deg"', '"0.8 mm"', "0.5"],
    "CUTTINGPOWER": ['"500 N"', '"28 m/min"'],
    "CUTTINGTORQUE": ['"500 N"', '"37 mm"'],
    "DEFLECTION": [
        '"210 GPa"', '"20 mm"', '"100 mm"', '"chuck"', '"40 kN/mm"', '"rigid"', '"rigid"', '"80 N"',
        '"90 mm"',
    ],
    "SMALLESTSIZE": ['"30 mm"', '"h7"'],
    "LARGESTSIZE": ['"30 mm"', '"H7"'],
    "DIALTURNS": ['"radius"', '"0.02 mm"', "100", '"40 mm"', '"38 mm"'],
    "DIALMARK": ['"radius"', '"0.02 mm"', "100", '"40 mm"', '"38 mm"'],
}  # fmt: skip
# Text of no meaning, text of another quantity, an empty cell, a space, a range,
# a number far too large; a bare number where there is a unit, and a truth, which Calc holds to be 1.
BAD = ['"what"', '"3 furlongs"', "[.Z9]", '" "', "[.Y1:.Z3]", "1E+300", '"nan mm"', "-1"]
BAD_WITH_UNIT = ["TRUE()", '"12"', "12", '"0,2 mm"', '"3 K"']


class Edge(NamedTuple):
    """A formula that is wrong, and the one that says why."""

    formula: str
    why: Optional[str]
    field: str


def bad_inputs() -> List[Edge]:
    edges = []
    for name, good in GOOD.items():
        arguments = FUNCTIONS[name].arguments
        for place, argument in enumerate(arguments[: len(good)]):
            bare = good[place][0] != '"' or argument.name in ("exponent", "normal_ratio")
            for bad in BAD + ([] if bare else BAD_WITH_UNIT):
                given = good[:place] + [bad] + good[place + 1 :]
                edges.append(edge(name, given, argument.name))
        if arguments[-1].name == "unit":
            edges.append(edge(name, good + ['"furlong"'], "unit"))
            edges.append(edge(name, good + ["1"], "unit"))
            edges.append(edge(name, good + ["[.Z9]"], "unit"))
    return edges


def edge(name: str, given: List[str], field: str) -> Edge:
    joined = ";".join(given)
    return Edge(f"={PREFIX}{name}({joined})", f'={PREFIX}WHY("{name}";{joined})', field)


def workbook(path: str) -> None:
    rows = [[edge.formula, edge.why] for edge in bad_inputs()]
    # What is reckoned from an error cell is one: the second is the first bad input.
    rows += [["=SUM([.A1:.A3])", None], ["=[.A1]*0", None], ["=MAX([.A1];5)", None]]
    for bad in ('WITHUNIT("x";"mm")', 'WITHUNIT(0.2;"")', "WITHUNIT(0.2;3)", 'WITHUNIT([.Z9];"mm")'):
        rows.append([f"={PREFIX}{bad}", None])
    for name, good in GOOD.items():
        rows.append([f"={PREFIX}{name}({';'.join(good)})", f'={PREFIX}WHY("{name}";{";".join(good)})'])
    rows.append([f'={PREFIX}WITHUNIT(0.2;"mm/rev")', f'={PREFIX}WHY("SPINDELSPEED";1)'])
    body = "".join(
        "<table:table-row>"
        + "".join(
            f"<table:table-cell table:formula={quoteattr('of:' + one)}/>" if one else "<table:table-cell/>"
            for one in row
        )
        + "</table:table-row>\n"
        for row in rows
    )
    namespaces = "".join(
        f' xmlns:{short}="urn:oasis:names:tc:opendocument:xmlns:{short}:1.0"'
        for short in ("office", "table", "text")
    )
    with open(path, "w", encoding="utf-8") as file:
        file.write(
            f'<?xml version="1.0" encoding="UTF-8"?>\n<office:document{namespaces} xmlns:of="urn:oasis:names:tc:opendocument:xmlns:of:1.2"'
            ' office:version="1.3" office:mimetype="application/vnd.oasis.opendocument.spreadsheet">'
            f"<office:body><office:spreadsheet><table:table table:name='edges'>\n{body}"
            "</table:table></office:spreadsheet></office:body></office:document>\n"
        )


def edges(reckoned: str) -> None:
    after = cells(reckoned)
    bad = bad_inputs()
    row = 0
    for one in bad:
        row += 1
        seen = after["A", row].content
        assert isinstance(seen, Wrong), f"{one.formula} gave {seen!r}"
        words = after["B", row].content
        assert isinstance(words, str) and "given; expected" in words, f"{one.why} gave {words!r}"
        assert one.field in words.split(":")[0], f"{one.why} names another field: {words}"
    for _ in range(7):
        row += 1
        assert isinstance(after["A", row].content, Wrong), f"row {row}: {after['A', row]}"
    reckoner = Reckoner(after)
    for name in GOOD:
        row += 1
        wanted, seen = reckoner.at("A", row), after["A", row].content
        assert agree(seen, wanted) and isinstance(seen, float), f"{name}: {seen!r} and {wanted!r}"
        assert not after["B", row].content, after["B", row].content
    row += 1
    assert after["A", row].content == "0.2 mm/rev", after["A", row]
    assert "SPINDLESPEED" in after["B", row].content, after["B", row]
    print(f"{len(bad)} bad inputs are error cells and say which argument it is")


def main() -> None:
    what, *files = sys.argv[1:]
    if what == "demo":
        demo(*files)
    elif len(files) == 1:
        workbook(files[0])
    else:
        edges(files[1])


if __name__ == "__main__":
    main()
