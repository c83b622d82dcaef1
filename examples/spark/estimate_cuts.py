"""Power and time of a large table of facing cuts with Spark: a pandas UDF over the column calls.

    cargo build --release --features capi
    pip install pyspark "pandas<3" pyarrow numpy      # into a virtual environment; Java 17 beside it
    TURNWRIGHT_LIBRARY="$PWD/target/release/libturnwright.so" \\
        python3 examples/spark/estimate_cuts.py 1000000

Every batch of rows is handed to the library where it lies; four calls estimate it. A bad row has no
power and no time, but a status. The cuts are invented, one in a thousand with a feed that no lathe has.
On a cluster, ship the library for the machines of the workers and set TURNWRIGHT_LIBRARY there.
"""

import os
import pathlib
import sys

os.environ.setdefault("PYSPARK_PYTHON", sys.executable)
os.environ.setdefault("SPARK_LOCAL_IP", "127.0.0.1")
PYTHON = pathlib.Path(__file__).resolve().parent.parent / "python"
sys.path.insert(0, str(PYTHON))

import pandas as pd
import turnwright as tw
from pyspark.sql import Column, DataFrame, SparkSession
from pyspark.sql import functions as F

# The invented work and tool.
SPECIFIC_FORCE, EXPONENT = "1900 MPa", "0.2"
EDGE_ANGLE, CORNER_RADIUS, NORMAL_RATIO = "75 deg", "0.8 mm", "0.5"


def invented_cuts(spark: SparkSession, rows: int) -> DataFrame:
    """A table of cuts; the same as in examples/twin.rs, to the last digit."""
    row = F.col("row")

    def step(times: int, modulo: int) -> Column:
        return (row * times) % modulo

    feed = F.when(row % 1000 == 999, F.lit(0.0)).otherwise(0.05 + step(31, 250) / 1000.0)
    return spark.range(rows).withColumnRenamed("id", "row").select(
        "row",
        (60.0 + step(7919, 1400) / 10.0).alias("cutting speed (m/min)"),
        (60.0 + step(104729, 900) / 10.0).alias("diameter (mm)"),
        (20.0 + step(1299, 300) / 10.0).alias("bore (mm)"),
        feed.alias("feed (mm/rev)"),
        (0.2 + step(17, 180) / 100.0).alias("depth (mm)"),
    )


def estimate(
    cutting_speed: pd.Series, diameter: pd.Series, bore: pd.Series, feed: pd.Series, depth: pd.Series
) -> pd.DataFrame:
    """Power at the outside, time, and a status for every row of a batch."""
    v, d = tw.Column(cutting_speed, "m/min"), tw.Column(diameter, "mm")
    f = tw.Column(feed, "mm/rev")
    speeds = tw.spindle_speed_column(v, d)
    n = tw.Column(speeds["spindle_speed"], "rpm")
    times = tw.facing_time_column(d, tw.Column(bore, "mm"), f, n)
    depths = tw.Column(depth, "mm")
    forces = tw.cutting_forces_column(
        SPECIFIC_FORCE, EXPONENT, depths, f, EDGE_ANGLE, CORNER_RADIUS, NORMAL_RATIO
    )
    powers = tw.cutting_power_column(tw.Column(forces["main_force"], "N"), v)
    # Of the calls that did not answer a row the first says why: what follows has only its NaN.
    status = pd.Series(0, index=cutting_speed.index, dtype="int32")
    for call in (speeds, times, forces, powers):
        status = status.where(status != 0, pd.Series(call.status, index=status.index))
    good = status == 0
    return pd.DataFrame(
        {
            "power": pd.Series(powers["power"], index=status.index).where(good),
            "time": pd.Series(times["time"], index=status.index).where(good),
            "status": status,
        }
    )


def session() -> SparkSession:
    """On this machine alone: nothing listens to the network, and no page is served."""
    return (
        SparkSession.builder.master("local[2]")
        .appName("invented cuts")
        .config("spark.driver.host", "127.0.0.1")
        .config("spark.driver.bindAddress", "127.0.0.1")
        .config("spark.ui.enabled", "false")
        .config("spark.sql.execution.arrow.pyspark.enabled", "true")
        .getOrCreate()
    )


def estimated(spark: SparkSession, rows: int) -> DataFrame:
    """The table with its estimates."""
    # What the workers import must reach them as well.
    for module in (PYTHON / "turnwright.py", pathlib.Path(__file__).resolve()):
        spark.sparkContext.addPyFile(str(module))
    cuts = invented_cuts(spark, rows)
    by_batch = F.pandas_udf(estimate, "power double, time double, status int")
    arguments = [name for name in cuts.columns if name != "row"]
    return cuts.withColumn("answer", by_batch(*arguments)).select("row", "answer.*")


def main() -> None:
    rows = int(sys.argv[1]) if len(sys.argv) > 1 else 1_000_000
    spark = session()
    try:
        totals = estimated(spark, rows).agg(
            F.count("*").alias("cuts"),
            F.sum((F.col("status") != 0).cast("int")).alias("bad"),
            F.max("power").alias("power"),
            (F.sum("time") / 3600).alias("hours"),
        )
        found = totals.first()
        assert found is not None
        print(
            f"{found['cuts']} invented cuts, {found['bad']} of them bad: the heaviest takes "
            f"{found['power']:.2f} kW, all of them {found['hours']:.1f} h"
        )
    finally:
        spark.stop()


if __name__ == "__main__":
    main()
