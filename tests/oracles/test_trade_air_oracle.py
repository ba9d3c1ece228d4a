"""Air and moisture against PsychroLib (ASHRAE Fundamentals relations)."""

from __future__ import annotations

import pytest

from assistant.trade.flue import steam_share
from assistant.trade.registry import call
from assistant.trade.unit import to_si

psychrolib = pytest.importorskip("psychrolib")


@pytest.fixture(autouse=True)
def si_units():
    """The library's unit system is one global switch: set before each test."""
    psychrolib.SetUnitSystem(psychrolib.SI)


@pytest.mark.parametrize("feet", [0, 1000, 2500, 5280, 8000, 12000])
def test_standard_pressure(feet):
    """The same standard atmosphere: 6.8754e-6 for each foot has five digits, worth 1e-5 of the pressure."""
    assert call("standard_pressure", {"altitude": to_si(feet, "ft")}) == pytest.approx(
        psychrolib.GetStandardAtmPressure(to_si(feet, "ft")), rel=2e-5
    )


@pytest.mark.parametrize("feet", [0, 2500, 5280, 8000])
@pytest.mark.parametrize("fahrenheit", [40, 70, 130])
def test_dry_air(feet, fahrenheit):
    """Dry air is 0.15 % lighter than the rounded 0.075 lb/ft3 says: 0.2 %."""
    expected = psychrolib.GetDryAirDensity(
        to_si(fahrenheit, "F") - 273.15, psychrolib.GetStandardAtmPressure(to_si(feet, "ft"))
    )

    assert call("air_density", {"altitude": to_si(feet, "ft"), "temperature": to_si(fahrenheit, "F")}) == (
        pytest.approx(expected, rel=0.002)
    )


@pytest.mark.parametrize(
    ("fahrenheit", "humidity", "expected"), [(70, 0.0, 1.078), (70, 0.5, 1.080), (120, 0.1, 0.987)]
)
def test_sensible_factor_of_moist_air(fahrenheit, humidity, expected):
    """Moisture changes the factor by less than half a percent at these states; the table's own figures come
    back.
    """
    psychrolib.SetUnitSystem(psychrolib.IP)
    ratio = psychrolib.GetHumRatioFromRelHum(fahrenheit, humidity, 14.696)
    volume = psychrolib.GetMoistAirVolume(fahrenheit, ratio, 14.696)
    factor = 60 / volume * (0.24 + 0.444 * ratio)

    assert factor == pytest.approx(expected, abs=0.0015)
    ours = call("sensible_factor", {"altitude": 0.0, "temperature": to_si(fahrenheit, "F")}) / (
        to_si(1, "btuhcfmF")
    )
    assert ours == pytest.approx(factor, rel=0.005)


@pytest.mark.parametrize("oxygen", [0, 3, 5, 7, 9, 12, 15])
def test_flue_dew_point(oxygen):
    """The dew point of the flue gas's steam: the Magnus formula against ASHRAE's saturation curve, 0.15 K."""
    excess = call("excess_air", {"o2": oxygen / 100})
    expected = psychrolib.GetTDewPointFromVapPres(60, steam_share(excess) * 101325)

    assert call("flue_dew_point", {"o2": oxygen / 100}) - 273.15 == pytest.approx(expected, abs=0.15)
