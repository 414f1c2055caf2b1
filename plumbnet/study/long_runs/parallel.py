"""The same question asked of many things by several at a time: answers in the order of the things, a few in memory."""

import concurrent.futures
import os
import signal
import threading
from collections import deque
from collections.abc import Callable, Iterable, Iterator
from concurrent.futures import BrokenExecutor, Executor, Future
from contextlib import contextmanager
from dataclasses import dataclass
from itertools import chain, islice
from typing import TYPE_CHECKING, Final, Generic, TypeVar

if TYPE_CHECKING:
    from multiprocessing.context import BaseContext

_AHEAD: Final = 4  # questions that wait for each process, so that none is idle behind a slow one

Thing = TypeVar("Thing")
Answer = TypeVar("Answer")


def cores() -> int:
    """Cores that this process may use."""
    if hasattr(os, "sched_getaffinity"):
        return len(os.sched_getaffinity(0))
    return os.cpu_count() or 1


def answers(  # noqa: PLR0913  each is a matter of its own, and named by who asks
    things: Iterable[Thing],
    ask: Callable[[Thing], Answer],
    *,
    jobs: int,
    handful: int = 1,
    executor: Executor | None = None,
    lost: Callable[[Thing], Answer] | None = None,
) -> Iterator[Answer]:
    """What `ask` says of each thing, in their order; `jobs` processes share the work, none but this one when 1.

    Question, things and answers travel between processes and must pickle. To start others takes about as long as
    to start the program; a single thing starts none. Things travel by `handful`, for each journey costs some time;
    what `ask` raises comes before the answers to others in its handful. `executor` shares the work instead of
    processes of this machine, `jobs` of its workers at a time; whoever opened it ends it, and with it what nobody
    waits for. Things are taken when they are needed; they and answers wait in memory only behind a slower one, a few
    handfuls to each process. Where a process ends without an answer, the things that had none are asked about again one
    by one, and `lost` says what stands for the answer to one at which a process ends once more; without it
    that raises BrokenExecutor. Raises what `ask` raises, and what the executor does.
    """
    left = iter(things)
    if executor is not None:
        yield from _in_order(executor, _by(handful, left), ask, jobs * _AHEAD, deque())
        return
    first = list(islice(left, 2))
    if jobs <= 1 or len(first) <= 1:
        yield from map(ask, chain(first, left))
        return
    yield from _from_processes(chain(first, left), ask, jobs, handful, lost)


def _from_processes(
    left: Iterator[Thing],
    ask: Callable[[Thing], Answer],
    jobs: int,
    handful: int,
    lost: Callable[[Thing], Answer] | None,
) -> Iterator[Answer]:
    """The answers of processes of this machine, started anew after one has ended without its own."""
    while True:
        waiting = deque[_Handed[Thing, Answer]]()
        try:
            with _processes(jobs, ask) as pool:
                yield from _in_order(pool, _by(handful, left), ask, jobs * _AHEAD, waiting)
                return
        except BrokenExecutor:
            if lost is None:
                raise
        for handed in waiting:
            if handed.is_answered:
                yield from handed.answers
            else:
                yield from _one_by_one(handed.things, ask, lost)


def _one_by_one(
    things: Iterable[Thing], ask: Callable[[Thing], Answer], lost: Callable[[Thing], Answer]
) -> Iterator[Answer]:
    """The answer about each thing, of a process that has nothing else to do."""
    left = deque(things)
    while left:
        try:
            with _processes(1, ask) as pool:
                while left:
                    answer = pool.submit(ask, left[0]).result()
                    left.popleft()
                    yield answer
        except BrokenExecutor:
            yield lost(left.popleft())


@contextmanager
def _processes(jobs: int, ask: Callable[[Thing], Answer]) -> Iterator[Executor]:
    """So many processes, ended at once where nobody waits for their answers any more."""
    import multiprocessing  # noqa: PLC0415  slow to load, and a single thing asks for none of it

    before = multiprocessing.active_children()
    pool = concurrent.futures.ProcessPoolExecutor(jobs, mp_context=_context(ask), initializer=_serve_the_first)
    try:
        yield pool
    except BaseException:  # whatever it is, nobody waits for the answers any more
        for process in multiprocessing.active_children():
            if process not in before:
                process.terminate()
        pool.shutdown(cancel_futures=True)  # waited for: what it left to the end of the program could fail there, aloud
        raise
    pool.shutdown()


@dataclass(frozen=True, slots=True)
class _AskAll(Generic[Thing, Answer]):
    """A question, asked of a handful of things. It can be sent to other processes if the question can."""

    ask: Callable[[Thing], Answer]

    def __call__(self, things: tuple[Thing, ...]) -> tuple[Answer, ...]:
        return tuple(map(self.ask, things))


@dataclass(slots=True)
class _Handed(Generic[Thing, Answer]):
    """Things that were handed to a process together, and what is to come of them."""

    things: tuple[Thing, ...]
    future: Future[tuple[Answer, ...]] | None = None

    @property
    def is_answered(self) -> bool:
        """Whether there is an answer about each."""
        return self.future is not None and self.future.done() and self.future.exception() is None

    @property
    def answers(self) -> tuple[Answer, ...]:
        """The answers, waited for."""
        return () if self.future is None else self.future.result()


def _in_order(
    pool: Executor,
    handfuls: Iterable[tuple[Thing, ...]],
    ask: Callable[[Thing], Answer],
    ahead: int,
    waiting: "deque[_Handed[Thing, Answer]]",
) -> Iterator[Answer]:
    """Answers in the order of the things; those `waiting` have none yet, or it was not taken."""
    ask_all = _AskAll(ask)
    for things in handfuls:
        waiting.append(_Handed(things))
        with _interrupts_blocked():  # what is started here inherits it
            waiting[-1].future = pool.submit(ask_all, things)
        if len(waiting) >= ahead:
            yield from _next(waiting)
    while waiting:
        yield from _next(waiting)


def _by(handful: int, things: Iterator[Thing]) -> Iterator[tuple[Thing, ...]]:
    """Things so many at a time, taken when they are asked for."""
    return iter(lambda: tuple(islice(things, handful)), ())


def _next(waiting: "deque[_Handed[Thing, Answer]]") -> tuple[Answer, ...]:
    """The answers about what has waited longest, which then waits no more."""
    found = waiting[0].answers
    waiting.popleft()
    return found


def _context(ask: Callable[[Thing], Answer]) -> "BaseContext":
    """How processes are started: forked from one that has loaded the program and holds nothing else, where it can be.

    A fork of this very process would copy the threads of the numeric libraries in the middle of their work.
    """
    import multiprocessing  # noqa: PLC0415  as above

    if "forkserver" not in multiprocessing.get_all_start_methods():
        return multiprocessing.get_context("spawn")
    context = multiprocessing.get_context("forkserver")
    context.set_forkserver_preload([type(ask).__module__, getattr(ask, "__module__", "")])
    return context


def _serve_the_first() -> None:
    """A key that interrupts goes to every process of the terminal; only the first one has anything to say.

    And when that one is gone, were it killed, nobody waits for answers.
    """
    signal.signal(signal.SIGINT, signal.SIG_IGN)
    threading.Thread(target=_end_with_the_first, daemon=True).start()


def _end_with_the_first() -> None:
    from multiprocessing import connection, parent_process  # noqa: PLC0415  as above

    first = parent_process()
    if first is not None:
        connection.wait([first.sentinel])
        os._exit(1)


@contextmanager
def _interrupts_blocked() -> Iterator[None]:
    """Interrupts come once this is over; on systems without such masks they are not held up."""
    if not hasattr(signal, "pthread_sigmask"):
        yield
        return
    held = signal.pthread_sigmask(signal.SIG_BLOCK, {signal.SIGINT})
    try:
        yield
    finally:
        signal.pthread_sigmask(signal.SIG_SETMASK, held)
