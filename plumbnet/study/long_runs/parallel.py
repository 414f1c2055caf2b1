"""The same question asked of many things by several at a time: answers in the order of the things, a few in memory."""

import concurrent.futures
import os
import signal
import threading
from collections import deque
from collections.abc import Callable, Iterable, Iterator
from concurrent.futures import Executor, Future
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


def answers(
    things: Iterable[Thing],
    ask: Callable[[Thing], Answer],
    *,
    jobs: int,
    handful: int = 1,
    executor: Executor | None = None,
) -> Iterator[Answer]:
    """What `ask` says of each thing, in their order; `jobs` processes share the work, none but this one when 1.

    Question, things and answers travel between processes and must pickle. To start others takes about as long as
    to start the program; a single thing starts none. Things travel by `handful`, for each journey costs some time;
    what `ask` raises comes before the answers to others in its handful. `executor` shares the work instead of
    processes of this machine, `jobs` of its workers at a time; whoever opened it ends it, and with it what nobody
    waits for. Things are taken when they are needed; they and answers wait in memory only behind a slower one, a few
    handfuls to each process. Raises BrokenProcessPool where a process ends without an answer, what `ask` raises, and
    what the executor does.
    """
    left = iter(things)
    if executor is not None:
        yield from _in_order(executor, left, ask, jobs * _AHEAD, handful)
        return
    first = list(islice(left, 2))
    if jobs <= 1 or len(first) <= 1:
        yield from map(ask, chain(first, left))
        return
    import multiprocessing  # noqa: PLC0415  slow to load, and a single thing asks for none of it

    before = multiprocessing.active_children()
    pool = concurrent.futures.ProcessPoolExecutor(jobs, mp_context=_context(ask), initializer=_serve_the_first)
    try:
        yield from _in_order(pool, chain(first, left), ask, jobs * _AHEAD, handful)
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


def _in_order(
    pool: Executor, left: Iterator[Thing], ask: Callable[[Thing], Answer], ahead: int, handful: int
) -> Iterator[Answer]:
    waiting, ask_all = deque[Future[tuple[Answer, ...]]](), _AskAll(ask)
    while things := tuple(islice(left, handful)):
        with _interrupts_blocked():  # what is started here inherits it
            waiting.append(pool.submit(ask_all, things))
        if len(waiting) >= ahead:
            yield from waiting.popleft().result()
    while waiting:
        yield from waiting.popleft().result()


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
