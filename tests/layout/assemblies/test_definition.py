"""What bodies declare."""

import pytest

from plumbnet.layout.assemblies.definition import AssemblyBody, Definition, WrittenAt
from plumbnet.layout.assemblies.wrong import Wrong


def test_a_part_without_times_has_no_number() -> None:
    place = WrittenAt(0, ("parts", "stop"))
    assert Definition("stop", place, {"kind": "valve"}).all_labels == (None,)
    assert [Definition("stop", place, {}, labels=("1", "2")).named(one) for one in ("1", None)] == ["stop/1", "stop"]


def test_a_name_that_nobody_declared_offers_the_nearest() -> None:
    stop = Definition("stop", WrittenAt(0, ("parts", "stop")), {"kind": "valve"})
    body = AssemblyBody("", WrittenAt(0, ()), {"stop": stop})
    assert body.part("stop").kind == "valve"
    with pytest.raises(Wrong, match=r"^no part is named stpo; did you mean stop\?$"):
        body.part("stpo")


def test_a_place_further_in_is_of_the_same_file() -> None:
    assert WrittenAt(2, ("assemblies", "room")).under("parts", 3) == WrittenAt(2, ("assemblies", "room", "parts", 3))
