"""Parts and instances as they are declared. What is wrong with them stands in tests/faults."""

import pytest

from plumbnet.layout.assemblies.definition import WrittenAt
from plumbnet.layout.assemblies.definition_reader import DefinitionReader
from plumbnet.layout.assemblies.wrong import Wrong

READER = DefinitionReader("us", {"room": {"parts": {"tap": "fixture"}}})
AT = WrittenAt(0, ("parts", "r"))


def test_a_bare_word_is_the_kind_and_use_is_an_instance() -> None:
    assert READER.definition("r", "valve", AT).kind == "valve"
    found = READER.definition("r", {"use": "room", "times": 2, "elevation": ["1 ft", "2 ft"]}, AT)
    assert (found.use, found.labels, found.kind) == ("room", ("1", "2"), "")


def test_a_faulty_one_keeps_what_can_be_read_so_that_nothing_more_is_said_of_it() -> None:
    found = READER.faulty("r", {"use": "room", "times": 2, "volume": 3}, AT)
    assert (found.faulty, found.use, found.labels) == (True, "room", ("1", "2"))


def test_each_is_looked_at_however_deep() -> None:
    with pytest.raises(Wrong) as caught:
        READER.definition("r", {"use": "room", "times": 3, "each": {"tap": {"elevation": ["1 ft"]}}}, AT)
    assert caught.value.path == ("each", "tap", "elevation")
    assert caught.value.text == "tap elevation has 1 value for 3 instances; give one to each"
