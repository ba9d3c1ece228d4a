"""The circuit against ngspice on networks of a furnace's kind, live where it is installed and from kept data.

Kept data: tests/outside/data/rig_ngspice.yaml, written by `python tests/rig/test_against_ngspice.py write`
with ngspice 39.3 (Debian 12), .ac and .op analyses. The allowance is 1 part in 100,000 of the largest voltage
or current of a network (rounding of two solvers on matrices whose entries span 13 powers of ten), against an
effect of some per cent that any wrong stamp has.
"""

import sys
from pathlib import Path

import networks
import pytest
import spice
import yaml

from assistant.rig.circuit.flame import rectified
from assistant.rig.circuit.network import LEAK

KEPT = Path(__file__).parents[1] / "outside" / "data" / "rig_ngspice.yaml"
SHARE = 1e-5
FLAMES = {
    "healthy flame": (138.7, 1.85e6, 9.97e6, 6.9e6),
    "coated rod": (138.7, 1.85e6, 9.97e6, 67e6),
    "low rod voltage": (40.0, 3.0e6, 9.97e6, 8e6),
}
"""Peak volts, AC ohm, DC ohm, flame ohm."""


def ours(case):
    """The quantities of a case by this program's own solver: name -> complex."""
    push = [case.push] if case.push else []
    solution = case.network.solve(case.frequency, case.meters, push, alive=not case.push)
    found = {f"v({a}, {b})": solution.between(a, b) for a, b in case.volts}
    found |= {f"i({name})": solution.current(name) for name in case.currents}
    for name in case.pairs:
        first, second = solution.pair(name)
        found |= {f"i({name} 1)": first, f"i({name} 2)": second}
    return found


def theirs(case):
    """The same quantities by ngspice."""
    net = case.network
    frequency = case.frequency or 60.0
    netlist = spice.Netlist(net, frequency, LEAK).branches()
    for name, (four, _) in net.pairs.items():
        if name in case.motors:
            netlist.motor(name, four, *case.motors[name])
        else:
            netlist.transformer(name, four, case.transformers[name])
    for number, (a, b, admittance) in enumerate(case.meters):
        netlist.extra(number, a, b, complex(admittance))
    if case.push:
        netlist.push(*case.push)
    prints, names = [], {}
    for a, b in case.volts:
        i, j = net.nodes[a], net.nodes[b]
        names[f"v({a}, {b})"] = (f"v({i})" if i else None, f"v({j})" if j else None)
        prints += [f"v({k})" for k in (i, j) if k]
    for name in case.currents:
        names[f"i({name})"] = (f"i(vsb{net.index[name]})", None)
    for name in case.pairs:
        motor = name in case.motors
        names[f"i({name} 1)"] = (f"i(vm{name})", None) if motor else (f"i(r1{name})", None)
        names[f"i({name} 2)"] = (f"i(va{name})", None) if motor else (f"i(vt{name})", None)
        if not motor:  # a resistor has no current of its own in .ac: volts over ohms, and the sign turned
            names[f"i({name} 1)"] = (f"@{name}", None)
            names[f"i({name} 2)"] = (f"-i(vt{name})", None)
    prints += [n.lstrip("-") for pair in names.values() for n in pair if n and n.lstrip("-").startswith("i(")]
    for name in case.pairs:
        if name not in case.motors:
            (p, _, _, _), _ = net.pairs[name]
            first = next(line.split()[2] for line in netlist.lines if line.startswith(f"R1{name} "))
            prints += [f"v({p})", f"v({first})"]
            names[f"@{name}"] = (p, first, case.transformers[name].primary_ohm)
    analysis = "op" if case.frequency == 0 else f"ac lin 1 {case.frequency} {case.frequency}"
    prints = list(dict.fromkeys(prints))
    got = spice.run(netlist.text(analysis, prints), prints)

    def number(text):
        if text is None:
            return 0j
        if text.startswith("@"):
            p, first, ohm = names[text]
            return (got[f"v({p})"] - got[f"v({first})"]) / ohm
        return -got[text[1:]] if text.startswith("-") else got[text]

    return {
        key: complex(number(a)) - complex(number(b))
        for key, (a, b) in ((k, v) for k, v in names.items() if not k.startswith("@"))
    }


def spice_flame(peak, ac_ohm, dc_ohm, flame_ohm):
    """Mean flame current by ngspice: a nearly ideal diode on a capacitor-fed rod, settled and averaged.

    50 nF passes the alternating part with half a per cent of `ac_ohm` in quadrature and holds the direct part
    back.
    """
    series = ac_ohm * dc_ohm / (dc_ohm - ac_ohm)
    netlist = f"""* flame
V1 s 0 DC 0 SIN(0 {peak * (series + dc_ohm) / dc_ohm:.10g} 60)
R1 s a {series:.10g}
C1 a rod 50n
R2 rod 0 {dc_ohm:.10g}
V2 rod b DC 0
D1 b d ideal
R3 d 0 {flame_ohm:.10g}
.model ideal D(n=0.01 is=1e-15)
.options reltol=1e-4 abstol=1e-14
.control
tran 100u 8 7 100u
meas tran flame AVG i(V2) from=7 to=8
quit
.endc
.end
"""
    return spice.run(netlist, ["flame"])["flame"]


def compare(mine, other):
    assert set(mine) == set(other)
    for letter in "vi":
        keys = [key for key in mine if key.startswith(letter)]
        most = max((abs(other[key]) for key in keys), default=0)
        for key in keys:
            assert abs(mine[key] - other[key]) <= SHARE * most, (key, mine[key], other[key])


@pytest.mark.skipif(spice.NGSPICE is None, reason="ngspice is not installed")
@pytest.mark.parametrize("name", networks.CASES)
def test_same_as_ngspice(name):
    """All voltages and currents of the network are those that ngspice finds."""
    case = networks.CASES[name]()
    compare(ours(case), theirs(case))


@pytest.mark.skipif(spice.NGSPICE is None, reason="ngspice is not installed")
@pytest.mark.parametrize("name", FLAMES)
def test_flame_same_as_ngspice(name):
    """The mean of the rectified current is within 1 % of a transient with a diode (its capacitor's share)."""
    assert rectified(*FLAMES[name]) == pytest.approx(spice_flame(*FLAMES[name]), rel=0.01)


@pytest.mark.parametrize("name", FLAMES)
def test_flame_same_as_kept_answers_of_ngspice(name):
    """The same without ngspice."""
    assert rectified(*FLAMES[name]) == pytest.approx(kept()["flames"][name], rel=0.01)


def kept():
    return yaml.safe_load(KEPT.read_text(encoding="utf-8"))


@pytest.mark.parametrize("name", networks.CASES)
def test_same_as_kept_answers_of_ngspice(name):
    """The same without ngspice, from what it gave."""
    rows = kept()["networks"][name]["answers"]
    compare(ours(networks.CASES[name]()), {key: complex(*value) for key, value in rows.items()})


def test_there_are_networks_enough():
    """At least twelve, and each kept with what it is."""
    assert len(networks.CASES) >= 12
    assert set(kept()["networks"]) == set(networks.CASES)


@pytest.mark.skipif(spice.NGSPICE is None, reason="ngspice is not installed")
@pytest.mark.parametrize(
    ("netlist", "wrong"),
    [
        ("* r\nR1 1 0\nV1 1 0 AC 1\n.control\nac lin 1 60 60\nprint v(1)\nquit\n.endc\n.end\n", "no value"),
        ("* c\nI1 0 1 DC 1\nC1 1 0 1u\n.control\nop\nprint v(1)\nquit\n.endc\n.end\n", "singular"),
        ("* m\nR1 1 0 5\nV1 1 0 AC 1\n.control\nac lin 1 60 60\nquit\n.endc\n.end\n", "number left out"),
    ],
)
def test_nonsense_from_ngspice_is_seen(netlist, wrong):
    """The wrapper does not trust exit code 0: a resistor without a value, a matrix without a solution."""
    with pytest.raises(spice.NonsenseFromSpice):
        spice.run(netlist, ["v(1)"])


def write():
    """Keep ngspice's answers as data."""
    rows = {}
    for name, make in networks.CASES.items():
        answers = theirs(make())
        rows[name] = {
            "what": make.__doc__.splitlines()[0],
            "answers": {key: [float(f"{v.real:.8g}"), float(f"{v.imag:.8g}")] for key, v in answers.items()},
        }
    flames = {name: float(f"{spice_flame(*given):.6g}") for name, given in FLAMES.items()}
    head = (
        "# What ngspice 39.3 (Debian 12) gave for the networks of tests/rig/networks.py: real and imaginary\n"
        "# part, V and A rms. Written by tests/rig/test_against_ngspice.py write; status: oracle.\n"
    )
    KEPT.write_text(
        head
        + yaml.safe_dump(
            {
                "source": "ngspice 39.3, .ac and .op analyses",
                "status": "oracle",
                "networks": rows,
                "flames": flames,
            },
            sort_keys=False,
            width=150,
        ),
        encoding="utf-8",
    )


if __name__ == "__main__" and sys.argv[1:] == ["write"]:
    write()
