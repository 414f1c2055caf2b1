"""A followed file to a server on this machine alone: the page, its answers, and word of each save."""

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
from plumbnet.boards.one_board import refused_or
from plumbnet.boards.page_files import TYPES, board_file, served_page

HOST = "127.0.0.1"
_LONGEST_S = 20.0
"""A question that takes longer is given up; its answer is not waited for."""
_MOMENT_S = 0.4
_PATIENCE = 60
"""So many moments a page waits for word of a save before it asks again."""
_MOST_BYTES = 4_000_000
_MOST_SIGNS = 4_000
_UNPROCESSABLE, _UNAVAILABLE, _TOO_LONG, _MISSING = 422, 503, 414, 404


@dataclass
class BoardServer:
    """Serves one board until it is stopped; `port` 0 takes one that is free. Raises OSError where it is taken.

    With `ends_after_s` it ends by itself so many seconds after no page waits any more for word of a save.
    """

    followed: FollowedFile
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
            Route("/board.json", self._board),
            Route("/answer.json", self._answer),
            Route("/picture.json", self._picture),
            Route("/walk.json", self._walk),
            Route("/heat-up.json", self._heat_up),
            Route("/changed.json", self._changed),
            Route("/{name}", self._file),
        ]
        return Starlette(routes=routes)

    async def _page(self, _request: Request) -> Response:
        return HTMLResponse(served_page(str(self.followed.board.data["title"])))

    async def _file(self, request: Request) -> Response:
        name = str(request.path_params["name"])
        content = board_file(name)
        if content is None:
            return _told({"refused": "there is no such page"}, _MISSING)
        return Response(content, media_type=TYPES[name.rpartition(".")[2]])

    async def _board(self, _request: Request) -> Response:
        return _told(self.followed.board.data)

    async def _answer(self, request: Request) -> Response:
        board = self.followed.board
        return await self._asked(request, lambda: board.answer(request.query_params.get("state", "")))

    async def _picture(self, request: Request) -> Response:
        board = self.followed.board
        return await self._asked(request, lambda: board.picture(request.query_params.get("state", "")))

    async def _walk(self, request: Request) -> Response:
        board, asked = self.followed.board, request.query_params
        heater = asked.get("heater", "")
        return await self._asked(request, lambda: {"walk": board.walk(asked.get("state", ""), heater)})

    async def _heat_up(self, request: Request) -> Response:
        board, asked = self.followed.board, request.query_params
        return await self._asked(request, lambda: board.heat_up(asked.get("state", ""), asked.get("heater", "")))

    async def _asked(self, request: Request, work: Callable[[], Mapping[str, object]]) -> Response:
        """An answer within bounds of size and time, or why there is none."""
        if len(request.url.query) > _MOST_SIGNS:
            return _told({"refused": "this is more than a board is asked at a time"}, _TOO_LONG)
        try:
            found = await asyncio.wait_for(run_in_threadpool(self._worked_out, work), _LONGEST_S)
        except TimeoutError:
            return _told({"refused": "This takes too long to work out here; ask plumbnet whatif."}, _UNAVAILABLE)
        return _told(found, _UNPROCESSABLE if "refused" in found else 200)

    def _worked_out(self, work: Callable[[], Mapping[str, object]]) -> Mapping[str, object]:
        with self._one_at_a_time:
            return refused_or(work)

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


def _told(data: Mapping[str, object], status: int = 200) -> Response:
    content = json.dumps(data, separators=(",", ":"), allow_nan=False).encode()
    if len(content) > _MOST_BYTES:
        content, status = b'{"refused":"this is more than a board shows"}', _UNPROCESSABLE
    return Response(content, status, media_type="application/json")
