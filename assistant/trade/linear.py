"""Solves a sparse symmetric positive definite system, such as the balance of flows at the nodes of a network.

Plain elimination, the node with fewest neighbours first: a duct system is nearly a tree, and a tree fills
nothing in.
"""

from __future__ import annotations

from collections.abc import Sequence


def order(rows: Sequence[dict[int, float]]) -> list[int]:
    """Elimination order by fewest neighbours left, from the pattern of the rows alone."""
    near = [set(row) - {i} for i, row in enumerate(rows)]
    left, out = set(range(len(rows))), []
    while left:
        i = min(left, key=lambda n: (len(near[n]), n))
        out.append(i)
        left.discard(i)
        for j in near[i]:
            near[j] |= near[i] - {j}
            near[j].discard(i)
    return out


def solve(rows: Sequence[dict[int, float]], right: Sequence[float], sequence: Sequence[int]) -> list[float]:
    """x with rows · x = right; `rows` holds both halves of the symmetric matrix and is used up.

    Raises ZeroDivisionError where a node hangs on nothing.
    """
    b = list(right)
    for i in sequence:
        row = rows[i]
        pivot = row[i]
        for j, value in row.items():
            if j == i:
                continue
            other = rows[j]
            share = value / pivot
            for k, there in row.items():
                if k != i:
                    other[k] = other.get(k, 0.0) - share * there
            other.pop(i, None)
            b[j] -= share * b[i]
    x = [0.0] * len(b)
    for i in reversed(sequence):
        x[i] = (b[i] - sum(v * x[j] for j, v in rows[i].items() if j != i)) / rows[i][i]
    return x
