"""Inputs tried one after another in this process, within limits; what fails is told with the place it failed at."""

import gc
import resource
import signal
import time
import traceback
import warnings
from collections import Counter
from collections.abc import Iterable
from dataclasses import dataclass, field
from pathlib import Path
from typing import Protocol

from fuzzing.inputs import input_of
from fuzzing.trying import MOST_MIB, TooLong, peak_mib, tried

_ROOM_BYTES = MOST_MIB * 2**20
_DEAD_AFTER_S = 20  # CPU time inside a library that no signal interrupts


class InHand(Protocol):
    """A value that processes share."""

    value: int


@dataclass(frozen=True)
class Failure:
    """An input that broke a promise: where, how, and the whole story."""

    number: int
    signature: str
    story: str


@dataclass
class Tally:
    """What came of many inputs."""

    fortunes: Counter[str] = field(default_factory=Counter)
    failures: list[Failure] = field(default_factory=list)
    slowest_s: float = 0.0
    slowest: int = 0
    peak_mib: float = 0.0

    def add(self, other: "Tally") -> None:
        """Take in what came of others."""
        self.fortunes += other.fortunes
        self.failures += other.failures
        self.peak_mib = max(self.peak_mib, other.peak_mib)
        if other.slowest_s > self.slowest_s:
            self.slowest_s, self.slowest = other.slowest_s, other.slowest


def limit() -> None:
    """Hold this process to the limits: warnings are errors, memory may grow by so much, time runs out."""
    warnings.simplefilter("error")
    heed_time()
    held = int(Path("/proc/self/statm").read_text(encoding="ascii").split()[0]) * resource.getpagesize()
    resource.setrlimit(resource.RLIMIT_AS, (held + _ROOM_BYTES, resource.RLIM_INFINITY))
    gc.freeze()


def heed_time() -> None:
    """Let what takes too long end as such and not the process."""
    signal.signal(signal.SIGPROF, _end)


def _end(_signal: int, _frame: object) -> None:
    raise TooLong


def work(seed: int, numbers: Iterable[int], at: InHand | None = None) -> Tally:
    """Try the inputs of those numbers; `at` is a shared value that holds the one in hand."""
    tally = Tally()
    for number in numbers:
        if at is not None:
            at.value = number
        used = int(time.process_time())
        resource.setrlimit(resource.RLIMIT_CPU, (used + _DEAD_AFTER_S, resource.RLIM_INFINITY))
        start = time.process_time()
        fortune, failure = outcome(input_of(seed, number), number)
        taken = time.process_time() - start
        tally.fortunes[fortune] += 1
        if failure:
            tally.failures.append(failure)
        if taken > tally.slowest_s:
            tally.slowest_s, tally.slowest = taken, number
    tally.peak_mib = peak_mib()
    return tally


def outcome(data: bytes, number: int) -> tuple[str, Failure | None]:
    """What became of an input, and how it failed if it did."""
    try:
        return tried(data, number), None
    except (Exception, TooLong) as error:  # noqa: BLE001  whatever it is, it is what is looked for
        return "failed", Failure(number, signature(error), "".join(traceback.format_exception(error)))


def signature(error: BaseException) -> str:
    """The kind of an error and the innermost of our own lines it came from, so that alike ones are told once."""
    frames = traceback.extract_tb(error.__traceback__)
    ours = [frame for frame in frames if "/plumbnet/" in frame.filename.replace("\\", "/")] or frames
    where = f"{Path(ours[-1].filename).name}:{ours[-1].lineno} {ours[-1].name}" if ours else "nowhere"
    return f"{type(error).__name__} at {where}"
