"""A real Dask cluster in this process does the work, and every way in which it does not is told."""

import sqlite3
import sys
import threading
from collections.abc import Callable, Iterator
from contextlib import closing
from importlib.metadata import version
from pathlib import Path

import pytest
from conftest import layout
from distributed import KilledWorker, LocalCluster
from running import TRAPPED, Write, run

from plumbnet.cli.surveying import cluster_workers as command
from plumbnet.cli.surveying.survey_jobs import KEPT, MOST_FILES
from plumbnet.report.survey.survey_book import Book
from plumbnet.report.survey.survey_entry import SurveyEntry

METERED = layout("street -> meter -> heater -> tap.hot", heater="relief: {pressure: 150 psi}")


def local(workers: int) -> LocalCluster:
    """A cluster in this process, on ports of its own."""
    return LocalCluster(
        n_workers=workers, threads_per_worker=1, processes=False, protocol="tcp", dashboard_address=":0"
    )


def at(cluster: LocalCluster) -> str:
    address: str = cluster.scheduler_address
    return address.removeprefix("tcp://")


@pytest.fixture(scope="module")
def address() -> Iterator[str]:
    with local(2) as made:
        yield at(made)


@pytest.fixture
def plans(write: Write) -> None:
    Path("plans").mkdir()
    for number in range(2 * MOST_FILES + 3):
        write(f"plans/{number:02}.yaml", TRAPPED if number % 5 else METERED)


@pytest.mark.usefixtures("plans")
def test_cluster_comes_to_what_this_machine_comes_to(address: str) -> None:
    arguments = ("survey", "plans", "--each", "meter.check=true")
    there = run(*arguments, "--scheduler", address)
    assert there.stderr == ""
    assert there.stdout == run(*arguments, "--jobs", "1").stdout


def elsewhere(_program: str) -> str:
    """Another version where a worker asks for it."""
    return "0.1.0" if threading.current_thread() is threading.main_thread() else "0.0.7"


def lacking(program: str) -> str:
    """No version where a worker asks for it, as where the program is not there."""
    return version(program if threading.current_thread() is threading.main_thread() else "no-such-program")


@pytest.mark.usefixtures("plans")
@pytest.mark.parametrize(("versions", "said"), [(elsewhere, "has 0.0.7"), (lacking, "has none")])
def test_worker_of_another_version_or_without_the_program_is_refused(
    address: str, monkeypatch: pytest.MonkeyPatch, versions: Callable[[str], str], said: str
) -> None:
    monkeypatch.setattr(command, "version", versions)
    result = run("survey", "plans", "--scheduler", f"tcp://{address}")
    assert (result.exit_code, result.stdout) == (2, "")
    assert result.stderr.startswith("every worker must have plumbnet 0.1.0: tcp://127.0.0.1:")
    assert result.stderr.count(said) == 2


@pytest.mark.usefixtures("plans")
def test_scheduler_without_workers_is_told() -> None:
    with local(0) as made:
        said = run("survey", "plans", "--scheduler", at(made)).stderr
        assert said == f"the scheduler at {at(made)} has no worker\n"


@pytest.mark.usefixtures("plans")
def test_scheduler_that_is_lost_is_told_and_what_was_done_is_kept(
    write: Write, monkeypatch: pytest.MonkeyPatch
) -> None:
    for number in range(10 * MOST_FILES):  # more than are handed out ahead, so that some are asked for afterwards
        write(f"plans/x{number:04}.yaml", "no: layout\n")
    real = Book.add
    monkeypatch.setattr(command, "PATIENCE_S", 1)
    with local(1) as made:
        found = at(made)

        def last(book: Book, entries: tuple[SurveyEntry, ...]) -> None:
            real(book, entries)
            made.close()

        monkeypatch.setattr(Book, "add", last)
        result = run("survey", "plans", "--scheduler", found, "--into", "s.sqlite")
    assert result.exit_code == 2
    assert result.stderr == f"the scheduler at {found} is lost; {KEPT}\n"
    with closing(sqlite3.connect("s.sqlite")) as file:
        (count,) = file.execute("SELECT count(*) FROM file").fetchone()
    assert count in {MOST_FILES * batches for batches in range(1, 5)}


class Killed(KilledWorker):
    def __init__(self) -> None:
        """Need no worker."""


@pytest.mark.usefixtures("plans")
def test_workers_that_end_over_a_file_are_told(address: str, monkeypatch: pytest.MonkeyPatch) -> None:
    def lose(*_: object, **__: object) -> Iterator[None]:
        yield from ()
        raise Killed

    monkeypatch.setattr("plumbnet.cli.commands.survey.answers", lose)
    assert (
        run("survey", "plans", "--scheduler", address).stderr == f"workers of the cluster ended over a file; {KEPT}\n"
    )


@pytest.mark.usefixtures("plans")
@pytest.mark.parametrize("wrong", ["nonsense", "http://x:1", "127.0.0.1:many", "inproc://x", ""])
def test_address_that_is_none_is_told(wrong: str) -> None:
    said = "is no address of a scheduler; write it as host:port or tcp://host:port"
    assert run("survey", "plans", "--scheduler", wrong).stderr == f'"{wrong}" {said}\n'


@pytest.mark.usefixtures("plans")
@pytest.mark.parametrize("nobody", ["127.0.0.1:1", "127.0.0.1:99999"])
def test_scheduler_that_does_not_answer_is_told_soon(monkeypatch: pytest.MonkeyPatch, nobody: str) -> None:
    monkeypatch.setattr(command, "PATIENCE_S", 0.2)
    assert run("survey", "plans", "--scheduler", nobody).stderr == f"no scheduler answers at {nobody}\n"


@pytest.mark.usefixtures("plans")
def test_where_the_extra_is_missing_it_is_told_how_to_install_it(monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setitem(sys.modules, "distributed", None)
    assert run("survey", "plans", "--scheduler", "127.0.0.1:1").stderr == (
        '--scheduler needs the extra cluster; install it with pip install "plumbnet[cluster]"\n'
    )
