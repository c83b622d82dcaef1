"""Every row of Spark's estimate against the same rows in plain Rust (examples/twin.rs); run by check.sh.

    compare.py ROWS FILE       FILE is what `twin cuts ROWS FILE` wrote
"""

import sys

import numpy
from estimate_cuts import estimated, session
from turnwright import Status


def main() -> None:
    rows, file = int(sys.argv[1]), sys.argv[2]
    theirs = numpy.fromfile(file, dtype="<f8").reshape(rows, 2)
    spark = session()
    try:
        assert spark.sparkContext.uiWebUrl is None, "a page is served"
        found = estimated(spark, rows).toPandas().set_index("row").sort_index()
    finally:
        spark.stop()
    assert list(found.index) == list(range(rows)), "rows were lost"
    ours = found[["power", "time"]].to_numpy(dtype="f8")
    # Equal to the last digit: the same kernels, and rows made by one division of whole numbers each.
    different = numpy.flatnonzero(~((ours == theirs) | (numpy.isnan(ours) & numpy.isnan(theirs))).all(axis=1))
    assert different.size == 0, f"row {different[0]}: {ours[different[0]]}, Rust has {theirs[different[0]]}"
    bad = numpy.isnan(theirs).any(axis=1)
    assert bad.sum() == rows // 1000 > 0, f"{bad.sum()} bad rows"
    statuses = found["status"].to_numpy()
    assert (statuses[bad] == Status.OUT_OF_RANGE).all() and (statuses[~bad] == Status.OK).all()
    print(f"{rows} estimated cuts are those of Rust, {bad.sum()} of them bad")


if __name__ == "__main__":
    main()
