"""What is marked in the two pictures of a comparison."""

from conftest import layout

import plumbnet
from plumbnet.analysis.report import Report
from plumbnet.drawing.items.schematic import Letters
from plumbnet.report.schematic.revision_letters import LETTERS, letters_after, letters_before
from plumbnet.study.compare.whole_comparison import comparison

RUNS = "street -> cv -> tee1 -> tee2 -> heater -> tap.hot\ntee2 -> tap.cold"
RELIEF = "relief: {pressure: 150 psi}"


def checked(runs: str = RUNS, **parts: str) -> Report:
    heater = "heater2" if "heater2" in runs else "heater"
    text = layout(runs, **{heater: RELIEF, **parts})
    return plumbnet.check(plumbnet.read_bytes(text.encode(), file="f.yaml"))


def marked(before: Report, after: Report) -> tuple[Letters, Letters]:
    compared = comparison(before, after)
    return letters_before(compared).letters, letters_after(compared).letters


def test_part_that_is_new_or_gone_is_marked_where_it_is() -> None:
    with_tank = checked(f"{RUNS}\ntee1 -> tank")
    assert marked(checked(), with_tank) == (Letters(), Letters({"tank": "A"}))
    assert marked(with_tank, checked()) == (Letters({"tank": "R"}), Letters())


def test_pipe_that_is_parted_for_a_new_part_is_marked_as_gone() -> None:
    one, other = checked(), checked(RUNS.replace("cv -> tee1", "cv -> valve -> tee1"))
    before, after = marked(one, other)
    assert [(one.system.pipes[place].name, letter) for place, letter in before.links.items()] == [("cv -> tee1", "R")]
    assert before.items == {}
    assert after == Letters({"valve": "A"})


def test_part_that_moved_is_marked_by_its_pipe() -> None:
    one, other = checked(f"{RUNS}\ntee1 -> tank"), checked(f"{RUNS}\ntee2 -> tank")
    before, after = marked(one, other)
    assert (before.items, after.items) == ({}, {})
    ((was, letter),) = before.links.items()
    ((now, other_letter),) = after.links.items()
    assert (one.system.pipes[was].name, letter) == ("tee1 -> tank", "R")
    assert (other.system.pipes[now].name, other_letter) == ("tee2 -> tank", "A")


def test_changed_part_is_marked_in_both() -> None:
    before, after = marked(checked(), checked(heater=f"{RELIEF}, volume: 60 gal"))
    assert before == after == Letters({"heater": "C"})


def test_relief_valve_that_alone_was_changed_is_marked_itself() -> None:
    before, after = marked(checked(), checked(heater="relief: {pressure: 125 psi}"))
    assert before == after == Letters({"heater/relief": "C"})
    both = marked(checked(), checked(heater="relief: {pressure: 125 psi}, volume: 60 gal"))[1]
    assert both == Letters({"heater": "C", "heater/relief": "C"})


def test_relief_valve_that_is_new_marks_its_heater() -> None:
    before, after = marked(checked(heater="relief: null"), checked())
    assert before == Letters({"heater": "C"})
    assert after == Letters({"heater/relief": "C"})


def test_part_of_another_name_is_marked_under_each_and_says_the_other() -> None:
    compared = comparison(checked(), checked(RUNS.replace("heater", "heater2"), heater2=f"{RELIEF}, volume: 60 gal"))
    before, after = letters_before(compared), letters_after(compared)
    assert (before.letters, after.letters) == (Letters({"heater": "NC"}), Letters({"heater2": "NC"}))
    assert (before.words, after.words) == ({"heater": ("now heater2",)}, {"heater2": ("was heater",)})
    assert (before.side, after.side) == (": before", ": after")


def test_pipe_with_another_length_is_marked_in_both() -> None:
    runs = [
        f"plumbnet: 1\nparts: {{street: {{kind: main, pressure: 60}}, tap: fixture}}\n"
        f"runs: [{{path: street -> tap.cold, length: {feet} ft}}]\n"
        for feet in (10, 12)
    ]
    before, after = (plumbnet.check(plumbnet.read_bytes(text.encode(), file="f.yaml")) for text in runs)
    assert marked(before, after) == (Letters({}, {0: "C"}), Letters({}, {0: "C"}))


def test_gone_part_whose_name_another_one_has_is_marked_under_its_own() -> None:
    """street -> valve1 -> tee -> valve2 -> heater: valve2 goes, and valve1 is called valve2."""
    before = checked("street -> valve1 -> tee -> valve2 -> heater -> tap.hot\ntee -> tap.cold")
    after = checked("street -> valve2 -> tee -> heater -> tap.hot\ntee -> tap.cold")
    was, now = marked(before, after)
    assert was == Letters({"valve1": "N", "valve2": "R"})
    assert now.items == {"valve2": "N"}


def test_every_letter_has_its_words() -> None:
    assert list(LETTERS) == ["A", "R", "C", "N"]
    assert all(LETTERS.values())
