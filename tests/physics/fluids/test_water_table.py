"""The table of water against the library it was made from, and against a making of it anew."""

import json
import math

import pytest
import water_tables as making
from hypothesis import given
from hypothesis import strategies as st
from iapws.iapws97 import _PSat_T, _Region1, _TSat_P

from plumbnet.physics.fluids.water import saturation_abs_pa
from plumbnet.physics.fluids.water_table import WITHIN, property_curve, surface

PRINTED = 1e-12
"""Part of a property that no digit of a report is moved by: sheets print nine of a volume."""

temperatures = st.floats(273.15, 453.15)
shares = st.floats(0.0, 1.0)


def state(temperature_k: float, share: float) -> tuple[float, float]:
    """Liquid water of a temperature, at so much of the way from its saturation to 30 bar."""
    lowest = float(_PSat_T(temperature_k)) * 1e6
    return temperature_k, lowest + share * (3.0e6 - lowest)


def librarys(name: str, at: tuple[float, float]) -> float:
    symbol, size = making.SURFACES[name]
    return float(_Region1(at[0], at[1] / 1e6)[symbol]) * size


@given(temperature_k=temperatures, share=shares)
def test_specific_volume_is_the_librarys_to_the_part_that_sheets_name(temperature_k: float, share: float) -> None:
    at = state(temperature_k, share)
    assert surface("volume_m3_kg").at(*at) == pytest.approx(librarys("volume_m3_kg", at), rel=min(WITHIN, PRINTED))


@pytest.mark.parametrize("name", making.SURFACES)
@given(temperature_k=temperatures, share=shares)
def test_every_property_is_the_librarys(name: str, temperature_k: float, share: float) -> None:
    at = state(temperature_k, share)
    largest = max(abs(librarys(name, state(t, share))) for t in (273.15, 453.15))
    assert surface(name).at(*at) == pytest.approx(librarys(name, at), rel=PRINTED, abs=PRINTED * largest)


@given(temperature_k=temperatures)
def test_saturation_is_the_librarys(temperature_k: float) -> None:
    found = math.exp(property_curve("log_saturation_pa_by_k").at(temperature_k))
    assert found == pytest.approx(float(_PSat_T(temperature_k)) * 1e6, rel=PRINTED)


@given(log_pa=st.floats(math.log(611.3), math.log(3.0e6)))
def test_boiling_is_the_librarys(log_pa: float) -> None:
    assert property_curve("boiling_k_by_log_pa").at(log_pa) == pytest.approx(
        float(_TSat_P(math.exp(log_pa) / 1e6)), rel=PRINTED
    )


@given(pressure_abs_pa=st.floats(1.0e3, 3.0e6))
def test_densest_water_neither_grows_nor_shrinks_with_warmth(pressure_abs_pa: float) -> None:
    densest = property_curve("densest_k_by_pa").at(pressure_abs_pa)
    assert densest == pytest.approx(making.densest_k(pressure_abs_pa), abs=1e-9)


def test_table_ends_where_it_says() -> None:
    volume = surface("volume_m3_kg")
    for at in [(273.15, 0.0), (453.15, 3.0e6)]:
        assert volume.hold(*at)
    for at in [(273.149, 1e5), (453.151, 1e5), (300.0, -1.0), (300.0, 3.001e6), (math.nan, 1e5), (300.0, math.nan)]:
        assert not volume.hold(*at)
    assert saturation_abs_pa(453.15) < 3.0e6


def test_table_made_anew_is_the_one_that_is_there() -> None:
    there, made = json.loads(making.FILE.read_text(encoding="utf-8")), json.loads(json.dumps(making.table()))
    assert there["source"] == made["source"]
    for sort in ("surfaces", "curves"):
        assert list(there[sort]) == list(made[sort])
        for name, one in made[sort].items():
            assert there[sort][name]["bounds"] == one["bounds"]
            assert_alike(there[sort][name]["rows"], one["rows"])


def assert_alike(rows: list[list[float]], others: list[list[float]]) -> None:
    """Within what the sums of another machine round off otherwise; a coefficient may fall away there."""
    close = 20 * making.KEPT * max(abs(each) for row in rows for each in row)
    for order in range(max(len(rows), len(others))):
        row, other = (one[order] if order < len(one) else [] for one in (rows, others))
        long = max(len(row), len(other))
        full = [[*one, *[0.0] * (long - len(one))] for one in (row, other)]
        assert full[0] == pytest.approx(full[1], rel=0, abs=close)
