"""What the command line and other programs call: read a layout, check a system."""

from pathlib import Path

from plumbnet.analysis.report import Report, analyse
from plumbnet.analysis.settling import Unanswerable
from plumbnet.layout.fault import Fault, LayoutError
from plumbnet.layout.quantity import Units
from plumbnet.layout.read import read_system
from plumbnet.layout.system import System
from plumbnet.rules.profile import GENERAL, UnknownProfile, profile


def read(path: str | Path) -> System:
    """The system of a layout file.

    Raises LayoutError with every fault of the file, OSError where it cannot be opened.
    """
    return read_system(Path(path).read_bytes(), file=str(path))


def read_bytes(data: bytes, *, file: str = "layout") -> System:
    """The system that the bytes of a layout describe; `file` names it in messages. Raises LayoutError."""
    return read_system(data, file=file)


def check(system: System, *, rules: str | None = None, units: Units | None = None) -> Report:
    """The report on a system under a rule profile: the one named, or the file's own, or general practice.

    Sentences use `units`, or else those of the file; numbers are SI. Raises UnknownProfile for a name given
    here, LayoutError for one that stands in the file and for a heater of which nothing can be computed.
    """
    try:
        chosen = profile(rules or system.rules or GENERAL)
    except UnknownProfile as error:
        if rules:
            raise
        fault = Fault(*system.record.rules_at, str(error), width=len(system.rules or ""))
        raise LayoutError(system.record.file, [fault], system.record.text) from error
    try:
        return analyse(system, chosen, units=units)
    except Unanswerable as error:
        fault = Fault(system.line_of(error.heater), 1, f"{error.heater}: {error}")
        raise LayoutError(system.record.file, [fault], system.record.text) from error
