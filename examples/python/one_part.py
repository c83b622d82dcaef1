"""One part from Python, with nothing but the standard library: a speed, a plan, an error.

    cargo build --release --features capi
    python3 examples/python/one_part.py

The job is invented, and so is the lathe it is for. A sheet is advice: the machine's manual, the rules
of the shop and what a qualified person says come first.
"""

import json
import pathlib

import turnwright as tw

JOB = pathlib.Path(__file__).resolve().parent.parent / "c" / "job.json"


def main() -> None:
    # The same job in metric and in inch; a bare 34 would be refused.
    print("28 m/min on 34 mm:", tw.spindle_speed("28 m/min", "34 mm"))
    print("92 ft/min on 1 3/8 in:", tw.spindle_speed("92 ft/min", "1 3/8 in"))

    job = json.loads(JOB.read_text(encoding="utf-8"))["plan"]
    print("The first steps of an invented job on an invented lathe:")
    for number, step in enumerate(tw.plan(job)["steps"][:6], start=1):
        print(f"{number}. {step['text']}")

    # A slip of the pen: the feed in metres. The message says what to do, and no number came back.
    job["lathe"]["feeds"][0] = "0.05 m"
    try:
        tw.plan(job)
    except tw.TurnwrightError as error:
        print("Refused:", error)


if __name__ == "__main__":
    main()
