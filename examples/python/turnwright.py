"""turnwright from Python: one module, nothing to build, ctypes alone; numpy is used where it is there.

Build the shared library, copy this file beside the program, and say where the library lies:

    cargo build --release --features capi
    TURNWRIGHT_LIBRARY=target/release/libturnwright.so python3 program.py

Without that variable it is looked for in target/release of the crate that this file lies in; a
program that carries the library with it says so by `use(path)`.

    import turnwright as tw
    tw.spindle_speed("28 m/min", "1 1/2 in")                 # SpindleSpeed(value=233.9..., unit='rpm')
    tw.spindle_speed(tw.CuttingSpeed(28, "m/min"), tw.Diameter(38, "mm"))
    tw.answer({"limits": {"nominal": "30 mm", "class": "h7"}})["limits"]["smallest"]
    rows = tw.spindle_speed_column(tw.Column([28.0, 30.0], "m/min"), tw.Column(diameters, "in"))
    rows["spindle_speed"], rows.status, rows.explain(1)
    with tw.Plan({"plan": job}) as plan:                     # an operation sheet, step by step
        print(plan.step(0).text, plan.expected().good)
        follows = plan.after(6, "33.61 mm").plan             # once a size is measured at step 6

A quantity is one of the small classes below, or text with its unit; a bare number is refused. What is
wrong is raised as TurnwrightError, which says field, given, expected and remedy. In a column call a bad
row holds NaN and its status, good rows go on, and nothing is raised: look at `status`, or call `check()`.

Columns are read where they lie: numpy arrays, pandas Series, memoryviews and array.array of doubles,
strided or read-only, are not copied. Lists and columns of other numbers are made into doubles once.

Every call goes through the column doors of the C interface with one row or many, so that the library
alone converts units and no factor stands here. Ranges and formulas are described in turnwright.h.
Python 3.8 or later. Calls may be made from any thread.
"""

from __future__ import annotations

import ctypes
import enum
import functools
import importlib
import json
import numbers
import os
import pathlib
import re
import sys
import threading
import weakref
from array import array
from dataclasses import dataclass
from typing import Any, ClassVar, Dict, Iterator, List, Mapping, NamedTuple, Optional, Protocol
from typing import Sequence, Tuple, Type, TypeVar, Union

try:
    _numpy: Any = importlib.import_module("numpy")
except ImportError:
    _numpy = None

# The interface that this module was written for; the numbers below are pinned by it.
_INTERFACE = (0, 1)


class Status(enum.IntEnum):
    """What a call or a row returned, as in turnwright.h."""

    OK = 0
    OUT_OF_RANGE = 10
    NOT_FINITE = 11
    UNREADABLE = 20
    MISSING_UNIT = 21
    WRONG_UNIT = 22
    BAD_UTF8 = 23
    NUL_IN_TEXT = 24
    MISSING_FIELD = 30
    UNKNOWN_FIELD = 31
    DUPLICATE_FIELD = 32
    UNKNOWN_NAME = 33
    CONTRADICTION = 40
    IMPOSSIBLE = 41
    NOT_OFFERED = 42
    MISUSE = 50
    NULL_POINTER = 51
    BAD_STRUCT_SIZE = 52
    ROWS_BAD = 60
    BAD_COLUMN = 61
    OVERLAP = 62
    INTERNAL = 90


class TurnwrightError(Exception):
    """Which field, what was given, what was expected, how to put it right.

    `row` and `rows_bad` are set where rows of a column are bad: the first one, and how many. `status`
    is a plain number where a newer library returns one that this module does not know.
    """

    def __init__(
        self,
        status: int,
        field: str,
        given: str,
        expected: str,
        remedy: str,
        row: Optional[int] = None,
        rows_bad: int = 0,
    ) -> None:
        super().__init__(status, field, given, expected, remedy, row, rows_bad)
        known = any(status == one for one in Status)
        self.status: int = Status(status) if known else status
        self.field = field
        self.given = given
        self.expected = expected
        self.remedy = remedy
        self.row = row
        self.rows_bad = rows_bad

    def __str__(self) -> str:
        place = "" if self.row is None else f"row {self.row}: "
        field = self.field or "the question"
        return f"{place}{field}: {self.given} given; expected {self.expected}; {self.remedy}"


# ---------------------------------------------------------------------------------------- quantities

_LENGTH = {"mm": 100, "um": 101, "cm": 102, "m": 103, "in": 104, "ft": 105, "thou": 106}
_ROUGHNESS = {"um": 200, "uin": 201, "nm": 202}
_FEED = {"mm/rev": 300, "in/rev": 301}
_CUTTING_SPEED = {"m/min": 500, "m/s": 501, "ft/min": 502}
_SPINDLE_SPEED = {"rpm": 600, "rev/s": 601}
_STRESS = {"MPa": 700, "N/mm2": 701, "GPa": 702, "psi": 703, "ksi": 704, "hp/(in3/min)": 705}
_MODULUS = {"GPa": 800, "MPa": 801, "N/mm2": 802, "psi": 803, "ksi": 804}
_FORCE = {"N": 900, "kN": 901, "lbf": 902}
_POWER = {"kW": 1000, "W": 1001, "hp": 1002}
_TORQUE = {"N m": 1100, "kN m": 1101, "lbf ft": 1102, "lbf in": 1103}
_STIFFNESS = {"kN/mm": 1200, "N/um": 1201, "N/mm": 1202, "lbf/in": 1203}
_ROTATIONAL_STIFFNESS = {"kN m/rad": 1300, "N m/rad": 1301, "lbf in/rad": 1302}
_TIME = {"s": 1700, "min": 1701, "h": 1702}
_ANGLE = {"deg": 1800, "rad": 1801}
_EXPANSION = {"um/(m K)": 1500, "1/K": 1501, "1/F": 1502}
_RISE = {"K": 2200, "F": 2201}
_PLAIN = {"": 2100}

_NUMBER = re.compile(r"[+-]?(?:[0-9]+\.?[0-9]*|\.[0-9]+)(?:[eE][+-]?[0-9]+)?")
# Halves to 128ths: such a fraction is a double without loss, so that dividing first loses nothing.
_FRACTION = re.compile(r"([+-]?)(?:([0-9]+)[ -]\s*)?([0-9]+)/(2|4|8|16|32|64|128)(?![0-9])")

Q = TypeVar("Q", bound="Quantity")


@dataclass(frozen=True)
class Quantity:
    """A number with its unit. Finiteness and range are checked by the library, at the call."""

    value: float
    unit: str

    name: ClassVar[str]
    number: ClassVar[int]
    units: ClassVar[Mapping[str, int]]
    rigid: ClassVar[bool] = False

    def __post_init__(self) -> None:
        shown = repr(self.value)[:60]
        if isinstance(self.value, bool) or not isinstance(self.value, numbers.Real):
            raise _misread(type(self), Status.UNREADABLE, shown, "write a number")
        try:
            # Whole numbers, and those of numpy, become the double that the library is given.
            object.__setattr__(self, "value", float(self.value))
        except OverflowError:
            remedy = "write a smaller number"
            raise _misread(type(self), Status.UNREADABLE, shown, remedy) from None
        unit_number(type(self), self.unit, str(self))

    def __str__(self) -> str:
        return f"{self.value!r} {self.unit}".rstrip()

    @classmethod
    def read(cls: Type[Q], given: object, field: Optional[str] = None) -> Q:
        """The same quantity, or the one that the text says; another quantity is refused.

        A quantity without a unit, such as an exponent, may also be a bare number.
        """
        if isinstance(given, cls):
            return given
        try:
            return cls._read(given, field or cls.name)
        except TurnwrightError:
            # Other spellings than the table's, and the best words for what is none, the library knows.
            if not isinstance(given, str):
                raise
        unit = next(iter(cls.units))
        return cls(_value_of_text(given, cls.number, cls.units[unit], field or cls.name), unit)

    @classmethod
    def _read(cls: Type[Q], given: object, field: str) -> Q:
        if not isinstance(given, str):
            unit = next(iter(cls.units))
            if not isinstance(given, numbers.Real) or isinstance(given, bool):
                remedy = f"give a {cls.__name__} or text"
                if hasattr(given, "__len__") or hasattr(given, "__iter__"):
                    remedy = f'of many numbers make a Column, such as Column(numbers, "{unit}")'
                raise _misread(cls, Status.UNREADABLE, _short(given), remedy, field)
            if unit:
                remedy = f'write for example "{given} {unit}"'
                raise _misread(cls, Status.MISSING_UNIT, repr(given), remedy, field)
            return cls(given, "")  # type: ignore[arg-type]
        text = given.strip()
        if cls.rigid and text == "rigid":
            return cls(float("inf"), next(iter(cls.units)))
        fraction = _FRACTION.match(text) if cls.units is _LENGTH else None
        decimal = _NUMBER.match(text)
        if fraction:
            sign, whole, over, under = fraction.groups()
            value = int(whole or "0") + int(over) / int(under)
            value, end = (-value if sign == "-" else value), fraction.end()
        elif decimal:
            value, end = float(decimal.group()), decimal.end()
        else:
            remedy = "write a number and a unit"
            raise _misread(cls, Status.UNREADABLE, repr(given), remedy, field)
        unit = " ".join(text[end:].split())
        if unit.startswith(","):
            remedy = "write the decimal point as a point"
            raise _misread(cls, Status.UNREADABLE, repr(given), remedy, field)
        # A unit itself may begin with a figure: 1/K.
        if unit not in cls.units and unit[:1] and unit[0] in "./0123456789+-":
            remedy = "write a decimal number, or of a length a fraction such as 1 1/2 in"
            raise _misread(cls, Status.UNREADABLE, repr(given), remedy, field)
        if not unit and "" not in cls.units:
            remedy = f'write for example "{text} {next(iter(cls.units))}"'
            raise _misread(cls, Status.MISSING_UNIT, repr(given), remedy, field)
        unit_number(cls, unit, given, field)
        return cls(value, unit)


def _short(given: object) -> str:
    """The beginning of an object's words."""
    words = repr(given)
    return words if len(words) <= 60 else words[:57] + "..."


def _value_of_text(text: str, quantity: int, unit: int, field: str) -> float:
    value, detail = ctypes.c_double(), _detail()
    place, words = ctypes.byref(value), ctypes.byref(detail)
    call = _library().tw_value_of_text
    status = int(call(_c_text(field, text), ctypes.c_int32(quantity), ctypes.c_int32(unit), place, words))
    if status != Status.OK:
        error = detail.error(status)
        error.field = field
        raise error
    return value.value


def _misread(
    cls: Type[Quantity], status: Status, given: str, remedy: str, field: Optional[str] = None
) -> TurnwrightError:
    units = ", ".join(unit for unit in cls.units if unit)
    expected = cls.name.replace("_", " ") + (f" with its unit: {units}" if units else "")
    return TurnwrightError(status, field or cls.name, given, expected, remedy)


def unit_number(cls: Type[Quantity], unit: str, given: str, field: Optional[str] = None) -> int:
    """The number by which the library knows a unit of this quantity."""
    if not isinstance(unit, str) or unit not in cls.units:
        remedy = "use one of these units" if any(cls.units) else "write the number alone"
        raise _misread(cls, Status.WRONG_UNIT, repr(given), remedy, field)
    return cls.units[unit]


class Diameter(Quantity):
    """Of the work or of a hole."""

    name, number, units = "diameter", 1, _LENGTH


class DepthOfCut(Quantity):
    """Radial in turning, along the axis in facing."""

    name, number, units = "depth_of_cut", 3, _LENGTH


class CornerRadius(Quantity):
    """Of the tool; zero is a sharp corner."""

    name, number, units = "corner_radius", 4, _LENGTH


class Feed(Quantity):
    """Length per revolution."""

    name, number, units = "feed", 6, _FEED


class CuttingSpeed(Quantity):
    """Of the edge over the work."""

    name, number, units = "cutting_speed", 8, _CUTTING_SPEED


class SpindleSpeed(Quantity):
    """Revolutions per time."""

    name, number, units = "spindle_speed", 9, _SPINDLE_SPEED


class SpecificForce(Quantity):
    """Specific cutting force, for a chip of 1 mm by 1 mm."""

    name, number, units = "specific_force", 10, _STRESS


class YoungsModulus(Quantity):
    """Of the work."""

    name, number, units = "youngs_modulus", 11, _MODULUS


class MainForce(Quantity):
    """Along the cutting speed."""

    name, number, units = "main_force", 12, _FORCE


class FeedForce(Quantity):
    """Against the feed."""

    name, number, units = "feed_force", 13, _FORCE


class PassiveForce(Quantity):
    """Across the feed: it bends the bar."""

    name, number, units = "passive_force", 14, _FORCE


class Power(Quantity):
    """At the spindle."""

    name, number, units = "power", 15, _POWER


class Torque(Quantity):
    """At the spindle."""

    name, number, units = "torque", 16, _TORQUE


class Stiffness(Quantity):
    """Of a support; the text "rigid" is one that does not give way."""

    name, number, units, rigid = "stiffness", 17, _STIFFNESS, True


class RotationalStiffness(Quantity):
    """Of a holding against tilting; the text "rigid" is one that does not give way."""

    name, number, units, rigid = "rotational_stiffness", 18, _ROTATIONAL_STIFFNESS, True


class Time(Quantity):
    """How long something takes."""

    name, number, units = "time", 22, _TIME


class CuttingEdgeAngle(Quantity):
    """Between the major edge and the feed direction."""

    name, number, units = "cutting_edge_angle", 23, _ANGLE


class MinorCuttingEdgeAngle(Quantity):
    """Between the minor edge and the feed direction."""

    name, number, units = "minor_cutting_edge_angle", 24, _ANGLE


class Ra(Quantity):
    """Arithmetic mean height of the roughness profile."""

    name, number, units = "ra", 26, _ROUGHNESS


class Rq(Quantity):
    """Root mean square height of the roughness profile."""

    name, number, units = "rq", 27, _ROUGHNESS


class Rz(Quantity):
    """Maximum height of the roughness profile."""

    name, number, units = "rz", 28, _ROUGHNESS


class Rt(Quantity):
    """Total height of the roughness profile."""

    name, number, units = "rt", 29, _ROUGHNESS


class Length(Quantity):
    """Along the axis."""

    name, number, units = "length", 30, _LENGTH


class Overhang(Quantity):
    """By which the bar stands out of the jaws."""

    name, number, units = "overhang", 31, _LENGTH


class Deflection(Quantity):
    """Of the bar under load, positive away from the tool."""

    name, number, units = "deflection", 36, _LENGTH


class Exponent(Quantity):
    """Of the specific cutting force: how it falls with the thickness of the chip."""

    name, number, units = "exponent", 44, _PLAIN


class NormalRatio(Quantity):
    """Force normal to the edge over main force."""

    name, number, units = "normal_ratio", 46, _PLAIN


class ThermalExpansion(Quantity):
    """Coefficient of the length."""

    name, number, units = "expansion", 20, _EXPANSION


class Engraved(Quantity):
    """What a dial shows at a mark."""

    name, number, units = "shows", 34, _LENGTH


class Position(Quantity):
    """Along the axis: 0 on the finished face, negative towards the chuck."""

    name, number, units = "z", 35, _LENGTH


class SizeUncertainty(Quantity):
    """Expanded, of a size."""

    name, number, units = "instrument_uncertainty", 39, _LENGTH


class TemperatureRise(Quantity):
    """Above 20 degC, or above what it was."""

    name, number, units = "rise", 49, _RISE


class Probability(Quantity):
    """From 0 to 1."""

    name, number, units = "probability", 89, _PLAIN


class Support(enum.IntEnum):
    """What holds the bar."""

    CHUCK = 1
    CHUCK_AND_CENTRE = 2
    BETWEEN_CENTRES = 3


class Regime(enum.IntEnum):
    """Which part of the tool's outline the finish shows."""

    ARC = 1
    ARC_AND_MINOR_EDGE = 2
    ARC_AND_MAJOR_EDGE = 3
    EDGES = 4


# ------------------------------------------------------------------------------------------- columns


class Doubles(Protocol):
    """What a column of answers offers: a numpy array where numpy is there, else an array.array."""

    def __len__(self) -> int: ...

    def __getitem__(self, row: int, /) -> float: ...

    def __iter__(self) -> Iterator[float]: ...


class Column:
    """Numbers of one unit: anything that shows its doubles as memory, or a sequence of numbers.

    One number stands for all rows. What a masked array of numpy hides is no number.
    """

    def __init__(self, data: Any, unit: str) -> None:
        if hasattr(data, "mask") and hasattr(data, "filled"):
            data = data.astype("float64").filled(float("nan"))
        if isinstance(data, Mapping):
            raise TypeError("a column is a sequence of numbers, not a mapping")
        self.data = data
        self.unit = unit


class _Input(ctypes.Structure):
    _fields_ = [
        ("data", ctypes.c_void_p),
        ("stride_bytes", ctypes.c_size_t),
        ("count", ctypes.c_size_t),
        ("quantity", ctypes.c_int32),
        ("unit", ctypes.c_int32),
    ]


class _Detail(ctypes.Structure):
    _fields_ = [
        ("struct_size", ctypes.c_uint32),
        ("status", ctypes.c_int32),
        ("row", ctypes.c_uint64),
        ("field", ctypes.c_char * 64),
        ("given", ctypes.c_char * 64),
        ("expected", ctypes.c_char * 128),
        ("remedy", ctypes.c_char * 192),
        ("field_length", ctypes.c_uint32),
        ("given_length", ctypes.c_uint32),
        ("expected_length", ctypes.c_uint32),
        ("remedy_length", ctypes.c_uint32),
        ("rows_bad", ctypes.c_uint64),
        ("row_status", ctypes.c_int32),
        ("reserved", ctypes.c_uint32 * 5),
    ]

    def text(self, name: str) -> str:
        kept: bytes = getattr(self, name)
        return kept.decode("utf-8")

    def error(self, status: int) -> TurnwrightError:
        rows_bad = status == Status.ROWS_BAD
        return TurnwrightError(
            self.row_status if rows_bad else status,
            self.text("field"),
            self.text("given"),
            self.text("expected"),
            self.text("remedy"),
            self.row if rows_bad else None,
            self.rows_bad,
        )


def _detail() -> _Detail:
    return _Detail(struct_size=ctypes.sizeof(_Detail))


class _PyBuffer(ctypes.Structure):
    """Py_buffer of CPython: the only way from ctypes to memory that is read-only."""

    _fields_ = [
        ("buf", ctypes.c_void_p),
        ("obj", ctypes.py_object),
        ("len", ctypes.c_ssize_t),
        ("itemsize", ctypes.c_ssize_t),
        ("readonly", ctypes.c_int),
        ("ndim", ctypes.c_int),
        ("format", ctypes.c_char_p),
        ("shape", ctypes.POINTER(ctypes.c_ssize_t)),
        ("strides", ctypes.POINTER(ctypes.c_ssize_t)),
        ("suboffsets", ctypes.POINTER(ctypes.c_ssize_t)),
        ("internal", ctypes.c_void_p),
    ]


_ASK_STRIDES_AND_FORMAT = 0x0008 | 0x0010 | 0x0004  # PyBUF_ND, PyBUF_STRIDES, PyBUF_FORMAT
_DOUBLES = {"d", "@d", "=d", "<d" if sys.byteorder == "little" else ">d"}
_OTHER_NUMBERS = set("bBhHiIlLqQnNf")


class _Memory:
    """Where the doubles of a column lie; holds on to them until it is released."""

    def __init__(self, field: str, data: Any) -> None:
        self.view: Optional[_PyBuffer] = None
        if hasattr(data, "to_numpy"):
            data = data.to_numpy()
        if isinstance(data, numbers.Real) and not isinstance(data, bool):
            data = [data]
        if isinstance(data, (str, bytes, bytearray)):
            raise _no_column(field, repr(data)[:60], "give a list or an array of doubles")
        #: Doubles that were made of other numbers; None where they are used where they lie.
        self.made: Optional[array[float]] = None
        if not self._look(field, data):
            self.made = _made_doubles(field, data)
            self._look(field, self.made)

    def _look(self, field: str, data: Any) -> bool:
        """True when the doubles are used where they lie."""
        view = _PyBuffer()
        try:
            _get_buffer(data, ctypes.byref(view), _ASK_STRIDES_AND_FORMAT)
        except (BufferError, TypeError, ValueError):
            return False
        kind = (view.format or b"B").decode("ascii")
        try:
            if view.ndim != 1:
                raise _no_column(field, f"{view.ndim} dimensions", "give one column of it")
            if kind not in _DOUBLES:
                if kind.lstrip("@=") in _OTHER_NUMBERS or kind == "O":
                    return False
                raise _no_column(field, f"memory of type {kind!r}", "convert it to doubles")
            self.count = int(view.shape[0])
            # A single number has no next one, whatever stride stands there; an array of ctypes shows
            # none, and its numbers lie side by side.
            strided = self.count > 1 and bool(view.strides)
            self.stride = int(view.strides[0]) if strided else 8
            if self.stride <= 0:
                remedy = "copy it first, or give the one number that all rows share"
                raise _no_column(field, f"a stride of {self.stride} bytes", remedy)
            self.address = view.buf
            self.view, view = view, _PyBuffer()
        finally:
            _release_buffer(ctypes.byref(view))
        return True

    def release(self) -> None:
        view, self.view = self.view, None
        if view is not None:
            _release_buffer(ctypes.byref(view))


_get_buffer: Any = ctypes.pythonapi.PyObject_GetBuffer
_get_buffer.argtypes = [ctypes.py_object, ctypes.c_void_p, ctypes.c_int]
_release_buffer: Any = ctypes.pythonapi.PyBuffer_Release
_release_buffer.argtypes = [ctypes.c_void_p]
_release_buffer.restype = None


def _made_doubles(field: str, data: Any) -> array[float]:
    made = array("d")
    try:
        items = iter(data)
    except TypeError:
        raise _no_column(field, repr(data)[:60], "give a list or an array of doubles") from None
    for row, number in enumerate(items):
        try:
            if isinstance(number, (str, bool)):
                raise TypeError
            made.append(number)
        except (TypeError, OverflowError):
            given = f"{number!r} in row {row}"[:60]
            raise _no_column(field, given, "give numbers; NaN where one is missing") from None
    return made


def _no_column(field: str, given: str, remedy: str) -> TurnwrightError:
    return TurnwrightError(Status.BAD_COLUMN, field, given, "a column of numbers", remedy)


def _column_of(field: str, cls: Type[Quantity], given: Given) -> Column:
    if isinstance(given, Column):
        return given
    one = cls.read(given, field)
    return Column(array("d", [one.value]), one.unit)


# A column, or one quantity for all rows: an object of the argument's own class, or text; a bare number
# where the quantity has no unit.
Given = Union[Column, Quantity, str, float]


class _Call(NamedTuple):
    """A column call: the name in C and its parameters, in their order."""

    function: str
    parameters: Tuple[Tuple[str, Any], ...]


class _Out(NamedTuple):
    quantity: Type[Quantity]


_INT32, _TEXT, _NUMBERS = "int32", "text", "numbers"


class Rows:
    """The answer of a column call: columns by name, a status a row, and words for what is bad."""

    def __init__(self, call: _Call, given: Mapping[str, Any], unit: Optional[str]) -> None:
        self._call, self._given, self._unit = call, given, unit
        self._columns: Dict[str, array[float]] = {}
        self._numbers: Dict[str, array[int]] = {}
        self._status: array[int] = array("i")
        #: The first bad row in words; None where all are good.
        self.first_error: Optional[TurnwrightError] = None
        self._run(None)

    def __len__(self) -> int:
        return len(self._status)

    def __getitem__(self, name: str) -> Doubles:
        """A column of answers."""
        if name not in self._columns:
            raise KeyError(f"{name!r}; the columns are {', '.join(self._columns)}")
        shown: Doubles = _shown(self._columns[name], "float64")
        return shown

    def keys(self) -> List[str]:
        """The names of the columns."""
        return list(self._columns)

    def __repr__(self) -> str:
        bad = sum(1 for status in self._status if status)
        return f"<{len(self)} rows of {', '.join(self._columns)}; {bad} bad>"

    def numbers(self, name: str) -> Sequence[int]:
        """A column of enumeration numbers: the `regime` of a roughness."""
        shown: Sequence[int] = _shown(self._numbers[name], "int32")
        return shown

    @property
    def status(self) -> Sequence[int]:
        """The status of each row: 0, or a number of `Status`."""
        shown: Sequence[int] = _shown(self._status, "int32")
        return shown

    def check(self) -> Rows:
        """The same, or the first bad row as an exception."""
        if self.first_error is not None:
            raise self.first_error
        return self

    def explain(self, row: int) -> Optional[TurnwrightError]:
        """What is wrong with a row, by asking it again alone; None where it is good."""
        if not 0 <= row < len(self):
            raise IndexError(row)
        if self._status[row] == Status.OK:
            return None
        alone = object.__new__(Rows)
        alone._call, alone._given, alone._unit = self._call, self._given, self._unit
        alone._columns, alone._numbers, alone.first_error = {}, {}, None
        alone._run(row)
        error = alone.first_error
        if error is not None:
            error.row = row
        return error

    def _run(self, only: Optional[int]) -> None:
        memories: List[_Memory] = []
        try:
            self._ask(memories, only)
        finally:
            for memory in memories:
                memory.release()

    def _ask(self, memories: List[_Memory], only: Optional[int]) -> None:
        inputs: Dict[str, _Input] = {}
        for name, kind in self._call.parameters:
            if isinstance(kind, type) and issubclass(kind, Quantity):
                column = _column_of(name, kind, self._given[name])
                unit = unit_number(kind, column.unit, column.unit, name)
                memory = _Memory(name, column.data)
                memories.append(memory)
                if memory.made is not None:
                    # `explain` asks again, and an iterator gives its numbers once.
                    self._given = {**self._given, name: Column(memory.made, column.unit)}
                address, count = memory.address, memory.count
                if only is not None:
                    address = address + (memory.stride * only if count > 1 else 0)
                    count = 1
                inputs[name] = _Input(address, memory.stride, count, kind.number, unit)
        # One number is a constant; where there is nothing else, it is the one row.
        counts = [column.count for column in inputs.values() if column.count != 1]
        rows = counts[0] if counts else 1
        arguments: List[Any] = []
        keep: List[Any] = list(inputs.values())
        for name, kind in self._call.parameters:
            if name in inputs:
                arguments.append(ctypes.byref(inputs[name]))
            elif isinstance(kind, _Out):
                unit_text = next(iter(kind.quantity.units)) if self._unit is None else self._unit
                unit = unit_number(kind.quantity, unit_text, unit_text, "unit")
                made = array("d", [0.0]) * rows
                self._columns[name] = made
                where = made.buffer_info()[0]
                keep.append(_Input(where, 8, rows, kind.quantity.number, unit))
                arguments.append(ctypes.byref(keep[-1]))
            elif kind == _NUMBERS:
                self._numbers[name] = array("i", [0]) * rows
                where = self._numbers[name].buffer_info()[0]
                arguments += [ctypes.c_void_p(where), ctypes.c_size_t(4)]
            elif kind == _INT32:
                arguments.append(_c_number(name, self._given[name]))
            else:
                arguments.append(_c_text(name, self._given[name]))
        self._status = array("i", [0]) * rows
        detail = _detail()
        where = self._status.buffer_info()[0]
        arguments += [ctypes.c_void_p(where), ctypes.c_size_t(4), ctypes.byref(detail)]
        status = int(getattr(_library(), self._call.function)(*arguments))
        if status == Status.ROWS_BAD:
            self.first_error = detail.error(status)
        elif status != Status.OK:
            raise detail.error(status)


def _shown(column: Any, kind: str) -> Any:
    return column if _numpy is None else _numpy.frombuffer(column, dtype=kind)


def _c_text(field: str, text: object) -> ctypes.c_char_p:
    if not isinstance(text, str):
        shown = repr(text)[:60]
        raise TurnwrightError(Status.UNREADABLE, field, shown, "text", "write it as text")
    encoded = _utf8(field, text)
    if b"\0" in encoded:
        remedy = "leave the NUL out"
        raise TurnwrightError(Status.NUL_IN_TEXT, field, repr(text)[:60], "text", remedy)
    return ctypes.c_char_p(encoded)


def _c_number(field: str, given: object) -> ctypes.c_int32:
    if isinstance(given, bool) or not isinstance(given, int) or abs(given) >= 2**31:
        shown, expected = repr(given)[:60], "the number of an enumeration"
        remedy = "give a member of the enumeration, such as Support.CHUCK"
        raise TurnwrightError(Status.UNKNOWN_NAME, field, shown, expected, remedy)
    return ctypes.c_int32(given)


def _utf8(field: str, text: str) -> bytes:
    try:
        return text.encode("utf-8")
    except UnicodeEncodeError:
        remedy = "leave out the half of a surrogate pair"
        raise TurnwrightError(Status.BAD_UTF8, field, ascii(text)[:60], "text", remedy) from None


def _alone(call: _Call, given: Mapping[str, Any], unit: Optional[str] = None) -> Rows:
    """A call of one row: what is wrong with it is raised, and no column is taken."""
    for name, one in given.items():
        if isinstance(one, Column):
            remedy = "use the call that ends in _column"
            raise TurnwrightError(Status.MISUSE, name, "a column", "one quantity", remedy)
    rows = Rows(call, given, unit)
    error = rows.first_error
    if error is not None:
        error.row, error.rows_bad = None, 0
        kind, text = dict(call.parameters).get(error.field), given.get(error.field)
        if isinstance(text, str) and isinstance(kind, type) and issubclass(kind, Quantity):
            # A value out of range is told as it was written, in words of its own units.
            written = kind.units[kind.read(text, error.field).unit]
            _value_of_text(text, kind.number, written, error.field)
        raise error
    return rows


def _first(rows: Rows, cls: Type[Q], name: str, unit: Optional[str]) -> Q:
    return cls(rows._columns[name][0], next(iter(cls.units)) if unit is None else unit)


# --------------------------------------------------------------------------------------------- calls

_SPINDLE_SPEED_FOR = _Call(
    "tw_spindle_speed_for_column",
    (
        ("cutting_speed", CuttingSpeed),
        ("diameter", Diameter),
        ("spindle_speed", _Out(SpindleSpeed)),
    ),
)


def spindle_speed(
    cutting_speed: Union[CuttingSpeed, str],
    diameter: Union[Diameter, str],
    *,
    unit: Optional[str] = None,
) -> SpindleSpeed:
    """At which a diameter passes the edge at a cutting speed; take the diameter before the cut."""
    given = {"cutting_speed": cutting_speed, "diameter": diameter}
    return _first(_alone(_SPINDLE_SPEED_FOR, given, unit), SpindleSpeed, "spindle_speed", unit)


def spindle_speed_column(
    cutting_speed: Given, diameter: Given, *, unit: Optional[str] = None
) -> Rows:
    """`spindle_speed` for every row."""
    given = {"cutting_speed": cutting_speed, "diameter": diameter}
    return Rows(_SPINDLE_SPEED_FOR, given, unit)


class Roughness(NamedTuple):
    """What a feed and the outline of the tool leave; a real surface is never better."""

    regime: Regime
    rt: Rt
    rz: Rz
    ra: Ra
    rq: Rq


_ROUGHNESS_OF = _Call(
    "tw_theoretical_roughness_column",
    (
        ("feed", Feed),
        ("corner_radius", CornerRadius),
        ("cutting_edge_angle", CuttingEdgeAngle),
        ("minor_cutting_edge_angle", MinorCuttingEdgeAngle),
        ("rt", _Out(Rt)),
        ("rz", _Out(Rz)),
        ("ra", _Out(Ra)),
        ("rq", _Out(Rq)),
        ("regime", _NUMBERS),
    ),
)


def roughness(
    feed: Union[Feed, str],
    corner_radius: Union[CornerRadius, str],
    cutting_edge_angle: Union[CuttingEdgeAngle, str],
    minor_cutting_edge_angle: Union[MinorCuttingEdgeAngle, str],
    *,
    unit: Optional[str] = None,
) -> Roughness:
    """The roughness that a feed and the outline of the tool leave, exactly."""
    given = {
        "feed": feed,
        "corner_radius": corner_radius,
        "cutting_edge_angle": cutting_edge_angle,
        "minor_cutting_edge_angle": minor_cutting_edge_angle,
    }
    rows = _alone(_ROUGHNESS_OF, given, unit)
    return Roughness(
        Regime(rows._numbers["regime"][0]),
        _first(rows, Rt, "rt", unit),
        _first(rows, Rz, "rz", unit),
        _first(rows, Ra, "ra", unit),
        _first(rows, Rq, "rq", unit),
    )


def roughness_column(
    feed: Given,
    corner_radius: Given,
    cutting_edge_angle: Given,
    minor_cutting_edge_angle: Given,
    *,
    unit: Optional[str] = None,
) -> Rows:
    """`roughness` for every row; `numbers("regime")` holds the regimes."""
    given = {
        "feed": feed,
        "corner_radius": corner_radius,
        "cutting_edge_angle": cutting_edge_angle,
        "minor_cutting_edge_angle": minor_cutting_edge_angle,
    }
    return Rows(_ROUGHNESS_OF, given, unit)


class Forces(NamedTuple):
    """The three forces of a cut."""

    main: MainForce
    feed: FeedForce
    passive: PassiveForce


_CUTTING_FORCES = _Call(
    "tw_cutting_forces_column",
    (
        ("specific_force", SpecificForce),
        ("exponent", Exponent),
        ("depth_of_cut", DepthOfCut),
        ("feed", Feed),
        ("cutting_edge_angle", CuttingEdgeAngle),
        ("corner_radius", CornerRadius),
        ("normal_ratio", NormalRatio),
        ("main_force", _Out(MainForce)),
        ("feed_force", _Out(FeedForce)),
        ("passive_force", _Out(PassiveForce)),
    ),
)


def cutting_forces(
    specific_force: Union[SpecificForce, str],
    exponent: Union[Exponent, str, float],
    depth_of_cut: Union[DepthOfCut, str],
    feed: Union[Feed, str],
    cutting_edge_angle: Union[CuttingEdgeAngle, str],
    corner_radius: Union[CornerRadius, str],
    normal_ratio: Union[NormalRatio, str, float],
    *,
    unit: Optional[str] = None,
) -> Forces:
    """Of a sharp tool with a rounded corner, light cuts included."""
    given = {
        "specific_force": specific_force,
        "exponent": exponent,
        "depth_of_cut": depth_of_cut,
        "feed": feed,
        "cutting_edge_angle": cutting_edge_angle,
        "corner_radius": corner_radius,
        "normal_ratio": normal_ratio,
    }
    rows = _alone(_CUTTING_FORCES, given, unit)
    return Forces(
        _first(rows, MainForce, "main_force", unit),
        _first(rows, FeedForce, "feed_force", unit),
        _first(rows, PassiveForce, "passive_force", unit),
    )


def cutting_forces_column(
    specific_force: Given,
    exponent: Given,
    depth_of_cut: Given,
    feed: Given,
    cutting_edge_angle: Given,
    corner_radius: Given,
    normal_ratio: Given,
    *,
    unit: Optional[str] = None,
) -> Rows:
    """`cutting_forces` for every row: `main_force`, `feed_force`, `passive_force`."""
    given = {
        "specific_force": specific_force,
        "exponent": exponent,
        "depth_of_cut": depth_of_cut,
        "feed": feed,
        "cutting_edge_angle": cutting_edge_angle,
        "corner_radius": corner_radius,
        "normal_ratio": normal_ratio,
    }
    return Rows(_CUTTING_FORCES, given, unit)


_CUTTING_POWER = _Call(
    "tw_cutting_power_column",
    (("main_force", MainForce), ("cutting_speed", CuttingSpeed), ("power", _Out(Power))),
)


def cutting_power(
    main_force: Union[MainForce, str],
    cutting_speed: Union[CuttingSpeed, str],
    *,
    unit: Optional[str] = None,
) -> Power:
    """At the spindle; the cutting speed is that of the mean diameter."""
    given = {"main_force": main_force, "cutting_speed": cutting_speed}
    return _first(_alone(_CUTTING_POWER, given, unit), Power, "power", unit)


def cutting_power_column(
    main_force: Given, cutting_speed: Given, *, unit: Optional[str] = None
) -> Rows:
    """`cutting_power` for every row."""
    return Rows(_CUTTING_POWER, {"main_force": main_force, "cutting_speed": cutting_speed}, unit)


_CUTTING_TORQUE = _Call(
    "tw_cutting_torque_column",
    (("main_force", MainForce), ("mean_diameter", Diameter), ("torque", _Out(Torque))),
)


def cutting_torque(
    main_force: Union[MainForce, str],
    mean_diameter: Union[Diameter, str],
    *,
    unit: Optional[str] = None,
) -> Torque:
    """At the spindle: main force times half the mean diameter."""
    given = {"main_force": main_force, "mean_diameter": mean_diameter}
    return _first(_alone(_CUTTING_TORQUE, given, unit), Torque, "torque", unit)


def cutting_torque_column(
    main_force: Given, mean_diameter: Given, *, unit: Optional[str] = None
) -> Rows:
    """`cutting_torque` for every row."""
    return Rows(_CUTTING_TORQUE, {"main_force": main_force, "mean_diameter": mean_diameter}, unit)


_FACING_TIME = _Call(
    "tw_facing_time_column",
    (
        ("diameter", Diameter),
        ("bore", Diameter),
        ("feed", Feed),
        ("spindle_speed", SpindleSpeed),
        ("time", _Out(Time)),
    ),
)


def facing_time(
    diameter: Union[Diameter, str],
    bore: Union[Diameter, str],
    feed: Union[Feed, str],
    spindle_speed: Union[SpindleSpeed, str],
    *,
    unit: Optional[str] = None,
) -> Time:
    """From the outside to a bore at one spindle speed."""
    given = {"diameter": diameter, "bore": bore, "feed": feed, "spindle_speed": spindle_speed}
    return _first(_alone(_FACING_TIME, given, unit), Time, "time", unit)


def facing_time_column(
    diameter: Given,
    bore: Given,
    feed: Given,
    spindle_speed: Given,
    *,
    unit: Optional[str] = None,
) -> Rows:
    """`facing_time` for every row."""
    given = {"diameter": diameter, "bore": bore, "feed": feed, "spindle_speed": spindle_speed}
    return Rows(_FACING_TIME, given, unit)


_DEFLECTION_AT = _Call(
    "tw_deflection_at_column",
    (
        ("youngs_modulus", YoungsModulus),
        ("diameter", Diameter),
        ("overhang", Overhang),
        ("support", _INT32),
        ("chuck", Stiffness),
        ("chuck_rotational", RotationalStiffness),
        ("centre", Stiffness),
        ("passive_force", PassiveForce),
        ("at", Length),
        ("deflection", _Out(Deflection)),
    ),
)


def deflection(
    youngs_modulus: Union[YoungsModulus, str],
    diameter: Union[Diameter, str],
    overhang: Union[Overhang, str],
    support: Support,
    passive_force: Union[PassiveForce, str],
    at: Union[Length, str],
    *,
    chuck: Union[Stiffness, str] = "rigid",
    chuck_rotational: Union[RotationalStiffness, str] = "rigid",
    centre: Union[Stiffness, str] = "rigid",
    unit: Optional[str] = None,
) -> Deflection:
    """How far a round bar gives way at the tool; `at` is measured from the chuck."""
    given = {
        "youngs_modulus": youngs_modulus,
        "diameter": diameter,
        "overhang": overhang,
        "support": support,
        "chuck": chuck,
        "chuck_rotational": chuck_rotational,
        "centre": centre,
        "passive_force": passive_force,
        "at": at,
    }
    return _first(_alone(_DEFLECTION_AT, given, unit), Deflection, "deflection", unit)


def deflection_column(
    youngs_modulus: Given,
    diameter: Given,
    overhang: Given,
    support: Support,
    passive_force: Given,
    at: Given,
    *,
    chuck: Given = "rigid",
    chuck_rotational: Given = "rigid",
    centre: Given = "rigid",
    unit: Optional[str] = None,
) -> Rows:
    """`deflection` for every row; the support is one for all."""
    given = {
        "youngs_modulus": youngs_modulus,
        "diameter": diameter,
        "overhang": overhang,
        "support": support,
        "chuck": chuck,
        "chuck_rotational": chuck_rotational,
        "centre": centre,
        "passive_force": passive_force,
        "at": at,
    }
    return Rows(_DEFLECTION_AT, given, unit)


class Limits(NamedTuple):
    """The sizes between which a part is good."""

    smallest: Diameter
    largest: Diameter


_LIMITS_OF_CLASS = _Call(
    "tw_limits_of_class_column",
    (
        ("nominal", Diameter),
        ("class_name", _TEXT),
        ("smallest", _Out(Diameter)),
        ("largest", _Out(Diameter)),
    ),
)


def limits_of_class(
    nominal: Union[Diameter, str], class_name: str, *, unit: Optional[str] = None
) -> Limits:
    """Of a tolerance class such as "h7" (shafts) or "H7" (holes)."""
    rows = _alone(_LIMITS_OF_CLASS, {"nominal": nominal, "class_name": class_name}, unit)
    return Limits(
        _first(rows, Diameter, "smallest", unit), _first(rows, Diameter, "largest", unit)
    )


def limits_of_class_column(
    nominal: Given, class_name: str, *, unit: Optional[str] = None
) -> Rows:
    """`limits_of_class` for every row; the class is one for all."""
    return Rows(_LIMITS_OF_CLASS, {"nominal": nominal, "class_name": class_name}, unit)


_DIAMETER_AT_20 = _Call(
    "tw_diameter_at_20_column",
    (
        ("measured", Diameter),
        ("expansion", ThermalExpansion),
        ("rise", TemperatureRise),
        ("diameter", _Out(Diameter)),
    ),
)


def diameter_at_20(
    measured: Union[Diameter, str],
    expansion: Union[ThermalExpansion, str],
    rise: Union[TemperatureRise, str],
    *,
    unit: Optional[str] = None,
) -> Diameter:
    """What a diameter measured warm, by so much above 20 degC, will be at 20 degC."""
    given = {"measured": measured, "expansion": expansion, "rise": rise}
    return _first(_alone(_DIAMETER_AT_20, given, unit), Diameter, "diameter", unit)


def diameter_at_20_column(
    measured: Given, expansion: Given, rise: Given, *, unit: Optional[str] = None
) -> Rows:
    """`diameter_at_20` for every row: `diameter`."""
    given = {"measured": measured, "expansion": expansion, "rise": rise}
    return Rows(_DIAMETER_AT_20, given, unit)


_CALLS = (
    _SPINDLE_SPEED_FOR,
    _ROUGHNESS_OF,
    _CUTTING_FORCES,
    _CUTTING_POWER,
    _CUTTING_TORQUE,
    _FACING_TIME,
    _DEFLECTION_AT,
    _LIMITS_OF_CLASS,
    _DIAMETER_AT_20,
)


# ----------------------------------------------------------------------------------------- documents


def _json(question: Mapping[str, Any]) -> str:
    try:
        return json.dumps(question, allow_nan=False, ensure_ascii=False)
    except (TypeError, ValueError) as trouble:
        remedy = "use dicts, lists, text, finite numbers, True, False and None"
        raise TurnwrightError(
            Status.UNREADABLE, "", str(trouble), "a question that JSON can hold", remedy
        ) from None
    except RecursionError:
        given, remedy = "objects and lists in one another, too deep", "no question nests so deep"
        expected = "a question that JSON can hold"
        raise TurnwrightError(Status.UNREADABLE, "", given, expected, remedy) from None


def answer(question: Mapping[str, Any]) -> Dict[str, Any]:
    """Answers one question, such as {"plan": {...}}; quantities are text with units.

    `questions` names them, `schema` says the fields of one, and `materials` of what may be asked.
    """
    library, encoded = _library(), _utf8("question", _json(question))
    found: Dict[str, Any] = json.loads(_handed(library, library.tw_answer_n, encoded, len(encoded)))
    return found


def questions() -> List[str]:
    """The names of the questions that `answer` takes."""
    library = _library()
    return _handed(library, library.tw_question_names).splitlines()


def schema(question: str) -> Dict[str, Any]:
    """The fields of a question, as a JSON Schema: what each is ("description"), takes and needs."""
    library = _library()
    name = _c_text("question", question)
    found: Dict[str, Any] = json.loads(_handed(library, library.tw_question_schema, name))
    return found


def materials() -> List[str]:
    """The keys of the materials in the catalogue."""
    library = _library()
    return _handed(library, library.tw_material_keys).splitlines()


def _handed(library: Any, call: Any, *arguments: Any) -> str:
    """The text that a call hands over, given back to it."""
    detail, text = _detail(), ctypes.c_void_p()
    status = int(call(*arguments, ctypes.byref(text), ctypes.byref(detail)))
    if status != Status.OK:
        raise detail.error(status)
    try:
        return ctypes.string_at(text.value or 0).decode("utf-8")
    finally:
        library.tw_text_free(text)


def plan(job: Mapping[str, Any]) -> Dict[str, Any]:
    """The operation sheet of a job as a dict: the fields of the answer to the question `plan`.

    `Plan` holds one open, with typed steps.
    """
    sheet: Dict[str, Any] = answer({"plan": job})["plan"]
    return sheet


# --------------------------------------------------------------------------------------------- plans


class StepKind(enum.IntEnum):
    """What kind of step it is, as in turnwright.h."""

    CLAMP = 1
    FIRST_START = 2
    FACE = 3
    CENTRE_DRILL = 4
    RECLAMP = 5
    ZERO_Z = 6
    ZERO_X = 7
    FIRST_CUT = 8
    MEASURE = 9
    ADJUST = 10
    ROUGH_CUT = 11
    FINISH_CUT = 12
    SHOULDER = 13
    UNDERCUT = 14
    TAPER = 15
    EDGES = 16
    INSPECT = 17
    PART_OFF = 18
    TURN_ROUND = 19
    CLEAR = 20


class Slide(enum.IntEnum):
    """Whose dial is read."""

    CROSS = 1
    CARRIAGE = 2
    COMPOUND = 3


@dataclass(frozen=True)
class Reading:
    """Where a dial stands: whole divisions from its zero, positive into the metal, and as it is read.

    `slide` is a member of `Slide`, or a plain number where a newer library knows another one. `tenths`
    are tenths of a mark beyond it, by eye, on a ring that cannot be set.
    """

    slide: int
    divisions: int
    turns: int
    mark: int
    tenths: int
    shows: Engraved


@dataclass(frozen=True)
class Step:
    """One step of a plan; what it has not is None. Figures are metric, whatever the job was given in:
    `text` and `because` speak in the units of the job.

    `kind` is a member of `StepKind`, or a plain number where a newer library knows another one.
    `surface` counts from 0 from the face of its end. `done` are steps before a measurement that was
    handed in.
    """

    kind: int
    surface: Optional[int]
    other_end: bool
    done: bool
    reading: Optional[Reading]
    diameter: Diameter
    z: Optional[Position]
    spindle_speed: Optional[SpindleSpeed]
    feed: Optional[Feed]
    depth_of_cut: Optional[DepthOfCut]
    time: Time
    text: str
    because: Optional[str]
    #: The mark that the ring of the cross dial is turned to, where the size measured is as expected.
    ring_to: Optional[float] = None


@dataclass(frozen=True)
class Expected:
    """What to expect of the part; the sizes are those of the surface least likely to come out good."""

    surfaces: int
    diameter: Diameter
    smallest: Diameter
    largest: Diameter
    uncertainty: SizeUncertainty
    good: Probability
    rework: Probability
    scrap: Probability
    time: Time


class Surface(NamedTuple):
    """What to expect of one surface; which one is counted from the face of its end, from 0, as in `Step`."""

    surface: int
    other_end: bool
    diameter: Diameter
    smallest: Diameter
    largest: Diameter
    uncertainty: SizeUncertainty
    good: Probability
    rework: Probability
    scrap: Probability
    ra: Ra
    rz: Rz


class After(NamedTuple):
    """What follows from a measurement: the plan, or None, and the answer, which then says why."""

    plan: Optional[Plan]
    answer: Dict[str, Any]


class _Step(ctypes.Structure):
    _fields_ = [
        ("struct_size", ctypes.c_uint32),
        ("kind", ctypes.c_int32),
        ("surface", ctypes.c_int32),
        ("other_end", ctypes.c_int32),
        ("done", ctypes.c_int32),
        ("slide", ctypes.c_int32),
        ("divisions", ctypes.c_int64),
        ("turns", ctypes.c_int64),
        ("mark", ctypes.c_int32),
        ("tenths", ctypes.c_int32),
        ("shows", ctypes.c_double),
        ("diameter", ctypes.c_double),
        ("z", ctypes.c_double),
        ("spindle_speed", ctypes.c_double),
        ("feed", ctypes.c_double),
        ("depth_of_cut", ctypes.c_double),
        ("time", ctypes.c_double),
        ("text", ctypes.c_char_p),
        ("because", ctypes.c_char_p),
        ("ring_to", ctypes.c_double),
    ]

    def typed(self) -> Step:
        """The same with its texts copied: they belong to the plan."""
        reading = Reading(
            _member(Slide, self.slide),
            self.divisions,
            self.turns,
            self.mark,
            self.tenths,
            Engraved(self.shows, "mm"),
        )
        because: Optional[bytes] = self.because
        return Step(
            kind=_member(StepKind, self.kind),
            surface=None if self.surface < 0 else self.surface,
            other_end=self.other_end == 1,
            done=self.done == 1,
            reading=reading if self.slide else None,
            diameter=Diameter(self.diameter, "mm"),
            z=_there(Position, self.z),
            spindle_speed=_there(SpindleSpeed, self.spindle_speed),
            feed=_there(Feed, self.feed),
            depth_of_cut=_there(DepthOfCut, self.depth_of_cut),
            time=Time(self.time, "s"),
            text=self.text.decode("utf-8"),
            because=None if because is None else because.decode("utf-8"),
            ring_to=None if self.ring_to != self.ring_to else self.ring_to,
        )


class _Expected(ctypes.Structure):
    _fields_ = [
        ("struct_size", ctypes.c_uint32),
        ("surfaces", ctypes.c_uint32),
        ("diameter", ctypes.c_double),
        ("smallest", ctypes.c_double),
        ("largest", ctypes.c_double),
        ("uncertainty", ctypes.c_double),
        ("good", ctypes.c_double),
        ("rework", ctypes.c_double),
        ("scrap", ctypes.c_double),
        ("time", ctypes.c_double),
    ]

    def typed(self) -> Expected:
        return Expected(
            self.surfaces,
            Diameter(self.diameter, "mm"),
            Diameter(self.smallest, "mm"),
            Diameter(self.largest, "mm"),
            SizeUncertainty(self.uncertainty, "mm"),
            Probability(self.good, ""),
            Probability(self.rework, ""),
            Probability(self.scrap, ""),
            Time(self.time, "s"),
        )


class _Surface(ctypes.Structure):
    _fields_ = [
        ("struct_size", ctypes.c_uint32),
        ("surface", ctypes.c_int32),
        ("other_end", ctypes.c_int32),
        ("diameter", ctypes.c_double),
        ("smallest", ctypes.c_double),
        ("largest", ctypes.c_double),
        ("uncertainty", ctypes.c_double),
        ("good", ctypes.c_double),
        ("rework", ctypes.c_double),
        ("scrap", ctypes.c_double),
        ("ra", ctypes.c_double),
        ("rz", ctypes.c_double),
    ]

    def typed(self) -> Surface:
        return Surface(
            self.surface,
            bool(self.other_end),
            Diameter(self.diameter, "mm"),
            Diameter(self.smallest, "mm"),
            Diameter(self.largest, "mm"),
            SizeUncertainty(self.uncertainty, "mm"),
            Probability(self.good, ""),
            Probability(self.rework, ""),
            Probability(self.scrap, ""),
            Ra(self.ra, "um"),
            Rz(self.rz, "um"),
        )


def _member(kind: Type[enum.IntEnum], number: int) -> int:
    known = any(number == one for one in kind)
    return kind(number) if known else number


def _there(cls: Type[Q], value: float) -> Optional[Q]:
    # NaN is what a step has not; it alone differs from itself.
    return None if value != value else cls(value, next(iter(cls.units)))


class Plan:
    """An operation sheet that the library holds open.

    Opened from a question, {"plan": {...}}, or from JSON text: a job, or a sheet that was written by
    `json` before, with all that was measured on the way. It never changes; `after` gives the plan that
    follows. Close it when it is done with, or use it in a `with` block; it closes itself when nobody
    holds it any more. Any threads may share it.

    A sheet is advice: the machine's manual, the rules of the shop and what a qualified person says
    come first.
    """

    def __init__(self, question: Union[str, Mapping[str, Any]]) -> None:
        text = question if isinstance(question, str) else _json(question)
        encoded, library = _utf8("question", text), _library()
        detail, place = _detail(), ctypes.c_void_p()
        status = int(
            library.tw_plan_open_n(encoded, len(encoded), ctypes.byref(place), ctypes.byref(detail))
        )
        if status != Status.OK:
            raise detail.error(status)
        self._hold(library, place)

    def _hold(self, library: Any, place: ctypes.c_void_p) -> None:
        # The library that opened it, whatever `use` says later on.
        self._library, self._place = library, place
        # Nobody closes it in the middle of a call of another thread.
        self._lock = threading.Lock()
        self._free = weakref.finalize(self, library.tw_plan_free, ctypes.byref(place))
        # At the end of the program all memory goes, and a thread may still be in a call.
        self._free.atexit = False

    def close(self) -> None:
        """Gives the memory back; closing it twice is harmless. Steps that were read stay as they are."""
        with self._lock:
            self._free()

    @property
    def closed(self) -> bool:
        """True after `close`."""
        return not self._free.alive

    def __enter__(self) -> Plan:
        with self._lock:
            self._open()
        return self

    def __exit__(self, *_: object) -> None:
        self.close()

    def __repr__(self) -> str:
        return "<Plan, closed>" if self.closed else f"<Plan of {len(self)} steps>"

    def _open(self) -> ctypes.c_void_p:
        """The plan for a call, which is made under the lock."""
        if self.closed:
            remedy = "open it again, or use it inside of its `with` block"
            raise TurnwrightError(
                Status.MISUSE, "plan", "a plan that was closed", "an open plan", remedy
            )
        return self._place

    def __len__(self) -> int:
        """How many steps it has."""
        with self._lock:
            return int(self._library.tw_plan_step_count(self._open()))

    def step(self, index: int) -> Step:
        """One step, from 0."""
        at, detail = _index("index", index), _detail()
        step = _Step(struct_size=ctypes.sizeof(_Step))
        with self._lock:
            status = int(
                self._library.tw_plan_step(
                    self._open(), at, ctypes.byref(step), ctypes.byref(detail)
                )
            )
            if status == Status.OK:
                return step.typed()
        error = detail.error(status)
        if error.field == "index":
            error.remedy = "ask len() how many there are"
        raise error

    def __iter__(self) -> Iterator[Step]:
        """Its steps, one after the other."""
        return (self.step(index) for index in range(len(self)))

    def expected(self) -> Expected:
        """What to expect of the part: size, uncertainty, chances, cutting time."""
        detail, expected = _detail(), _Expected(struct_size=ctypes.sizeof(_Expected))
        with self._lock:
            status = int(
                self._library.tw_plan_expected(
                    self._open(), ctypes.byref(expected), ctypes.byref(detail)
                )
            )
        if status != Status.OK:
            raise detail.error(status)
        return expected.typed()

    def surface(self, index: int) -> Surface:
        """What to expect of one surface, from 0, in the order in which they are turned."""
        at, detail = _index("index", index), _detail()
        surface = _Surface(struct_size=ctypes.sizeof(_Surface))
        with self._lock:
            status = int(
                self._library.tw_plan_surface(
                    self._open(), at, ctypes.byref(surface), ctypes.byref(detail)
                )
            )
        if status != Status.OK:
            error = detail.error(status)
            if error.field == "index":
                error.remedy = "ask expected().surfaces how many there are"
            raise error
        return surface.typed()

    def surfaces(self) -> List[Surface]:
        """What to expect of every surface, in the order in which they are turned."""
        return [self.surface(index) for index in range(self.expected().surfaces)]

    def text(self) -> str:
        """The sheet as plain text of at most 100 columns, in the units of the job."""
        return self._written("tw_plan_text")

    def short_text(self) -> str:
        """A line or two for each step, for somebody who knows the rest."""
        return self._written("tw_plan_short_text")

    def json(self) -> str:
        """All that the plan is, {"version": 1, "plan": {...}}: `Plan` opens it again."""
        return self._written("tw_plan_json")

    def page(self) -> str:
        """One HTML page to print on A4 or Letter, with boxes to tick."""
        return self._written("tw_plan_page")

    def pictures(self) -> List[str]:
        """A picture of each clamping, as SVG."""
        with self._lock:
            count = int(self._library.tw_plan_picture_count(self._open()))
        return [self._written("tw_plan_picture", index) for index in range(count)]

    def _written(self, call: str, *arguments: int) -> str:
        with self._lock:
            return _handed(self._library, getattr(self._library, call), self._open(), *arguments)

    def after(
        self, step: int, measured: Union[Diameter, str, Sequence[Union[Diameter, str]]]
    ) -> After:
        """What follows when a size, or several along the bar, was measured at a step: a cut, a measuring
        stop or the inspection. This plan stays as it is.

        Hand the sizes in before anything is done that the stop says of ring or marks: the next plan takes
        its place, and reckons with the slide one turn out and the ring as it was.
        """
        alone = isinstance(measured, (str, Quantity))
        if alone:
            sizes = [_millimetres("measured", measured)]
        else:
            given = _items("measured", measured)
            sizes = [_millimetres(f"measured[{at}]", size) for at, size in enumerate(given)]
        at, detail = _index("step", step), _detail()
        library, place, words = self._library, ctypes.c_void_p(), ctypes.c_void_p()
        with self._lock:
            status = int(
                library.tw_plan_after(
                    self._open(),
                    at,
                    (ctypes.c_double * len(sizes))(*sizes),
                    len(sizes),
                    ctypes.byref(place),
                    ctypes.byref(words),
                    ctypes.byref(detail),
                )
            )
        if status != Status.OK:
            raise detail.error(status)
        follows: Optional[Plan] = None
        if place:
            # Held before anything may be raised.
            follows = object.__new__(Plan)
            follows._hold(library, place)
        try:
            told: Dict[str, Any] = json.loads(ctypes.string_at(words.value or 0))
        finally:
            library.tw_text_free(words)
        return After(follows, told["after_measurement"])


def _items(field: str, given: Any) -> List[Any]:
    try:
        return list(given)
    except TypeError:
        shown, remedy = repr(given)[:60], "give a Diameter, text, or a list of them"
        raise _misread(Diameter, Status.UNREADABLE, shown, remedy, field) from None


def _millimetres(field: str, size: object) -> float:
    # A size that was not measured warm is what it is at 20 degC: so the library brings it to millimetres.
    one = Diameter.read(size, field)
    try:
        return diameter_at_20(one, "11 um/(m K)", "0 K").value
    except TurnwrightError as error:
        error.field = field
        raise


def _index(field: str, given: Any) -> int:
    whole = isinstance(given, numbers.Integral) and not isinstance(given, bool)
    # What does not fit into a size_t would arrive as another number.
    if not whole or not 0 <= int(given) <= sys.maxsize:
        shown, status = repr(given)[:60], Status.OUT_OF_RANGE if whole else Status.UNREADABLE
        remedy = "count the steps from 0"
        raise TurnwrightError(status, field, shown, "the number of a step, from 0", remedy)
    return int(given)


# ------------------------------------------------------------------------------------------- library


def version() -> str:
    """The version of the library that runs."""
    text: bytes = _library().tw_version()
    return text.decode("ascii")


def use(path: Union[str, pathlib.Path]) -> None:
    """From now on the library at this path, for programs that carry it with them."""
    global _given_path
    _given_path = pathlib.Path(path)
    _library.cache_clear()


_given_path: Optional[pathlib.Path] = None


def _path() -> pathlib.Path:
    given = _given_path or os.environ.get("TURNWRIGHT_LIBRARY")
    if given:
        return pathlib.Path(given).resolve()
    names = {"win32": "turnwright.dll", "darwin": "libturnwright.dylib"}
    root = pathlib.Path(__file__).resolve().parent.parent.parent
    target = root / os.environ.get("CARGO_TARGET_DIR", "target")
    return target / "release" / names.get(sys.platform, "libturnwright.so")


@functools.lru_cache(maxsize=None)
def _library() -> Any:
    path = _path()
    try:
        library: Any = ctypes.CDLL(str(path))
    except OSError as trouble:
        raise ImportError(
            f"{path} cannot be loaded ({trouble}); build it with "
            "`cargo build --release --features capi`, or set TURNWRIGHT_LIBRARY to its path"
        ) from trouble
    library.tw_version.restype = ctypes.c_char_p
    library.tw_text_free.restype = None
    library.tw_text_free.argtypes = [ctypes.c_void_p]
    text, size, place = ctypes.c_char_p, ctypes.c_size_t, ctypes.POINTER(ctypes.c_void_p)
    held = ctypes.c_void_p
    library.tw_plan_free.restype = None
    library.tw_plan_free.argtypes = [place]
    for function in ("tw_plan_step_count", "tw_plan_picture_count"):
        getattr(library, function).restype = size
        getattr(library, function).argtypes = [held]
    for function, arguments in (
        ("tw_answer_n", [text, size, place]),
        ("tw_question_names", [place]),
        ("tw_question_schema", [text, place]),
        ("tw_material_keys", [place]),
        ("tw_plan_open_n", [text, size, place]),
        ("tw_plan_step", [held, size, ctypes.POINTER(_Step)]),
        ("tw_plan_expected", [held, ctypes.POINTER(_Expected)]),
        ("tw_plan_surface", [held, size, ctypes.POINTER(_Surface)]),
        ("tw_plan_text", [held, place]),
        ("tw_plan_short_text", [held, place]),
        ("tw_plan_json", [held, place]),
        ("tw_plan_picture", [held, size, place]),
        ("tw_plan_page", [held, place]),
        ("tw_plan_after", [held, size, ctypes.POINTER(ctypes.c_double), size, place, place]),
    ):
        getattr(library, function).restype = ctypes.c_int32
        getattr(library, function).argtypes = [*arguments, ctypes.c_void_p]
    found = library.tw_version().decode("ascii")
    if tuple(int(part) for part in found.split(".")[:2]) != _INTERFACE:
        wanted = ".".join(str(part) for part in _INTERFACE)
        raise ImportError(f"{path} is version {found}; this module is for {wanted}")
    for call in _CALLS:
        getattr(library, call.function).restype = ctypes.c_int32
    return library
