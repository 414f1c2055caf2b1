"""Changes written into the `change` list of a layout with assemblies."""

import pytest

from plumbnet.layout.file.loader import read_system
from plumbnet.layout.model.change import Change
from plumbnet.layout.model.system import System
from plumbnet.layout.rewriting.rewritten_layout import NotWritten, rewritten
from plumbnet.layout.rewriting.same_layout import first_difference

HOUSES = """\
plumbnet: 1
assemblies:
  house:
    ports: {in: stop.in}
    parts:
      stop: valve
      meter: {kind: meter, check: true}
      split: tee
      heater: {kind: storage_heater, volume: 40 gal, setpoint: 120 degF, relief: {pressure: 150 psi}}
      tap: {kind: fixture, elevation: 3 ft}
    runs: [stop -> meter -> split -> heater -> tap.hot, split -> tap.cold]
parts:
  street: {kind: main, pressure: 60 psi}  # by the gauge
  t: tee
  houses: {use: house, times: 3, elevation: {first: 0 ft, step: 5 ft}}
runs:
  - street -> t
  - t -> houses/each
"""
LISTED = (
    f"{HOUSES}change:\n  - close: houses/1/stop  # let\nscenarios: {{s: {{change: [{{open: houses/each/stop}}]}}}}\n"
)


def read(text: str) -> System:
    return read_system(text.encode(), file="f.yaml")


@pytest.mark.parametrize(
    "change",
    [
        {"close": "houses/2/stop"},
        {"set": {"part": "houses/2/tap", "elevation": "9 ft"}},
        {"set": {"part": "houses/each/meter", "check": False}},
        {"fail": "houses/3/heater/relief"},
        {"draw": "houses/3/tap"},
        {"remove": "houses/2/meter"},
        {"insert": {"part": "houses/2/filter", "kind": "filter", "between": ["meter", "split"]}},
        {"add": {"part": "houses/2/end", "kind": "fixture", "run": "split -> end.cold"}},
        {"set": {"part": "street", "pressure": "55 psi"}},
    ],
)
@pytest.mark.parametrize("text", [HOUSES, LISTED])
def test_the_changed_text_is_the_changed_layout(text: str, change: dict[str, object]) -> None:
    system, made = read(text), [Change.model_validate(change)]
    if "fail" in change:
        with pytest.raises(NotWritten, match="is written inside"):
            rewritten(system, made)
        return
    now = read(rewritten(system, made))
    assert first_difference(now, system.with_changes(made)) == ""
    assert list(now.parts) == list(system.with_changes(made).parts)


def test_a_change_goes_behind_those_that_are_there_and_all_else_stays() -> None:
    text = rewritten(read(LISTED), [Change(close="houses/2/stop")])
    assert text == LISTED.replace("stop  # let\n", "stop  # let\n  - {close: houses/2/stop}\n")


def test_a_part_under_its_own_name_is_changed_where_it_stands() -> None:
    text = rewritten(read(HOUSES), [Change.model_validate({"set": {"part": "street", "pressure": "55 psi"}})])
    assert text == HOUSES.replace("60 psi", "55 psi")
