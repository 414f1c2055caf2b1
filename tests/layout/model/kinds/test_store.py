import pytest
from conftest import system


@pytest.mark.parametrize("name", ["heater", "indirect", "store"])
def test_store_says_from_where_it_is_fed_only_where_its_author_does(name: str) -> None:
    runs = f"street -> {name} -> tap.hot"
    for written, told in (("", None), ("fed_from_below: true", True), ("fed_from_below: false", False)):
        assert system(runs, **{name: written}).parts[name].is_fed_from_below() is told


def test_what_is_no_store_says_nothing() -> None:
    assert system("street -> tankless -> tap.hot").parts["tankless"].is_fed_from_below() is None
