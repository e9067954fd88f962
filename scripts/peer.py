#!/usr/bin/env python3
"""What scripts/bench --peers measures beside the program: the same figures by general numerics in Python.

Usage: scripts/peer.py LOG.csv     per mold, of mass and thickness: moving-range limits, eight run tests, capability
       scripts/peer.py --of AUDIT.json     the same line of sums from a report, to compare

Prints one line a characteristic: its name, anodes, the counts of the run tests over all molds, and the sums of Cpk and
Ppk. Needs numpy; reads with pandas where that is installed.
"""
import json
import sys

import numpy

SPECIFICATIONS = {"mass": ("mass_kg", 380.0, 400.0), "thickness": ("thickness_mm", 42.0, 47.0)}
TESTS = [
    "beyond-limit", "nine-one-side", "six-trending", "fourteen-alternating",
    "two-of-three-outer", "four-of-five-middle", "fifteen-inner", "eight-outside-inner",
]


def columns(log):
    """The molds and the values, as arrays in the order of the log."""
    wanted = ["mold"] + [column for column, _, _ in SPECIFICATIONS.values()]
    try:
        import pandas

        table = pandas.read_csv(log, usecols=wanted)
        return {name: table[name].to_numpy() for name in wanted}
    except ImportError:
        with open(log, encoding="utf-8") as lines:
            header = lines.readline().rstrip("\n").split(",")
        places = [header.index(name) for name in wanted]
        table = numpy.loadtxt(log, delimiter=",", skiprows=1, usecols=places)
        return {name: table[:, i] for i, name in enumerate(wanted)}


def within(flags, wide):
    """At each point how many of the last ones, itself included, are flagged; -1 where there are not yet as many."""
    sums = numpy.concatenate(([0], numpy.cumsum(flags)))
    counts = numpy.full(len(flags), -1)
    if len(flags) >= wide:
        counts[wide - 1 :] = sums[wide:] - sums[:-wide]
    return counts


def ending(flags, length):
    return within(flags, length) == length


def some(flags, least, wide):
    # A pattern is complete at a point that belongs to it; near the start fewer points are there.
    return flags & (within(numpy.concatenate((numpy.zeros(wide - 1, bool), flags)), wide)[wide - 1 :] >= least)


def judge(values, lower, upper):
    """Counts of the eight tests, Cpk and Ppk of one mold."""
    center = values.mean()
    sigma = numpy.abs(numpy.diff(values)).mean() * numpy.sqrt(numpy.pi) / 2
    one, two, three = (k * sigma for k in (1, 2, 3))
    step = numpy.sign(numpy.diff(values))
    turning = step[1:] * step[:-1] < 0
    inner = (values > center - one) & (values < center + one)
    outer = (values > center + one) | (values < center - one)
    counts = [
        (values > center + three) | (values < center - three),
        ending(values > center, 9) | ending(values < center, 9),
        ending(step > 0, 5) | ending(step < 0, 5),
        ending(turning, 12),
        some(values > center + two, 2, 3) | some(values < center - two, 2, 3),
        some(values > center + one, 4, 5) | some(values < center - one, 4, 5),
        ending(inner, 15),
        ending(outer, 8),
    ]
    room = min(upper - center, center - lower)
    return [int(c.sum()) for c in counts], room / (3 * sigma), room / (3 * values.std(ddof=1))


def told(name, anodes, counts, cpk, ppk):
    print(name, anodes, *counts, f"{cpk:.6f}", f"{ppk:.6f}")


def of_log(log):
    table = columns(log)
    order = numpy.argsort(table["mold"], kind="stable")
    starts = numpy.flatnonzero(numpy.diff(table["mold"][order])) + 1
    for name, (column, lower, upper) in SPECIFICATIONS.items():
        counts, cpk, ppk = numpy.zeros(len(TESTS), int), 0.0, 0.0
        for values in numpy.split(table[column][order], starts):
            its = judge(values, lower, upper)
            counts, cpk, ppk = counts + its[0], cpk + its[1], ppk + its[2]
        told(name, len(order), counts, cpk, ppk)


def of_report(report):
    with open(report, encoding="utf-8") as file:
        for one in json.load(file)["characteristics"]:
            molds = one["molds"]
            told(
                one["name"],
                sum(mold["count"] for mold in molds),
                [sum(mold["tests"].get(test, 0) for mold in molds) for test in TESTS],
                sum(mold["capability"]["cpk"]["value"] for mold in molds),
                sum(mold["capability"]["ppk"]["value"] for mold in molds),
            )


if __name__ == "__main__":
    if sys.argv[1] == "--of":
        of_report(sys.argv[2])
    else:
        of_log(sys.argv[1])
