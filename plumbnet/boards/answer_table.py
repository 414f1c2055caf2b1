"""Held states to the copy of the board: one file with its table, each distinct answer once, opened by a click."""

import base64
import gzip
import json
from collections.abc import Callable, Mapping
from dataclasses import dataclass, field
from typing import TypeVar

from plumbnet.boards.page_data import board_data
from plumbnet.boards.page_files import whole_page
from plumbnet.boards.state_answer import HeaterShown, board_answer
from plumbnet.boards.state_picture import board_picture
from plumbnet.layout.edits import ChangeError, with_changes
from plumbnet.layout.yaml import LayoutError
from plumbnet.study.touching import HeldStates, Touch, Touchable, TouchStates, touches_of

PLAIN_BYTES = 200_000
"""A table up to this size stays plain JSON, which can be read and compared; a larger one is packed."""

Value = TypeVar("Value")


@dataclass
class _Interned:
    """Values, each once, by the number at which it stands."""

    values: list[object] = field(default_factory=list)
    _places: dict[str, int] = field(default_factory=dict)

    def place(self, value: object) -> int:
        """The number of a value, which is added where it is new."""
        key = json.dumps(value, separators=(",", ":"))
        if key not in self._places:
            self._places[key] = len(self.values)
            self.values.append(value)
        return self._places[key]


def board_copy(states: TouchStates, held: HeldStates, told: Callable[[], None] = lambda: None) -> str:
    """The page with all answers of the states held; `told` is called after each. The same bytes for the same file."""
    table = answer_table(states, held, told)
    data = json.dumps(table, separators=(",", ":"), ensure_ascii=False, allow_nan=False)
    if len(data.encode()) > PLAIN_BYTES:
        packed = base64.b64encode(gzip.compress(data.encode(), 9, mtime=0)).decode()
        data = json.dumps({"packed": packed})
    return whole_page(str(board_data(states)["title"]), data)


def answer_table(states: TouchStates, held: HeldStates, told: Callable[[], None] = lambda: None) -> dict[str, object]:
    """What the page of a copy asks in place of the engine.

    `index` has the number of each state's answer in the order of the states, -1 where it cannot be, or by digits where
    not all combinations are held: for each touchable 0, or one more than the place of its option among those held.
    """
    answers, heaters, lost = _Interned(), _Interned(), _Interned()
    parts = {name: _Interned() for name in ("sentence", "ladder", "way", "stops", "zone")}
    index, pictures = dict[str, int](), dict[str, object]()
    for touches in held:
        place = -1
        try:
            answer = board_answer(states, touches)
        except (ChangeError, LayoutError):
            pass
        else:
            own = [heaters.place(_packed(heater, parts)) for heater in answer["heaters"]]
            place = answers.place([lost.place(answer["cut_off"]), *own])
            if answer["picture"] not in pictures:
                pictures[answer["picture"]] = board_picture(states, touches_of(answer["picture"]))
        index[_digits(held, touches)] = place
        told()
    return {
        "board": _told(states, held),
        "held": [[at, list(options)] for at, options in held.options.items()],
        "at_once": held.at_once,
        "index": list(index.values()) if held.has_all else index,
        "answers": answers.values,
        "heaters": heaters.values,
        "cut_off": lost.values,
        "strings": {name: each.values for name, each in parts.items()},
        "pictures": pictures,
    }


def _digits(held: HeldStates, touches: tuple[Touch, ...]) -> str:
    chosen = {touch.at: touch.option for touch in touches}
    places = (options.index(chosen[at]) + 1 if chosen.get(at) is not None else 0 for at, options in _pairs(held))
    return ",".join(map(str, places))


def _pairs(held: HeldStates) -> list[tuple[int, tuple[int | None, ...]]]:
    return list(held.options.items())


def _packed(heater: HeaterShown, parts: Mapping[str, _Interned]) -> list[object]:
    """A heater's answer as a row, what is long in it by number."""
    return [
        heater["name"],
        heater["verdict"],
        int(heater["by_fault"]),
        heater["cold"],
        heater["limit"],
        heater["end"],
        heater["needle"],
        parts["sentence"].place(heater["sentence"]),
        parts["ladder"].place(heater["ladder"]),
        parts["way"].place(heater["way"]),
        parts["stops"].place(heater["stops"]),
        parts["zone"].place(heater["zone"]),
    ]


def _told(states: TouchStates, held: HeldStates) -> dict[str, object]:
    """What the page is told beforehand, with what the copy holds of it: no number, and of options those held."""
    data, rows = board_data(states), list[object]()
    for at, one in enumerate(states.touchables):
        row, kept = data["touchables"][at], held.options.get(at, ())
        options = [
            {**option, "symbol": _symbol(states, one, number)}
            if number in kept
            else {**option, "yaml": [], "held": False}
            for number, option in enumerate(row["options"])
        ]
        rows.append({**row, "options": options, "numbers": [{**number, "held": False} for number in row["numbers"]]})
    return {**data, "touchables": rows}


def _symbol(states: TouchStates, one: Touchable, number: int) -> str:
    """The symbol of a part once it is otherwise; empty of a pipe, whose part is drawn anew."""
    if one.pipe is not None:
        return ""
    return with_changes(states.drawn.system, one.options[number].changes).parts[one.name].drawn_as()
