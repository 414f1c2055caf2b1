"""What stands at a part in the picture of a worksheet."""

import pytest
from conftest import system

from plumbnet.report.worksheets.paper.part_settings import part_settings

RUNS = "street -> prv -> tee -> heater -> tap.hot\ntee -> tank"


@pytest.mark.parametrize(
    ("name", "fields", "told"),
    [
        ("street", "pressure: 62 psi, elevation: 10 ft", ["62 psi", "up 10 ft"]),
        ("prv", "set: 55 psi, bypass: true", ["55 psi", "bypass"]),
        ("tank", "volume: 5 gal, precharge: 55 psi, state: waterlogged", ["5 gal", "55 psi", "waterlogged"]),
        ("tap", "elevation: -4 ft", ["down 4 ft"]),
        ("tee", "elevation: 10 ft", []),
        ("heater", "volume: 40 gal, setpoint: 120 degF, input: 40000 Btu/h", ["40 gal", "120 degF"]),
    ],
)
def test_pressures_sizes_and_states_stand_there_as_written_and_heights_where_they_matter(
    name: str, fields: str, told: list[str]
) -> None:
    assert list(part_settings(system(RUNS, **{name: fields}), name)) == told


def test_second_quantity_of_a_dimension_is_named() -> None:
    runs = "street -> indirect -> tap.hot\nboiler -> indirect.coil_in\nindirect.coil_out -> boiler"
    found = system(
        runs,
        indirect="kind: indirect_heater, volume: 40 gal, coil_volume: 1.5 gal, setpoint: 120 degF",
        boiler="kind: boiler, volume: 8 gal, setpoint: 160 degF",
    )
    assert list(part_settings(found, "indirect")) == ["40 gal", "120 degF", "coil volume", "1.5 gal"]


def test_relief_valve_of_a_heater_has_its_pressure_alone() -> None:
    found = system(RUNS, heater="relief: {pressure: 150 psi, temperature: 210 degF}, elevation: 10 ft")
    assert list(part_settings(found, "heater/relief")) == ["150 psi"]
