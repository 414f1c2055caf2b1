"""Tries odd inputs by the million and tells what breaks: python tests/fuzz.py --inputs 1000000 --seed 0 --jobs 2"""

import argparse
import multiprocessing
import multiprocessing.connection
import sys
import time
from collections import Counter
from collections.abc import Iterator
from multiprocessing.connection import Connection
from pathlib import Path

from fuzzing.inputs import input_of
from fuzzing.shrinking import shrunk
from fuzzing.working import Failure, InHand, Tally, heed_time, limit, outcome, work

from plumbnet.physics.fluids.glycol import freezing_k

CHUNK = 500
MOST_ALIKE = 3


def main() -> int:
    """Try them all; 1 where anything failed."""
    parser = argparse.ArgumentParser(description=__doc__)
    parser.add_argument("--inputs", type=int, default=1_000_000)
    parser.add_argument("--seed", type=int, default=0)
    parser.add_argument("--first", type=int, default=0, help="number of the first input")
    parser.add_argument("--jobs", type=int, default=multiprocessing.cpu_count())
    parser.add_argument("--save", type=Path, default=Path("build/fuzz"), help="folder for the inputs that fail")
    chosen = parser.parse_args()
    heed_time()
    tally, seen, start = Tally(), Counter[str](), time.perf_counter()
    last = chosen.first + chosen.inputs
    for part in _parts(chosen.seed, chosen.first, last, chosen.jobs):
        for failure in part.failures:
            seen[failure.signature] += 1
            if seen[failure.signature] <= MOST_ALIKE:
                print(f"input {failure.number}: {failure.signature}", flush=True)
                _save(chosen.save, chosen.seed, failure)
        tally.add(part)
        done = tally.fortunes.total()
        if done % (20 * CHUNK) == 0 or done == chosen.inputs:
            print(f"{done:,} of {chosen.inputs:,}, {time.perf_counter() - start:,.0f} s", flush=True)
    _sum_up(tally, seen, chosen.seed)
    return 1 if tally.failures else 0


def _sum_up(tally: Tally, seen: Counter[str], seed: int) -> None:
    fortunes = ", ".join(f"{count:,} {fortune}" for fortune, count in sorted(tally.fortunes.items()))
    print(f"seed {seed}: {tally.fortunes.total():,} inputs: {fortunes}")
    print(f"slowest: input {tally.slowest} with all its questions, {tally.slowest_s:.2f} s of CPU time")
    print(f"most memory of a process: {tally.peak_mib:.0f} MiB")
    for signature, count in seen.most_common():
        print(f"{count:,} times {signature}")


def _parts(seed: int, first: int, last: int, jobs: int) -> Iterator[Tally]:
    """What came of each stretch of inputs, from several processes; one that dies is told and followed by another."""
    context = multiprocessing.get_context("spawn")
    waiting = [(start, min(start + CHUNK, last)) for start in range(first, last, CHUNK)][::-1]
    busy: list[_Worker] = [_Worker(context, seed) for _ in range(min(jobs, len(waiting)))]
    for worker in busy:
        worker.give(waiting.pop())
    while busy:
        ready = multiprocessing.connection.wait([worker.pipe for worker in busy])
        for worker in [one for one in busy if one.pipe in ready]:
            tally, left = worker.answer()
            if left is not None:
                worker = _replaced(busy, worker, context, seed)  # noqa: PLW2901  another takes its place
                waiting.append(left)
            if waiting:
                worker.give(waiting.pop())
            else:
                worker.end()
                busy.remove(worker)
            yield tally


class _Worker:
    """A process that tries inputs, the pipe to it, and the number it has in hand."""

    def __init__(self, context: multiprocessing.context.SpawnContext, seed: int) -> None:
        self.pipe, other = context.Pipe()
        self.at = context.Value("q", -1)
        self.process = context.Process(target=_serve, args=(other, seed, self.at), daemon=True)
        self.process.start()
        other.close()
        self.span = (0, 0)

    def give(self, span: tuple[int, int]) -> None:
        self.span = span
        self.pipe.send(span)

    def answer(self) -> tuple[Tally, tuple[int, int] | None]:
        """What came of its inputs, and those it left undone where it died."""
        try:
            tally: Tally = self.pipe.recv()
        except (EOFError, ConnectionResetError):
            self.process.join()
            at = self.at.value
            story = f"the process ended with {self.process.exitcode} over this input\n"
            tally = Tally(Counter(failed=at + 1 - self.span[0]), [Failure(at, "the process ended", story)])
            return tally, (at + 1, self.span[1])
        return tally, None

    def end(self) -> None:
        self.pipe.close()
        self.process.join()


def _replaced(
    busy: list[_Worker], worker: _Worker, context: multiprocessing.context.SpawnContext, seed: int
) -> _Worker:
    fresh = _Worker(context, seed)
    busy[busy.index(worker)] = fresh
    return fresh


def _serve(pipe: Connection, seed: int, at: InHand) -> None:
    """Try the inputs of every span that comes, until none does."""
    freezing_k("propylene", 0.3)  # loads what is only loaded once and is no input's fault
    limit()
    while True:
        try:
            span = pipe.recv()
        except EOFError:
            return
        pipe.send(work(seed, range(*span), at))


def _save(folder: Path, seed: int, failure: Failure) -> None:
    """The input, a shorter one that fails alike, and the story."""
    folder.mkdir(parents=True, exist_ok=True)
    data = input_of(seed, failure.number)
    stem = folder / f"{seed}-{failure.number}"
    stem.with_suffix(".yaml").write_bytes(data)
    stem.with_suffix(".txt").write_text(failure.story, encoding="utf-8", errors="backslashreplace")
    if not failure.signature.startswith(("TooLong", "the process")):
        stem.with_suffix(".small.yaml").write_bytes(shrunk(data, lambda shorter: _fails(shorter, failure)))


def _fails(data: bytes, failure: Failure) -> bool:
    found = outcome(data, failure.number)[1]
    return found is not None and found.signature == failure.signature


if __name__ == "__main__":
    sys.exit(main())
