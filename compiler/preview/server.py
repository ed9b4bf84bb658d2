"""Answers browsers on this machine: a shell, the sheets inside it, and a stream that says when there are newer ones.

Bound to loopback. A request must name this very host and port, and must not come from another page, so that no site
that a coach has open can read a sheet (DNS rebinding, cross-site requests). Nothing but its own pages is served; there
are no paths into the file system.
"""

from __future__ import annotations

import re
from http import HTTPStatus
from http.server import BaseHTTPRequestHandler, ThreadingHTTPServer
from importlib.resources import files
from threading import Event
from typing import Final

from setwright.preview.stage import Stage

LOOPBACK: Final = "127.0.0.1"
HEARTBEAT: Final = 15.0  # seconds; writing finds out that a browser has gone
SHELL_POLICY: Final = (
    "default-src 'none'; script-src 'self'; style-src 'self'; img-src data:; connect-src 'self'; frame-src 'self'; "
    "base-uri 'none'; form-action 'none'; frame-ancestors 'none'"
)
SHEET_POLICY: Final = "frame-ancestors 'self'"  # the rest stands in the sheet itself
_SHELL: Final = {
    "/": ("shell.html", "text/html; charset=utf-8"),
    "/shell.js": ("shell.js", "text/javascript; charset=utf-8"),
    "/shell.css": ("shell.css", "text/css; charset=utf-8"),
}
_SHEET: Final = re.compile(r"/sheets/(\d{1,6})(?:\?v=\d+)?")


class Server(ThreadingHTTPServer):
    """Serves one stage; `close` also ends the streams."""

    daemon_threads = True

    def __init__(self, stage: Stage, port: int = 0) -> None:
        """Port 0 takes any that is free. Raises `OSError` where the port is taken."""
        self.stage = stage
        self.closing = Event()
        super().__init__((LOOPBACK, port), _Answers)
        self.hosts = frozenset(f"{name}:{self.server_port}" for name in (LOOPBACK, "localhost"))

    @property
    def address(self) -> str:
        """Where a browser finds it."""
        return f"http://{LOOPBACK}:{self.server_port}/"

    def close(self) -> None:
        """Stop answering."""
        self.closing.set()
        self.shutdown()
        self.server_close()


class _Answers(BaseHTTPRequestHandler):
    server: Server
    protocol_version = "HTTP/1.0"  # a connection an answer
    server_version, sys_version = "setwright", ""

    def do_GET(self) -> None:
        """One of our own pages, to one of our own pages or to a person."""
        if not self._is_welcome():
            self._send(HTTPStatus.FORBIDDEN, "text/plain", b"only for pages of this preview\n")
        elif self.path in _SHELL:
            name, kind = _SHELL[self.path]
            self._send(HTTPStatus.OK, kind, files(__package__).joinpath(name).read_bytes(), SHELL_POLICY)
        elif self.path == "/events":
            self._stream()
        else:
            self._sheet()

    def log_message(self, format: str, *args: object) -> None:
        """Requests are nobody's news."""

    def _is_welcome(self) -> bool:
        """By Host, Origin and Sec-Fetch-Site (Fetch Metadata Request Headers, W3C)."""
        origin = self.headers.get("Origin")
        site = self.headers.get("Sec-Fetch-Site", "none")
        own = {f"http://{host}" for host in self.server.hosts}
        return (
            self.headers.get("Host") in self.server.hosts
            and (origin is None or origin in own)
            and site in ("none", "same-origin")
        )

    def _sheet(self) -> None:
        asked = _SHEET.fullmatch(self.path)
        page = self.server.stage.page(int(asked.group(1)) - 1) if asked else None
        if page is None:
            self._send(HTTPStatus.NOT_FOUND, "text/plain", b"no such page\n")
        else:
            self._send(HTTPStatus.OK, "text/html; charset=utf-8", page.content, SHEET_POLICY)

    def _stream(self) -> None:
        """Server-sent events (HTML Living Standard, 9.2): the state now, and each newer one."""
        self._head(HTTPStatus.OK, "text/event-stream", None)
        seen = 0
        while not self.server.closing.is_set():
            news = self.server.stage.news(seen, HEARTBEAT)
            said = f"data: {news[1]}\n\n" if news else ": still here\n\n"
            seen = news[0] if news else seen
            try:
                self.wfile.write(said.encode())
                self.wfile.flush()
            except OSError:  # the browser has gone
                return

    def _send(self, status: HTTPStatus, kind: str, content: bytes, policy: str | None = None) -> None:
        self._head(status, kind, policy, len(content))
        self.wfile.write(content)

    def _head(self, status: HTTPStatus, kind: str, policy: str | None, length: int | None = None) -> None:
        self.send_response(status)
        headers = {
            "Content-Type": kind,
            "Cache-Control": "no-store",
            "X-Content-Type-Options": "nosniff",
            "Referrer-Policy": "no-referrer",
            "Cross-Origin-Resource-Policy": "same-origin",
            "Cross-Origin-Opener-Policy": "same-origin",
        }
        if policy is not None:
            headers["Content-Security-Policy"] = policy
        if length is not None:
            headers["Content-Length"] = str(length)
        for name, value in headers.items():
            self.send_header(name, value)
        self.end_headers()
