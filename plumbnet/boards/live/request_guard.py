"""Who may ask the server: the page that this start has opened, by its own name, and nobody else."""

from hmac import compare_digest
from http.cookies import CookieError, SimpleCookie
from urllib.parse import parse_qs

from starlette.responses import PlainTextResponse, RedirectResponse
from starlette.types import ASGIApp, Message, Receive, Scope, Send

POLICY = (
    "default-src 'none'; script-src 'self'; style-src 'self'; connect-src 'self'; "
    "frame-ancestors 'none'; base-uri 'none'; form-action 'none'"
)
HEADERS = {
    "content-security-policy": POLICY,
    "cross-origin-opener-policy": "same-origin",
    "cross-origin-resource-policy": "same-origin",
    "x-content-type-options": "nosniff",
    "referrer-policy": "no-referrer",
    "cache-control": "no-store",
}
"""Sent with every answer."""
_REFUSED = 403


class RequestGuard:
    """Host, Origin, where a request comes from, and the secret of this start, before anything is looked up.

    The secret comes once in the address that is opened, and is swapped for a cookie at once, so that it stays in no
    history. What answers with data asks for a header, too, that no page elsewhere may send.
    """

    def __init__(self, app: ASGIApp, port: int, secret: str) -> None:
        self.app = app
        self.secret = secret
        self.cookie = f"board-{port}"
        self.hosts = {f"127.0.0.1:{port}", f"localhost:{port}"}

    async def __call__(self, scope: Scope, receive: Receive, send: Send) -> None:
        """Pass a request on, or refuse it."""
        if scope["type"] != "http":
            await self.app(scope, receive, send)
            return

        async def guarded(message: Message) -> None:
            if message["type"] == "http.response.start":
                own = [(name.encode(), value.encode()) for name, value in HEADERS.items()]
                message["headers"] = [*message["headers"], *own]
            await send(message)

        headers = _headers(scope)
        why = self._refusal(scope, headers)
        if why:
            await PlainTextResponse(f"refused: {why}\n", _REFUSED)(scope, receive, guarded)
        elif self._is_right(_asked(scope)):
            reply = RedirectResponse("/", 303)
            reply.set_cookie(self.cookie, self.secret, httponly=True, samesite="strict")
            await reply(scope, receive, guarded)
        else:
            await self.app(scope, receive, guarded)

    def _refusal(self, scope: Scope, headers: dict[str, list[str]]) -> str:
        """Why a request is refused; empty where it is not."""
        origins = {f"http://{host}" for host in self.hosts}
        if len(headers.get("host", [])) != 1 or headers["host"][0] not in self.hosts:
            return "it was asked under another name than that of this machine"
        sites = {*headers.get("sec-fetch-site", [])} - {"same-origin", "none"}
        if sites or not {*headers.get("origin", [])} <= origins:
            return "another page asks"
        if not (scope["path"] == "/" and self._is_right(_asked(scope))) and not self._is_right(self._kept(headers)):
            return "the address lacks the secret of this start; open the one that the program has printed"
        if scope["path"].endswith(".json") and headers.get("x-board") != ["1"]:
            return "only the board itself may ask"
        return ""

    def _is_right(self, secret: str) -> bool:
        return compare_digest(secret.encode(), self.secret.encode())

    def _kept(self, headers: dict[str, list[str]]) -> str:
        """The secret that a cookie brings back."""
        try:
            cookies = SimpleCookie("; ".join(headers.get("cookie", [])))
        except CookieError:
            return ""
        return str(cookies[self.cookie].value) if self.cookie in cookies else ""


def _headers(scope: Scope) -> dict[str, list[str]]:
    found: dict[str, list[str]] = {}
    for name, value in scope["headers"]:
        found.setdefault(name.decode("latin-1").lower(), []).append(value.decode("latin-1"))
    return found


def _asked(scope: Scope) -> str:
    """The secret in the address."""
    query: str = scope["query_string"].decode("latin-1")
    return parse_qs(query).get("k", [""])[0]
