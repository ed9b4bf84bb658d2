"""Who the preview answers, and what it serves: its own pages to its own pages, and nothing else."""

from __future__ import annotations

import json
from collections.abc import Iterator
from http.client import HTTPConnection, HTTPResponse
from threading import Thread

import pytest

from setwright.preview.building import Built, Page
from setwright.preview.server import Server
from setwright.preview.stage import Stage

SHEET = Page("Pier, Oda", b"<!DOCTYPE html><title>Pier</title>")


@pytest.fixture
def server() -> Iterator[Server]:
    stage = Stage()
    stage.show(Built((SHEET,), (), ()))
    made = Server(stage)
    Thread(target=made.serve_forever, daemon=True).start()
    yield made
    made.close()


def answer(server: Server, path: str, method: str = "GET", **headers: str) -> HTTPResponse:
    connection = HTTPConnection("127.0.0.1", server.server_port, timeout=5)
    connection.request(method, path, headers={name.replace("_", "-"): value for name, value in headers.items()})
    return connection.getresponse()


def test_it_listens_on_loopback_alone(server: Server) -> None:
    assert server.server_address[0] == "127.0.0.1"
    assert server.address == f"http://127.0.0.1:{server.server_port}/"


def test_the_shell_and_the_sheets(server: Server) -> None:
    shell = answer(server, "/")
    assert shell.status == 200
    assert b'src="shell.js"' in shell.read()
    assert "frame-ancestors 'none'" in (shell.getheader("Content-Security-Policy") or "")
    assert answer(server, "/shell.js").getheader("Content-Type") == "text/javascript; charset=utf-8"
    sheet = answer(server, "/sheets/1?v=3")
    assert (sheet.status, sheet.read()) == (200, SHEET.content)
    assert sheet.getheader("Content-Security-Policy") == "frame-ancestors 'self'"
    assert sheet.getheader("Cache-Control") == "no-store"
    assert sheet.getheader("X-Content-Type-Options") == "nosniff"


# Fetch Metadata Request Headers (W3C): a browser says where a request comes from.
@pytest.mark.parametrize(
    "headers",
    [
        {"Host": "evil.example"},
        {"Host": "evil.example:{port}"},
        {"Origin": "http://evil.example"},
        {"Origin": "null"},
        {"Origin": "http://127.0.0.1:1"},
        {"Sec_Fetch_Site": "cross-site"},
        {"Sec_Fetch_Site": "same-site"},
    ],
)
@pytest.mark.parametrize("path", ["/", "/sheets/1", "/events"])
def test_a_page_from_elsewhere_gets_nothing(server: Server, path: str, headers: dict[str, str]) -> None:
    filled = {name: value.format(port=server.server_port) for name, value in headers.items()}
    refused = answer(server, path, **filled)
    assert refused.status == 403
    assert refused.read() == b"only for pages of this preview\n"


def test_its_own_pages_and_localhost_are_welcome(server: Server) -> None:
    own = f"127.0.0.1:{server.server_port}"
    assert answer(server, "/sheets/1", Origin=f"http://{own}", Sec_Fetch_Site="same-origin").status == 200
    assert answer(server, "/", Host=f"localhost:{server.server_port}", Sec_Fetch_Site="none").status == 200


@pytest.mark.parametrize(
    "path",
    [
        *("/sheets/0", "/sheets/2", "/sheets/", "/sheets/1/", "/sheets/-1", "/sheets/1?w=1", "/sheets/1111111111111"),
        *(
            "/../pyproject.toml",
            "/shell.html",
            "/sheets/../../etc/passwd",
            "/%2e%2e/etc/passwd",
            "//etc/passwd",
            "/server.py",
        ),
    ],
)
def test_there_is_no_way_into_the_file_system(server: Server, path: str) -> None:
    assert answer(server, path).status == 404


@pytest.mark.parametrize("method", ["POST", "PUT", "DELETE", "OPTIONS", "HEAD"])
def test_nothing_can_be_sent_to_it(server: Server, method: str) -> None:
    assert answer(server, "/", method).status == 501


def test_the_stream_tells_the_state_and_each_newer_one(server: Server) -> None:
    stream = answer(server, "/events")
    assert stream.getheader("Content-Type") == "text/event-stream"
    first = told(stream)
    assert first == {"pages": ["Pier, Oda"], "version": 1, "found": []}
    server.stage.show(Built((Page("Pier, Oda", b"newer"),), (), ()))
    assert told(stream)["version"] == 2
    server.stage.show(Built((), (), ()))  # could not be built: the last sheet stays
    assert told(stream) == {"pages": ["Pier, Oda"], "version": 2, "found": []}
    server.stage.show(Built((Page("Pier, Oda", b"newer"),), (), ()))  # the same sheet is not loaded again
    assert told(stream)["version"] == 2


def told(stream: HTTPResponse) -> dict[str, object]:
    line = stream.readline()
    assert stream.readline() == b"\n"
    said: dict[str, object] = json.loads(line.removeprefix(b"data: "))
    return said
