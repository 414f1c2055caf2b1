"""One file to its outcome under the options of a command line: read, checked, written."""

import sys
from collections.abc import Iterable, Sequence
from dataclasses import dataclass, replace

import plumbnet
from plumbnet.cli.targets import ENDINGS, STANDARD_INPUT, STANDARD_INPUT_NAME, Target, file_size, targets
from plumbnet.layout.model import System
from plumbnet.layout.units import Units
from plumbnet.layout.yaml import LayoutError, bytes_from, bytes_of, decode, parse_yaml
from plumbnet.report.output import Fate, FileOutcome, Writer, unread
from plumbnet.rules import GivenRules
from plumbnet.study.long_runs import cores
from plumbnet.study.remedies import Checked, remedies_if_small

KEY = "plumbnet"
"""The key at the top of a file that makes it a layout."""
NONE_IS_A_LAYOUT = f"none of the files found that end in {' or '.join(ENDINGS)} is a layout: none has the key {KEY}"
SHARED_FROM_BYTES = 1_000_000
"""So much text of layouts takes about twice as long to check as other processes take to start."""
_SPELLINGS = tuple(KEY.encode(encoding) for encoding in ("utf-8", "utf-16-le", "utf-16-be"))


@dataclass(frozen=True, slots=True)
class CheckFile:
    """What is asked of every file: by which rules, in which units, written how. It can be sent to other processes."""

    writer: Writer
    rules: GivenRules | None = None
    units: Units | None = None

    def __call__(self, target: Target) -> FileOutcome:
        """The outcome of one file; whatever is wrong with it is an outcome too."""
        try:
            system = system_of(target, data_of(target))
            return FileOutcome(target.file, Fate.NO_LAYOUT) if system is None else self._answered(target, system)
        except (LayoutError, OSError) as error:
            return self._refused(target, error)

    def _answered(self, target: Target, system: System) -> FileOutcome:
        report = plumbnet.check(system, rules=self.rules, units=self.units)
        found = remedies_if_small(report) if self.writer.shows_remedies else None
        piece = self.writer.answered(Checked(report, found))
        verdicts = tuple(heater.verdict for heater in report.heaters)
        return FileOutcome(target.file, Fate.CHECKED, piece, verdicts, report.findings, len(report.accepted))

    def _refused(self, target: Target, error: LayoutError | OSError) -> FileOutcome:
        told = unread(target.file, error)
        return FileOutcome(target.file, Fate.NOT_UNDERSTOOD, self.writer.refused(told), words=told.words)


def read_targets(files: Sequence[str]) -> tuple[Target, ...]:
    """The files that arguments stand for, standard input already read."""
    found = targets(files)
    if all(target.file != STANDARD_INPUT for target in found):
        return found
    given = bytes_from(sys.stdin.buffer)
    return tuple(replace(target, given=given) if target.file == STANDARD_INPUT else target for target in found)


def jobs_for(found: Iterable[Target]) -> int:
    """As many processes as cores, or this one alone where others would take longer to start than to help."""
    return cores() if sum(map(file_size, found)) >= SHARED_FROM_BYTES else 1


def data_of(target: Target) -> bytes:
    """The bytes of a file. Raises OSError."""
    if target.trouble:
        raise OSError(target.trouble)
    return bytes_of(target.file) if target.given is None else target.given


def system_of(target: Target, data: bytes) -> System | None:
    """The system that the bytes of a file describe; None where it was found by searching and is no layout.

    Raises LayoutError.
    """
    if not target.is_named and not any(spelling in data for spelling in _SPELLINGS):
        return None
    try:
        return plumbnet.read_bytes(data, file=STANDARD_INPUT_NAME if target.file == STANDARD_INPUT else target.file)
    except LayoutError:
        if not target.is_named and _is_other(data):
            return None
        raise


def _is_other(data: bytes) -> bool:
    """Whether it is a YAML file that can be read and has no such key at its top."""
    text = decode(data, [])
    root = None if text is None else parse_yaml(text, [])
    return root is not None and not (isinstance(root.value, dict) and KEY in root.value)
