"""The ducts against a reference network that was solved by other means.

Source: a fan table of 1150, 1095, 1045, 1025, 950, 865, 775 cfm at 0.1 to 0.7 in. w.c. on a return of 0.20
in. at 1,000 cfm and three branches of 500, 300 and 200 cfm at 0.25 in. with dampers of 12, 9 and 8 in.,
each loss with the square of the flow; solved with scipy.optimize.brentq, its first row again with
scipy.optimize.root and, at fixed plenum pressure, pandapipes (oracle). Printed to the cfm and to 0.001 in.:
the tolerances are the last digit of each, 1 cfm and 0.001 in., and 2 cfm and 0.002 where the table is
carried on past its end.
"""

import pytest

from assistant.rig.air.ducts import Bypass, Path, Run, meet

CFM, INCH, ROUND = 4.719474432e-4, 249.08891, 0.0254
TABLE = [(0.1, 1150), (0.2, 1095), (0.3, 1045), (0.4, 1025), (0.5, 950), (0.6, 865), (0.7, 775)]
HALF = 24.9
CLASS_III = {"A": 1e4, "B": 1e4, "C": 1e4}


def fan(flow):
    """Linear between the table's points and beyond its ends."""
    cfm = flow / CFM
    i = next((i for i in range(1, len(TABLE) - 1) if cfm > TABLE[i][1]), len(TABLE) - 1)
    (s0, q0), (s1, q1) = TABLE[i - 1], TABLE[i]
    return (s0 + (s1 - s0) * (cfm - q0) / (q1 - q0)) * INCH


def path(a=1.0, b=1.0, c=1.0, bypass=None, closed=1e6, open_loss=None):
    runs = tuple(
        Run(name, 0.25 * INCH, flow * CFM, None if opening >= 1 else size * ROUND, opening, closed)
        for name, flow, size, opening in (("A", 500, 12, a), ("B", 300, 9, b), ("C", 200, 8, c))
    )
    return Path(
        0.20 * INCH / (1000 * CFM) ** 2,
        (0.0, 1.0, 2.0),
        0.0,
        runs,
        Bypass(600 * CFM / (0.5 * INCH) ** 0.5, 1.0, bypass) if bypass is not None else None,
    )


# state, path, total cfm, static, supply, A, B, C, bypass, tolerances
ROWS = [
    ("all open", path(), 992.5, 0.443, 0.246, 496, 298, 199, 0, 1, 0.001),
    ("A calls, B C shut", path(b=0, c=0), 769.3, 0.706, 0.588, 767, 1.4, 1.1, 0, 2, 0.002),
    ("A calls, C stuck half", path(b=0, c=0.5), 848.3, 0.619, 0.475, 689, 1, 158, 0, 1, 0.001),
    ("A calls, C stuck open", path(b=0), 893.7, 0.566, 0.407, 638, 1, 255, 0, 1, 0.001),
    ("all open, bypass stuck open", path(bypass=1.0), 1087, 0.216, 0.120, 346, 208, 139, 394, 1, 0.001),
    ("C calls, bypass open", path(a=0, b=0, bypass=1.0), 916.2, 0.540, 0.523, 2, 1, 289, 623, 1, 0.001),
]


@pytest.mark.parametrize("row", ROWS, ids=lambda row: row[0])
def test_reference_network(row):
    """Total, static and each branch of a state of the reference network."""
    _, ducts, total, static, supply, a, b, c, round_about, cfm, inch = row
    got = meet(ducts, fan, 1500 * CFM)
    assert got.total / CFM == pytest.approx(total, abs=cfm)
    assert got.lift / INCH == pytest.approx(static, abs=inch)
    assert got.plenum / INCH == pytest.approx(supply, abs=inch)
    for name, flow in (("A", a), ("B", b), ("C", c)):
        assert got.runs[name] / CFM == pytest.approx(flow, abs=cfm)
    assert got.bypass / CFM == pytest.approx(round_about, abs=cfm)


@pytest.mark.parametrize("row", ROWS, ids=lambda row: row[0])
def test_nothing_is_lost(row):
    """What the blower moves goes to the rooms or round the bypass."""
    got = meet(row[1], fan, 1500 * CFM)
    assert sum(got.runs.values()) + got.bypass == pytest.approx(got.total, rel=1e-9)


def test_barometric_bypass_holds_the_plenum():
    """A weighted bypass stays shut with all zones open and opens for the smallest alone."""

    def weighted(a, b):
        base = path(a=a, b=b)
        return Path(
            base.back,
            base.strainer,
            base.coil,
            base.runs,
            Bypass(600 * CFM / (0.5 * INCH) ** 0.5, 0.3 * INCH),
        )

    assert meet(weighted(1, 1), fan, 1500 * CFM).bypass == 0
    alone = meet(weighted(0, 0), fan, 1500 * CFM)
    assert alone.bypass / CFM > 400
    assert alone.plenum < meet(path(a=0, b=0), fan, 1500 * CFM).plenum
