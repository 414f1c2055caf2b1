"""Runs to the ports that their pipes join."""

import pytest
from conftest import system
from hypothesis import given
from hypothesis import strategies as st

from plumbnet.layout.model.part import Part
from plumbnet.layout.model.runs import NAME, Stop, joints, listed_names, run_stops
from plumbnet.layout.model.system import End

HOUSE = system(
    """street -> meter -> cv -> prv -> tee -> heater -> mixer.hot
       tee -> mixer.cold
       mixer -> tap.hot
       tee -> tank
       tee -> boiler -> emitter -> tee
       tee -> indirect -> tee
       tee -> indirect.coil_in"""
).parts


def refuse(stop: Stop, text: str, hint: str, known: object) -> None:
    raise AssertionError((stop, text, hint, known))


def pipes(path: str, parts: dict[str, Part] | None = None) -> list[str]:
    found = joints(path, parts or dict(HOUSE), refuse)
    return [f"{joint.start.part}.{joint.start.port} {joint.end.part}.{joint.end.port}" for joint in found]


def said(path: str, *, faulty: tuple[str, ...] = ()) -> list[str]:
    told: list[str] = []

    def complain(stop: Stop, text: str, _hint: str, _known: object) -> None:
        told.append(f"{path[stop.offset : stop.offset + stop.width]}: {text}")

    list(joints(path, HOUSE, complain, faulty=faulty))
    return told


def test_run_enters_at_the_inlet_and_leaves_at_the_outlet() -> None:
    assert pipes("street -> meter -> cv -> prv") == ["street.out meter.in", "meter.out cv.in", "cv.out prv.in"]


def test_check_valve_entered_at_its_outlet_stands_reversed() -> None:
    assert pipes("meter -> cv.out -> tee") == ["meter.out cv.out", "cv.in tee.joint"]


def test_heater_is_entered_cold_and_left_hot() -> None:
    assert pipes("tee -> heater -> mixer.hot") == ["tee.joint heater.cold", "heater.hot mixer.hot"]


def test_boiler_is_entered_at_the_return_and_left_at_the_supply() -> None:
    assert pipes("tee -> boiler -> emitter") == ["tee.joint boiler.return", "boiler.supply emitter.in"]


def test_any_port_can_be_named_to_start_and_to_end() -> None:
    assert pipes("heater.hot -> mixer.hot") == ["heater.hot mixer.hot"]
    assert pipes("heater.return -> tee") == ["heater.return tee.joint"]


def test_coil_entered_at_one_end_is_left_at_the_other() -> None:
    assert pipes("tee -> indirect.coil_in -> tee") == ["tee.joint indirect.coil_in", "indirect.coil_out tee.joint"]
    assert pipes("tee -> indirect.coil_out -> tee") == ["tee.joint indirect.coil_out", "indirect.coil_in tee.joint"]


def test_mixing_valve_entered_at_either_inlet_is_left_mixed() -> None:
    assert pipes("tee -> mixer.cold -> tap.cold") == ["tee.joint mixer.cold", "mixer.mixed tap.cold"]
    assert pipes("mixer -> tap.cold") == ["mixer.mixed tap.cold"]


def test_run_may_begin_and_end_at_a_part_with_a_single_connection() -> None:
    assert pipes("tank -> tee -> street") == ["tank.in tee.joint", "tee.joint street.out"]


def test_tee_takes_any_number_of_pipes_by_its_one_joint() -> None:
    assert pipes("tee -> tank") == ["tee.joint tank.in"]


def test_spaces_round_the_arrow_do_not_matter() -> None:
    assert pipes("  street->meter  ->   cv ") == pipes("street -> meter -> cv")


def test_faulty_parts_are_passed_over_in_silence() -> None:
    assert said("street -> heatr -> meter", faulty=("heatr",)) == []


def test_each_mistake_of_a_run_is_told_at_its_own_stop() -> None:
    strt, heater, tap = said("strt -> tap -> heater.no -> tee")
    assert strt == 'strt: no part is called "strt"'
    assert heater.startswith("heater.no: ")
    assert heater.endswith(' has no port "no"')
    assert tap.startswith("tap: ")
    assert tap.endswith(" has the ports hot and cold")


def test_run_cannot_join_a_port_to_itself_but_can_go_round() -> None:
    assert said("tee -> tee") == ["tee: this pipe joins tee to itself"]
    assert pipes("heater -> heater") == ["heater.hot heater.cold"]


def test_joint_knows_the_stops_that_named_it() -> None:
    (joint,) = joints("street -> tap.hot", HOUSE, refuse)
    assert (joint.near.name, joint.far.name, joint.far.port, joint.far.offset) == ("street", "tap", "hot", 10)
    assert (joint.start, joint.end) == (End("street", "out"), End("tap", "hot"))


@pytest.mark.parametrize("name", ["a", "1", "hot main", "tap-2", "küche", "北", "_a", "a" * 60])
def test_names_are_words_with_digits_hyphens_and_spaces_inside(name: str) -> None:
    assert NAME.fullmatch(name)


@pytest.mark.parametrize(
    "name", ["", " a", "a ", "-a", "a-", "a.b", "a/b", "a>b", "a\n", "a\x1b[2J", "\u202ea", "a" * 61]
)
def test_names_that_would_break_a_run_or_a_terminal_are_none(name: str) -> None:
    assert not NAME.fullmatch(name)


@given(st.text())
def test_every_name_prints(name: str) -> None:
    assert not NAME.fullmatch(name) or name.isprintable()


@given(st.text(alphabet="ab.-> "))
def test_stops_stand_where_they_say(path: str) -> None:
    for stop in run_stops(path):
        text = stop.name if stop.port is None else f"{stop.name}.{stop.port}"
        assert path[stop.offset : stop.offset + len(text)] == text


def test_names_are_listed_as_a_person_does() -> None:
    assert listed_names(["a"]) == "a"
    assert listed_names(["a", "b"]) == "a and b"
