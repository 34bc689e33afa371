"""Fifty drawn tables of cost, some pairs forbidden, and the cheapest way to serve as many rows as can be."""

import json
import pathlib

import numpy
from scipy.optimize import linear_sum_assignment

HERE = pathlib.Path(__file__).parent
# Dearer than all allowed pairs of any table together: a forbidden pair is taken only where nothing else is left.
FORBIDDEN = 1e6
SHAPES = [(1, 1), (1, 12), (12, 1), (5, 5), (12, 15), (15, 12), (3, 40), (40, 3), (20, 20), (7, 9)]


def table(chance, shape, forbidden_share):
    costs = numpy.round(chance.uniform(0.0, 200.0, shape), 3)
    forbidden = chance.uniform(size=shape) < forbidden_share
    rows, columns = linear_sum_assignment(numpy.where(forbidden, FORBIDDEN, costs))
    kept = [(r, c) for r, c in zip(rows, columns) if not forbidden[r, c]]
    return {
        "costs": [[None if f else c for c, f in zip(*row)] for row in zip(costs.tolist(), forbidden.tolist())],
        "served": len(kept),
        "total": round(sum(float(costs[r, c]) for r, c in kept), 3),
    }


def main():
    chance = numpy.random.default_rng(17)
    shares = [0.0, 0.2, 0.5, 0.8, 0.95]
    tables = [table(chance, shape, share) for share in shares for shape in SHAPES]
    text = json.dumps({"program": "scipy.optimize.linear_sum_assignment", "tables": tables})
    (HERE / "assignment.json").write_text(text + "\n")


if __name__ == "__main__":
    main()
