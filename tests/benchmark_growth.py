"""Prints how times, memory and output grow with a layout, family by family and command by command; never fails.

    python tests/benchmark_growth.py --families 'zones*,ring*' --commands check,remedies --upto 10000 --seconds 60

Each run is a process of its own that was forked from this one once all was imported, so that what is measured is the
command. The exponent is that of the two largest sizes that took longer than a tenth of a second, the time of the
smallest size taken off: 1 is linear, 2 quadratic. A size that comes to no end within the seconds given of CPU time or
within the memory is told, and no larger one is tried. It needs Linux or macOS.
"""

import argparse
import fnmatch
import gc
import math
import os
import resource
import sys
import tempfile
from collections.abc import Callable, Iterator, Sequence
from dataclasses import dataclass
from pathlib import Path

from families import FAMILIES

import plumbnet.cli
from plumbnet.cli.run import run_asked as run_program
from plumbnet.discover import discover

SIZES = (10, 30, 100, 300, 1_000, 3_000, 10_000)
WORTH_S = 0.1
"""A time below this says nothing of growth."""
COMMANDS: dict[str, Callable[[str, str], list[str]]] = {
    "check": lambda path, _: ["check", path],
    "json": lambda path, _: ["check", path, "--format", "json"],
    "review": lambda path, _: ["review", path],
    "trace": lambda path, _: ["trace", path],
    "remedies": lambda path, _: ["remedies", path],
    "size": lambda path, _: ["size", path],
    "margins": lambda path, _: ["margins", path],
    "sweep": lambda path, _: ["sweep", path],
    "whatif": lambda path, text: ["whatif", path, *_supposed(text)],
    "compare": lambda path, _: ["compare", path, path],
    "report": lambda path, _: ["report", path, "-o", f"{path}.html"],
    "export": lambda path, _: ["export", path, "-o", f"{path}.tables"],
}


def _supposed(text: str) -> list[str]:
    """What is asked of `whatif`: every scenario of the file, or else another pressure of the street."""
    return ["--all"] if "\nscenarios:" in text else ["--set", "street.pressure=64 psi"]


@dataclass(frozen=True, slots=True)
class Run:
    """What one size came to; `status` is None where it found no end."""

    size: int
    cpu_s: float
    peak_mib: float
    output_mb: float
    status: int | None


def main() -> None:
    """Every family under every command that was asked for."""
    parser = argparse.ArgumentParser(description=__doc__, formatter_class=argparse.RawDescriptionHelpFormatter)
    parser.add_argument("--families", default="*", help="patterns of names, with commas between")
    parser.add_argument("--commands", default="check,json,remedies,whatif", help=", ".join(COMMANDS))
    parser.add_argument("--upto", type=int, default=max(SIZES), help="the largest number of parts")
    parser.add_argument("--seconds", type=int, default=20, help="of CPU time, for one run")
    parser.add_argument("--mib", type=int, default=2048, help="of memory, for one run")
    asked = parser.parse_args()
    discover(plumbnet.cli)
    gc.freeze()
    patterns = asked.families.split(",")
    for name in FAMILIES:
        if any(fnmatch.fnmatch(name, pattern) for pattern in patterns):
            for command in asked.commands.split(","):
                sizes = [size for size in SIZES if size <= asked.upto]
                print(row(name, command, list(runs(name, command, sizes, asked.seconds, asked.mib))), flush=True)


def runs(name: str, command: str, sizes: Sequence[int], seconds: int, mib: int) -> Iterator[Run]:
    """One size after the other, to the first that finds no end."""
    for size in sizes:
        with tempfile.TemporaryDirectory() as folder:
            text = FAMILIES[name](size)
            path = Path(folder) / f"{name}.yaml"
            path.write_text(text, encoding="utf-8")
            found = run(size, COMMANDS[command](str(path), text), Path(folder) / "output", seconds, mib)
        yield found
        if found.status is None:
            return


def run(size: int, arguments: list[str], output: Path, seconds: int, mib: int) -> Run:
    """The program under some arguments, in a process of its own."""
    child = os.fork()
    if child == 0:
        _work(arguments, output, seconds, mib)
    _, status, used = os.wait4(child, 0)
    code = os.waitstatus_to_exitcode(status)
    is_whole = code in range(4)
    written = output.stat().st_size / 1e6 if output.exists() else 0.0
    return Run(size, used.ru_utime + used.ru_stime, used.ru_maxrss / 1024, written, code if is_whole else None)


def _work(arguments: list[str], output: Path, seconds: int, mib: int) -> None:
    """Be the program; what ends it in any other way than by its own status ends it with 9."""
    resource.setrlimit(resource.RLIMIT_CPU, (seconds, seconds))
    resource.setrlimit(resource.RLIMIT_AS, (mib * 2**20, mib * 2**20))
    handle = os.open(output, os.O_WRONLY | os.O_CREAT)
    os.dup2(handle, 1)
    os.dup2(handle, 2)
    sys.argv = ["plumbnet", *arguments]
    status = 9
    try:
        run_program()
    except SystemExit as end:
        status = end.code if isinstance(end.code, int) else 0
    finally:
        sys.stdout.flush()
        os._exit(status)


def row(name: str, command: str, found: Sequence[Run]) -> str:
    """A family under a command: exponent, times by size, memory and output of the largest."""
    times = "  ".join(f"{one.size}: {'no end' if one.status is None else f'{one.cpu_s:.2f}'}" for one in found)
    whole = [one for one in found if one.status is not None]
    last = f"{whole[-1].peak_mib:.0f} MiB, {whole[-1].output_mb:.2f} MB, status {whole[-1].status}" if whole else ""
    return f"{name:36} {command:9} {exponent(whole):>5}  {times}  [{last}]"


def exponent(found: Sequence[Run]) -> str:
    """The power of the size with which the time grows; empty where all is too fast to tell."""
    worth = [(one.size, one.cpu_s - found[0].cpu_s) for one in found[1:] if one.cpu_s - found[0].cpu_s > WORTH_S]
    if len(worth) < 2:
        return ""
    (size, time), (larger, longer) = worth[-2:]
    return f"{math.log(longer / time) / math.log(larger / size):.2f}"


if __name__ == "__main__":
    main()
