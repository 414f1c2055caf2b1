"""A report to the board of one version of a layout: what stands behind the page, whoever asks for it."""

from collections.abc import Callable, Mapping
from functools import lru_cache

from plumbnet.analysis import Report
from plumbnet.analysis.water_walk import water_walk
from plumbnet.boards.page_data import board_data
from plumbnet.boards.state_answer import StateAnswer, board_answer
from plumbnet.boards.state_picture import board_picture
from plumbnet.layout.edits import ChangeError
from plumbnet.layout.yaml import LayoutError
from plumbnet.report.trace import trace_text
from plumbnet.study.touching import TouchStates, UnknownTouch, touches_of

_MOST_KEPT = 512
"""States whose answers are kept: some hundred kilobytes."""
Data = dict[str, object]


class OneBoard:
    """The answers for one version of a file, each worked out once."""

    def __init__(self, report: Report) -> None:
        self.states = TouchStates(report)
        self.data = board_data(self.states)
        self.answer = lru_cache(_MOST_KEPT)(self._answer)
        self.picture = lru_cache(_MOST_KEPT // 16)(self._picture)

    def _answer(self, code: str) -> StateAnswer:
        return board_answer(self.states, touches_of(code))

    def _picture(self, code: str) -> Data:
        return board_picture(self.states, touches_of(code))

    def walk(self, code: str, heater: str) -> str:
        """The way of a heater's water in a state, hop by hop, as `plumbnet trace` tells it."""
        report = self.states.report_in(touches_of(code))
        found = next((each for each in report.heaters if each.name == heater), None)
        if found is None:
            raise UnknownTouch("there is no such heater; choose one on the board")
        return trace_text(report.facts, water_walk(report, found))


def refused_or(answer: Callable[[], Mapping[str, object]]) -> Mapping[str, object]:
    """What the page is told: an answer, or under `refused` why there is none."""
    try:
        return answer()
    except (UnknownTouch, ChangeError) as error:
        return {"refused": str(error)}
    except LayoutError as error:
        return {"refused": "; ".join(fault.sentence for fault in error.faults)}
