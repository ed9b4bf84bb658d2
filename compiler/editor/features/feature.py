"""What a feature of the editor is: a request of the protocol, and a function from session and question to answer."""

from __future__ import annotations

from collections.abc import Callable
from typing import Any

from setwright.editor.session import EditorSession
from setwright.record import record


@record
class Feature:
    """One request that the server answers; `options` are what it says of itself when it starts."""

    method: str
    answer: Callable[[EditorSession, Any], Any]
    options: Any = None
