"""What of each kind nobody knows exactly, as the kinds declare it."""

import pytest
from usual import usual

from plumbnet.layout.model.part import KINDS, Stray
from plumbnet.layout.units.quantity import quantity_of


@pytest.mark.parametrize("kind", sorted(KINDS))
def test_what_strays_is_a_quantity_with_a_value(kind: str) -> None:
    part = usual(kind)
    for stray in part.strays():
        assert quantity_of(KINDS[kind].model_fields[stray.field]) is not None
        assert isinstance(getattr(part, stray.field), float)


@pytest.mark.parametrize(
    ("kind", "values", "fields"),
    [
        ("main", {}, ["pressure_pa"]),
        ("main", {"highest": "80 psi", "lowest": "30 psi"}, ["highest_pa", "lowest_pa"]),
        ("well", {}, ["cut_out_pa", "cut_in_pa"]),
        ("open_tank", {}, ["elevation_m"]),
        ("filling_loop", {}, ["fill_pa"]),
        ("filling_loop", {"state": "open"}, []),
        ("pressure_reducer", {}, ["set_pa"]),
        ("booster_pump", {}, ["rise_pa"]),
        ("expansion_tank", {}, ["precharge_pa", "volume_m3", "elevation_m"]),
        ("storage_heater", {}, ["setpoint_k", "volume_m3"]),
        ("storage_tank", {}, ["volume_m3"]),
        ("emitter", {}, ["volume_m3", "elevation_m"]),
        ("fixture", {}, ["elevation_m"]),
        ("relief_valve", {}, []),
        ("valve", {}, []),
    ],
)
def test_kind_says_what_of_it_strays(kind: str, values: dict[str, object], fields: list[str]) -> None:
    assert [stray.field for stray in usual(kind, **values).strays()] == fields


def test_set_of_a_relief_valve_is_stamped_on_it_and_what_is_worse_for_all_is_tried_together() -> None:
    assert list(usual("expansion_relief").strays()) == []
    assert Stray("setpoint_k", together=True) in list(usual("boiler").strays())
    assert Stray("precharge_pa") in list(usual("expansion_tank").strays())
