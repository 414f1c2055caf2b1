"""Parts from their fields, and what comes fixed to them."""

import pytest
from pydantic import ValidationError

from plumbnet.layout.model.build import fixed_to, make_part, occupied
from plumbnet.layout.model.system import End, Pipe

HEATER = {"volume": "50 gal", "setpoint": "140 degF", "relief": {"pressure": "150 psi"}, "elevation": "10 ft"}


def test_relief_written_inside_a_heater_is_a_part_fixed_to_its_own_tapping() -> None:
    parts, pipes = fixed_to("heater", make_part("storage_heater", HEATER, "us"))
    relief = parts.pop("heater/relief")
    assert not parts
    assert relief.kind == "relief_valve"
    assert relief.elevation_m == pytest.approx(3.048)
    assert [outlet.opens_pa for outlet in relief.outlets()] == pytest.approx([1034213.59])
    assert pipes == [Pipe(End("heater", "relief"), End("heater/relief", "in"))]
    assert pipes[0].volume_m3 == 0.0
    assert pipes[0].line == 0


def test_part_without_anything_fixed_brings_nothing() -> None:
    assert fixed_to("stop", make_part("valve", {}, "us")) == ({}, [])


def test_every_mistake_in_the_fields_comes_at_once() -> None:
    with pytest.raises(ValidationError) as caught:
        make_part("expansion_tank", {"volume": "3 psi", "precharge": "x", "colour": "red"}, "us")
    assert caught.value.error_count() == 3


def test_bare_number_counts_in_the_units_given() -> None:
    assert make_part("emitter", {"volume": 2}, "metric") == make_part("emitter", {"volume": "2 L"}, "us")


def test_each_port_with_a_pipe_is_occupied() -> None:
    pipe = Pipe(End("a", "out"), End("b", "in"))
    assert occupied([pipe]) == {End("a", "out"): pipe, End("b", "in"): pipe}
