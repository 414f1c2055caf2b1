"""The command line: arguments, calls, exit status. What several commands share; `commands` has one module each."""

from typing import NoReturn

from plumbnet.cli.ending import Interrupted, heed_interrupts, tell_interrupted

__all__ = ["main"]


def main() -> NoReturn:
    """Run the program with the arguments of this process, and exit; an interrupt ends it calmly from here on."""
    heed_interrupts()
    try:
        from plumbnet.cli import run  # noqa: PLC0415  to import it takes a while, and may be interrupted

        run.run_asked()
    except Interrupted:
        tell_interrupted()
        raise
