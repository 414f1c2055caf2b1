"""A layout told by other names."""

from conftest import layout

from plumbnet.layout.file.loader import read_system
from plumbnet.layout.model.system import System
from plumbnet.study.renaming.part_renames import Renames
from plumbnet.study.renaming.system_renaming import renamed_system

MORE = """scenarios:
  shut: {change: [{close: valve}, {remove: cv}, {fail: tank}, {set: {part: tank, volume: 9 gal}}]}
  more:
    change:
      - {insert: {part: meter, kind: meter, between: [cv, valve.in]}}
      - {add: {part: tank2, kind: expansion_tank, volume: 2 gal, precharge: 60 psi, run: tee.joint -> tank2}}
accept: [{finding: tank-too-small, part: tank, reason: so}]
"""


def read(runs: str, more: str, tank: str, heater: str) -> System:
    parts = {
        heater: "relief: {pressure: 150 psi, temperature: 210 degF}",
        tank: "kind: expansion_tank, volume: 2 gal, precharge: 60 psi",
    }
    return read_system((layout(runs, **parts) + more).encode(), file="f.yaml")


BEFORE = read("street -> cv -> valve -> tee -> heater -> tap.hot\ntee -> tank", MORE, "tank", "heater")
NAMES = {"valve": "valve9", "cv": "cv9", "tank": "vessel", "tee": "tee9", "heater": "heater9"}


def written_anew() -> System:
    """The same layout as an author would have written it with those names."""
    more = MORE
    for old, new in (("valve", "valve9"), ("cv", "cv9"), ("tee", "tee9")):
        more = more.replace(f": {old}", f": {new}").replace(f"[{old}", f"[{new}").replace(f", {old}.", f", {new}.")
    more = more.replace("fail: tank", "fail: vessel").replace("part: tank,", "part: vessel,")
    return read("street -> cv9 -> valve9 -> tee9 -> heater9 -> tap.hot\ntee9 -> vessel", more, "vessel", "heater9")


def test_everything_follows_the_name() -> None:
    told, meant = renamed_system(BEFORE, Renames(names=NAMES).name_now), written_anew()
    assert told.parts == meant.parts
    assert told.pipes == meant.pipes
    assert told.written == meant.written
    assert told.scenarios == meant.scenarios
    assert told.accept == meant.accept
    assert list(told.record.lines) == list(meant.record.lines)


def test_lines_stay_those_of_the_file() -> None:
    told = renamed_system(BEFORE, Renames(names=NAMES).name_now)
    assert told.line_of("vessel") == BEFORE.line_of("tank") > 0
    assert told.line_of("heater9/relief") == BEFORE.line_of("heater")
