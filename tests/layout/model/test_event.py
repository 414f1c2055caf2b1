"""What may befall each kind of part, as the kinds declare it."""

import pytest
from usual import usual

from plumbnet.layout.model.event import Event, Extremes, Sort
from plumbnet.layout.model.part import KINDS
from plumbnet.layout.units.quantity import quantity_of

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
        Event("pressure up to the limit", "set", {"pressure_pa": 550e3}, Sort.NUMBER)
    ]
    assert list(usual("well").events(EXTREMES)) == [
        Event("cut-out up to the limit", "set", {"cut_out_pa": 550e3}, Sort.NUMBER)
    ]


TOUCHED: dict[str, list[str]] = {
    "air_gap": [],
    "air_separator": [],
    "balancing_valve": ["shut", "locked"],
    "boiler": ["! as hot as a relief valve may let it", "put out of service", "= setpoint", "= volume"],
    "booster_pump": ["! check stuck open", "exchanged for one without a check", "= rise"],
    "check_valve": ["! stuck open"],
    "circulator": ["exchanged for one with a check", "off"],
    "closely_spaced_tees": [],
    "device": [],
    "double_check": ["! stuck open"],
    "dual_check": ["! stuck open"],
    "emitter": ["= volume"],
    "expansion_relief": ["! plugged", "= pressure"],
    "expansion_tank": ["! waterlogged", "! charge lost", "= precharge", "= volume"],
    "filling_loop": ["left open", "= fill"],
    "filter": ["exchanged for one with a check"],
    "fixture": ["! crossover", "running"],
    "heat_exchanger": ["! as hot as a relief valve may let it", "put out of service", "= setpoint", "= volume"],
    "heat_trap": [],
    "indirect_heater": ["! as hot as a relief valve may let it", "put out of service", "= setpoint", "= volume"],
    "inlet_group": [],
    "main": ["= pressure"],
    "meter": ["exchanged for one with a check"],
    "mixing_valve": ["! checks stuck open"],
    "open_tank": ["= elevation"],
    "pressure_reducer": ["! creeping", "exchanged for one with a bypass", "= set"],
    "reduced_pressure_assembly": ["! stuck open"],
    "relief_valve": ["! plugged"],
    "safety_group": [],
    "softener": ["exchanged for one with a check"],
    "solar_collector": ["! as hot as a relief valve may let it", "put out of service", "= setpoint", "= volume"],
    "storage_heater": [
        "! as hot as a relief valve may let it",
        "exchanged for a tankless one",
        "put out of service",
        "= setpoint",
        "= volume",
    ],
    "storage_tank": ["= volume"],
    "tankless_heater": [
        "! as hot as a relief valve may let it",
        "exchanged for one with a tank",
        "put out of service",
        "= setpoint",
        "= volume",
    ],
    "tee": [],
    "vacuum_breaker": ["! stuck open"],
    "vacuum_relief_valve": [],
    "valve": ["shut", "locked"],
    "vented_dual_check": ["! stuck open"],
    "vent": ["= elevation"],
    "well": ["= cut in", "= cut out"],
}
"""What a hand may make of each kind with nothing but what it requires: faults behind a mark, numbers behind another."""
MARKS = {Sort.FAULT: "! ", Sort.NUMBER: "= "}


def touched(kind: str, **values: object) -> list[str]:
    found = usual(kind, **values).alternatives(EXTREMES)
    return [f"{MARKS.get(one.sort, '')}{one.words}" for one in found]


@pytest.mark.parametrize("kind", sorted(TOUCHED.keys() | KINDS.keys()))
def test_kind_says_what_it_may_be_instead(kind: str) -> None:
    assert touched(kind) == TOUCHED[kind]


@pytest.mark.parametrize(
    ("kind", "values", "said"),
    [
        ("valve", {"state": "shut"}, ["opened", "locked"]),
        ("valve", {"locked": True}, ["shut"]),
        ("valve", {"locked": True, "state": "shut"}, ["opened"]),
        ("meter", {"check": True}, ["! check stuck open", "exchanged for one without a check"]),
        ("booster_pump", {"check": False}, ["exchanged for one with a check", "= rise"]),
        (
            "pressure_reducer",
            {"bypass": True},
            ["! bypass stuck shut", "! creeping", "exchanged for one without a bypass", "= set"],
        ),
        ("pressure_reducer", {"state": "creeping"}, ["mended", "exchanged for one with a bypass", "= set"]),
        ("expansion_tank", {"state": "waterlogged"}, ["mended", "= precharge", "= volume"]),
        ("check_valve", {"state": "stuck_open"}, ["mended"]),
        ("mixing_valve", {"checks": False, "outlet": "120 degF"}, ["! passing hot", "mended", "= outlet"]),
        ("fixture", {"drawing": True, "crossover": True}, ["mended", "shut"]),
        ("circulator", {"running": False, "head": "2 m"}, ["exchanged for one with a check", "on", "= head"]),
        ("filling_loop", {"state": "open"}, ["shut off", "= fill"]),
        ("storage_heater", {"state": "out_of_service"}, ["put back in service", "= setpoint", "= volume"]),
        ("main", {"highest": "90 psi", "lowest": "40 psi"}, ["= pressure", "= highest", "= lowest"]),
    ],
)
def test_what_it_may_be_instead_follows_what_it_is(kind: str, values: dict[str, object], said: list[str]) -> None:
    assert touched(kind, **values) == said


@pytest.mark.parametrize("kind", sorted(KINDS))
def test_number_that_may_be_altered_is_a_quantity_and_what_it_is_now(kind: str) -> None:
    part = usual(kind)
    for one in part.alternatives(EXTREMES):
        if one.sort is Sort.NUMBER:
            ((field, value),) = one.values.items()
            assert value == getattr(part, field)
            assert quantity_of(KINDS[kind].model_fields[field]) is not None


@pytest.mark.parametrize("kind", sorted(KINDS))
def test_failure_is_offered_as_a_fault_and_never_as_anything_else(kind: str) -> None:
    alternatives = list(usual(kind).alternatives(EXTREMES))
    assert all(one.sort is Sort.FAULT for one in alternatives if one.action == "fail")
    assert len({one.words for one in alternatives}) == len(alternatives)
