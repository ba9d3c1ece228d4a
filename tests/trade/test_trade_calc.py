"""The calc command: what a person types, what comes back, and the sentence where it can't be used."""

from __future__ import annotations

import json
import random

import pytest

from assistant.__main__ import main
from assistant.trade.entry import example_text
from assistant.trade.registry import REGISTRY


def calc(capsys, *words: str) -> tuple[int, str, str]:
    code = main(["calc", *words])
    said = capsys.readouterr()
    return code, said.out, said.err


def test_the_formula_with_the_numbers_and_its_source(capsys):
    """One line with the formula worked out, one with where it comes from."""
    code, out, _ = calc(capsys, "heat_rise", "supply=120F", "return_air=68F")

    assert code == 0
    assert out.splitlines() == [
        "heat rise = supply - return air = 120 - 68 = 52 °F",
        "Source: definition of temperature rise on the rating plate (read)",
    ]


@pytest.mark.parametrize(
    ("words", "end"),
    [
        (["airflow_from_rise", "heat=64000", "rise=60"], "= 987.7 cfm"),
        (["airflow_from_rise", "heat=64kBtuh", "rise=60 F"], "= 987.7 cfm"),
        (["clocked_input", "dial=1/2ft3", "seconds=29s", "heating_value=1000"], "= 62069 Btu/h"),
        (["unbalance", "windings=10.0,10.4,9.9"], "= 2.97 %"),
        (["unbalance", "windings=462V,463V,455V"], "= 1.087 %"),
        (["difference", "first=7.2 in. w.c.", "second=6.8inwc"], "= 0.4 in. w.c."),
        (["difference", "first=120F", "second=68F"], "= 52 °F"),
        (["ratio_percent", "part=32VA", "whole=40VA"], "= 80 %"),
        (["co_air_free", "co=87ppm", "o2=5%"], "= 114.4 ppm"),
        (["total_external_static", "supply_static=.3", "return_static=-.52inwc"], "= 0.82 in. w.c."),
        (["wire_insulation_at_60", "insulation=100Mohm", "temperature=70F", "wire=RH"], "= 136 Mohm"),
        (["design_rate", "available=0.15inwc", "length=250ft"], "= 0.06 in. w.c. per 100 ft"),
        (["duct_flow", "diameter=10in", "rate=0.08inwc100ft"], "= 385.8 cfm"),
        (["supply_impedance", "no_load=121.5V", "loaded=117000mV", "amps=9A"], "= 0.5 ohm"),
    ],
)
def test_units_as_they_are_typed(capsys, words, end):
    """Units stand behind the number, in the trade's spellings; a plain number is in the listed unit."""
    code, out, err = calc(capsys, *words)

    assert (code, err) == (0, "")
    assert out.splitlines()[0].endswith(end)


@pytest.mark.parametrize("entry", REGISTRY.values(), ids=lambda e: e.name)
def test_every_example_can_be_typed(capsys, entry):
    """What --list shows as an example is a line that works."""
    code, out, err = calc(capsys, entry.name, *(example_text(a) for a in entry.arguments))

    assert (code, err) == (0, "")
    assert out.startswith(entry.formula)


@pytest.mark.parametrize(
    ("words", "needles"),
    [
        (["heat_rise", "supply=1,200F", "return_air=68F"], ["'supply'", "comma", "supply=120F"]),
        (
            ["heat_rise", "supply=warm", "return_air=68F"],
            ["'supply'", "warm", "from -40 to 400 °F", "supply=120F"],
        ),
        (["heat_rise", "supply=120V", "return_air=68F"], ["'supply'", "'V'", "supply=120F"]),
        (
            ["heat_rise", "supply=900F", "return_air=68F"],
            ["'supply'", "900 °F", "from -40 to 400 °F", "supply=120F"],
        ),
        (["heat_rise", "supply=120F"], ["'return_air'", "missing", "return_air=68F"]),
        (["heat_rise", "supply=120F", "back=68F"], ["'back'", "supply=120F return_air=68F"]),
        (["heat_rise", "supply=120F", "supply=121F"], ["'supply'", "twice"]),
        (["heat_rise", "120F"], ["'120F'", "key=value"]),
        (["heat_rize"], ["heat_rize", "heat_rise"]),
        (["difference", "first=3V", "second=3F"], ["one kind"]),
        (["unbalance", "windings=3V,3ohm"], ["one kind"]),
        (["difference", "first=3furlong", "second=3"], ["'first'", "furlong"]),
        (
            ["wire_resistance", "gauge=13", "length=60ft"],
            ["'gauge'", "one of 14, 18, 16, 12, 10", "gauge=14"],
        ),
        (["unbalance", "windings=10,,9"], ["'windings'", "windings=10,10.4,9.9"]),
        (["clocked_input", "dial=1/0ft3", "seconds=9", "heating_value=1000"], ["'dial'", "zero"]),
        (["--list", "frobnicate"], ["frobnicate", "--list"]),
        ([], ["heat_rise", "--list"]),
    ],
)
def test_bad_input_ends_with_two_and_a_sentence(capsys, words, needles):
    """The sentence names the argument, its range or unit, and an example; nothing is printed as an answer."""
    code, out, err = calc(capsys, *words)

    assert (code, out) == (2, "")
    assert "Traceback" not in err
    for needle in needles:
        assert needle in err


def test_json(capsys):
    """One object with the value in its unit and in SI, formula and source."""
    code, out, _ = calc(capsys, "clocked_input", "dial=1ft3", "seconds=36s", "heating_value=1000", "--json")

    answer = json.loads(out)
    assert code == 0
    assert answer["result"]["value"] == pytest.approx(100_000)
    assert answer["result"]["unit"] == "Btuh"
    assert answer["result"]["si"] == pytest.approx(29307.107)
    assert answer["mark"] == "read"


def test_json_of_several_results_and_words(capsys):
    """Named results stand under their names; words stay words."""
    _, out, _ = calc(capsys, "service_voltage_class", "volts=112", "nominal=120", "--json")

    answer = json.loads(out)
    assert answer["word"] == "range B only"
    assert answer["a_low"]["value"] == pytest.approx(114)


def test_the_list_shows_everything(capsys):
    """Every computation with its formula, each argument with range and example, its source; as JSON too."""
    _, out, _ = calc(capsys, "--list")
    _, as_json, _ = calc(capsys, "--list", "--json")

    for entry in REGISTRY.values():
        assert f"{entry.name}: {entry.title}" in out
        assert entry.formula in out
    assert {e["name"] for e in json.loads(as_json)} == set(REGISTRY)


def test_noise_never_ends_in_a_traceback(capsys):
    """2,000 spoiled lines of every computation (a letter changed, dropped or doubled) answer, or say what is
    wrong.
    """
    chance = random.Random(7)
    entries, counted = list(REGISTRY.values()), {0: 0, 2: 0}
    for _ in range(2000):
        entry = chance.choice(entries)
        words = [example_text(a) for a in entry.arguments]
        i = chance.randrange(len(words))
        at = chance.randrange(len(words[i]) + 1)
        words[i] = chance.choice(
            (
                words[i][:at] + chance.choice("0,.=-+/eE°µ%\"'xK \x00é９") + words[i][at:],
                words[i][:at] + words[i][at + 1 :],
                words[i][:at] + words[i][max(0, at - 1) :],
            )
        )
        code, _, err = calc(capsys, entry.name, *words)
        counted[code] += 1
        assert "Traceback" not in err
        assert "went wrong" not in err
    assert min(counted.values()) > 200  # both ways are tried


def test_a_word_of_it_finds_a_computation(capsys):
    """What is in no name is looked for in titles, arguments and units; what is nowhere gets a sentence."""
    code, out, _ = calc(capsys, "--list", "microfarads")
    assert code == 0
    assert "capacitance: Capacitance from amps and volts" in out
    code, _, err = calc(capsys, "--list", "zzz")
    assert code == 2
    assert "calc --list shows all" in err
