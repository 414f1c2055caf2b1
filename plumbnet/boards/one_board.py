"""A report to the board of one version of a layout: what stands behind the page, whoever asks for it."""

from collections.abc import Callable, Mapping
from functools import lru_cache

from plumbnet.analysis import Report
from plumbnet.analysis.warmup import NoWarmUp
from plumbnet.analysis.water_walk import water_walk
from plumbnet.boards.heat_up import HeatUpTold, heat_up
from plumbnet.boards.page_data import board_data
from plumbnet.boards.page_files import served_page
from plumbnet.boards.state_answer import StateAnswer, board_answer
from plumbnet.boards.state_picture import board_picture
from plumbnet.layout.edits import ChangeError
from plumbnet.layout.yaml import LayoutError
from plumbnet.report.trace import trace_text
from plumbnet.study.touching import TouchStates, UnknownTouch, touches_of

_MOST_KEPT = 512
"""States whose answers are kept: some hundred kilobytes."""
Data = dict[str, object]
Told = Mapping[str, object]
"""What a page is told, or what it tells."""
Question = Callable[[Told], Told]
"""Takes what a page says when it asks."""


class OneBoard:
    """The answers for one version of a file, each worked out once."""

    def __init__(self, report: Report) -> None:
        self.states = TouchStates(report)
        self.data = board_data(self.states)
        self.answer = lru_cache(_MOST_KEPT)(self._answer)
        self.picture = lru_cache(_MOST_KEPT // 16)(self._picture)
        self.questions: Mapping[str, Question] = {
            "board": lambda _asked: self.data,
            "answer": lambda asked: self.answer(_said(asked, "state")),
            "picture": lambda asked: self.picture(_said(asked, "state")),
            "walk": lambda asked: {"walk": self.walk(_said(asked, "state"), _said(asked, "heater"))},
            "heat-up": lambda asked: self.heat_up(_said(asked, "state"), _said(asked, "heater")),
        }
        self.takes: Mapping[str, Question] = {}
        self.files: frozenset[str] = frozenset()

    @property
    def html(self) -> str:
        """The page that asks."""
        return served_page(str(self.data["title"]))

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

    def heat_up(self, code: str, heater: str) -> HeatUpTold:
        """The heat-up of a heater in a state. Raises NoWarmUp."""
        return heat_up(self.states.report_in(touches_of(code)), heater)


def _said(asked: Told, name: str) -> str:
    return str(asked.get(name, ""))


def refused_or(answer: Callable[[], Told]) -> Told:
    """What the page is told: an answer, or under `refused` why there is none."""
    try:
        return answer()
    except (UnknownTouch, ChangeError, NoWarmUp) as error:
        return {"refused": str(error)}
    except LayoutError as error:
        return {"refused": "; ".join(fault.sentence for fault in error.faults)}
