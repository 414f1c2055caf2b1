"""A failure that nobody has foreseen, in a sentence: that it is the program's, where in it, and where to report it."""

import traceback
from importlib.resources import files
from pathlib import Path

from plumbnet.layout.yaml import Fault
from plumbnet.report.output.imprint import program_line

WHERE_TO_REPORT = "please report it where you have plumbnet from, with these words and, if you may, with the file"
_LONGEST = 120
"""So much is told of what the error itself says."""


def program_failed(error: BaseException, *, on: str = " on this file") -> Fault:
    """The failure as a mistake of the whole file; `on` says in words what the program was busy with.

    >>> program_failed(ZeroDivisionError("division by zero")).text
    'the program failed on this file, by a mistake of its own (ZeroDivisionError: division by zero; plumbnet 0.1.0)'
    """
    said = " ".join(str(error).split())
    what = f"{type(error).__name__}: {said[:_LONGEST]}" if said else type(error).__name__
    told = "; ".join([what, *_place(error), program_line()])
    return Fault(0, 0, f"the program failed{on}, by a mistake of its own ({told})", WHERE_TO_REPORT)


def _place(error: BaseException) -> list[str]:
    """The innermost line of the program in which it failed, if it is known."""
    package = Path(str(files("plumbnet")))
    frames = traceback.extract_tb(error.__traceback__)
    ours = [frame for frame in frames if Path(frame.filename).is_relative_to(package)]
    return [f"{Path(one.filename).relative_to(package).as_posix()}, line {one.lineno}" for one in ours[-1:]]
