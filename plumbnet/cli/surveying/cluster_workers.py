"""The workers of a Dask cluster as an executor, or one calm sentence and exit status 2; alone it imports Dask."""

import logging
from collections.abc import Callable, Iterator
from concurrent.futures import CancelledError, Executor, Future
from contextlib import contextmanager
from importlib.metadata import version
from typing import TYPE_CHECKING, Final, ParamSpec, TypeVar

from plumbnet.cli.arguments import fail
from plumbnet.cli.surveying.survey_jobs import KEPT
from plumbnet.layout.yaml import quoted
from plumbnet.report.output import program_version
from plumbnet.rules import listed

if TYPE_CHECKING:
    from distributed import Client

PATIENCE_S: Final = 10
"""How long a scheduler has to answer."""
_SCHEME: Final = "://"
_Asked = ParamSpec("_Asked")
_Answer = TypeVar("_Answer")


@contextmanager
def cluster(address: str) -> Iterator[tuple[Executor, int]]:
    """The workers of the scheduler at an address, and how many questions they answer at a time.

    Says so and exits where there is none, where a worker has another version of the program, and where the cluster
    is lost while it is used.
    """
    try:
        from distributed import Client, KilledWorker  # noqa: PLC0415  an extra, and slow to import
        from distributed.comm.addressing import get_address_host_port  # noqa: PLC0415  likewise
    except ImportError:
        fail("--scheduler needs the extra cluster", advice='install it with pip install "plumbnet[cluster]"')
    full = address if _SCHEME in address else f"tcp{_SCHEME}{address}"
    try:
        get_address_host_port(full, strict=True)
    except ValueError:
        fail(f"{quoted(address)} is no address of a scheduler", advice="write it as host:port or tcp://host:port")
    try:
        with _no_log(), Client(full, timeout=PATIENCE_S, set_as_default=False) as client:
            _refuse_unfit(client, address)
            yield _Workers(client), sum(client.nthreads().values())
    except KilledWorker:
        fail(f"workers of the cluster ended over a file; {KEPT}")
    except CancelledError:
        fail(f"the scheduler at {address} is lost; {KEPT}")
    except (TimeoutError, OSError, OverflowError):
        fail(f"no scheduler answers at {address}")


class _Workers(Executor):
    """The workers as the library offers them, asked only while their scheduler is there.

    What is asked of a scheduler that is lost would wait for ever; what was asked before is given up by the library.
    """

    def __init__(self, client: "Client") -> None:
        self._client = client
        self._executor = client.get_executor(pure=False)

    def submit(self, ask: Callable[_Asked, _Answer], /, *args: _Asked.args, **kwargs: _Asked.kwargs) -> Future[_Answer]:
        """The answer to come. Raises CancelledError where the scheduler is lost."""
        if self._client.status != "running":
            raise CancelledError
        answer: Future[_Answer] = self._executor.submit(ask, *args, **kwargs)
        return answer


@contextmanager
def _no_log() -> Iterator[None]:
    """What the library has to say is said in our words."""
    before = logging.root.manager.disable
    logging.disable(logging.CRITICAL)
    try:
        yield
    finally:
        logging.disable(before)


def _refuse_unfit(client: "Client", address: str) -> None:
    found = client.run(version, "plumbnet", on_error="return")
    if not found:
        fail(f"the scheduler at {address} has no worker")
    ours = program_version()
    other = [f"{worker} has {_called(one)}" for worker, one in sorted(found.items()) if one != ours]
    if other:
        fail(f"every worker must have plumbnet {ours}: {listed(other)}")


def _called(found: object) -> str:
    return found if isinstance(found, str) else "none"
