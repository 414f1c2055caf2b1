"""The same question asked of many things, in this process or in several."""

import multiprocessing
import os
import signal
import subprocess
import sys
import time
from collections.abc import Iterator
from concurrent.futures import ThreadPoolExecutor
from concurrent.futures.process import BrokenProcessPool
from dataclasses import dataclass
from pathlib import Path

import pytest
from running import ended

from plumbnet.study.long_runs.parallel import answers, cores


@dataclass(frozen=True)
class Square:
    """A question that travels: the square of a number, and whether this process answered it."""

    home: int

    def __call__(self, number: int) -> tuple[int, bool]:
        return number * number, os.getpid() == self.home


def refuse(number: int) -> int:
    if number == 3:
        raise ValueError("three is refused")
    return number


def die(number: int) -> int:
    if number == 3:
        os._exit(9)
    return number


@pytest.mark.parametrize(
    ("jobs", "handful", "count"),
    [(1, 1, 0), (1, 1, 30), (2, 1, 0), (2, 1, 1), (2, 1, 30), (3, 7, 0), (3, 7, 1), (3, 7, 2), (3, 7, 30)],
)
def test_answers_come_in_the_order_of_the_things(jobs: int, handful: int, count: int) -> None:
    found = list(answers(range(count), Square(os.getpid()), jobs=jobs, handful=handful))
    assert [answer for answer, _ in found] == [number * number for number in range(count)]
    assert all(at_home == (min(jobs, count) == 1) for _, at_home in found)


def test_nothing_is_asked_before_it_is_wanted() -> None:
    asked: list[int] = []
    found = answers(range(3), asked.append, jobs=1)
    assert asked == []
    next(found)
    assert asked == [0]


@pytest.mark.parametrize("jobs", [1, 2])
def test_what_the_question_raises_comes_out_in_its_turn(jobs: int) -> None:
    found = answers(range(9), refuse, jobs=jobs)
    assert [next(found) for _ in range(3)] == [0, 1, 2]
    with pytest.raises(ValueError, match="three is refused"):
        next(found)
    assert nobody_is_left()


def test_executor_shares_the_work_a_few_things_ahead_and_stays_open() -> None:
    taken: list[int] = []

    def things() -> Iterator[int]:
        for number in range(50):
            taken.append(number)
            yield number

    with ThreadPoolExecutor(2) as pool:
        found = answers(things(), Square(os.getpid()), jobs=2, executor=pool)
        assert next(found) == (0, True)
        assert len(taken) < 10
        assert [answer for answer, _ in found] == [number * number for number in range(1, 50)]
        taken.clear()
        assert next(answers(things(), Square(os.getpid()), jobs=1, handful=3, executor=pool)) == (0, True)
        assert len(taken) == 12
        with pytest.raises(ValueError, match="three is refused"):
            list(answers(range(9), refuse, jobs=2, executor=pool))
        assert pool.submit(abs, -1).result() == 1


def nobody_is_left() -> bool:
    for child in multiprocessing.active_children():
        child.join(20)
    return multiprocessing.active_children() == []


def test_process_that_ends_without_an_answer_is_told() -> None:
    with pytest.raises(BrokenProcessPool):
        list(answers(range(9), die, jobs=2))


@pytest.mark.parametrize("handful", [1, 4])
def test_thing_at_which_processes_end_costs_no_other_thing_its_answer(handful: int) -> None:
    found = answers(range(9), die, jobs=2, handful=handful, lost=lambda number: -number)
    assert list(found) == [0, 1, 2, -3, 4, 5, 6, 7, 8]
    assert nobody_is_left()


def wait_for_ever(number: int) -> int:
    if number:
        time.sleep(3600)
    return number


def test_processes_end_when_nobody_wants_more_answers() -> None:
    found = answers(range(1000), wait_for_ever, jobs=2)
    assert next(found) == 0
    assert multiprocessing.active_children()
    assert isinstance(found, Iterator)
    found.close()  # type: ignore[attr-defined]  # it is a generator, which callers need not know
    assert nobody_is_left()


def test_there_is_at_least_one_core() -> None:
    assert cores() >= 1


SCRIPT = """
import sys, time
from plumbnet.study.long_runs.parallel import answers

def slow(number):
    time.sleep(0.05)
    return number

if __name__ == "__main__":
    try:
        for number in answers(range(100000), slow, jobs=2):
            print(number, flush=True)
    except KeyboardInterrupt:
        print("told", flush=True)
        sys.exit(7)
"""


@pytest.mark.usefixtures("interruptible")
@pytest.mark.skipif(not hasattr(os, "killpg"), reason="groups of processes are a thing of POSIX")
def test_key_that_interrupts_a_whole_group_is_told_by_the_first_process_alone(tmp_path: Path) -> None:
    script = tmp_path / "slow.py"
    script.write_text(SCRIPT, encoding="utf-8")
    with subprocess.Popen(  # noqa: S603  our own script
        [sys.executable, str(script)], stdout=subprocess.PIPE, stderr=subprocess.PIPE, start_new_session=True
    ) as process:
        assert process.stdout is not None
        assert process.stderr is not None
        assert process.stdout.readline() == b"0\n"
        os.killpg(process.pid, signal.SIGINT)
        assert process.stdout.read().endswith(b"told\n")
        assert process.stderr.read() == b""
        assert process.wait() == 7
        assert ended(process.pid)
