"""Snapshots of sheets as files of their own kind, so that a reviewer can open them."""

from __future__ import annotations

import pytest
from syrupy.assertion import SnapshotAssertion
from syrupy.extensions.single_file import SingleFileSnapshotExtension, WriteMode


class Html(SingleFileSnapshotExtension):
    file_extension = "html"
    _write_mode = WriteMode.TEXT


class Markdown(SingleFileSnapshotExtension):
    file_extension = "md"
    _write_mode = WriteMode.TEXT


@pytest.fixture
def html_snapshot(snapshot: SnapshotAssertion) -> SnapshotAssertion:
    return snapshot.use_extension(Html)


@pytest.fixture
def markdown_snapshot(snapshot: SnapshotAssertion) -> SnapshotAssertion:
    return snapshot.use_extension(Markdown)
