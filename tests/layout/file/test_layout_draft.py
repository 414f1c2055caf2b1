"""Parts and pipes as they are read."""

import pytest

from plumbnet.layout.file.document import RunWithPipe
from plumbnet.layout.file.layout_draft import LayoutDraft, NoVolume, chain_volume_m3
from plumbnet.layout.model.build import make_part
from plumbnet.layout.model.system import End, Pipe


def test_what_comes_with_a_part_is_placed_with_it() -> None:
    draft = LayoutDraft("us")
    fields = {"volume": "40 gal", "setpoint": "120 degF", "relief": {"pressure": "150 psi"}}
    draft.place("rooms/3/heater", make_part("storage_heater", fields, "us"), fields, 7)
    assert list(draft.parts) == ["rooms/3/heater", "rooms/3/heater/relief"]


def test_a_group_opens_and_is_named_as_one() -> None:
    draft = LayoutDraft("metric")
    draft.place("group", make_part("safety_group", {"set": "7 bar"}, "metric"), {"set": "7 bar"}, 7)
    assert "group" not in draft.parts
    assert draft.known()["group"].kind == "safety_group"
    assert {pipe.line for pipe in draft.pipes} == {7}


def test_a_port_takes_one_pipe_and_a_tee_any_number() -> None:
    draft = LayoutDraft("us")
    for name, kind in (("t", "tee"), ("v", "valve")):
        draft.place(name, make_part(kind, {}, "us"), {}, 1)
    draft.lay(Pipe(End("t", "joint"), End("v", "in")))
    assert draft.is_crowded(End("v", "in"))
    assert not draft.is_crowded(End("t", "joint"))
    assert not draft.is_crowded(End("v", "out"))


def test_a_size_without_a_length_says_nothing() -> None:
    with pytest.raises(NoVolume, match="a pipe size says nothing without a length"):
        chain_volume_m3(RunWithPipe(path="a -> b", pipe="copper-L 1 in"))
    assert chain_volume_m3(RunWithPipe(path="a -> b")) == 0.0
    assert (
        chain_volume_m3(RunWithPipe.model_validate({"path": "a -> b", "pipe": "copper-L 1 in", "volume": "500 L"}))
        == 0.5
    )
