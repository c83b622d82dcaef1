"""One part from Python, with nothing but the standard library: a speed, a plan followed to its first
measuring stop, what the measured size changes, an error.

    cargo build --release --features capi
    python3 examples/python/one_part.py

The job is invented, and so is the lathe it is for. A sheet is advice: the machine's manual, the rules
of the shop and what a qualified person says come first.
"""

import json
import pathlib

import turnwright as tw

JOB = pathlib.Path(__file__).resolve().parent.parent / "c" / "job.json"


def follow(plan: tw.Plan) -> None:
    """Step by step as far as the first measuring stop, where somebody keys in what was measured."""
    for index, step in enumerate(plan):
        print(f"{index + 1}. {step.text}")
        if step.kind == tw.StepKind.MEASURE:
            break
    # Invented, as if read off a micrometer: the tool was set a little too far out.
    measured = tw.Diameter(round(step.diameter.value + 0.02, 3), "mm")
    follows = plan.after(index, measured)
    if follows.plan is None:
        print("No plan follows:", follows.answer["why_no_plan"])
        return
    with follows.plan as then:
        print(f"Measured {measured}, {step.diameter} expected. From here on:")
        print(f"{index + 1}. {then.step(index).text}")
        print(f"{index + 2}. {then.step(index + 1).text}")
        # Kept for the next day: all that was measured is in it, and Plan(kept) goes on from there.
        kept = then.json()
    with tw.Plan(kept) as tomorrow:
        left = [step for step in tomorrow if not step.done]
        print(f"{len(left)} steps are left.")


def main() -> None:
    # The same job in metric and in inch; a bare 34 would be refused.
    print("28 m/min on 34 mm:", tw.spindle_speed("28 m/min", "34 mm"))
    print("92 ft/min on 1 3/8 in:", tw.spindle_speed("92 ft/min", "1 3/8 in"))

    question = json.loads(JOB.read_text(encoding="utf-8"))
    with tw.Plan(question) as plan:
        good = plan.expected().good
        print(f"An invented job on an invented lathe; {good.value:.0%} of such parts come out good:")
        follow(plan)

    # A slip of the pen: the feed in metres. The message says what to do, and no number came back.
    question["plan"]["lathe"]["feeds"][0] = "0.05 m"
    try:
        tw.Plan(question)
    except tw.TurnwrightError as error:
        print("Refused:", error)


if __name__ == "__main__":
    main()
