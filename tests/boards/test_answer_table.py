"""The copy of the board and its table."""

import json
import re
from typing import Any

from touched import HOUSE, states_of

from plumbnet.boards import answer_table as module
from plumbnet.boards.answer_table import answer_table, board_copy
from plumbnet.boards.state_answer import board_answer
from plumbnet.study.touching.state_choice import HeldStates, held_states


def tabled(*names: str, at_once: int | None = None) -> tuple[HeldStates, dict[str, Any]]:
    states = states_of(HOUSE)
    held = held_states(states, names, at_once)
    return held, json.loads(json.dumps(answer_table(states, held)))


def unpacked(table: dict[str, Any], place: int) -> list[dict[str, Any]]:
    """The answers for heaters at a place of the table."""
    rows = [table["heaters"][at] for at in table["answers"][place][1:]]
    return [{name: _value(table, name, value) for name, value in zip(FIELDS, row, strict=True)} for row in rows]


FIELDS = (
    *("name", "verdict", "by_fault", "cold", "limit", "end", "needle"),
    *("sentence", "ladder", "way", "stops", "zone"),
)


def _value(table: dict[str, Any], name: str, value: Any) -> Any:  # noqa: ANN401  what JSON has
    if name in table["strings"]:
        return table["strings"][name][value]
    return bool(value) if name == "by_fault" else value


def test_every_answer_of_the_table_is_that_of_the_engine() -> None:
    states = states_of(HOUSE)
    held, table = tabled("tank-stop", "meter", "split to heater")
    assert len(table["index"]) == held.count == 3 * 3 * 6
    for touches, place in zip(held, table["index"], strict=True):
        wanted = json.loads(json.dumps(board_answer(states, touches)))
        assert unpacked(table, place) == wanted["heaters"]
        assert table["cut_off"][table["answers"][place][0]] == wanted["cut_off"]
        assert wanted["picture"] in table["pictures"]


def test_distinct_answers_are_held_once() -> None:
    _, table = tabled("tank-stop", "meter", "tank")
    rows = [json.dumps(row) for row in table["heaters"]]
    assert len(set(rows)) == len(rows) < len(table["index"])


def test_state_that_is_held_a_few_at_a_time_is_found_by_its_digits() -> None:
    held, table = tabled("tank-stop", "meter", "tank", at_once=1)
    assert len(table["index"]) == held.count
    assert "0,0,0" in table["index"]
    assert "1,1,0" not in table["index"]


def test_symbols_of_what_is_held_are_told_and_what_is_not_held_cannot_be_chosen() -> None:
    _, table = tabled("stop")
    by_name = {one["name"]: one for one in table["board"]["touchables"]}
    assert [option["symbol"] for option in by_name["stop"]["options"]] == ["shut_valve", "valve"]
    assert all(option["held"] is False for option in by_name["meter"]["options"])
    assert all(number["held"] is False for one in by_name.values() for number in one["numbers"])


def test_copy_is_one_file_with_its_table_plain_and_the_same_each_time() -> None:
    states = states_of(HOUSE)
    held = held_states(states, ["stop", "meter"])
    page = board_copy(states, held)
    assert page == board_copy(states_of(HOUSE), held)
    data = re.search(r'<script id="data" type="application/json">(.*?)</script>', page, re.DOTALL)
    assert data is not None
    assert json.loads(data[1])["at_once"] == 2
    assert len(page) < 120_000


def test_large_table_is_packed_the_same_each_time(monkeypatch: Any) -> None:  # noqa: ANN401  pytest's own
    monkeypatch.setattr(module, "PLAIN_BYTES", 1_000)
    states = states_of(HOUSE)
    held = held_states(states, ["stop", "meter"])
    page = board_copy(states, held)
    assert '{"packed": "' in page
    assert page == board_copy(states, held)


def test_each_state_that_is_done_is_told() -> None:
    states = states_of(HOUSE)
    held = held_states(states, ["stop", "meter"])
    told: list[int] = []
    answer_table(states, held, lambda: told.append(1))
    assert len(told) == held.count
