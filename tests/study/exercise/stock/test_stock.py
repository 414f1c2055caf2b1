import pytest
import yaml
from sketching import chance

from plumbnet.study.exercise.building import building
from plumbnet.study.exercise.level import LEVELS
from plumbnet.study.exercise.stock import stock as stock_module
from plumbnet.study.exercise.usual_sizes import USUAL


def test_file_is_the_same_where_yaml_has_no_c_library(monkeypatch: pytest.MonkeyPatch) -> None:
    stock = building(LEVELS[5].recipe, chance(3), USUAL["metric"])
    fast = stock.text(stock.stretches)
    monkeypatch.setattr(stock_module, "_DUMPER", yaml.SafeDumper)
    assert stock.text(stock.stretches) == fast
    assert fast.splitlines()[3] == "units: metric"


def test_kind_of_a_part_is_that_of_the_list() -> None:
    assert building(LEVELS[1].recipe, chance(3), USUAL["us"]).kind("street") == "main"
