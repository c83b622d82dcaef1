"""A table of jobs from Python: columns of a pandas frame, their units in the column heads.

    cargo build --release --features capi
    pip install pandas
    python3 examples/python/frame_of_jobs.py

The jobs are invented; one of them has a mistyped feed. Its row stays empty and says why, the other
rows are answered.
"""

import io
import re

import pandas as pd

import turnwright as tw

JOBS = """\
job,diameter (mm),cutting speed (m/min),feed (mm/rev),corner radius (thou)
invented bush,32,28,0.16,16
invented pin,12.5,30,0.1,16
invented collar,60,26,20,31
invented spindle nose,80,90,0.2,31
"""


def column(frame: pd.DataFrame, name: str) -> tw.Column:
    """The column whose head is that name with a unit in brackets."""
    for head in frame.columns:
        found = re.fullmatch(re.escape(name) + r" \((.*)\)", head)
        if found:
            return tw.Column(frame[head], found[1])
    raise KeyError(f"no column is headed {name!r} with its unit in brackets")


def estimate(jobs: pd.DataFrame) -> pd.DataFrame:
    """The jobs with spindle speed, roughness, and what is wrong with a row."""
    speeds = tw.spindle_speed_column(column(jobs, "cutting speed"), column(jobs, "diameter"))
    finishes = tw.roughness_column(
        column(jobs, "feed"), column(jobs, "corner radius"), "90 deg", "10 deg"
    )
    wrong = [
        "; ".join(str(error) for error in (speeds.explain(row), finishes.explain(row)) if error)
        for row in range(len(jobs))
    ]
    table = jobs.copy()
    table["spindle speed (rpm)"] = list(speeds["spindle_speed"])
    table["Ra (um)"] = list(finishes["ra"])
    table["wrong"] = wrong
    return table


def main() -> None:
    table = estimate(pd.read_csv(io.StringIO(JOBS)))
    answers = ["job", "spindle speed (rpm)", "Ra (um)"]
    print(table[answers].round({"spindle speed (rpm)": 1, "Ra (um)": 2}).to_string(index=False))
    for message in table["wrong"]:
        if message:
            print(message)


if __name__ == "__main__":
    main()
