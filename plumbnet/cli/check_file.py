"""One file to its outcome under the options of a command line: read, checked, written."""

import sys
from collections.abc import Iterable, Sequence
from dataclasses import dataclass, replace

import plumbnet
from plumbnet.cli.acceptance_options import own_used
from plumbnet.cli.file_search import (
    ENDINGS,
    KEY,
    SHELF,
    STANDARD_INPUT,
    STANDARD_INPUT_NAME,
    OtherFile,
    Target,
    file_size,
    other_file,
    targets,
)
from plumbnet.layout.model import System
from plumbnet.layout.units import Units
from plumbnet.layout.yaml import Fault, LayoutError, bytes_from, bytes_of
from plumbnet.report.output import NOT_A_LAYOUT, Fate, FileOutcome, FilePiece, Noted, Writer, joined_piece, unread
from plumbnet.rules import GivenRules, OwnAcceptances
from plumbnet.study.long_runs import cores
from plumbnet.study.remedies import Checked, remedies_if_small

NONE_IS_A_LAYOUT = f"none of the files found that end in {' or '.join(ENDINGS)} is a layout: none has the key {KEY}"
LOST = "the process that was to check this file ended without its answer, and so did the next"
LOST_ADVICE = "look whether memory ran out, and check the file by itself"
SHARED_FROM_BYTES = 1_000_000
"""So much text of layouts takes about twice as long to check as other processes take to start."""


@dataclass(frozen=True, slots=True)
class CheckFile:
    """What is asked of every file: by which rules, in which units, written how. It can be sent to other processes.

    `own` decides in place of the acceptances in files; `is_strict` makes an error of a file that is no layout.
    """

    writer: Writer
    rules: GivenRules | None = None
    units: Units | None = None
    own: OwnAcceptances | None = None
    is_strict: bool = False

    def __call__(self, target: Target) -> FileOutcome:
        """The outcome of one file; whatever is wrong with it is an outcome too."""
        try:
            found = layout_or_other(target, is_strict=self.is_strict)
            return self._noted(target, found) if isinstance(found, OtherFile) else self._answered(target, found)
        except Exception as error:  # noqa: BLE001  one file of many ends nothing; what nobody has foreseen is told
            return self._refused(target, error)

    def lost(self, target: Target) -> FileOutcome:
        """The outcome of a file at which the process that was to check it ended."""
        return self._refused(target, LayoutError(target.file, [Fault(0, 0, LOST, LOST_ADVICE)]))

    def _answered(self, target: Target, system: System) -> FileOutcome:
        report = plumbnet.check(system, rules=self.rules, units=self.units, acceptances=self.own)
        found = remedies_if_small(report) if self.writer.shows_remedies else None
        piece, words = self._with_faulty(system, self.writer.answered(Checked(report, found)))
        verdicts = tuple(heater.verdict for heater in report.heaters)
        return FileOutcome(
            target.file, Fate.CHECKED, piece, verdicts, report.findings, report.accepted, own_used(report), words
        )

    def _with_faulty(self, system: System, piece: FilePiece) -> tuple[FilePiece, str]:
        """A piece with what is wrong with scenarios of the file behind it, and the words for people."""
        if not system.faulty_scenarios:
            return piece, ""
        told = unread(system.record.file, system.scenario_error(*system.faulty_scenarios))
        told = replace(told, is_of_scenarios=True)
        return (piece if self.writer.is_for_people else joined_piece(piece, self.writer.refused(told))), told.words

    def _noted(self, target: Target, other: OtherFile) -> FileOutcome:
        noted = Noted(target.file, other.sort, (other.fault,))
        return FileOutcome(target.file, Fate.NO_LAYOUT, self.writer.noted(noted))

    def _refused(self, target: Target, error: Exception) -> FileOutcome:
        told = unread(target.file, error)
        return FileOutcome(target.file, Fate.NOT_UNDERSTOOD, self.writer.refused(told), words=told.words)


def found_targets(files: Sequence[str]) -> tuple[Target, ...]:
    """The files that arguments stand for, each with the files whose assemblies it may use."""
    shelf = SHELF.get()
    return tuple(replace(target, shelf=shelf) for target in targets(files)) if shelf else targets(files)


def read_targets(files: Sequence[str]) -> tuple[Target, ...]:
    """The files that arguments stand for, standard input already read."""
    found = found_targets(files)
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


def layout_or_other(target: Target, *, is_strict: bool = False) -> System | OtherFile:
    """The system of a file, or what it is where it was found by searching and is no layout.

    Raises OSError, and LayoutError for a layout that cannot be read, for a slip of its key and, where that is asked
    for, for any file that is neither a layout nor anything else the program knows.
    """
    if target.note:
        return _told(target, OtherFile(NOT_A_LAYOUT, Fault(0, 0, target.note)), is_strict=is_strict)
    data = data_of(target)
    other = None if target.is_named or KEY.encode() in data else other_file(data)
    try:
        return _told(target, other, is_strict=is_strict) if other is not None else _read(target, data)
    except LayoutError:
        other = None if target.is_named or other is not None else other_file(data)
        if other is None:
            raise
        return _told(target, other, is_strict=is_strict)


def _read(target: Target, data: bytes) -> System:
    file = STANDARD_INPUT_NAME if target.file == STANDARD_INPUT else target.file
    return plumbnet.read_bytes(data, file=file, shelf=target.shelf)


def _told(target: Target, other: OtherFile, *, is_strict: bool) -> OtherFile:
    if other.is_slip or (is_strict and other.sort == NOT_A_LAYOUT):
        fault = other.fault if other.is_slip else replace(other.fault, text=f"{NOT_A_LAYOUT}: {other.fault.text}")
        raise LayoutError(target.file, [fault], other.text)
    return other
