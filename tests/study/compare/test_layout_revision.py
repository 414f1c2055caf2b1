"""What a revision changed in a layout."""

from pathlib import Path

import pytest
from conftest import layout
from hypothesis import given
from hypothesis import strategies as st

import plumbnet
from plumbnet.layout.edits.apply import with_changes
from plumbnet.layout.file.loader import read_system
from plumbnet.layout.model.system import System
from plumbnet.study.compare.layout_revision import Changes, Named, Revision, revision

SYSTEMS = sorted((Path(__file__).parents[3] / "systems").glob("*.yaml"))
RUNS = """street -> cv -> tee -> heater -> tap.hot
          tee -> tap.cold"""


def drawn(runs: str = RUNS, more: str = "", **parts: str) -> System:
    return read_system((layout(runs, **parts) + more).encode(), file="f.yaml")


def written(runs: str, more: str = "") -> System:
    """A layout whose runs are YAML of their own."""
    boiler = "boiler: {kind: boiler, volume: 5, setpoint: 180}"
    parts = f"parts: {{street: {{kind: main, pressure: 60}}, t1: tee, t2: tee, tap: fixture, {boiler}}}"
    return read_system(f"plumbnet: 1\n{parts}\nruns: [{runs}]\n{more}".encode(), file="f.yaml")


def names(changes: Changes) -> tuple[list[str], list[str]]:
    return [one.name for one in changes.added], [one.name for one in changes.removed]


def altered(changes: Changes) -> dict[str, list[str]]:
    return {
        one.name: [f"{each.field}: {each.before} -> {each.after}" for each in one.fields] for one in changes.altered
    }


def test_same_layout_twice_is_no_revision() -> None:
    assert not revision(drawn(), drawn())


def test_part_set_into_a_run_is_added_with_its_pipes() -> None:
    found = revision(drawn(), drawn(RUNS.replace("tee -> heater", "tee -> valve -> heater")))
    assert found.parts.added == (Named("valve", "valve"),)
    assert names(found.pipes) == (["tee -> valve", "valve -> heater"], ["tee -> heater"])
    assert not found.parts.removed
    assert not found.parts.altered


def test_part_that_is_gone_is_removed() -> None:
    found = revision(drawn(), drawn(RUNS.replace("-> cv", "")))
    assert found.parts.removed == (Named("cv", "check_valve"),)
    assert names(found.pipes) == (["street -> tee"], ["street -> cv", "cv -> tee"])


def test_part_of_another_name_that_kept_its_pipes_is_renamed() -> None:
    found = revision(drawn(), drawn(RUNS.replace("cv", "cv2")))
    assert [(one.before, one.after, one.kind) for one in found.renamed] == [("cv", "cv2", "check_valve")]
    assert (bool(found.parts), bool(found.pipes), bool(found)) == (False, False, True)


def test_part_of_another_kind_and_name_is_removed_and_added() -> None:
    found = revision(drawn(), drawn(RUNS.replace("cv", "valve")))
    assert names(found.parts) == (["valve"], ["cv"])
    assert found.renamed == ()


def test_renamed_part_is_followed_by_scenarios_and_acceptances() -> None:
    more = (
        "scenarios: {{a: {{change: [{{remove: {0}}}]}}}}\naccept: [{{finding: tank-cut-off, part: {0}, reason: so}}]\n"
    )
    before = drawn(more=more.format("cv"))
    found = revision(before, drawn(RUNS.replace("cv", "cv2"), more.format("cv2")))
    assert (bool(found.scenarios), bool(found.accepted), len(found.renamed)) == (False, False, 1)


def test_pipes_are_told_with_their_places() -> None:
    before, after = drawn(), drawn(RUNS.replace("tee -> heater", "tee -> valve -> heater"))
    found = revision(before, after).pipes
    assert [after.pipes[one.places[0]].name for one in found.added] == [one.name for one in found.added]
    assert [before.pipes[one.places[0]].name for one in found.removed] == ["tee -> heater"]
    rest = "street -> t1 -> boiler, t2 -> tap.hot"
    (altered,) = revision(
        written(f"{rest}, {{path: t1 -> t2, volume: 1}}"), written(f"{{path: t1 -> t2, volume: 2}}, {rest}")
    ).pipes.altered
    assert altered.places == (3, 0)


def test_fields_of_a_part_are_told_in_the_units_of_the_later_file_or_in_those_asked_for() -> None:
    before, after = drawn(), drawn(heater="volume: 60 gal, input: 50000 Btu/h")
    assert altered(revision(before, after).parts) == {
        "heater": ["volume: 50 gal -> 60 gal", "input: 40,000 Btu/h -> 50,000 Btu/h"]
    }
    metric = revision(before, after, units="metric")
    assert altered(metric.parts)["heater"][0] == "volume: 189.271 L -> 227.125 L"


def test_other_kind_under_the_same_name_comes_first() -> None:
    found = revision(drawn(), drawn(cv="kind: pressure_reducer, set: 50 psi"))
    assert altered(found.parts) == {"cv": ["kind: check_valve -> pressure_reducer", "set: not given -> 50 psi"]}


def test_relief_valve_written_inside_a_heater_is_a_field_of_it_and_no_part() -> None:
    before, after = drawn(), drawn(heater="relief: {pressure: 150 psi}")
    found = revision(before, after)
    assert altered(found.parts) == {"heater": ["relief: not given -> {pressure: 150 psi}"]}
    assert names(found.parts) == ([], [])
    assert not found.pipes


def test_valve_turned_round_joins_other_ports() -> None:
    """street -> cv -> tee    before
    street -> cv.out, cv.in -> tee    after
    """
    turned = RUNS.replace("street -> cv -> tee ->", "street -> cv.out\ncv.in -> tee\ntee ->")
    assert names(revision(drawn(), drawn(turned)).pipes) == (
        ["street -> cv.out", "cv.in -> tee"],
        ["street -> cv", "cv -> tee"],
    )


def test_pipe_written_the_other_way_is_the_same_pipe() -> None:
    before = written("street -> t1 -> boiler, t1 -> t2, t2 -> tap.cold")
    after = written("street -> t1 -> boiler, t2 -> t1, t2 -> tap.cold")
    assert not revision(before, after)


def test_pipe_between_ports_that_a_run_would_not_find_names_them() -> None:
    after = written("street -> t1 -> boiler, t1 -> t2, t2 -> tap.cold, boiler.relief -> tap.hot")
    found = revision(written("street -> t1 -> boiler, t1 -> t2, t2 -> tap.cold"), after)
    assert names(found.pipes)[0] == ["boiler.relief -> tap.hot"]


def test_length_tube_and_water_of_a_pipe_are_told() -> None:
    before = written("street -> t1 -> boiler, {path: t1 -> t2, pipe: copper-L 3/4 in, length: 10}, t2 -> tap.hot")
    after = written("street -> t1 -> boiler, {path: t1 -> t2, pipe: copper-L 1 in, length: 10}, t2 -> tap.hot")
    (fields,) = altered(revision(before, after).pipes).values()
    assert fields[0] == "pipe: copper-L 3/4 in -> copper-L 1 in"
    assert fields[1].startswith("volume: 0.25")
    longer = written("street -> t1 -> boiler, {path: t1 -> t2, pipe: copper-L 3/4 in, length: 12}, t2 -> tap.hot")
    (fields,) = altered(revision(before, longer).pipes).values()
    assert fields[0] == "length: 10 ft -> 12 ft"
    bare = written("street -> t1 -> boiler, t1 -> t2, t2 -> tap.hot")
    (fields,) = altered(revision(before, bare).pipes).values()
    assert fields[:2] == ["pipe: copper-L 3/4 in -> not given", "length: 10 ft -> not given"]


def test_of_several_pipes_between_the_same_ports_the_equal_ones_cancel() -> None:
    one, two = "{path: t1 -> t2, volume: 1}", "{path: t1 -> t2, volume: 2}"
    rest = "street -> t1 -> boiler, t2 -> tap.hot"
    both = written(f"{rest}, {one}, {two}")
    assert not revision(both, written(f"{rest}, {two}, {one}"))
    assert names(revision(both, written(f"{rest}, {two}")).pipes) == ([], ["t1 -> t2"])
    assert names(revision(written(f"{rest}, {one}"), both).pipes) == (["t1 -> t2"], [])
    third = revision(both, written(f"{rest}, {{path: t1 -> t2, volume: 3}}, {two}"))
    assert altered(third.pipes) == {"t1 -> t2": ["volume: 1 gal -> 3 gal"]}


def test_head_of_the_file_is_told() -> None:
    more = "title: Bakery\nrules: ipc-2021\ntank_sizes: [2, 5]\n"
    found = revision(drawn(), drawn(more=more))
    assert [f"{one.field}: {one.before} -> {one.after}" for one in found.head] == [
        "title: not given -> Bakery",
        "rules: not given -> ipc-2021",
        "tank_sizes: not given -> [2 gal, 5 gal]",
    ]
    assert bool(found)


def test_scenarios_and_accepted_findings_are_told() -> None:
    before = drawn(more="scenarios: {a: {change: [{remove: cv}]}, b: {note: x, change: [{remove: cv}]}}\n")
    after = drawn(
        more="scenarios: {c: {change: [{remove: cv}]}, b: {note: y, change: [{remove: cv}]}}\n"
        "accept: [{finding: trapped-expansion, part: heater, reason: so}]\n"
    )
    found = revision(before, after)
    assert names(found.scenarios) == (["c"], ["a"])
    assert altered(found.scenarios) == {"b": ["note: x -> y"]}
    assert names(found.accepted) == (["trapped-expansion of heater"], [])
    other = drawn(more="accept: [{finding: trapped-expansion, part: heater, reason: thus}]\n")
    assert altered(revision(after, other).accepted) == {"trapped-expansion of heater": ["reason: so -> thus"]}


def mirrored(found: Revision) -> Revision:
    """The same revision seen from the other end, but for the order."""

    def turned(changes: Changes) -> Changes:
        return Changes(tuple(sorted(changes.removed, key=str)), tuple(sorted(changes.added, key=str)))

    return Revision((), turned(found.parts), turned(found.pipes), Changes(), Changes())


@given(st.lists(st.sampled_from(["cv", "valve", "meter", "prv"]), unique=True), st.booleans())
def test_what_is_added_one_way_is_removed_the_other(between: list[str], turned: bool) -> None:  # noqa: FBT001  drawn
    before = drawn()
    after = drawn(f"street -> {' -> '.join([*between, 'tee'])} -> heater -> tap.hot\ntee -> tap.cold")
    pair = (after, before) if turned else (before, after)
    there, back = revision(*pair), revision(*pair[::-1])
    assert mirrored(there).parts == mirrored(mirrored(back)).parts
    assert mirrored(there).pipes == mirrored(mirrored(back)).pipes
    assert bool(there) is (between != ["cv"])


@pytest.mark.parametrize("path", SYSTEMS, ids=lambda path: path.stem)
def test_every_scenario_made_to_a_layout_is_a_revision_of_it(path: Path) -> None:
    """A tank that is removed and added elsewhere has only its pipes in the revision."""
    system = plumbnet.read(path)
    for scenario in system.scenarios.values():
        after = with_changes(system, scenario.change)
        found = revision(system, after)
        assert found
        assert {one.name for one in found.parts.removed} == {name for name in own(system) if name not in after.parts}
        assert {one.name for one in found.parts.added} == {name for name in own(after) if name not in system.parts}
        set_anew = {change.set.part for change in scenario.change if change.set is not None} & after.parts.keys()
        assert set_anew <= {one.name for one in found.parts.altered} | {one.name for one in found.parts.added}
        assert not found.head
        assert not found.scenarios
        assert not found.accepted


def own(system: System) -> list[str]:
    return [name for name in system.parts if "/" not in name]


@pytest.mark.parametrize("units", ["us", "metric"])
def test_units_of_the_file_alone_change_no_part(units: str) -> None:
    metric = layout(RUNS).replace("units: us", f"units: {units}")
    found = revision(drawn(), read_system(metric.encode(), file="f.yaml"))
    assert [one.field for one in found.head] == ([] if units == "us" else ["units"])
    assert not found.parts
