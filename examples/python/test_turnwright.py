"""The module against plain Rust (examples/twin.rs), the header and the layouts; run by check.sh.

TWIN names the built twin. TURNWRIGHT_TEST_NUMPY says "yes" or "no": with "no" the module must do
without numpy, also where it is installed. No expected value is typed here but those with a source.
"""

import ast
import ctypes
import enum
import fractions
import gc
import io
import json
import math
import os
import pathlib
import random
import re
import subprocess
import sys
import threading
import typing
import unittest
from array import array

NUMPY = os.environ["TURNWRIGHT_TEST_NUMPY"] == "yes"
if NUMPY:
    import numpy
else:
    sys.modules["numpy"] = None  # type: ignore[assignment]

import turnwright as tw

HERE = pathlib.Path(__file__).resolve().parent
ROOT = HERE.parent.parent

Question = typing.Dict[str, typing.Any]


def twin(*arguments: str, lines: typing.Sequence[Question] = ()) -> typing.List[typing.Any]:
    text = "".join(json.dumps(line) + "\n" for line in lines)
    done = subprocess.run(
        [os.environ["TWIN"], *arguments], input=text, capture_output=True, text=True, check=True
    )
    return [json.loads(line) for line in done.stdout.splitlines()]


def classes() -> typing.List[typing.Type[tw.Quantity]]:
    return tw.Quantity.__subclasses__()


class Tables(unittest.TestCase):
    """What the module keeps of the interface is what the interface has."""

    def test_quantities_and_units_are_those_of_rust(self) -> None:
        (tables,) = twin("tables")
        for one in classes():
            theirs = tables["quantities"][one.name]
            self.assertEqual(one.number, theirs["number"], one.name)
            self.assertEqual(dict(one.units), tables["units"][theirs["kind"]], one.name)
        self.assertGreater(len(classes()), 20)

    def test_a_quantity_without_a_unit_asked_is_answered_in_the_one_of_the_trade(self) -> None:
        for one in classes():
            self.assertEqual(min(one.units.values()), next(iter(one.units.values())), one.name)

    def test_enumerations_are_those_of_the_header(self) -> None:
        enums: typing.Sequence[typing.Tuple[str, str, typing.Type[enum.IntEnum]]] = [
            ("status", "", tw.Status),
            ("support", "SUPPORT_", tw.Support),
            ("regime", "REGIME_", tw.Regime),
            ("step_kind", "STEP_", tw.StepKind),
            ("slide", "SLIDE_", tw.Slide),
        ]
        for name, prefix, ours in enums:
            found = re.findall(rf"^    TW_{prefix}([A-Z_0-9]+) = ([0-9]+),", header(name), re.M)
            self.assertEqual({n: int(v) for n, v in found}, {e.name: e.value for e in ours})

    def test_parameters_are_those_of_the_header(self) -> None:
        text = (ROOT / "include/turnwright.h").read_text(encoding="utf-8")
        for call in tw._CALLS:
            found = re.search(rf"\btw_status {call.function}\((.*?)\);", text, re.S)
            assert found, call.function
            theirs = " ".join(found[1].split())
            ours = []
            for name, kind in call.parameters:
                if isinstance(kind, tw._Out):
                    ours.append(f"const struct tw_out_column *{name}")
                elif kind == tw._INT32:
                    ours.append(f"int32_t {name}")
                elif kind == tw._TEXT:
                    ours.append(f"const char *{name}")
                elif kind == tw._NUMBERS:
                    ours += [f"int32_t *{name}", f"size_t {name}_stride_bytes"]
                else:
                    ours.append(f"const struct tw_column *{name}")
            ours += ["int32_t *row_status", "size_t row_status_stride_bytes", "struct tw_error *detail"]
            self.assertEqual(", ".join(ours), theirs)

    @unittest.skipUnless(sys.maxsize > 2**32, "the snapshot is of a 64-bit machine")
    def test_layouts_are_those_of_the_library(self) -> None:
        snapshot = (ROOT / "tests/c/layout-64.txt").read_text(encoding="utf-8").splitlines()
        ours: typing.Dict[str, typing.Type[ctypes.Structure]] = {
            "tw_error": tw._Detail,
            "tw_column": tw._Input,
            "tw_out_column": tw._Input,
            "tw_step": tw._Step,
            "tw_expected": tw._Expected,
            "tw_surface": tw._Surface,
        }
        for name, struct in ours.items():
            lines = [line for line in snapshot if line.split()[1] == name]
            made = [f"sizeof {name} {ctypes.sizeof(struct)}"]
            fields = [field[0] for field in struct._fields_]
            made += [f"offsetof {name} {field} {getattr(struct, field).offset}" for field in fields]
            self.assertEqual(made, lines)


def header(enum: str) -> str:
    text = (ROOT / "include/turnwright.h").read_text(encoding="utf-8")
    found = re.search(rf"^enum tw_{enum}$.*?^}};", text, re.M | re.S)
    assert found, enum
    return found[0]


class Asked:
    """Random questions of one call as text, and what the module and Rust say to them."""

    # The units that a person would write, with a sound range in them. Beyond a range is an error,
    # and those are compared as well.
    RANGES: typing.Dict[str, typing.Sequence[typing.Tuple[str, float, float]]] = {
        "cutting_speed": [("m/min", 5, 400), ("ft/min", 20, 1000), ("m/s", 0.1, 6)],
        "diameter": [("mm", 20, 300), ("in", 1, 12), ("thou", 1000, 9000)],
        "bore": [("mm", 1, 30), ("in", 0.1, 1.1)],
        "nominal": [("mm", 1, 500), ("in", 0.1, 19)],
        "mean_diameter": [("mm", 1, 300), ("in", 0.1, 12)],
        "depth_of_cut": [("mm", 0.05, 5), ("in", 0.002, 0.2)],
        "feed": [("mm/rev", 0.0005, 1), ("in/rev", 0.00001, 0.04)],
        "corner_radius": [("mm", 0.2, 2), ("in", 0.008, 0.08), ("um", 200, 2000)],
        "cutting_edge_angle": [("deg", 45, 110), ("rad", 0.8, 1.8)],
        "minor_cutting_edge_angle": [("deg", 2, 100)],
        "specific_force": [("MPa", 500, 4000), ("ksi", 80, 500), ("hp/(in3/min)", 0.3, 1.5)],
        "exponent": [("", 0.05, 0.5)],
        "normal_ratio": [("", 0.2, 0.9)],
        "main_force": [("N", 5, 5000), ("lbf", 1, 900), ("kN", 0.01, 4)],
        "spindle_speed": [("rpm", 20, 3000), ("rev/s", 1, 50)],
        "youngs_modulus": [("GPa", 60, 220), ("ksi", 9000, 30000)],
        "overhang": [("mm", 20, 300), ("in", 1, 12)],
        "chuck": [("kN/mm", 5, 100), ("lbf/in", 30000, 600000)],
        "chuck_rotational": [("kN m/rad", 50, 2000)],
        "centre": [("kN/mm", 5, 50)],
        "passive_force": [("N", 5, 500), ("lbf", 1, 100)],
        "at": [("mm", 1, 200), ("in", 0.1, 8)],
        "measured": [("mm", 1, 300), ("in", 0.1, 12)],
        "expansion": [("um/(m K)", 5, 30), ("1/F", 3e-6, 1.5e-5)],
        "rise": [("K", -5, 40), ("F", -9, 70)],
    }

    CALLS: typing.Sequence[typing.Tuple[str, typing.Sequence[str], typing.Sequence[str]]] = [
        ("spindle_speed", ["cutting_speed", "diameter"], ["rpm", "rev/s"]),
        (
            "roughness",
            ["feed", "corner_radius", "cutting_edge_angle", "minor_cutting_edge_angle"],
            ["um", "uin"],
        ),
        (
            "cutting_forces",
            [
                "specific_force",
                "exponent",
                "depth_of_cut",
                "feed",
                "cutting_edge_angle",
                "corner_radius",
                "normal_ratio",
            ],
            ["N", "lbf"],
        ),
        ("cutting_power", ["main_force", "cutting_speed"], ["kW", "hp"]),
        ("cutting_torque", ["main_force", "mean_diameter"], ["N m", "lbf ft"]),
        ("facing_time", ["diameter", "bore", "feed", "spindle_speed"], ["s", "min"]),
        (
            "deflection",
            [
                "youngs_modulus",
                "diameter",
                "overhang",
                "support",
                "chuck",
                "chuck_rotational",
                "centre",
                "passive_force",
                "at",
            ],
            ["mm", "in", "um"],
        ),
        ("limits_of_class", ["nominal", "class_name"], ["mm", "in"]),
        ("diameter_at_20", ["measured", "expansion", "rise"], ["mm", "in"]),
    ]

    def __init__(self, call: str, rows: int, seed: int) -> None:
        self.call = call
        self.names, units = next((n, u) for c, n, u in self.CALLS if c == call)
        numbers = random.Random(seed)
        self.unit = numbers.choice(units)
        # A column has one unit and one support, so that the same questions serve rows and columns.
        self.support = numbers.choice(list(tw.Support))
        self.class_name = numbers.choice(["h7", "H7", "g6", "js9"])
        kinds = {
            name: numbers.choice(self.RANGES[name])
            for name in self.names
            if name not in ("support", "class_name")
        }
        self.units = {name: unit for name, (unit, _, _) in kinds.items()}
        self.values = {
            name: [float(f"{numbers.uniform(low, high):.{numbers.randint(3, 17)}g}") for _ in range(rows)]
            for name, (_, low, high) in kinds.items()
        }
        self.questions = [self.question(row) for row in range(rows)]

    def question(self, row: int) -> Question:
        texts = []
        for name in self.names:
            if name == "support":
                texts.append(self.support.name.lower())
            elif name == "class_name":
                texts.append(self.class_name)
            else:
                texts.append(f"{self.values[name][row]!r} {self.units[name]}".strip())
        return {"ask": self.call, "of": texts, "in": self.unit}

    def scalar(self, row: int) -> typing.Any:
        given: typing.Dict[str, typing.Any] = dict(zip(self.names, self.questions[row]["of"]))
        if "support" in given:
            given["support"] = self.support
        return getattr(tw, self.call)(**given, unit=self.unit)

    def column(self, wrap: typing.Callable[[typing.List[float]], typing.Any]) -> tw.Rows:
        given: typing.Dict[str, typing.Any] = {
            name: tw.Column(wrap(values), self.units[name]) for name, values in self.values.items()
        }
        if "support" in self.names:
            given["support"] = self.support
        if "class_name" in self.names:
            given["class_name"] = self.class_name
        rows: tw.Rows = getattr(tw, self.call + "_column")(**given, unit=self.unit)
        return rows


def plain(answer: typing.Any) -> typing.Dict[str, float]:
    """The figures of a scalar answer by their names."""
    if isinstance(answer, tw.Quantity):
        return {answer.name: answer.value}
    if isinstance(answer, tw.Limits):
        return {"smallest": answer.smallest.value, "largest": answer.largest.value}
    return {one.name: one.value for one in answer if isinstance(one, tw.Quantity)}


class AgainstRust(unittest.TestCase):
    """Equal to the last digit: both are the same kernel, and text and JSON keep every double."""

    def test_scalars_and_their_errors(self) -> None:
        for call, _, _ in Asked.CALLS:
            good = bad = 0
            for seed in range(8):
                asked = Asked(call, 25, seed)
                for row, theirs in enumerate(twin(lines=asked.questions)):
                    try:
                        ours: typing.Any = plain(asked.scalar(row))
                        good += 1
                    except tw.TurnwrightError as error:
                        ours = {"status": int(error.status)}
                        theirs = {"status": theirs.get("status")}
                        self.assertTrue(error.field in asked.names and error.remedy, str(error))
                        self.assertIsNone(error.row)
                        bad += 1
                    self.assertEqual(ours, theirs, asked.questions[row])
            self.assertGreater(good, 30, f"{call}: {good} good, {bad} bad")

    def test_an_error_has_the_words_of_rust(self) -> None:
        question = {"ask": "spindle_speed", "of": ["2e4 m/min", "38 mm"]}
        (theirs,) = twin(lines=[question])
        with self.assertRaises(tw.TurnwrightError) as caught:
            tw.spindle_speed("2e4 m/min", "38 mm")
        error = caught.exception
        ours = {
            "status": error.status,
            "field": error.field,
            "given": error.given,
            "expected": error.expected,
            "remedy": error.remedy,
        }
        self.assertEqual(ours, theirs)

    def test_columns_of_every_memory(self) -> None:
        for call, _, _ in Asked.CALLS:
            for seed, (name, wrap) in enumerate(sorted(wraps().items())):
                asked = Asked(call, 40, 100 + seed)
                rows = asked.column(wrap)
                for row, theirs in enumerate(twin(lines=asked.questions)):
                    with self.subTest(call=call, memory=name, row=row):
                        if "status" in theirs:
                            self.assertEqual(rows.status[row], theirs["status"])
                            self.assertTrue(all(math.isnan(rows[n][row]) for n in rows._columns))
                            error = rows.explain(row)
                            assert error
                            self.assertEqual((error.status, error.row), (theirs["status"], row))
                        else:
                            self.assertEqual(rows.status[row], 0)
                            self.assertEqual({n: rows[n][row] for n in rows._columns}, theirs)
                            self.assertIsNone(rows.explain(row))

    def test_text_is_read_as_rust_reads_it(self) -> None:
        texts = ["40 mm", "40mm", " 40  mm ", "1.5 in", "1 1/2 in", "1-1/2 in", "5/8 in", "-5/8 in"]
        texts += ["+40 mm", "4e1 mm", ".5 in", "5. mm", "31/64 in", "1 127/128 in", "1500 thou"]
        texts += ["40", "", "mm", "40 mmm", "40 m/min", "40,5 mm", "1.5/2 in", "1 2 in", "4 0 mm"]
        texts += ["nan mm", "inf mm", "0x10 mm", "1/0 in", "40 mm 2", "--4 mm", "1/2 mm/rev", "1_0 mm"]
        questions = [{"ask": "spindle_speed", "of": ["30 m/min", text]} for text in texts]
        refused = 0
        for text, theirs in zip(texts, twin(lines=questions)):
            with self.subTest(text=text):
                if "status" in theirs:
                    refused += 1
                    with self.assertRaises(tw.TurnwrightError) as caught:
                        tw.spindle_speed("30 m/min", text)
                    self.assertEqual(caught.exception.field, "diameter")
                else:
                    speed = tw.spindle_speed("30 m/min", text).value
                    self.assertEqual(speed, theirs["spindle_speed"])
        self.assertTrue(15 < refused < len(texts) - 12, f"{refused} refused")


def wraps() -> typing.Dict[str, typing.Callable[[typing.List[float]], typing.Any]]:
    """The same numbers in one kind of memory or another."""

    def every_second(values: typing.List[float]) -> memoryview:
        doubled = array("d", [one for value in values for one in (value, -1.0)])
        return memoryview(doubled)[::2]

    found: typing.Dict[str, typing.Callable[[typing.List[float]], typing.Any]] = {
        "list": list,
        "tuple": tuple,
        "iterator": iter,
        "array": lambda values: array("d", values),
        "read-only": lambda values: memoryview(array("d", values).tobytes()).cast("d"),
        "strided memoryview": every_second,
        "ctypes": lambda values: (ctypes.c_double * len(values))(*values),
    }
    if NUMPY:

        def field(values: typing.List[float]) -> typing.Any:
            # 13 bytes a row: strided, and no double of it is aligned but by chance.
            packed = numpy.zeros(len(values), dtype=[("a", "u1"), ("it", "f8"), ("b", "f4")])
            packed["it"] = values
            return packed["it"]

        def locked(values: typing.List[float]) -> typing.Any:
            made = numpy.array(values)
            made.setflags(write=False)
            return made

        found["numpy"] = numpy.array
        found["numpy field of records"] = field
        found["numpy read-only"] = locked
        found["numpy column of a table"] = lambda values: numpy.array([values, values]).T[:, 1]
        found["numpy every third"] = lambda values: numpy.repeat(values, 3)[::3]
        found["numpy objects"] = lambda values: numpy.array(values, dtype=object)
    return found


class Memory(unittest.TestCase):
    def test_doubles_are_used_where_they_lie(self) -> None:
        made = array("d", [1.0, 2.0, 3.0])
        for data in (made, memoryview(made), memoryview(made).toreadonly()):
            memory = tw._Memory("diameter", data)
            self.assertEqual(memory.address, made.buffer_info()[0])
            self.assertIsNone(memory.made)
            memory.release()
        if NUMPY:
            table = numpy.ones((4, 3))
            memory = tw._Memory("diameter", table[1:, 2])
            self.assertEqual(memory.address, table.ctypes.data + 5 * 8)
            self.assertEqual((memory.stride, memory.count), (24, 3))
            memory.release()

    def test_memory_is_given_back(self) -> None:
        diameters = array("d", [30.0] * 100)
        before = sys.getrefcount(diameters)
        for _ in range(50):
            tw.spindle_speed_column("30 m/min", tw.Column(diameters, "mm"))
            with self.assertRaises(tw.TurnwrightError):
                tw.spindle_speed_column("30 m/min", tw.Column(diameters, "rpm"))
            with self.assertRaises(tw.TurnwrightError):
                tw.spindle_speed_column(tw.Column([1.0] * 99, "m/min"), tw.Column(diameters, "mm"))
        gc.collect()
        self.assertEqual(sys.getrefcount(diameters), before)
        # Would be refused while somebody looks at its memory.
        diameters.append(31.0)

    @unittest.skipUnless(NUMPY, "needs numpy")
    def test_what_a_mask_hides_is_a_bad_row(self) -> None:
        hidden = numpy.ma.masked_array([1.0, 2.0], [False, True])
        rows = tw.spindle_speed_column("30 m/min", tw.Column(hidden, "in"))
        self.assertEqual([bool(status) for status in rows.status], [False, True])

    def test_columns_are_named(self) -> None:
        rows = tw.spindle_speed_column("30 m/min", tw.Column([30.0, -1.0], "mm"))
        self.assertEqual(rows.keys(), ["spindle_speed"])
        self.assertEqual(repr(rows), "<2 rows of spindle_speed; 1 bad>")
        with self.assertRaisesRegex(KeyError, "spindle_speed"):
            rows["speed"]

    def test_what_may_be_asked_is_listed(self) -> None:
        self.assertIn("plan", tw.questions())
        self.assertIn("c45", tw.materials())
        for question in tw.questions():
            self.assertIn("properties", json.dumps(tw.schema(question)))
        with self.assertRaises(tw.TurnwrightError):
            tw.schema("plann")

    def test_a_mapping_is_no_column(self) -> None:
        with self.assertRaises(TypeError):
            tw.Column({1: 2}, "mm")

    def test_memory_that_is_read_is_not_written(self) -> None:
        feeds = array("d", [0.1, math.nan, 0.3])
        before = feeds.tobytes()
        tw.roughness_column(tw.Column(feeds, "mm/rev"), "0.8 mm", "95 deg", "5 deg")
        self.assertEqual(feeds.tobytes(), before)

    def test_what_is_no_column_of_numbers_is_refused_by_its_name(self) -> None:
        bad: typing.List[typing.Any] = [
            ["1", "2"], [None], [True], "12", b"12345678", {1: 2}.items(),
            memoryview(bytes(32)).cast("d", [2, 2]), [10**400], 3 + 4j, object(), array("u", "ab"),
        ]  # fmt: skip
        if NUMPY:
            bad += [
                numpy.ones((2, 2)), numpy.array([1j, 2j]), numpy.array([True, False]),
                numpy.array(["1", "2"]), numpy.array(["2020-01-01"], dtype="datetime64[D]"),
                numpy.ones(3)[::-1], numpy.broadcast_to(numpy.float64(3), 5), numpy.ones(2, ">f8"),
            ]  # fmt: skip
        for data in bad:
            with self.subTest(data=repr(data)):
                with self.assertRaises(tw.TurnwrightError) as caught:
                    tw.spindle_speed_column("30 m/min", tw.Column(data, "mm"))
                error = caught.exception
                self.assertEqual((error.status, error.field), (tw.Status.BAD_COLUMN, "diameter"))

    def test_integers_are_numbers(self) -> None:
        rows = tw.spindle_speed_column("30 m/min", tw.Column([20, 40], "mm"))
        integers = tw.spindle_speed_column("30 m/min", tw.Column(array("q", [20, 40]), "mm"))
        self.assertEqual(list(rows["spindle_speed"]), list(integers["spindle_speed"]))
        self.assertEqual(rows["spindle_speed"][1], tw.spindle_speed("30 m/min", "40 mm").value)


class Columns(unittest.TestCase):
    def test_a_row_that_is_not_a_number_is_empty_and_says_so(self) -> None:
        diameters = tw.Column([20.0, math.nan, -1.0, 40.0], "mm")
        rows = tw.spindle_speed_column("30 m/min", diameters)
        wanted = [0, tw.Status.NOT_FINITE, tw.Status.OUT_OF_RANGE, 0]
        self.assertEqual(list(rows.status), wanted)
        self.assertEqual([math.isnan(one) for one in rows["spindle_speed"]], [False, True, True, False])
        first = rows.first_error
        assert first
        self.assertEqual((first.field, first.row, first.rows_bad), ("diameter", 1, 2))
        self.assertIn("row 1: diameter: NaN", str(first))
        with self.assertRaises(tw.TurnwrightError):
            rows.check()
        second = rows.explain(2)
        assert second
        self.assertIn("-1 mm", second.given)
        self.assertRaises(IndexError, rows.explain, 4)
        self.assertRaises(IndexError, rows.explain, -1)
        self.assertRaises(KeyError, lambda: rows["power"])

    def test_one_number_stands_for_all_rows_and_no_rows_are_fine(self) -> None:
        one, none = tw.Column([30.0], "mm"), tw.Column([], "m/min")
        self.assertEqual(len(tw.spindle_speed_column("30 m/min", one)), 1)
        self.assertEqual(len(tw.spindle_speed_column(tw.Column([30.0, 31.0], "m/min"), one)), 2)
        self.assertEqual(len(tw.spindle_speed_column(none, one)), 0)

    def test_counts_that_do_not_agree_are_refused(self) -> None:
        three, two = tw.Column([30.0] * 3, "m/min"), tw.Column([30.0] * 2, "mm")
        with self.assertRaises(tw.TurnwrightError) as caught:
            tw.spindle_speed_column(three, two)
        self.assertEqual(
            (caught.exception.status, caught.exception.field), (tw.Status.BAD_COLUMN, "diameter")
        )

    def test_a_column_in_another_unit_is_converted(self) -> None:
        # 1 in is 25.4 mm by definition (international yard and pound agreement of 1959).
        inch = tw.spindle_speed_column("30 m/min", tw.Column([1.0, 2.0], "in"))
        metric = tw.spindle_speed_column("30 m/min", tw.Column([25.4, 50.8], "mm"))
        self.assertEqual(list(inch["spindle_speed"]), list(metric["spindle_speed"]))

    def test_a_unit_of_another_kind_is_refused(self) -> None:
        with self.assertRaises(tw.TurnwrightError) as caught:
            tw.spindle_speed_column(tw.Column([1.0], "rpm"), "30 mm")
        error = caught.exception
        self.assertEqual((error.status, error.field), (tw.Status.WRONG_UNIT, "cutting_speed"))
        with self.assertRaises(tw.TurnwrightError) as caught:
            tw.spindle_speed("30 m/min", "30 mm", unit="mm")
        self.assertEqual(caught.exception.field, "unit")

    def test_regimes_are_told(self) -> None:
        rows = tw.roughness_column(tw.Column([0.1, 0.5, -1.0], "mm/rev"), "0.8 mm", "95 deg", "5 deg")
        self.assertEqual(
            list(rows.numbers("regime")), [tw.Regime.ARC, tw.Regime.ARC_AND_MINOR_EDGE, 0]
        )
        alone = tw.roughness("0.1 mm/rev", "0.8 mm", "95 deg", "5 deg")
        self.assertIs(alone.regime, tw.Regime.ARC)


class Scalars(unittest.TestCase):
    def test_the_definition_of_cutting_speed(self) -> None:
        # v = pi d n: ISO 3002-1, from memory. Four operations, each to half a last digit.
        speed = tw.spindle_speed("28 m/min", "38 mm").value
        self.assertTrue(math.isclose(speed, 28_000 / (math.pi * 38), rel_tol=4 * sys.float_info.epsilon))

    def test_limits_of_a_class(self) -> None:
        # 30 h7 is 0 / -21 um: ISO 286-2, from memory. One subtraction, in mm.
        limits = tw.limits_of_class("30 mm", "h7")
        self.assertEqual(limits.largest, tw.Diameter(30.0, "mm"))
        self.assertTrue(math.isclose(limits.smallest.value, 29.979, rel_tol=sys.float_info.epsilon))

    def test_a_quantity_and_its_text_are_the_same(self) -> None:
        text = tw.spindle_speed("28 m/min", "1.5 in")
        typed = tw.spindle_speed(tw.CuttingSpeed(28, "m/min"), tw.Diameter(1.5, "in"))
        self.assertEqual(text, typed)
        self.assertEqual(tw.Diameter.read(str(tw.Diameter(1.5, "in"))), tw.Diameter(1.5, "in"))
        self.assertNotEqual(tw.Diameter(1.5, "in"), tw.Overhang(1.5, "in"))

    def test_numbers_of_every_sort_are_doubles(self) -> None:
        sorts: typing.List[typing.Any] = [38, 38.0, fractions.Fraction(76, 2)]
        if NUMPY:
            sorts += [numpy.int64(38), numpy.float32(38), numpy.float64(38)]
        for number in sorts:
            self.assertEqual(repr(tw.Diameter(number, "mm")), "Diameter(value=38.0, unit='mm')")
            self.assertEqual(len(tw.spindle_speed_column("30 m/min", tw.Column(number, "mm"))), 1)
            self.assertEqual(tw.Exponent.read(number), tw.Exponent(38.0, ""))

    def test_what_is_no_such_quantity_is_refused_by_its_name(self) -> None:
        bad: typing.List[typing.Any] = [
            38.0, 38, True, None, tw.Length(38, "mm"), "38", "38 rpm", [38.0], tw.Column([38.0], "mm")
        ]  # fmt: skip
        for given in bad:
            with self.subTest(given=given), self.assertRaises(tw.TurnwrightError) as caught:
                tw.spindle_speed("30 m/min", given)
            self.assertEqual(caught.exception.field, "diameter")
            self.assertTrue(caught.exception.remedy and caught.exception.given)
        for value, unit in (("38", "mm"), (True, "mm"), (38.0, "millimetre"), (10**400, "mm")):
            self.assertRaises(tw.TurnwrightError, tw.Diameter, value, unit)
        with self.assertRaises(AttributeError):
            tw.Diameter(38, "mm").value = 39  # type: ignore[misc]

    def test_an_unknown_class_or_support_is_refused_by_its_name(self) -> None:
        with self.assertRaises(tw.TurnwrightError) as caught:
            tw.limits_of_class("30 mm", "hh7")
        self.assertIn("class", caught.exception.field)
        bad: typing.List[typing.Any] = [7, 2**32 + 1, "chuck", True, 1.0, None]
        for support in bad:
            with self.subTest(support=support), self.assertRaises(tw.TurnwrightError) as caught:
                tw.deflection("210 GPa", "20 mm", "100 mm", support, "80 N", "100 mm")
            self.assertEqual(caught.exception.field, "support")
        names: typing.List[typing.Any] = ["h\0", "\ud800", 7, None, b"h7"]
        for name in names:
            self.assertRaises(tw.TurnwrightError, tw.limits_of_class, "30 mm", name)
        units: typing.List[typing.Any] = [7, ["mm"], "furlong", ""]
        for unit in units:
            self.assertRaises(tw.TurnwrightError, tw.limits_of_class, "30 mm", "h7", unit=unit)
            self.assertRaises(tw.TurnwrightError, tw.Diameter, 30, unit)

    def test_calls_may_be_made_from_many_threads(self) -> None:
        wanted = tw.spindle_speed("28 m/min", "38 mm")
        seen: typing.List[tw.SpindleSpeed] = []

        def ask() -> None:
            for _ in range(200):
                seen.append(tw.spindle_speed("28 m/min", "38 mm"))

        threads = [threading.Thread(target=ask) for _ in range(4)]
        for thread in threads:
            thread.start()
        for thread in threads:
            thread.join()
        self.assertEqual(seen, [wanted] * 800)


class Documents(unittest.TestCase):
    def test_the_door_says_what_the_calls_say(self) -> None:
        reply = tw.answer({"limits": {"nominal": "30 mm", "class": "h7"}})
        limits = tw.limits_of_class("30 mm", "h7")
        self.assertEqual(tw.Diameter.read(reply["limits"]["smallest"]), limits.smallest)
        self.assertEqual(reply["version"], 1)

    def test_a_plan_and_its_error(self) -> None:
        job = json.loads((ROOT / "examples/c/job.json").read_text(encoding="utf-8"))["plan"]
        self.assertGreater(len(tw.plan(job)["steps"]), 5)
        job["tool"]["corner_radius"] = "0.4"
        with self.assertRaises(tw.TurnwrightError) as caught:
            tw.plan(job)
        error = caught.exception
        self.assertEqual((error.status, error.field), (tw.Status.MISSING_UNIT, "tool.corner_radius"))
        job["tool"]["corner_radius"] = "0.4 mm"
        del job["stock"]
        self.assertRaisesRegex(tw.TurnwrightError, "stock", tw.plan, job)

    def test_what_json_cannot_hold_is_refused(self) -> None:
        for question in ({"limits": math.nan}, {"limits": {1, 2}}, {"limits": "\ud800"}):
            self.assertRaises(tw.TurnwrightError, tw.answer, question)
        self.assertRaisesRegex(tw.TurnwrightError, "spindel_speed", tw.answer, {"spindel_speed": {}})

    def test_spellings_that_the_library_knows_are_read(self) -> None:
        for text, size in (("38 MM", 38.0), ("1.5 inch", 38.1), ('1 1/2"', 38.1), ("3800 µm", 3.8)):
            self.assertAlmostEqual(tw.Diameter.read(text).value, size, places=12)
        with self.assertRaises(tw.TurnwrightError) as caught:
            tw.Diameter.read("38 m/min", "size")
        self.assertEqual((caught.exception.status, caught.exception.field), (tw.Status.WRONG_UNIT, "size"))

    def test_many_numbers_are_sent_to_a_column(self) -> None:
        with self.assertRaises(tw.TurnwrightError) as caught:
            tw.spindle_speed_column([28.0] * 1000, "38 mm")  # type: ignore[arg-type]
        self.assertIn("Column", caught.exception.remedy)
        self.assertLess(len(caught.exception.given), 80)

    def test_what_nests_too_deep_is_refused(self) -> None:
        deep: typing.Dict[str, typing.Any] = {}
        for _ in range(100_000):
            deep = {"plan": deep}
        self.assertRaises(tw.TurnwrightError, tw.answer, deep)

    def test_a_step_says_to_which_mark_the_ring_is_turned(self) -> None:
        with tw.Plan(Plans.QUESTION) as plan:
            turned = [step.ring_to for step in plan if step.kind == tw.StepKind.ZERO_X]
            self.assertTrue(turned and turned[0] is not None and 0 <= turned[0] < 100, turned)
            self.assertIsNone(plan.step(0).ring_to)

    def test_text_that_was_cut_shows_it(self) -> None:
        with self.assertRaises(tw.TurnwrightError) as caught:
            tw.answer({"limits": {"nominal": "30 mm", "class": "h7", "x" * 100: 1}})
        self.assertTrue(caught.exception.field.endswith("..."))


class Plans(unittest.TestCase):
    """The open plan against the document door, which writes the same sheet another way."""

    QUESTION = json.loads((ROOT / "examples/c/job.json").read_text(encoding="utf-8"))
    #: An invented part of the same bar, turned from both its ends.
    BOTH_ENDS = {
        "surfaces": [
            {"diameter": "24 mm", "class": "h9", "length": "40 mm"},
            {"diameter": "32 mm", "class": "h11", "length": "30 mm"},
        ],
        "other_end": [{"diameter": "20 mm", "class": "h11", "length": "20 mm"}],
        "overall_length": "92 mm",
    }

    def stop(self, plan: tw.Plan) -> typing.Tuple[int, tw.Step]:
        return next((at, step) for at, step in enumerate(plan) if step.kind == tw.StepKind.MEASURE)

    def assert_same(self, ours: tw.Step, theirs: Question) -> None:
        self.assertEqual(tw.StepKind(ours.kind).name.lower(), theirs["kind"])
        self.assertEqual((ours.text, ours.because), (theirs["text"], theirs.get("because")))
        quantities: typing.Sequence[typing.Tuple[str, typing.Type[tw.Quantity]]] = [
            ("diameter", tw.Diameter),
            ("z", tw.Position),
            ("spindle_speed", tw.SpindleSpeed),
            ("feed", tw.Feed),
            ("depth_of_cut", tw.DepthOfCut),
            ("time", tw.Time),
        ]
        for name, quantity in quantities:
            told = theirs.get(name)
            self.assertEqual(getattr(ours, name), None if told is None else quantity.read(told), name)
        self.assertEqual(ours.done, theirs.get("done", False))
        surface, reading = theirs.get("surface"), theirs.get("reading")
        where = "other_end" if ours.other_end else "surfaces"
        self.assertEqual(surface, None if ours.surface is None else f"{where}[{ours.surface}]")
        if ours.reading is None:
            self.assertIsNone(reading)
        else:
            assert reading is not None
            slides = {"cross_slide": "CROSS", "carriage": "CARRIAGE", "compound": "COMPOUND"}
            self.assertEqual(tw.Slide(ours.reading.slide).name, slides[reading["slide"]])
            self.assertEqual(ours.reading.divisions, reading["divisions"])
            self.assertEqual(ours.reading.turns, reading["turns"])
            self.assertEqual(ours.reading.mark, reading["mark"])
            self.assertEqual(ours.reading.shows, tw.Engraved.read(reading["shows"]))
            self.assertEqual(ours.reading.tenths, theirs.get("tenths", 0))

    def test_steps_and_figures_are_those_of_the_document(self) -> None:
        both_ends = dict(self.QUESTION["plan"], part=self.BOTH_ENDS)
        for question, surfaces in ((self.QUESTION, 1), ({"plan": both_ends}, 3)):
            sheet = tw.answer(question)["plan"]
            with tw.Plan(question) as plan:
                self.assertEqual(len(plan), len(sheet["steps"]))
                for step, theirs in zip(plan, sheet["steps"]):
                    self.assert_same(step, theirs)
                self.assertTrue(any(step.reading for step in plan))
                self.assertEqual(any(step.other_end for step in plan), surfaces > 1)
                self.assertEqual(plan.expected().surfaces, surfaces)
                self.assertEqual(len(plan.surfaces()), surfaces)
                # The part is told of where it is one surface.
                for surface, told in zip(plan.surfaces(), sheet["expected"].get("surfaces", [sheet["expected"]])):
                    self.assertEqual(surface.diameter, tw.Diameter.read(told["diameter"]))
                    limits = [tw.Diameter.read(limit) for limit in told["limits"]]
                    self.assertEqual([surface.smallest, surface.largest], limits)
                    self.assertEqual(surface.ra, tw.Ra.read(told["finish"]["ra"]))
                    self.assertEqual(surface.good.value, told["good"])
                self.assertEqual(any(surface.other_end for surface in plan.surfaces()), surfaces > 1)
                with self.assertRaises(tw.TurnwrightError) as caught:
                    plan.surface(surfaces)
                self.assertEqual((caught.exception.field, caught.exception.given), ("index", str(surfaces)))
        sheet = tw.answer(self.QUESTION)["plan"]
        with tw.Plan(self.QUESTION) as plan:
            expected, told = plan.expected(), sheet["expected"]
            self.assertEqual(expected.diameter, tw.Diameter.read(told["diameter"]))
            smallest, largest = told["limits"]
            self.assertEqual(expected.smallest, tw.Diameter.read(smallest))
            self.assertEqual(expected.largest, tw.Diameter.read(largest))
            self.assertEqual(expected.uncertainty, tw.SizeUncertainty.read(told["uncertainty"]))
            self.assertEqual(expected.time, tw.Time.read(told["time"]))
            chances = (expected.good.value, expected.rework.value, expected.scrap.value)
            self.assertEqual(chances, (told["good"], told["rework"], told["scrap"]))

    def test_writings_are_those_of_the_document_and_open_again(self) -> None:
        asked = dict(self.QUESTION["plan"], **{"with": ["picture", "page"]})
        sheet = tw.answer({"plan": asked})["plan"]
        with tw.Plan(json.dumps(self.QUESTION)) as plan:
            self.assertEqual(json.loads(plan.json()), tw.answer(self.QUESTION))
            self.assertEqual(plan.page(), sheet["page"])
            self.assertEqual(plan.pictures(), sheet["pictures"])
            # A line of the sheet is at most 100 columns, so that a step may be broken over several.
            flat = " ".join(plan.text().split())
            for step in plan:
                self.assertIn(" ".join(step.text.split()), flat)
            self.assertLess(len(plan.short_text()), len(plan.text()))
            with tw.Plan(plan.json()) as again:
                self.assertEqual(again.text(), plan.text())

    def test_a_measurement_gives_what_the_document_gives_in_metric_and_in_inch(self) -> None:
        with tw.Plan(self.QUESTION) as plan:
            at, step = self.stop(plan)
            before, sheet = plan.text(), json.loads(plan.json())["plan"]
            size = tw.Diameter(round(step.diameter.value + 0.02, 3), "mm")
            inch = f"{size.value / 25.4!r} in"  # 1 in is 25.4 mm by definition
            several: typing.List[typing.Union[tw.Diameter, str]] = [size, inch]
            for measured in (size, str(size), inch, [size], several):
                told = [measured] if isinstance(measured, (str, tw.Diameter)) else measured
                question = {"plan": sheet, "step": at, "measured": [str(one) for one in told]}
                theirs = tw.answer({"after_measurement": question})["after_measurement"]
                next_sheet = theirs.pop("plan")
                after = plan.after(at, measured)
                self.assertEqual(after.answer, theirs)
                assert after.plan
                with after.plan as follows:
                    self.assertEqual(json.loads(follows.json())["plan"], next_sheet)
                    self.assertEqual(follows.step(at).kind, tw.StepKind.ADJUST)
                    self.assertTrue(follows.step(0).done)
            self.assertEqual(plan.text(), before)

    def test_where_no_plan_follows_the_answer_says_why(self) -> None:
        with tw.Plan(self.QUESTION) as plan:
            at, _ = self.stop(plan)
            after = plan.after(at, "20 mm")
            self.assertIsNone(after.plan)
            self.assertTrue(after.answer["lost"] and after.answer["why_no_plan"])

    def test_bad_text_and_bad_fields_are_refused_by_their_names(self) -> None:
        number = {"plan": {"tool": {"corner_radius": 0.4}}}
        cases: typing.Sequence[typing.Tuple[typing.Any, tw.Status, str]] = [
            ("{", tw.Status.UNREADABLE, ""),
            ("", tw.Status.UNREADABLE, ""),
            ('{"plan": {"tool": {"corner_radius": 0.4 mm}}}', tw.Status.UNREADABLE, "tool"),
            ('{"plan": {"tool": {"corner_radius": 1e999}}}', tw.Status.UNREADABLE, "tool.corner_radius"),
            ("{}\0", tw.Status.NUL_IN_TEXT, "text"),
            ("\ud800", tw.Status.BAD_UTF8, "question"),
            ({"plan": {}}, tw.Status.MISSING_FIELD, "lathe"),
            ({"materials": {}}, tw.Status.UNKNOWN_NAME, "materials"),
            ({"plan": math.nan}, tw.Status.UNREADABLE, ""),
            ({1, 2}, tw.Status.UNREADABLE, ""),
            (7, tw.Status.UNREADABLE, ""),
        ]
        for given, status, field in cases:
            with self.subTest(given=given), self.assertRaises(tw.TurnwrightError) as caught:
                tw.Plan(given)
            error = caught.exception
            self.assertEqual((error.status, error.field), (status, field), str(error))
            self.assertTrue(error.given and error.expected and error.remedy)
        self.assertRaises(tw.TurnwrightError, tw.Plan, number)
        with self.assertRaises(tw.TurnwrightError) as caught:
            tw.Plan("\n" * 1000 + '{"plan": {"tool": {"corner_radius": "0.4 mm" "0.8 mm"')
        # The place of the quote that no comma stands before; the rest may be cut.
        self.assertTrue(caught.exception.given.startswith("line 1001 column 46: "))

    def test_bad_sizes_and_steps_are_refused_by_their_names(self) -> None:
        with tw.Plan(self.QUESTION) as plan:
            at, step = self.stop(plan)
            size = step.diameter
            sizes: typing.Sequence[typing.Tuple[typing.Any, tw.Status, str]] = [
                ([], tw.Status.MISSING_FIELD, "measured"),
                ("-3 mm", tw.Status.OUT_OF_RANGE, "measured"),
                (33.6, tw.Status.UNREADABLE, "measured"),
                (None, tw.Status.UNREADABLE, "measured"),
                ([33.6], tw.Status.MISSING_UNIT, "measured[0]"),
                (tw.Length(33.6, "mm"), tw.Status.UNREADABLE, "measured"),
                ([size, "33.6 rpm"], tw.Status.WRONG_UNIT, "measured[1]"),
                ([size, tw.Diameter(math.nan, "mm")], tw.Status.NOT_FINITE, "measured[1]"),
                ([size, "0 in"], tw.Status.OUT_OF_RANGE, "measured[1]"),
            ]
            for given, status, field in sizes:
                with self.subTest(given=given), self.assertRaises(tw.TurnwrightError) as caught:
                    plan.after(at, given)
                self.assertEqual((caught.exception.status, caught.exception.field), (status, field))
                self.assertIsNone(caught.exception.row)
            steps: typing.Sequence[typing.Any] = [-1, len(plan), 2**64, "1", True, 1.0, None]
            for index in steps:
                with self.subTest(index=index), self.assertRaises(tw.TurnwrightError) as caught:
                    plan.step(index)
                self.assertEqual(caught.exception.field, "index")
                self.assertNotIn("tw_", str(caught.exception))
                with self.subTest(index=index), self.assertRaises(tw.TurnwrightError) as caught:
                    plan.after(index, size)
                self.assertEqual(caught.exception.field, "step")

    def test_a_closed_plan_is_refused_by_every_call(self) -> None:
        plan = tw.Plan(self.QUESTION)
        first = plan.step(0)
        self.assertIn(f"{len(plan)} steps", repr(plan))
        with plan as same:
            self.assertIs(same, plan)
            self.assertFalse(plan.closed)
        self.assertTrue(plan.closed)
        plan.close()
        calls: typing.Sequence[typing.Callable[[], object]] = [
            lambda: len(plan), lambda: plan.step(0), lambda: list(plan), plan.expected, plan.text,
            plan.short_text, plan.json, plan.page, plan.pictures, lambda: plan.after(6, "33.6 mm"),
            plan.__enter__,
        ]  # fmt: skip
        for call in calls:
            with self.assertRaises(tw.TurnwrightError) as caught:
                call()
            self.assertEqual((caught.exception.status, caught.exception.field), (tw.Status.MISUSE, "plan"))
        self.assertIn("closed", repr(plan))
        # What was read is a copy.
        self.assertEqual(first.kind, tw.StepKind.CLAMP)
        self.assertIn("Grip", first.text)

    def test_a_plan_that_nobody_holds_closes_itself(self) -> None:
        plan = tw.Plan(self.QUESTION)
        free = plan._free
        self.assertTrue(free.alive)
        del plan
        gc.collect()
        self.assertFalse(free.alive)
        with self.assertRaises(ZeroDivisionError), tw.Plan(self.QUESTION) as plan:
            1 / 0
        self.assertTrue(plan.closed)

    def test_threads_may_share_a_plan_and_close_it_under_one_another(self) -> None:
        plan = tw.Plan(self.QUESTION)
        wanted, seen = plan.text(), []
        started = threading.Barrier(5)

        def read() -> None:
            started.wait()
            try:
                for _ in range(200):
                    seen.append(plan.text() == wanted)
            except tw.TurnwrightError as error:
                seen.append(error.status == tw.Status.MISUSE)

        threads = [threading.Thread(target=read) for _ in range(4)]
        for thread in threads:
            thread.start()
        started.wait()
        plan.close()
        for thread in threads:
            thread.join()
        self.assertTrue(all(seen) and len(seen) >= 4)

    def test_a_number_that_this_module_does_not_know_stays_a_number(self) -> None:
        self.assertEqual(repr(tw._member(tw.StepKind, 999)), "999")
        self.assertIs(tw._member(tw.StepKind, 9), tw.StepKind.MEASURE)


class TheLibrary(unittest.TestCase):
    def test_it_is_found_as_the_first_lines_say(self) -> None:
        beside = "import turnwright as tw; print(tw._path())"
        environment = {k: v for k, v in os.environ.items() if k not in ("TURNWRIGHT_LIBRARY", "CARGO_TARGET_DIR")}
        found = run_code(beside, environment)
        self.assertEqual(found.stdout.strip(), str(ROOT / "target/release/libturnwright.so"))
        asked = "import turnwright as tw; print(tw.version(), tw.spindle_speed('28 m/min', '38 mm'))"
        speed = tw.spindle_speed("28 m/min", "38 mm")
        self.assertEqual(run_code(asked, dict(os.environ)).stdout, f"{tw.version()} {speed}\n")
        used = f"import turnwright as tw; tw.use({os.environ['TURNWRIGHT_LIBRARY']!r}); print(tw.version())"
        self.assertEqual(run_code(used, environment).stdout, f"{tw.version()}\n")

    def test_where_there_is_none_it_says_what_to_do(self) -> None:
        missing = dict(os.environ, TURNWRIGHT_LIBRARY=str(HERE / "nothing.so"))
        told = run_code("import turnwright as tw; tw.version()", missing)
        self.assertIn("nothing.so cannot be loaded", told.stderr)
        self.assertIn("cargo build --release --features capi", told.stderr)
        self.assertNotEqual(told.returncode, 0)

    def test_the_module_is_python_3_8(self) -> None:
        source = (HERE / "turnwright.py").read_text(encoding="utf-8")
        ast.parse(source, feature_version=(3, 8))


def run_code(code: str, environment: typing.Dict[str, str]) -> "subprocess.CompletedProcess[str]":
    return subprocess.run(
        [sys.executable, "-c", code], capture_output=True, text=True, cwd=HERE, env=environment
    )


class Examples(unittest.TestCase):
    def test_one_part(self) -> None:
        out = ran("one_part.py")
        speed = twin(lines=[{"ask": "spindle_speed", "of": ["28 m/min", "34 mm"]}])[0]["spindle_speed"]
        self.assertIn(f"28 m/min on 34 mm: {speed!r} rpm\n", out)
        self.assertIn("\n1. Grip ", out)
        self.assertIn('Refused: lathe.feeds[0]: "0.05 m"', out)
        question = json.loads((ROOT / "examples/c/job.json").read_text(encoding="utf-8"))
        sheet = tw.answer(question)["plan"]
        stop = [step["kind"] for step in sheet["steps"]].index("measure")
        measured = tw.Diameter.read(sheet["steps"][stop]["diameter"]).value + 0.02
        asked = {"plan": sheet, "step": stop, "measured": f"{round(measured, 3)} mm"}
        then = tw.answer({"after_measurement": asked})["after_measurement"]["plan"]
        self.assertIn(f"\n{stop + 1}. {then['steps'][stop]['text']}\n", out)
        left = sum(not step.get("done", False) for step in then["steps"])
        self.assertIn(f"\n{left} steps are left.\n", out)

    @unittest.skipUnless(NUMPY, "pandas stands on numpy")
    def test_frame_of_jobs(self) -> None:
        import frame_of_jobs
        import pandas

        out = ran("frame_of_jobs.py")
        self.assertEqual(out.count("row 2: feed: 20 mm/rev given"), 1)
        jobs = pandas.read_csv(io.StringIO(frame_of_jobs.JOBS))
        table = frame_of_jobs.estimate(jobs)
        for row, job in table.iterrows():
            speed = {
                "ask": "spindle_speed",
                "of": [f"{job['cutting speed (m/min)']!r} m/min", f"{job['diameter (mm)']!r} mm"],
            }
            finish = {
                "ask": "roughness",
                "of": [
                    f"{job['feed (mm/rev)']!r} mm/rev",
                    f"{job['corner radius (thou)']!r} thou",
                    "90 deg",
                    "10 deg",
                ],
            }
            theirs = twin(lines=[speed, finish])
            self.assertEqual(job["spindle speed (rpm)"], theirs[0]["spindle_speed"])
            if row == 2:
                self.assertTrue(math.isnan(job["Ra (um)"]) and "status" in theirs[1])
                self.assertIn("feed", job["wrong"])
            else:
                self.assertEqual((job["Ra (um)"], job["wrong"]), (theirs[1]["ra"], ""))


def ran(name: str) -> str:
    done = subprocess.run(
        [sys.executable, str(HERE / name)], capture_output=True, text=True, check=True
    )
    return done.stdout


if __name__ == "__main__":
    unittest.main()
