"""What is kept comes back as it was, what is damaged does not, and the oldest makes room."""

from __future__ import annotations

import os

import numpy as np
from hypothesis import given, strategies as st

from pegwright.shape import USUAL_HANDLING
from pegwright.workshop import bring_to_rest, starter_pattern, work
from pegwright.workshop.cache import fetch_result, key_of, store_result


def test_every_altered_byte_is_noticed(tmp_path):
    store_result("a", b"tide table", tmp_path)
    assert fetch_result("a", tmp_path) == b"tide table"
    (file,) = tmp_path.iterdir()
    whole = file.read_bytes()
    for i in range(len(whole)):
        file.write_bytes(whole[:i] + bytes([whole[i] ^ 1]) + whole[i + 1 :])
        assert fetch_result("a", tmp_path) is None
        file.write_bytes(whole[:i])
        assert fetch_result("a", tmp_path) is None


def test_what_was_used_longest_ago_makes_room(tmp_path):
    for age, key in enumerate("abc"):
        store_result(key, bytes(100), tmp_path)
        os.utime(tmp_path / f"{key}.kept", (1000 + age, 1000 + age))
    assert fetch_result("a", tmp_path) is not None
    store_result("d", bytes(100), tmp_path, most_bytes=3 * 132)
    assert [key for key in "abcd" if fetch_result(key, tmp_path) is not None] == ["a", "c", "d"]


def test_a_folder_that_cannot_be_is_no_fault(tmp_path):
    (tmp_path / "file").write_bytes(b"")
    store_result("a", b"x", tmp_path / "file")
    assert fetch_result("a", tmp_path / "file") is None


@given(st.lists(st.text()), st.lists(st.text()))
def test_keys_differ_where_parts_do(one, other):
    assert (key_of(*one) == key_of(*other)) == (one == other)


def test_a_piece_comes_back_and_is_made_anew_where_its_entry_is_damaged(tmp_path, monkeypatch):
    monkeypatch.setenv("PEGWRIGHT_CACHE", str(tmp_path))
    made = work(starter_pattern("Ferry", pegs=4))
    first = bring_to_rest(made)
    (file,) = tmp_path.iterdir()
    heard: list[tuple[str, int, int]] = []
    for damage in (b"", file.read_bytes()[:-1]):
        heard.clear()
        again = bring_to_rest(made, lambda *told: heard.append(told))
        assert heard == []
        assert again.crossing_check == first.crossing_check
        assert again.relaxed.findings == first.relaxed.findings
        for was, now in zip(first.relaxed.positions_mm, again.relaxed.positions_mm, strict=True):
            assert np.array_equal(was, now)
        file.write_bytes(damage)
        anew = bring_to_rest(made, lambda *told: heard.append(told))
        assert heard
        assert [done for _, done, _ in heard] == sorted(done for _, done, _ in heard)
        assert np.array_equal(anew.relaxed.positions_mm[0], first.relaxed.positions_mm[0])
    bring_to_rest(made, handling=USUAL_HANDLING._replace(tug_n=0.2))
    assert len(list(tmp_path.iterdir())) == 2


def test_an_entry_under_the_name_of_another_counts_as_none(tmp_path):
    """It was taken for what its name says, and broke whatever read it."""
    store_result("a" * 64, b"one", tmp_path)
    store_result("b" * 64, b"other", tmp_path)
    one, other = sorted(tmp_path.iterdir())
    other.write_bytes(one.read_bytes())
    assert fetch_result("a" * 64, tmp_path) == b"one"
    assert fetch_result("b" * 64, tmp_path) is None


def test_a_pipe_in_the_cache_is_not_waited_for(tmp_path):
    os.mkfifo(tmp_path / f"{'c' * 64}.kept")
    assert fetch_result("c" * 64, tmp_path) is None
