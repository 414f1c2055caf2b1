"""A followed file to a server on this machine alone: its page, what that asks and hands in, and word of each save."""

import asyncio
import contextlib
import json
import secrets
import socket
import threading
from collections.abc import Callable, Mapping
from dataclasses import dataclass, field
from functools import cached_property

import uvicorn
from starlette.applications import Starlette
from starlette.concurrency import run_in_threadpool
from starlette.requests import Request
from starlette.responses import HTMLResponse, Response
from starlette.routing import Route

from plumbnet.boards.live.followed_file import FollowedFile
from plumbnet.boards.live.request_guard import RequestGuard
from plumbnet.boards.live.shown_page import ShownPage
from plumbnet.boards.one_board import Question, Told, refused_or
from plumbnet.boards.page_files import TYPES, board_file

HOST = "127.0.0.1"
_LONGEST_S = 20.0
"""A question that takes longer is given up; its answer is not waited for."""
_MOMENT_S = 0.4
_PATIENCE = 60
"""So many moments a page waits for word of a save before it asks again."""
_MOST_BYTES = 4_000_000
_MOST_SIGNS = 4_000
_UNPROCESSABLE, _UNAVAILABLE, _TOO_LONG, _TOO_LARGE, _MISSING = 422, 503, 414, 413, 404
_NO_PAGE: Told = {"refused": "there is no such page"}
_TOO_MUCH: Told = {"refused": "this is more than a board is asked at a time"}


@dataclass
class BoardServer:
    """Serves one board until it is stopped; `port` 0 takes one that is free. Raises OSError where it is taken.

    With `ends_after_s` it ends by itself so many seconds after no page waits any more for word of a save.
    """

    followed: FollowedFile[ShownPage]
    port: int = 0
    ends_after_s: float | None = None
    secret: str = field(default_factory=lambda: secrets.token_urlsafe(24))
    _socket: socket.socket = field(init=False)
    _saved: asyncio.Event = field(default_factory=asyncio.Event)
    _waiting: int = 0
    _one_at_a_time: threading.Lock = field(default_factory=threading.Lock)

    def __post_init__(self) -> None:
        # With the protocol left to the system asyncio sets no TCP_NODELAY, which costs each answer 40 ms.
        self._socket = socket.socket(socket.AF_INET, socket.SOCK_STREAM, socket.IPPROTO_TCP)
        self._socket.setsockopt(socket.SOL_SOCKET, socket.SO_REUSEADDR, 1)
        try:
            self._socket.bind((HOST, self.port))
        except OSError:
            self._socket.close()
            raise
        self.port = self._socket.getsockname()[1]

    @property
    def address(self) -> str:
        """What a browser opens, the secret in it."""
        return f"http://{HOST}:{self.port}/?k={self.secret}"

    @cached_property
    def _server(self) -> uvicorn.Server:
        app = RequestGuard(self._application(), self.port, self.secret)
        config = uvicorn.Config(
            app,
            log_level="error",
            access_log=False,
            server_header=False,
            date_header=False,
            lifespan="off",
            timeout_graceful_shutdown=2,
            ws="none",
        )
        return uvicorn.Server(config)

    def run(self, started: Callable[[], None] = lambda: None) -> None:
        """Serve until it is stopped or interrupted; `started` is called once the address answers."""
        asyncio.run(self._run(started))

    async def _run(self, started: Callable[[], None]) -> None:
        loop = asyncio.get_running_loop()
        follower = threading.Thread(
            target=self.followed.follow, args=(lambda: loop.call_soon_threadsafe(self._tell),), daemon=True
        )
        follower.start()
        loop.call_soon(lambda: loop.run_in_executor(None, started))
        try:
            await self._server.serve(sockets=[self._socket])
        finally:
            self.followed.stop()
            self._tell()
            await asyncio.to_thread(follower.join)

    def stop(self) -> None:
        """End `run`, from another thread."""
        self._server.should_exit = True

    def _tell(self) -> None:
        self._saved.set()
        self._saved = asyncio.Event()

    def _application(self) -> Starlette:
        routes = [
            Route("/", self._page),
            Route("/changed.json", self._changed),
            Route("/{name}.json", self._asked),
            Route("/{name}.json", self._handed_in, methods=["POST"]),
            Route("/{name}", self._file),
        ]
        return Starlette(routes=routes)

    async def _page(self, _request: Request) -> Response:
        return HTMLResponse(self.followed.shown.html)

    async def _file(self, request: Request) -> Response:
        name = str(request.path_params["name"])
        content = board_file(name)
        if content is None:
            return _told(_NO_PAGE, _MISSING)
        return Response(content, media_type=TYPES[name.rpartition(".")[2]])

    async def _asked(self, request: Request) -> Response:
        """What the page asks."""
        if len(request.url.query) > _MOST_SIGNS:
            return _told(_TOO_MUCH, _TOO_LONG)
        return await self._answered(self.followed.shown.questions, request, dict(request.query_params))

    async def _handed_in(self, request: Request) -> Response:
        """What the page hands in."""
        given = bytearray()
        async for piece in request.stream():
            given += piece
            if len(given) > _MOST_SIGNS:
                return _told(_TOO_MUCH, _TOO_LARGE)
        try:
            told = json.loads(given)
        except ValueError:
            told = None
        if not isinstance(told, dict):
            return _told({"refused": "this is nothing that a board takes"}, _UNPROCESSABLE)
        return await self._answered(self.followed.shown.takes, request, told)

    async def _answered(self, by_name: Mapping[str, Question], request: Request, told: Told) -> Response:
        """An answer within bounds of size and time, or why there is none."""
        question = by_name.get(str(request.path_params["name"]))
        if question is None:
            return _told(_NO_PAGE, _MISSING)
        try:
            found = await asyncio.wait_for(run_in_threadpool(self._worked_out, question, told), _LONGEST_S)
        except TimeoutError:
            return _told({"refused": "This takes too long to work out here; ask plumbnet whatif."}, _UNAVAILABLE)
        return _told(found, _UNPROCESSABLE if "refused" in found else 200)

    def _worked_out(self, question: Question, told: Told) -> Told:
        with self._one_at_a_time:
            return refused_or(lambda: question(told))

    async def _changed(self, request: Request) -> Response:
        """Waits for a save that the page has not seen, and says what is wrong with the file, or nothing."""
        saved = self._saved
        self._waiting += 1
        try:
            if request.query_params.get("seen") == str(self.followed.seen):
                await self._heard(saved)
        finally:
            self._waiting -= 1
            if self.ends_after_s is not None:
                asyncio.get_running_loop().call_later(self.ends_after_s, self._end_if_nobody_waits)
        return _told({"seen": self.followed.seen, "mistake": self.followed.mistake})

    def _end_if_nobody_waits(self) -> None:
        if not self._waiting:
            self.stop()

    async def _heard(self, saved: asyncio.Event) -> None:
        """Wait for a save for a while, and not beyond the end of the server."""
        for _ in range(_PATIENCE):
            if saved.is_set() or self._server.should_exit:
                return
            with contextlib.suppress(TimeoutError):
                await asyncio.wait_for(saved.wait(), _MOMENT_S)


def _told(data: Told, status: int = 200) -> Response:
    content = json.dumps(data, separators=(",", ":"), allow_nan=False).encode()
    if len(content) > _MOST_BYTES:
        content, status = b'{"refused":"this is more than a board shows"}', _UNPROCESSABLE
    return Response(content, status, media_type="application/json")
