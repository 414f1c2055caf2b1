"""The three streams of the process: there from the start, and no traceback where words cannot be written to one."""

import errno
import os
import sys
from collections.abc import Callable
from typing import NoReturn

from plumbnet.cli.ending.exit_status import FINE, INTERRUPTED, NOT_UNDERSTOOD
from plumbnet.cli.ending.interruption import Interrupted, tell_interrupted

_READER_GONE = frozenset({errno.EPIPE, errno.EINVAL, errno.ESHUTDOWN})
"""What a system says where nobody reads a pipe any more; EINVAL is what Windows says (from memory)."""


def with_streams(run: Callable[[], None]) -> NoReturn:
    """Run the program and exit with its status; with 2 and a sentence where its words could not be written.

    Words of which the reader has gone, as of `head`, are left out, and the status is by what was found.
    """
    _open_missing()
    status = _status_of(run)
    try:
        sys.stdout.flush()
    except OSError as error:
        status = _unwritten(error, status)
    sys.exit(status)


def _status_of(run: Callable[[], None]) -> int:
    try:
        run()
    except Interrupted:
        tell_interrupted()
        return INTERRUPTED
    except SystemExit as ended:
        return ended.code if isinstance(ended.code, int) else NOT_UNDERSTOOD if ended.code else FINE
    except OSError as error:
        if error.filename is not None:
            raise
        return _unwritten(error, NOT_UNDERSTOOD)
    return FINE


def silence(error: OSError) -> bool:
    """Whether only the reader of standard output has gone, whom nothing is told from here on."""
    if error.errno not in _READER_GONE:
        return False
    _to_nowhere(sys.stdout.fileno())
    return True


def _unwritten(error: OSError, status: int) -> int:
    """The status where a stream could not be written, told where it can be."""
    if silence(error):
        return status
    from plumbnet.layout.yaml import reason_of  # noqa: PLC0415  nothing is read for help

    _to_nowhere(1)
    try:
        sys.stderr.write(f"standard output cannot be written: {reason_of(error)}\n")
        sys.stderr.flush()
    except OSError:
        _to_nowhere(2)
    return NOT_UNDERSTOOD


def _to_nowhere(descriptor: int) -> None:
    nowhere = os.open(os.devnull, os.O_RDWR)
    os.dup2(nowhere, descriptor)
    os.close(nowhere)


def _open_missing() -> None:
    """Open what was closed when the program began, to nothing: a file would take its number else, and its words."""
    for name, mode in (("stdin", "r"), ("stdout", "w"), ("stderr", "w")):
        if getattr(sys, name) is None:
            setattr(sys, name, open(os.devnull, mode, encoding="utf-8"))  # noqa: PTH123, SIM115  lives as long as it
