"""Files are replaced whole or not at all."""

from __future__ import annotations

import os

import pytest

from pegwright.workshop import files


def test_a_file_is_replaced_whole(tmp_path):
    path = tmp_path / "ebb.json"
    files.write_whole(path, b"old")
    files.write_whole(path, b"new")
    assert path.read_bytes() == b"new"
    assert list(tmp_path.iterdir()) == [path], "nothing is left lying beside it"


def test_a_failure_half_way_leaves_the_old_file(tmp_path, monkeypatch):
    path = tmp_path / "ebb.json"
    files.write_whole(path, b"old")

    def full(_):
        raise OSError("no space left")

    monkeypatch.setattr(os, "fsync", full)
    with pytest.raises(OSError, match="no space"):
        files.write_whole(path, b"new")
    assert path.read_bytes() == b"old"
    assert list(tmp_path.iterdir()) == [path]


@pytest.mark.parametrize("name", ["missing.json", "."])
def test_what_cannot_be_read_is_a_finding(tmp_path, name):
    result = files.open_pattern(tmp_path / name)
    assert result.pattern is None
    assert [f.code for f in result.findings] == ["file-unreadable"]
