"""Two layouts are the same where a plumber could not tell them apart."""

from dataclasses import replace

from plumbnet.layout.file.loader import read_system
from plumbnet.layout.model import System
from plumbnet.layout.rewriting.same_layout import first_difference

TEXT = """\
plumbnet: 1
parts: {street: {kind: main, pressure: 60 psi}, stop: valve, tap: fixture}
runs: [{path: street -> stop -> tap.cold, length: 30 ft}]
"""


def shed(old: str = "", new: str = "") -> System:
    return read_system(TEXT.replace(old, new).encode(), file="shed.yaml")


def test_layout_is_the_same_as_itself_whichever_way_its_pipes_are_written() -> None:
    one = shed()
    turned = replace(one, pipes=tuple(replace(pipe, start=pipe.end, end=pipe.start) for pipe in one.pipes))
    assert not first_difference(one, turned)


def test_what_differs_is_named() -> None:
    one = shed()
    assert first_difference(one, shed("stop: valve", "stop: {kind: valve, state: open}")) == "stop differs"
    assert first_difference(one, shed("30", "31")) == "the pipe from stop to street differs"
    assert first_difference(one, shed("stop", "halt")) == "stop is there in one only"


def test_what_is_rounded_to_six_digits_is_the_same() -> None:
    one = shed()
    assert not first_difference(one, longer(one, 1.0 + 1e-6))
    assert first_difference(one, longer(one, 1.0 + 1e-4))


def longer(one: System, by: float) -> System:
    return replace(one, pipes=tuple(replace(pipe, length_m=(pipe.length_m or 0.0) * by) for pipe in one.pipes))
