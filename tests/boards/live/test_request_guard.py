"""Who may ask the server."""

import asyncio

import pytest
from starlette.types import Message, Receive, Scope, Send

from plumbnet.boards.live.request_guard import HEADERS, RequestGuard

SECRET = "the secret of this start"  # noqa: S105  invented
COOKIE = f"board-5000={'-'.join(SECRET.split())}"


async def behind(_scope: Scope, _receive: Receive, send: Send) -> None:
    await send({"type": "http.response.start", "status": 200, "headers": []})
    await send({"type": "http.response.body", "body": b"let in"})


def asked(path: str = "/answer.json", query: str = "", /, **headers: str | None) -> tuple[int, dict[str, str], str]:
    """Status, headers and text of a request with the headers that the page sends, some otherwise or left out."""
    usual: dict[str, str | None] = {
        "host": "127.0.0.1:5000",
        "cookie": COOKIE,
        "x-board": "1",
        "sec-fetch-site": "same-origin",
    }
    sent = {name.replace("_", "-"): value for name, value in headers.items()}
    pairs = [(name.encode(), value.encode()) for name, value in {**usual, **sent}.items() if value is not None]
    scope = {"type": "http", "method": "GET", "path": path, "query_string": query.encode(), "headers": pairs}
    found: list[Message] = []

    async def receive() -> Message:
        return {"type": "http.request"}

    async def send(message: Message) -> None:
        found.append(message)

    asyncio.run(RequestGuard(behind, 5000, "-".join(SECRET.split()))(scope, receive, send))
    told = {name.decode(): value.decode() for name, value in found[0]["headers"]}
    return found[0]["status"], told, b"".join(one.get("body", b"") for one in found[1:]).decode()


def test_page_of_this_start_is_let_in_under_both_names_of_this_machine() -> None:
    for name in ("127.0.0.1:5000", "localhost:5000"):
        assert asked(host=name)[0] == 200
    assert asked(origin="http://127.0.0.1:5000")[0] == 200
    assert asked("/board.css", x_board=None)[0] == 200


@pytest.mark.parametrize(
    ("headers", "why"),
    [
        ({"host": "evil.example:5000"}, "another name"),
        ({"host": "127.0.0.1"}, "another name"),
        ({"host": "127.0.0.1:5001"}, "another name"),
        ({"host": None}, "another name"),
        ({"origin": "http://evil.example"}, "another page"),
        ({"origin": "null"}, "another page"),
        ({"origin": "http://127.0.0.1:5001"}, "another page"),
        ({"sec_fetch_site": "cross-site"}, "another page"),
        ({"sec_fetch_site": "same-site"}, "another page"),
        ({"cookie": None}, "lacks the secret"),
        ({"cookie": "board-5000=guessed"}, "lacks the secret"),
        ({"cookie": "board-5001=the-secret-of-this-start"}, "lacks the secret"),
        ({"cookie": "\x01;;=,"}, "lacks the secret"),
        ({"x_board": None}, "only the board itself"),
    ],
)
def test_all_others_are_refused_in_a_sentence(headers: dict[str, str | None], why: str) -> None:
    status, _, text = asked(**headers)
    assert (status, why in text) == (403, True)


def test_secret_of_the_address_is_swapped_for_a_cookie_at_once() -> None:
    status, headers, _ = asked("/", "k=the-secret-of-this-start", cookie=None, x_board=None, sec_fetch_site="none")
    assert (status, headers["location"]) == (303, "/")
    assert headers["set-cookie"].startswith(COOKIE)
    assert {"HttpOnly", "SameSite=strict"} <= set(headers["set-cookie"].split("; "))
    assert asked("/", "k=guessed", cookie=None, x_board=None)[0] == 403
    assert asked("/answer.json", "k=the-secret-of-this-start", cookie=None)[0] == 403


def test_another_page_that_knows_the_address_opens_nothing() -> None:
    assert asked("/", "k=the-secret-of-this-start", cookie=None, sec_fetch_site="cross-site")[0] == 403


def test_every_answer_says_what_a_browser_may_do_with_it() -> None:
    for headers in ({}, {"host": "evil.example"}):
        assert HEADERS.items() <= asked(**headers)[1].items()
    assert "default-src 'none'" in HEADERS["content-security-policy"]
