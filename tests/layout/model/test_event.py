"""What may befall each kind of part, as the kinds declare it."""

import pytest
from usual import usual

from plumbnet.layout.model.event import Event, Extremes
from plumbnet.layout.model.part import KINDS

EXTREMES = Extremes(limit_pa=550e3, relief_k=372.0)


def words(kind: str, **values: object) -> list[str]:
    return [event.words for event in usual(kind, **values).events(EXTREMES)]


@pytest.mark.parametrize("kind", sorted(KINDS))
def test_every_failure_of_a_sound_part_is_an_event(kind: str) -> None:
    part = usual(kind)
    failing = {how for how, values in part.failures.items() if part.model_copy(update=dict(values)) != part}
    assert failing == {event.values["how"] for event in part.events(EXTREMES) if event.action == "fail"}


@pytest.mark.parametrize("kind", sorted(KINDS))
def test_events_set_fields_that_there_are(kind: str) -> None:
    for event in usual(kind).events(EXTREMES):
        if event.action == "set":
            fields = KINDS[str(event.values.get("kind", kind))].model_fields
            assert set(event.values) - {"kind"} <= set(fields)


@pytest.mark.parametrize(
    ("kind", "values", "said"),
    [
        ("valve", {}, ["shut"]),
        ("valve", {"state": "shut"}, ["opened"]),
        ("valve", {"locked": True}, []),
        ("expansion_tank", {}, ["waterlogged", "charge lost"]),
        ("expansion_tank", {"precharge": 0}, ["waterlogged"]),
        ("expansion_tank", {"state": "waterlogged"}, []),
        ("relief_valve", {}, ["plugged"]),
        ("relief_valve", {"state": "plugged"}, []),
        ("check_valve", {}, ["stuck open"]),
        ("pressure_reducer", {"bypass": True}, ["bypass stuck shut", "creeping"]),
        ("pressure_reducer", {}, ["creeping"]),
        ("meter", {}, ["exchanged for one with a check"]),
        ("meter", {"check": True}, ["check stuck open"]),
        ("booster_pump", {}, ["check stuck open"]),
        ("booster_pump", {"check": False}, []),
        ("circulator", {}, ["exchanged for one with a check", "off"]),
        ("circulator", {"running": False, "check": True}, ["check stuck open", "on"]),
        ("mixing_valve", {}, ["checks stuck open"]),
        ("fixture", {}, ["crossover"]),
        ("main", {"pressure": "300 kPa"}, ["pressure up to the limit"]),
        ("main", {"pressure": "550 kPa"}, []),
        ("filling_loop", {}, ["left open"]),
        ("filling_loop", {"state": "open"}, ["shut off"]),
        (
            "storage_heater",
            {"setpoint": "60 degC"},
            ["as hot as a relief valve may let it", "exchanged for a tankless one"],
        ),
        ("storage_heater", {"setpoint": "110 degC"}, ["exchanged for a tankless one"]),
        (
            "tankless_heater",
            {"setpoint": "60 degC"},
            ["as hot as a relief valve may let it", "exchanged for one with a tank"],
        ),
        ("boiler", {"setpoint": "60 degC"}, ["as hot as a relief valve may let it"]),
        (
            "boiler",
            {"setpoint": "60 degC", "relief": {"pressure": "3 bar", "temperature": "95 degC"}},
            ["as hot as its relief valve lets it"],
        ),
        ("boiler", {"setpoint": "60 degC", "relief": {"pressure": "3 bar"}}, ["as hot as a relief valve may let it"]),
        ("tee", {}, []),
        ("well", {}, ["cut-out up to the limit"]),
        ("well", {"cut_in": "400 kPa", "cut_out": "550 kPa"}, []),
    ],
)
def test_kind_says_what_may_befall_it(kind: str, values: dict[str, object], said: list[str]) -> None:
    assert words(kind, **values) == said


def test_heater_gets_as_hot_as_its_own_relief_valve_lets_it() -> None:
    own = usual("storage_heater", setpoint="60 degC", relief={"pressure": "700 kPa", "temperature": "95 degC"})
    without = usual("storage_heater", setpoint="60 degC")
    assert [next(iter(heater.events(EXTREMES))).values for heater in (own, without)] == [
        {"setpoint_k": 368.15},
        {"setpoint_k": 372.0},
    ]


def test_supply_climbs_to_the_limit_and_no_further() -> None:
    assert list(usual("main", pressure="300 kPa").events(EXTREMES)) == [
        Event("pressure up to the limit", "set", {"pressure_pa": 550e3})
    ]
    assert list(usual("well").events(EXTREMES)) == [Event("cut-out up to the limit", "set", {"cut_out_pa": 550e3})]
