"""Which layouts have anything to write out. What is wrong with a body stands in tests/faults."""

import pytest
from assembling import written

from plumbnet.layout.assemblies.body_reader import has_assemblies
from plumbnet.layout.yaml.node import Plain


@pytest.mark.parametrize(
    ("value", "has"),
    [
        ({"parts": {"a": "tee", "first": {"kind": "tee"}}}, False),
        ({"parts": {"a": {"kind": "tee", "times": 2}}}, True),
        ({"parts": {"a": {"use": "room"}}}, True),
        ({"assemblies": {}}, True),
        ({"change": []}, True),
        ({"parts": ["a"]}, False),
    ],
)
def test_a_layout_without_the_additions_is_read_as_ever(value: dict[str, Plain], has: bool) -> None:  # noqa: FBT001  a case
    assert has_assemblies(value) is has


def test_ports_as_a_list_bear_the_names_of_parts_inside() -> None:
    text = "assemblies: {{b: {{ports: {ports}, parts: {{x: tee, y: tee}}, runs: [x -> y]}}}}\n"
    for ports in ("[x]", "{x: x}"):
        out = written(f"{text.format(ports=ports)}parts: {{a: tee, r: {{use: b}}}}\nruns: [a -> r.x]")
        assert [stop.name for stop in out.chains[-1][0].stops] == ["a", "r/x"]
