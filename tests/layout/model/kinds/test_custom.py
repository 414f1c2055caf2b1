"""Devices whose ports and passages are written out."""

import pytest
from usual import usual

from plumbnet.layout.model.part import Free, OneWay, Part, Reducing, Shut


def device(*passages: dict[str, object], ports: tuple[str, ...] = ("a", "b", "c")) -> Part:
    return usual("device", ports=list(ports), passages=list(passages))


def test_passages_are_those_that_are_written() -> None:
    written = device(
        {"free": ["a", "b"]},
        {"one_way": ["a", "b"]},
        {"one_way": ["a", "b"], "opens": "2 kPa"},
        {"reducing": ["a", "b"], "set": "3 bar"},
        {"reducing": ["a", "b"], "set": "3 bar", "bypass": True},
        {"shut": ["b", "c"]},
    )
    assert list(written.passages()) == [
        Free("a", "b"),
        OneWay("a", "b"),
        OneWay("a", "b", 2_000),
        Reducing("a", "b", 300_000, bypass=False),
        Reducing("a", "b", 300_000, bypass=True),
        Shut("b", "c"),
    ]


def test_first_two_ports_are_inlet_and_outlet_of_a_run() -> None:
    three = device()
    assert (three.enters_at(), three.leaves_at()) == ("a", "b")
    assert [three.mate(port) for port in "abc"] == ["b", "a", None]
    one = device(ports=("a",))
    assert (one.enters_at(), one.leaves_at(), one.mate("a")) == ("a", None, None)


def test_water_of_a_device_stands_at_its_first_port() -> None:
    assert list(usual("device", volume="3 L").contents()) == [("in", 0.003)]


@pytest.mark.parametrize(
    ("passage", "said"),
    [
        ({}, "a passage is exactly one of free, one_way, reducing, shut"),
        ({"free": ["a", "b"], "shut": ["a", "b"]}, "a passage is exactly one of free, one_way, reducing, shut"),
        ({"free": ["a", "a"]}, "a passage leads from one port to another"),
        ({"reducing": ["a", "b"]}, "a reducing passage needs its set pressure: write set"),
        ({"free": ["a", "b"], "set": "3 bar"}, "set and bypass belong to a reducing passage"),
        ({"one_way": ["a", "b"], "bypass": True}, "set and bypass belong to a reducing passage"),
        ({"shut": ["a", "b"], "opens": "1 psi"}, "opens belongs to a one_way passage"),
        ({"free": ["a", "d"]}, 'a passage names the port "d", which is not one of its ports'),
    ],
)
def test_passage_that_means_nothing_is_refused(passage: dict[str, object], said: str) -> None:
    with pytest.raises(ValueError, match=said):
        device(passage)


def test_two_ports_of_one_name_are_refused() -> None:
    with pytest.raises(ValueError, match="each port of a device needs a name of its own"):
        device(ports=("a", "a"))


@pytest.mark.parametrize("name", ["", "A", "1st", "in/out", "in.out", "in\n", "\u202ein"])
def test_port_that_could_not_be_named_in_a_run_is_refused(name: str) -> None:
    with pytest.raises(ValueError, match="ports"):
        device(ports=(name, "b"))
