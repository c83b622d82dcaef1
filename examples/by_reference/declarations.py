"""Turns the Type, Const and Declare lines of turnwright.bas into a C header; run by check.sh.

    declarations.py turnwright.bas > declared.h

The header holds what a program of that language has in memory and what it calls: the very declaration
is compiled, and not a copy of it. A line of these kinds that is not understood is an error.
"""

import re
import sys

PLAIN = {
    "Byte": "uint8_t",
    "Long": "int32_t",
    "LongLong": "int64_t",
    "LongPtr": "intptr_t",
    "Double": "double",
}
IDENTIFIER = r"[A-Za-z_][A-Za-z0-9_]*"


def in_c(name: str, types: "list[str]") -> str:
    return name if name in types else PLAIN[name]


def header(text: str) -> "list[str]":
    # A line that ends in an underscore goes on in the next one.
    lines = re.sub(r" _\n\s*", " ", text).splitlines()
    made = ["/* Made of turnwright.bas by declarations.py. */", "#include <stdint.h>"]
    types: "list[str]" = []
    inside = None
    for line in (line.strip() for line in lines):
        if inside is not None:
            if line == "End Type":
                made.append(f"}} {inside};")
                types.append(inside)
                inside = None
                continue
            member = re.fullmatch(rf"({IDENTIFIER})(?:\(0 To (\d+)\))? As ({IDENTIFIER})", line)
            if not member:
                raise SystemExit(f"not understood: {line}")
            room = f"[{int(member[2]) + 1}]" if member[2] else ""
            made.append(f"    {in_c(member[3], types)} {member[1]}{room};")
        elif line.startswith("Public Type "):
            inside = line.split()[-1]
            made.append("typedef struct {")
        elif line.startswith("Public Const "):
            constant = re.fullmatch(rf"Public Const ({IDENTIFIER}) As Long = (\d+)", line)
            if not constant:
                raise SystemExit(f"not understood: {line}")
            made.append(f"enum {{ bas_{constant[1]} = {constant[2]} }};")
            made.append(f"#define BAS_CONSTANT_{constant[1]} 1")
        elif line.startswith("Public Declare "):
            call = re.fullmatch(
                rf'Public Declare PtrSafe Function ({IDENTIFIER}) Lib "turnwright" \((.*)\) As ({IDENTIFIER})',
                line,
            )
            if not call:
                raise SystemExit(f"not understood: {line}")
            arguments = []
            for argument in call[2].strip().split(", "):
                one = re.fullmatch(rf"(ByRef|ByVal) ({IDENTIFIER}) As ({IDENTIFIER})", argument.strip())
                if not one:
                    raise SystemExit(f"not understood: {argument}")
                star = "*" if one[1] == "ByRef" else ""
                arguments.append(f"{in_c(one[3], types)} {star}{one[2]}")
            made.append(f"extern {in_c(call[3], types)} {call[1]}({', '.join(arguments)});")
    made.append(
        "#define BAS_CONSTANTS(EACH) "
        + " ".join(f"EACH({line.split()[1][len('BAS_CONSTANT_'):]})" for line in made if "#define" in line)
    )
    return [line for line in made if not line.startswith("#define BAS_CONSTANT_")]


def main() -> None:
    with open(sys.argv[1], encoding="ascii") as file:
        print("\n".join(header(file.read())))


if __name__ == "__main__":
    main()
