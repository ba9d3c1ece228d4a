"""Control circuit, capacitor and neutral against the circuit simulator of the Debian package ngspice."""

from __future__ import annotations

import re
import shutil
import subprocess

import pytest

from assistant.trade.registry import call

pytestmark = pytest.mark.skipif(shutil.which("ngspice") is None, reason="ngspice is not installed")


def simulate(tmp_path, netlist: str) -> dict[str, float]:
    """Runs a netlist in batch mode; every `print` and `.meas` value by name."""
    deck = tmp_path / "deck.cir"
    deck.write_text(f"* deck\n{netlist}\n.end\n", encoding="utf-8")
    done = subprocess.run(
        ["ngspice", "-b", str(deck)], capture_output=True, text=True, timeout=60, check=False
    )
    return {
        name.lower(): float(value)
        for name, value in re.findall(r"^([\w()#]+)\s*=\s*([-+\d.eE]+)", done.stdout, re.MULTILINE)
    }


def ac(tmp_path, parts: str, probe: str, frequency: float = 60) -> float:
    got = simulate(
        tmp_path, f"{parts}\n.control\nac lin 1 {frequency} {frequency}\nlet m = vm({probe})\nprint m\n.endc"
    )
    return got["m"]


def test_coil_behind_source_and_wire(tmp_path):
    """26 V, 1.44 ohm, 150 ft of 18 AWG, 72 ohm coil: 25.09 V at the coil (six digits printed)."""
    expected = ac(tmp_path, "V1 a 0 AC 26\nR1 a b 1.44\nR2 b c 1.1655\nR3 c 0 72", "c")

    assert call(
        "coil_volts",
        {"source_volts": 26.0, "source_resistance": 1.44, "wire_resistance": 1.1655, "coil_impedance": 72.0},
    ) == pytest.approx(expected, rel=1e-5)


@pytest.mark.parametrize("meter", [1e7, 1e6, 3e3])
def test_ghost_voltage(tmp_path, meter):
    """500 pF of coupling into a meter."""
    expected = ac(tmp_path, f"V1 a 0 AC 120\nC1 a b 500p\nR1 b 0 {meter}", "b")

    assert call("ghost_volts", {"supply": 120.0, "coupling": 5e-10, "meter": meter}) == pytest.approx(
        expected, rel=1e-5
    )


@pytest.mark.parametrize(("farad", "hertz"), [(10e-6, 60), (45e-6, 50), (7.5e-6, 60)])
def test_capacitor_current(tmp_path, farad, hertz):
    """Amps of a run capacitor at 370 V, read as volts across a micro-ohm."""
    expected = ac(tmp_path, f"V1 a 0 AC 370\nC1 a b {farad}\nR1 b 0 1u", "b", hertz) / 1e-6

    assert call(
        "capacitor_amps", {"capacitance": farad, "volts": 370.0, "frequency": float(hertz)}
    ) == pytest.approx(expected, rel=1e-5)


def test_discharge(tmp_path):
    """10 µF from the peak of 370 V to 50 V through 15 kohm: 0.352208 s (time step 0.1 ms)."""
    got = simulate(
        tmp_path,
        "C1 a 0 10u IC=523.2590180780451\nR1 a 0 15k\n.tran 0.1m 0.6 uic\n.meas tran t50 WHEN v(a)=50",
    )

    assert call(
        "discharge_time", {"capacitance": 10e-6, "resistance": 15e3, "volts": 370.0}
    ) == pytest.approx(got["t50"], abs=2e-5)


def test_lost_service_neutral(tmp_path):
    """240 V over 10 and 30 ohm with the neutral open: 180 V on one leg, 60 V on the other."""
    got = simulate(
        tmp_path, "V1 a 0 DC 240\nR1 a n 10\nR2 n 0 30\n.control\nop\nlet m = v(n)\nprint m\n.endc"
    )
    leg = got["m"]

    assert call("split_phase", {"leg_1": leg, "leg_2": 240 - leg, "across": 240.0})["word"].startswith(
        "suspect"
    )


def test_voltage_drop_with_reactance(tmp_path):
    """Resistance and reactance under a load: the formula is the first-order drop, good to 1 % here."""
    amps, r, x, pf = 10.0, 0.3, 0.1, 0.8
    z = 120 / amps
    inductance, path = z * 0.6 / 376.9911, x / 376.9911
    expected = 120 - ac(
        tmp_path, f"V1 a 0 AC 120\nR1 a b {r}\nL1 b c {path}\nR2 c d {z * pf}\nL2 d 0 {inductance}", "c"
    )

    got = call(
        "voltage_drop_reactive",
        {"amps": expected and (120 - expected) / z, "resistance": r, "reactance": x, "power_factor": pf},
    )
    assert got == pytest.approx(expected, rel=0.01)
