import json

from families import FAMILIES

import plumbnet
from plumbnet.report.formats.json1 import report_fields
from plumbnet.report.formats.part_lists import ABBREVIATED, MOST_NAMES, PartLists

MANY = [f"heater{number:03}" for number in range(MOST_NAMES + 8)]


def test_short_lists_stay_as_they_are_and_nothing_is_said_of_them() -> None:
    lists = PartLists()
    fields = {"name": "a", "shares_with": MANY[:MOST_NAMES], "loops": [["pump", "a"]], "need": {"serves": ["a"]}}
    assert lists.in_short(fields) == fields
    assert lists.fields == {}


def test_long_list_holds_its_first_and_says_where_the_whole_is() -> None:
    lists = PartLists()
    first, second = (
        lists.in_short({"name": own, "shares_with": [name for name in MANY if name != own], "need": {"serves": MANY}})
        for own in MANY[:2]
    )
    assert first["shares_with"] == MANY[1 : MOST_NAMES + 1]
    assert first["need"] == {"serves": MANY[:MOST_NAMES], "serves_list": 0}
    assert (first["shares_with_list"], second["shares_with_list"]) == (0, 0)
    assert lists.fields == {"lists_abbreviated": ABBREVIATED, "part_lists": [MANY]}


def test_long_lists_in_a_list_say_each_where_the_whole_is() -> None:
    lists = PartLists()
    told = lists.in_short({"loops": [["pump"], MANY], "parts": tuple(MANY)})
    assert (told["loops"], told["loops_lists"]) == ([["pump"], MANY[:MOST_NAMES]], [None, 0])
    assert told["parts_list"] == 0


def test_rest_of_ways_and_places_is_counted() -> None:
    lists = PartLists()
    places = [{"part": name, "way": MANY} for name in MANY]
    told = lists.in_short({"broken": places})
    assert told["broken"] == [{"part": name, "way": MANY[:MOST_NAMES], "way_more": 8} for name in MANY[:MOST_NAMES]]
    assert told["broken_more"] == 8
    assert lists.fields == {"lists_abbreviated": ABBREVIATED, "part_lists": []}


def test_document_grows_no_more_than_the_layout() -> None:
    small, large = (
        len(
            json.dumps(
                report_fields(plumbnet.check(plumbnet.read_bytes(FAMILIES["heaters-in-one-zone"](parts).encode())))
            )
        )
        for parts in (160, 320)
    )
    assert large < 2.3 * small
