"""Mistakes at their places in a file."""

import pytest

from plumbnet.layout.file.fault_collector import FaultCollector
from plumbnet.layout.model.runs import Stop
from plumbnet.layout.model.validation_messages import Mistake
from plumbnet.layout.yaml.fault import MOST_SHOWN, Fault, split_lines
from plumbnet.layout.yaml.source import parse_yaml

LAYOUT = 'parts: {heater: 1}\nruns:\n- a -> heatr\n- "a -> heatr"\n- >-\n  a ->\n  heatr\n'


def telling(text: str = LAYOUT) -> FaultCollector:
    faults: list[Fault] = []
    root = parse_yaml(text, faults)
    assert root is not None
    return FaultCollector(root, faults, split_lines(text))


def test_mistake_stands_at_its_value_or_its_key() -> None:
    told = telling()
    told.tell(Mistake(("parts", "heater"), "wrong"))
    told.tell(Mistake(("parts", "heater"), "wrong", at_key=True))
    assert [(fault.line, fault.column, fault.width) for fault in told.faults] == [(1, 17, 1), (1, 9, 6)]


@pytest.mark.parametrize(("index", "place"), [(0, (3, 8, 5)), (1, (4, 9, 5)), (2, (5, 3, 1))])
def test_stop_is_marked_in_plain_and_quoted_text_and_folded_text_at_its_start(
    index: int, place: tuple[int, int, int]
) -> None:
    told = telling()
    told.tell_of_stop(Mistake(("runs", index), "wrong"), Stop("heatr", None, 5, 5))
    (fault,) = told.faults
    assert (fault.line, fault.column, fault.width) == place


def test_stop_missing_in_a_run_of_two_lines_is_marked_in_the_file_and_not_behind_its_line() -> None:
    told = telling("runs:\n- >\n ->\n")
    told.tell_of_stop(Mistake(("runs", 0), "a part is missing here"), Stop("", None, 3, 1))
    assert [(fault.line, fault.column) for fault in told.faults] == [(2, 3)]


def test_only_as_many_names_are_suggested_as_faults_are_shown() -> None:
    told = telling()
    for _ in range(MOST_SHOWN + 5):
        told.tell(Mistake(("runs", 0), "wrong", "look again", meant=("heatr", ["heater"])))
    hints = [fault.hint for fault in told.faults]
    assert hints == ['did you mean "heater"?'] * MOST_SHOWN + ["look again"] * 5


def test_mistakes_without_a_word_cost_no_suggestion() -> None:
    told = telling()
    for _ in range(MOST_SHOWN + 5):
        told.tell(Mistake(("runs", 0), "wrong", "look again"))
    told.tell(Mistake(("runs", 0), "wrong", meant=("heatr", ["heater"])))
    assert told.faults[-1].hint == 'did you mean "heater"?'
