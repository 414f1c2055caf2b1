"""What every part has, and the register of kinds."""

import inspect

import pytest
from conftest import system
from covering import kinds_with_own_tests
from pydantic import ValidationError
from usual import required, usual

from plumbnet.layout.file.loader import read_system
from plumbnet.layout.model.base_model import file_name_of, said_of
from plumbnet.layout.model.build import make_part
from plumbnet.layout.model.part import KINDS, Boosting, Free, OneWay, Reducing, Role, Shut

NAMES = sorted(KINDS)

SUPPLIES = {"main", "well", "open_tank", "filling_loop", "vent"}
PIPING = {"tee", "meter", "valve", "softener", "filter", "heat_trap", "mixing_valve", "storage_tank"}
CHECKS = {"check_valve", "dual_check", "double_check", "reduced_pressure_assembly", "vacuum_breaker"}
DRIVES = {"pressure_reducer", "booster_pump", "circulator"}
HEATERS = {"storage_heater", "tankless_heater", "indirect_heater", "heat_exchanger", "boiler", "solar_collector"}
OTHERS = {"emitter", "fixture", "expansion_tank", "relief_valve", "expansion_relief", "device"}


def test_register_holds_every_kind_of_the_format() -> None:
    of_the_format = SUPPLIES | PIPING | CHECKS | DRIVES | HEATERS | OTHERS
    assert of_the_format <= set(NAMES)
    assert set(NAMES) - of_the_format <= kinds_with_own_tests()


def test_role_tells_whether_water_leaves_without_limit() -> None:
    assert [role for role in Role if role.is_way_out] == [Role.STREET, Role.AIR]


@pytest.mark.parametrize("kind", NAMES)
def test_kind_knows_its_name_and_is_documented(kind: str) -> None:
    declared = KINDS[kind]
    assert declared.kind == kind
    assert inspect.getdoc(declared)
    for name in declared.model_fields:
        assert said_of(declared).get(name, "").endswith("."), name


@pytest.mark.parametrize("kind", NAMES)
def test_passages_contents_outlets_and_sources_stand_at_ports_of_the_part(kind: str) -> None:
    part = usual(kind)
    ports = set(part.port_names())
    assert len(ports) == len(part.port_names()) > 0
    for passage in part.passages():
        match passage:
            case Free(a, b) | Shut(a, b) | OneWay(a, b) | Reducing(a, b) | Boosting(a, b):
                assert {a, b} <= ports
                assert a != b
    assert {port for port, _ in part.contents()} <= ports
    assert {outlet.port for outlet in part.outlets()} <= ports
    assert {port for pair in part.through for port in pair} <= ports or kind == "device"
    assert set(part.draws_at()) <= ports
    assert part.shared <= ports
    source, heat, driven = part.source(), part.heat(), part.driven()
    assert source is None or source.port in ports
    assert heat is None or {heat.inlet, heat.outlet} <= ports
    assert driven is None or set(driven) <= ports
    assert {part.enters_at(), part.leaves_at()} - {None} <= ports


@pytest.mark.parametrize("kind", NAMES)
def test_run_leaves_by_a_port_that_water_can_reach_from_where_it_entered(kind: str) -> None:
    part = usual(kind)
    for port in part.port_names():
        mate = part.mate(port)
        assert mate is None or mate in part.port_names()
        if mate is None or part.is_fitting or kind in {"open_tank", "filling_loop", "air_gap"}:
            continue
        ends = [{*vars_of(passage)} for passage in part.passages()]
        assert any({port, mate} <= pair for pair in ends)


def vars_of(passage: object) -> list[str]:
    match passage:
        case Free(a, b) | Shut(a, b) | OneWay(a, b) | Reducing(a, b) | Boosting(a, b):
            return [a, b]
    raise AssertionError(passage)


@pytest.mark.parametrize("kind", NAMES)
def test_failures_are_fields_with_values_that_the_kind_can_have(kind: str) -> None:
    part = usual(kind)
    for values in part.failures.values():
        aliases = {file_name_of(field): value for field, value in values.items()}
        failed = make_part(kind, {**required(kind), **aliases}, "us")
        assert failed == part.model_copy(update=dict(values))


@pytest.mark.parametrize("kind", NAMES)
def test_what_is_taken_when_left_out_is_about_optional_fields(kind: str) -> None:
    fields = {field.alias: field for field in KINDS[kind].model_fields.values()}
    for name in KINDS[kind].assumed:
        assert not fields[name].is_required()


@pytest.mark.parametrize("kind", NAMES)
def test_part_cannot_be_changed_in_place(kind: str) -> None:
    part = usual(kind)
    with pytest.raises(ValidationError):
        part.elevation_m = 3.0  # type: ignore[misc]  # that mypy refuses it too is the point


def test_part_stands_at_the_datum_unless_it_says_otherwise() -> None:
    drawn = system("street -> tap.hot", tap="elevation: 9 ft")
    assert drawn.parts["street"].elevation_m == 0.0
    assert drawn.parts["tap"].elevation_m == pytest.approx(2.7432)


@pytest.mark.parametrize(("units", "psi"), [("us", 6894.757293168361), ("metric", 1000.0)])
def test_bare_number_takes_the_units_of_the_file(units: str, psi: float) -> None:
    parts = "{m: {kind: main, pressure: 60, rating: 150 psi}, t: tee}"
    text = f"plumbnet: 1\nunits: {units}\nparts: {parts}\nruns: [m -> t]"
    main = read_system(text.encode(), file="f").parts["m"]
    assert [outlet.opens_pa for outlet in main.outlets()] == pytest.approx([60 * psi])
    assert main.rating_pa == pytest.approx(150 * 6894.757293168361)
