"""Mistakes in a layout to the faults of its file, each at its place."""

from collections.abc import Iterable
from dataclasses import dataclass, replace

from pydantic import ValidationError

from plumbnet.layout.model import Declared, Mistake, Path, Stop, mistakes
from plumbnet.layout.yaml import MAX_FAULTS, MOST_SHOWN, Fault, Refused, YamlNode, end_of, nearest


@dataclass(slots=True)
class FaultCollector:
    """Collects the faults of a file, whose top is `root` and whose text is `lines`.

    To find the nearest name is dear where there are many; that is done only as often as faults are shown.
    """

    root: YamlNode
    faults: list[Fault]
    lines: tuple[str, ...]
    asked: int = 0

    def tell(self, mistake: Mistake) -> None:
        """A mistake, its path counted from the top."""
        self._add(mistake.fault(self.root, self._suggest))

    def tell_invalid(self, error: ValidationError, at: Path, *, what: str, model: type[Declared]) -> None:
        """Every mistake in the declaration of a model that stands at the end of a path."""
        for mistake in mistakes(error, what=what, model=model):
            self.tell(mistake.under(*at))

    def tell_of_stop(self, mistake: Mistake, stop: Stop) -> None:
        """A mistake at one stop of the run that stands at the end of its path."""
        fault = mistake.fault(self.root, self._suggest)
        value = self.root.at(*mistake.path).value
        line = self.lines[fault.line - 1]
        is_in_quotes = line[fault.column - 1 : fault.column] in {'"', "'"}
        column = fault.column + is_in_quotes + stop.offset
        word = value[stop.offset : stop.offset + stop.width] if isinstance(value, str) else None
        if column <= len(line) + 1 and line[column - 1 : column - 1 + stop.width] == word:
            fault = Fault(fault.line, column, fault.text, fault.hint, stop.width)
        self._add(fault)

    def _add(self, fault: Fault) -> None:
        """Keep a fault, one of nothing behind the last line at the end of the text.

        Raises Refused where there are too many: nobody reads them, and they fill the memory.
        """
        if fault.line > len(self.lines):
            line, column = end_of(self.lines)
            fault = replace(fault, line=line, column=column)
        self.faults.append(fault)
        if len(self.faults) >= MAX_FAULTS:
            stopped = Fault(fault.line, fault.column, "reading stops here", "there are too many faults before")
            raise Refused(stopped)

    def _suggest(self, word: str, known: Iterable[str]) -> str:
        self.asked += bool(word)
        return nearest(word, known) if word and self.asked <= MOST_SHOWN else ""
