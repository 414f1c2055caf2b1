"""A key that interrupts ends the program at once: with one sentence, its own status, and no file half-written."""

import signal
import sys
from types import FrameType
from typing import NoReturn

from plumbnet.cli.ending.exit_status import INTERRUPTED

INTERRUPTED_WORDS = "interrupted before the end; no file is written by halves"


class Interrupted(SystemExit):
    """What a key that interrupts raises, wherever the program is; one that is caught nowhere ends it."""

    def __init__(self) -> None:
        super().__init__(INTERRUPTED)


def heed_interrupts() -> None:
    """Have an interrupt end the program calmly; where interrupts are ignored, as behind `nohup`, they stay so."""
    if signal.getsignal(signal.SIGINT) is signal.default_int_handler:
        signal.signal(signal.SIGINT, _interrupt)


def _interrupt(_number: int, _frame: FrameType | None) -> NoReturn:
    signal.signal(signal.SIGINT, signal.SIG_IGN)  # a second one would upset the first while it tidies up
    raise Interrupted


def tell_interrupted() -> None:
    """Say so where somebody reads it."""
    below = "\n" if sys.stderr.isatty() else ""  # a bar may stand on this line
    try:
        sys.stderr.write(f"{below}{INTERRUPTED_WORDS}\n")
        sys.stderr.flush()
    except OSError:
        return
