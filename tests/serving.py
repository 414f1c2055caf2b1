"""A live board that serves in a thread, for tests that ask it or open it in a browser."""

import http.client
import threading
from collections.abc import Iterator
from contextlib import contextmanager

from plumbnet.boards.live.board_server import BoardServer
from plumbnet.boards.live.followed_file import FollowedFile
from plumbnet.boards.live.shown_page import ShownPage

PATIENCE_S = 60.0


@contextmanager
def served(followed: FollowedFile[ShownPage]) -> Iterator[BoardServer]:
    """A server that answers, until the block ends."""
    server = BoardServer(followed)
    begun = threading.Event()
    thread = threading.Thread(target=server.run, args=(begun.set,), daemon=True)
    thread.start()
    assert begun.wait(PATIENCE_S)
    try:
        yield server
    finally:
        server.stop()
        thread.join(PATIENCE_S)
        assert not thread.is_alive()


def asked(server: BoardServer, path: str, given: str | None = None, **headers: str) -> tuple[int, bytes]:
    """Status and body of what the page would ask, or hand in."""
    connection = http.client.HTTPConnection("127.0.0.1", server.port, timeout=PATIENCE_S)
    own = {"cookie": f"board-{server.port}={server.secret}", "x-board": "1"}
    try:
        method = "GET" if given is None else "POST"
        connection.request(method, path, given, headers={**own, **headers})
        reply = connection.getresponse()
        return reply.status, reply.read()
    finally:
        connection.close()
