"""Changes written into a file: the layout is the one that is meant, and what the author wrote stays."""

import json
from collections.abc import Iterator, Mapping
from difflib import ndiff
from pathlib import Path

import pytest
from changing import change, every_change
from hypothesis import given, settings
from hypothesis import strategies as st
from oracles.random_layouts import HOLDING, Layout, layouts

import plumbnet
from plumbnet.layout.edits.apply import with_changes
from plumbnet.layout.edits.change_text import change_of
from plumbnet.layout.edits.edit_draft import ChangeError
from plumbnet.layout.file.loader import read_system
from plumbnet.layout.model.change import Change
from plumbnet.layout.model.system import System
from plumbnet.layout.rewriting.rewritten_layout import NotWritten, rewritten
from plumbnet.layout.rewriting.same_layout import first_difference

SYSTEMS = sorted((Path(__file__).parents[3] / "systems").glob("*.yaml"))
HOUSE = """\
# A house, drawn by hand.
plumbnet: 1
title:   "The house"   # as on the cover

parts:
  street:  {kind: main, pressure: 62 psi}   # measured in May
  meter:   {kind: meter,   check: true}
  stop:    valve
  # the heater stands in the cellar
  split: tee
  heater:
    kind: storage_heater
    volume: 50 gal     # nameplate
    setpoint: '140 degF'
    relief: {pressure: 150 psi,
             temperature: 210 degF}   # combined
  "sink": fixture

runs:
  - street -> meter ->  stop -> split -> heater -> sink.hot   # ground floor
  # the cold side
  - path: "split -> sink.cold"
    pipe: copper-L 3/4 in
    length: 30 ft    # paced
"""
GROUP = """\
plumbnet: 1
units: metric
parts:
  street: {kind: main, pressure: 400 kPa}
  group: {kind: safety_group, set: 700 kPa}
  cylinder: {kind: storage_heater, volume: 150 L, setpoint: 60 degC}
  basin: fixture
runs:
  - street -> group -> cylinder -> basin.hot
"""


def house(text: str = HOUSE) -> System:
    return read_system(text.encode(), file="house.yaml")


def edited(*changes: Mapping[str, object], text: str = HOUSE) -> list[str]:
    """The lines that changes take from a text (-) and give to it (+)."""
    after = rewritten(house(text), [change(one) for one in changes])
    return [line for line in ndiff(text.splitlines(), after.splitlines()) if line[0] in "+-"]


@pytest.mark.parametrize(
    ("made", "lines"),
    [
        ({"close": "stop"}, ["-   stop:    valve", "+   stop:    {kind: valve, state: shut}"]),
        ({"draw": "sink"}, ['-   "sink": fixture', '+   "sink": {kind: fixture, drawing: true}']),
        (
            {"set": {"part": "heater", "setpoint": "130 degF"}},
            ["-     setpoint: '140 degF'", "+     setpoint: '130 degF'"],
        ),
        ({"set": {"part": "heater", "input": "40000 Btu/h"}}, ["+     input: 40000 Btu/h"]),
        (
            {"set": {"part": "meter", "check": False}},
            ["-   meter:   {kind: meter,   check: true}", "+   meter:   {kind: meter,   check: false}"],
        ),
        (
            {"set": {"part": "meter", "check": None}},
            ["-   meter:   {kind: meter,   check: true}", "+   meter:   {kind: meter}"],
        ),
        (
            {
                "add": {
                    "part": "tank",
                    "kind": "expansion_tank",
                    "volume": "5 gal",
                    "precharge": 62,
                    "run": "split -> tank",
                }
            },
            ["+   tank: {kind: expansion_tank, volume: 5 gal, precharge: 62}", "+   - split -> tank"],
        ),
        (
            {"remove": "meter"},
            [
                "-   meter:   {kind: meter,   check: true}",
                "-   - street -> meter ->  stop -> split -> heater -> sink.hot   # ground floor",
                "+   - street -> stop -> split -> heater -> sink.hot   # ground floor",
            ],
        ),
        (
            {"insert": {"part": "cv", "kind": "check_valve", "between": ["stop", "split"]}},
            [
                "+   cv: check_valve",
                "-   - street -> meter ->  stop -> split -> heater -> sink.hot   # ground floor",
                "+   - street -> meter ->  stop -> cv -> split -> heater -> sink.hot   # ground floor",
            ],
        ),
        (
            {"insert": {"part": "cv", "kind": "check_valve", "between": ["sink.hot", "heater"]}},
            [
                "+   cv: check_valve",
                "-   - street -> meter ->  stop -> split -> heater -> sink.hot   # ground floor",
                "+   - street -> meter ->  stop -> split -> heater -> cv.out -> sink.hot   # ground floor",
            ],
        ),
        (
            {"insert": {"part": "cv", "kind": "check_valve", "between": ["split", "sink"]}},
            ["+   cv: check_valve", '-   - path: "split -> sink.cold"', '+   - path: "split -> cv -> sink.cold"'],
        ),
    ],
    ids=lambda value: next(iter(value)) if isinstance(value, dict) else None,
)
def test_only_the_lines_of_a_change_differ(made: dict[str, object], lines: list[str]) -> None:
    assert edited(made) == lines


def test_run_is_cut_where_its_pipe_is_no_longer_of_one_length() -> None:
    text = HOUSE.replace("split -> sink.cold", "split -> low -> sink.cold").replace(
        "  split: tee", "  split: tee\n  low: tee"
    )
    made = {"insert": {"part": "cv", "kind": "check_valve", "between": ["low", "sink.cold"]}}
    assert edited(made, text=text) == [
        "+   cv: check_valve",
        '-   - path: "split -> low -> sink.cold"',
        '+   - path: "split -> low"',
        "-     length: 30 ft    # paced",
        "+     length: 15 ft    # paced",
        "+   - {path: low -> cv -> sink.cold, pipe: copper-L 3/4 in, length: 15 ft}",
    ]


def test_part_taken_out_between_two_runs_makes_one_pipe_of_them() -> None:
    text = HOUSE.replace("street -> meter ->  stop ->", "street -> meter\n  - meter -> stop ->")
    assert edited({"remove": "meter"}, text=text)[1:] == [
        "-   - street -> meter",
        "+   - street -> stop",
        "-   - meter -> stop -> split -> heater -> sink.hot   # ground floor",
        "+   - stop -> split -> heater -> sink.hot   # ground floor",
    ]


def test_change_to_a_part_inside_a_group_is_told() -> None:
    with pytest.raises(NotWritten) as caught:
        rewritten(house(GROUP), [Change(close="group/valve")])
    assert str(caught.value) == (
        "the change close group/valve cannot be written into house.yaml: group/valve is written inside group; "
        "write it by hand"
    )


def test_group_as_a_whole_is_taken_out() -> None:
    assert edited({"remove": "group"}, text=GROUP) == [
        "-   group: {kind: safety_group, set: 700 kPa}",
        "-   - street -> group -> cylinder -> basin.hot",
        "+   - street -> cylinder -> basin.hot",
    ]


def test_check_is_set_before_a_group() -> None:
    made = {"insert": {"part": "cv", "kind": "check_valve", "between": ["street", "group"]}}
    assert edited(made, text=GROUP)[-1] == "+   - street -> cv -> group -> cylinder -> basin.hot"


def test_what_refers_to_an_anchor_is_not_changed_for_others() -> None:
    text = GROUP.replace("basin: fixture", "valve: &shut {kind: valve}\n  other: *shut\n  basin: fixture").replace(
        "street -> group", "street -> valve -> other -> group"
    )
    with pytest.raises(NotWritten) as caught:
        rewritten(house(text), [Change(close="other")])
    assert str(caught.value) == (
        "the change close other cannot be written into house.yaml: other refers to an anchor, so that a change to it "
        "would change something else too; write it by hand"
    )
    with pytest.raises(NotWritten) as caught:
        rewritten(house(text), [Change(close="valve")])
    assert str(caught.value) == (
        "the change close valve cannot be written into house.yaml: what would stand there is not what is meant: "
        "other differs; write it by hand"
    )


def test_part_that_nothing_would_mention_any_more_is_told() -> None:
    text = GROUP.replace("basin: fixture", "basin: fixture\n  spare: tee\n  end: vent").replace(
        "basin.hot\n", "basin.hot\n  - spare -> end\n"
    )
    with pytest.raises(NotWritten) as caught:
        rewritten(house(text), [Change(remove="end")])
    assert str(caught.value) == (
        "the change remove end cannot be written into house.yaml: the file would not be right then: no run mentions "
        "spare; join it in a run, or take it out; write it by hand"
    )


def test_change_that_cannot_be_made_at_all_is_refused_as_ever() -> None:
    with pytest.raises(ChangeError, match='no part is called "spot"'):
        rewritten(house(), [Change(close="spot")])


def test_breaks_of_lines_stay_as_they_are() -> None:
    text = HOUSE.replace("\n", "\r\n")
    made = rewritten(house(text), [change({"add": {"part": "v", "kind": "vent", "run": "split -> v"}})])
    assert made.count("\r\n") == made.count("\n") == text.count("\n") + 2


def test_file_without_a_last_break_gets_its_run() -> None:
    text = GROUP.rstrip("\n")
    made = rewritten(house(text), [change({"add": {"part": "v", "kind": "vent", "run": "basin.cold -> v"}})])
    assert made.endswith("basin.hot\n  - basin.cold -> v")


@pytest.mark.parametrize("path", [each for each in SYSTEMS if each.stat().st_size < 2500], ids=lambda path: path.stem)
def test_every_change_to_a_showcase_is_written_or_stands_inside_another_part(path: Path) -> None:
    before = plumbnet.read(path)
    refused: list[str] = []
    for one in every_change(before)[::5]:
        try:
            text = rewritten(before, [one])
        except NotWritten as error:
            refused.append(str(error))
            continue
        again = read_system(text.encode(), file=path.name)
        assert not first_difference(again, with_changes(before, [one]))
    why = ("is written inside", "comes with a part", "no run mentions")
    assert not [error for error in refused if not any(known in error for known in why)]


@st.composite
def authored(draw: st.DrawFn) -> str:
    """A random layout as some author may have written it: in blocks or braces, in quotes, spaced and commented."""
    layout = draw(layouts(most=6))
    return "\n".join(_authored(layout, draw)) + draw(st.sampled_from(["\n", "", "\n# the end\n"]))


def _authored(layout: Layout, draw: st.DrawFn) -> Iterator[str]:
    number = iter(range(10_000))

    def remark() -> str:
        return draw(st.sampled_from(["", f"   # remark {next(number)}"]))

    yield f"plumbnet:  1{remark()}"
    yield "units: metric"
    yield f"parts:{remark()}"
    for name, values in layout.parts.items():
        if draw(st.booleans()):
            yield f"  # remark {next(number)}"
        if draw(st.booleans()) and len(values) > 1:
            yield f"  {name}:{remark()}"
            yield from (f"      {field}:  {json.dumps(value)}{remark()}" for field, value in values.items())
        else:
            yield f"  {name}:   {json.dumps(values)}{remark()}"
    yield "runs:"
    for pipe in layout.pipes:
        words = draw(st.sampled_from([pipe, pipe.replace(" ", "  "), f'"{pipe}"', f"'{pipe}'"]))
        if draw(st.booleans()):
            yield f"- path: {words}{remark()}"
            yield from (f"  {field}: {value}" for field, value in HOLDING.items())
        else:
            yield f"- {words}{remark()}"


@settings(max_examples=30, deadline=None)
@given(authored(), st.data())
def test_changes_written_into_random_files_are_the_layout_that_is_meant(text: str, data: st.DataObject) -> None:
    before = house(text)
    made: list[Change] = []
    for _ in range(data.draw(st.integers(1, 4))):
        known = [one for one in every_change(with_changes(before, made)) if not _is_new_again(one, made)]
        made.append(data.draw(st.sampled_from(known)))
    try:
        after = rewritten(before, made)
    except NotWritten:
        return
    again = house(after)
    assert not first_difference(again, with_changes(before, made))
    ours = [line.strip() for line in text.splitlines() if line.strip().startswith("#")]
    theirs = [line.strip() for line in after.splitlines() if line.strip().startswith("#")]
    assert theirs == ours
    assert not [line for line in after.splitlines() if line not in text.splitlines() and _is_untouched(line, text)]


def _is_new_again(one: Change, made: list[Change]) -> bool:
    return any(
        placed.part == new.part
        for each in made
        if (placed := each.add or each.insert) and (new := one.add or one.insert)
    )


def _is_untouched(line: str, text: str) -> bool:
    """Whether a new line says what an old one says, in other spacing."""
    return " ".join(line.split()) in {" ".join(each.split()) for each in text.splitlines()}


def test_part_that_comes_and_goes_leaves_the_spacing_of_its_author() -> None:
    text = "plumbnet: 1\nparts: {street: {kind: main, pressure: 60 psi}, stop: valve, tap: fixture}\n"
    before = house(f"{text}runs: [street  ->  stop->tap.cold]\n")
    filter_between = change_of("insert", {"part": "strainer", "kind": "filter", "between": ["street", "stop"]})
    assert "street  ->  strainer  ->  stop->tap.cold" in rewritten(before, [filter_between])
    assert rewritten(before, [filter_between, change_of("remove", "strainer")]) == before.record.text
