"""An example by its name."""

import pytest

import plumbnet


def test_example_is_the_layout_of_that_name() -> None:
    assert plumbnet.example("open-house").parts == plumbnet.read("systems/open-house.yaml").parts


def test_slip_of_the_key_is_met_with_the_name_that_was_meant() -> None:
    with pytest.raises(plumbnet.UnknownExample, match=r'no example is called "open-hous": did you mean "open-house"\?'):
        plumbnet.example("open-hous")
    with pytest.raises(plumbnet.UnknownExample, match=r"there is .*bakery-tank-right.*open-house"):
        plumbnet.example("zzz")
