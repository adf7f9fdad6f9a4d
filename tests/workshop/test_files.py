"""Files are replaced whole or not at all."""

from __future__ import annotations

import os
import socket
import stat
from pathlib import Path

import pytest

from pegwright.workshop import files


def test_a_file_is_replaced_whole(tmp_path):
    path = tmp_path / "ebb.json"
    files.replace_file(path, b"old")
    files.replace_file(path, b"new")
    assert path.read_bytes() == b"new"
    assert list(tmp_path.iterdir()) == [path], "nothing is left lying beside it"


def test_a_failure_half_way_leaves_the_old_file(tmp_path, monkeypatch):
    path = tmp_path / "ebb.json"
    files.replace_file(path, b"old")

    def full(_):
        raise OSError("no space left")

    monkeypatch.setattr(os, "fsync", full)
    with pytest.raises(OSError, match="no space"):
        files.replace_file(path, b"new")
    assert path.read_bytes() == b"old"
    assert list(tmp_path.iterdir()) == [path]


def test_a_link_stays_and_what_it_leads_to_is_replaced(tmp_path):
    (tmp_path / "shelf").mkdir()
    (tmp_path / "shelf" / "ebb.json").write_bytes(b"old")
    (tmp_path / "shelf" / "ebb.json").chmod(0o600)
    (tmp_path / "here.json").symlink_to("there.json")
    (tmp_path / "there.json").symlink_to("shelf/ebb.json")
    (tmp_path / "later.json").symlink_to("shelf/neap.json")  # leads to nothing yet
    files.replace_file(tmp_path / "here.json", b"new")
    files.replace_file(tmp_path / "later.json", b"first")
    assert (tmp_path / "here.json").readlink().name == "there.json"
    assert (tmp_path / "there.json").is_symlink()
    assert (tmp_path / "shelf" / "ebb.json").read_bytes() == b"new"
    assert stat.S_IMODE((tmp_path / "shelf" / "ebb.json").stat().st_mode) == 0o600
    assert (tmp_path / "shelf" / "neap.json").read_bytes() == b"first"
    files.replace_file(tmp_path / "here.json", b"own", follow=False)
    assert not (tmp_path / "here.json").is_symlink()
    assert (tmp_path / "shelf" / "ebb.json").read_bytes() == b"new"


@pytest.mark.parametrize("linked", [False, True])
@pytest.mark.parametrize("kind", ["pipe", "socket", "folder", "device", "loop"])
def test_what_is_no_plain_file_is_left_alone(tmp_path, kind, linked, monkeypatch):
    monkeypatch.chdir(tmp_path)
    place = path = Path("place")
    with socket.socket(socket.AF_UNIX) as plug:
        match kind:
            case "pipe":
                os.mkfifo(place)
            case "socket":
                plug.bind(str(place))
            case "folder":
                place.mkdir()
            case "loop":
                place.symlink_to(place)
            case "device":
                place = path = Path(os.devnull)
        if linked:
            path = Path("link")
            path.symlink_to(place)
        before = place.lstat()
        with pytest.raises(OSError, match="no plain file"):
            files.replace_file(path, b"new")
        assert (place.lstat().st_mode, place.lstat().st_ino) == (before.st_mode, before.st_ino)


@pytest.mark.parametrize("name", ["missing.json", "."])
def test_what_cannot_be_read_is_a_finding(tmp_path, name):
    result = files.open_pattern(tmp_path / name)
    assert result.pattern is None
    assert [f.code for f in result.findings] == ["file-unreadable"]


def test_a_pipe_is_a_finding_and_is_not_waited_for(tmp_path):
    """`check` of a named pipe never ended."""
    os.mkfifo(tmp_path / "tide.json")
    (found,) = files.open_pattern(tmp_path / "tide.json").findings
    assert found.code == "file-unreadable"
