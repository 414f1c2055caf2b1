"""Files to be surveyed, handed out some at a time with their content, and the entry that each of them comes to."""

import hashlib
from collections.abc import Callable, Iterable, Iterator
from dataclasses import dataclass, replace
from typing import Final

import plumbnet
from plumbnet.analysis import Report
from plumbnet.cli.check_file import data_of, layout_or_other
from plumbnet.cli.file_search import OtherFile, Target
from plumbnet.layout.edits import ChangeError
from plumbnet.layout.yaml import Fault, LayoutError, reason_of
from plumbnet.report.output import Noted, program_failed, program_version
from plumbnet.report.survey import Book, SurveyEntry, SurveyQuery, WhatIfFate, answered, noted_entry, refused_entry
from plumbnet.study.whatif import untouched, whatif

KEPT: Final = "with --into what was done is kept, and the same command goes on from there"
"""What becomes of a survey that ends early."""
MOST_FILES: Final = 16
"""Files that are handed out together: a fraction of a second's work, and lost at most when the program is killed."""
MOST_BYTES: Final = 2**20
"""So much text is not handed out with more."""


class OtherVersion(Exception):
    """A process that was asked runs another version of the program; the text says which."""


@dataclass(frozen=True, slots=True)
class SurveyJob:
    """A question, asked of some files at a time. It can be sent to other processes and machines."""

    asked: SurveyQuery
    version: str

    def __call__(self, handed: tuple[Target, ...]) -> tuple[SurveyEntry, ...]:
        """The entry of each file, whose content comes with it. Raises OtherVersion."""
        if program_version() != self.version:
            raise OtherVersion(program_version())
        return tuple(map(self._entry, handed))

    def _entry(self, target: Target) -> SurveyEntry:
        sha256 = None if target.given is None else hashlib.sha256(target.given).hexdigest()
        try:
            found = layout_or_other(target)
            if isinstance(found, OtherFile):
                return noted_entry(target.file, sha256, Noted(target.file, found.sort, (found.fault,)))
            asked = self.asked
            report = plumbnet.check(found, rules=asked.rules, units=asked.units, acceptances=asked.own)
            return self._answered(target.file, report)
        except LayoutError as error:
            return refused_entry(target.file, sha256, error.faults)
        except OSError as error:
            return refused_entry(target.file, None, [Fault(0, 0, reason_of(error))])
        except Exception as error:  # noqa: BLE001  one file in ten thousand must not end the survey; it is told
            return refused_entry(target.file, None, [program_failed(error)])

    def _answered(self, path: str, report: Report) -> SurveyEntry:
        if not self.asked.supposed:
            return answered(path, report, None, None)
        try:
            scenario, changes = self.asked.supposed.touches(report.system)
            if scenario is None and not changes:
                return answered(path, report, untouched(report), WhatIfFate.NOT_TOUCHED)
            return answered(path, report, whatif(report, changes, scenario=scenario), WhatIfFate.MADE)
        except ChangeError as error:
            faults = [Fault(0, 0, str(mistake)) for mistake in error.mistakes]
        except LayoutError as error:
            faults = list(error.faults)
        return answered(path, report, None, WhatIfFate.REFUSED, faults)


def handed_out(found: Iterable[Target], book: Book, passed: Callable[[], None]) -> Iterator[tuple[Target, ...]]:
    """Files of which the book holds no answer, each once, read as they are needed; `passed` is called for others."""
    hand, size = list[Target](), 0
    for target in found:
        sent = _read(target)
        if book.is_met_again(target.file) or _is_held(book, sent):
            passed()
            continue
        hand.append(sent)
        size += len(sent.given or b"")
        if len(hand) >= MOST_FILES or size >= MOST_BYTES:
            yield tuple(hand)
            hand, size = [], 0
    if hand:
        yield tuple(hand)


def _read(target: Target) -> Target:
    """A file with its content, or with the trouble of reading it."""
    if target.note:
        return target
    try:
        return replace(target, given=data_of(target))
    except OSError as error:
        return replace(target, trouble=reason_of(error))


def _is_held(book: Book, sent: Target) -> bool:
    return sent.given is not None and book.holds(sent.file, hashlib.sha256(sent.given).hexdigest())
