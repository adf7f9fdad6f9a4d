"""Read captions leniently: WebVTT (W3C), SRT, and plain lines that begin with a time, as [1:05].

A faulty cue is a finding; the rest is kept.
"""

from __future__ import annotations

import codecs
import html
import re
from collections.abc import Sequence
from itertools import pairwise
from typing import NamedTuple

from pegwright.finding import Finding, Location, finding, sum_up
from pegwright.pattern import MAX_BYTES

LAST_LINE_S = 5.0
"""How long the last plain line stands, whose end nothing tells (common practice, no source)."""
ROLLED_WORDS, MOST_ROLLED = 2, 40
"""So many words at least, and at most, are taken for a line shown once more (no source)."""
_TIME = r"(?:(\d{1,4}):)?(\d{1,2}):([0-5]\d)(?:[.,](\d{1,3}))?"
_CLOCK = re.compile(_TIME)
_PLAIN = re.compile(rf"\s*\[{_TIME}\]\s*(.*)")
_TAG = re.compile(r"</?[a-zA-Z0-9:][^<>]*>|\{\\[^{}]*\}")


class Cue(NamedTuple):
    """What is said between two times in s."""

    start_s: float
    end_s: float
    text: str


class CaptionReading(NamedTuple):
    """The cues of a file in the order of their times, and the findings."""

    cues: tuple[Cue, ...]
    findings: tuple[Finding, ...]


def read_captions(data: bytes) -> CaptionReading:
    """Return the cues in a file. A faulty cue is left out with a finding; a file without cues is an error."""
    if len(data) > MAX_BYTES:
        return CaptionReading((), (finding("captions-too-large", limit=MAX_BYTES),))
    found: list[Finding] = []
    text = _decode(data, found)
    lines = text.replace("\r\n", "\n").replace("\r", "\n").split("\n")
    timed = any("-->" in line for line in lines)
    cues = _read_blocks(lines, found) if timed else _read_plain(lines, found)
    kept: list[Cue] = []
    latest_s = 0.0
    for number, cue in cues:
        if cue.end_s <= cue.start_s:
            found.append(finding("cue-backward", Location(line=number)))
            continue
        if cue.start_s < latest_s - 0.001:
            found.append(finding("cues-overlap", Location(line=number)))
        latest_s = max(latest_s, cue.end_s)
        if cue.text:
            kept.append(cue)
    if not kept:
        found.append(finding("captions-empty"))
    return CaptionReading(_unroll(sorted(kept, key=lambda cue: cue.start_s)), sum_up(found))


def _decode(data: bytes, found: list[Finding]) -> str:
    """Decode UTF-8, UTF-16 where its zeros or its mark tell, or else what old Western editors write."""
    if data.startswith((codecs.BOM_UTF16_LE, codecs.BOM_UTF16_BE)):
        return data.decode("utf-16", errors="replace")
    start = data[:400]
    if start.count(0) > len(start) // 3:
        return data.decode(
            "utf-16-le" if start[1::2].count(0) > start[::2].count(0) else "utf-16-be", "replace"
        )
    try:
        return data.decode("utf-8-sig")
    except UnicodeDecodeError as error:
        found.append(finding("captions-bad-bytes", Location(line=data[: error.start].count(b"\n") + 1)))
    text = data.decode("utf-8-sig", errors="replace")
    lost = text.count("\ufffd")
    read = sum(not sign.isascii() for sign in text) - lost
    return text if read >= lost else data.decode("cp1252", errors="replace")


def _unroll(cues: Sequence[Cue]) -> tuple[Cue, ...]:
    """Return cues without what rolls up: automatic captions that show each line once more above the next.

    Only where most cues begin with what the one before ends with; a line that a speaker says twice stays.
    """
    shared = [0, *(_shared_words(a.text.split(), b.text.split()) for a, b in pairwise(cues))]
    if sum(n >= ROLLED_WORDS for n in shared) < max(4, 0.5 * len(cues)):
        return tuple(cues)
    left = [
        one._replace(text=" ".join(one.text.split()[n:])) if n >= ROLLED_WORDS else one
        for one, n in zip(cues, shared, strict=True)
    ]
    return tuple(one for one in left if one.text)


def _shared_words(before: list[str], after: list[str]) -> int:
    """Count the words that end one cue and begin the next."""
    most = min(len(before), len(after), MOST_ROLLED)
    return next((n for n in range(most, 0, -1) if before[-n:] == after[:n]), 0)


def _read_blocks(lines: list[str], found: list[Finding]) -> list[tuple[int, Cue]]:
    """Read cues that start with a line of two times and end with an empty line: WebVTT and SRT."""
    cues = []
    i = 0
    note = False
    while i < len(lines):
        line = lines[i]
        i += 1
        note = bool(line.strip()) and (note or re.match(r"(NOTE|STYLE|REGION)\b", line) is not None)
        if "-->" not in line or note:
            continue
        number, (left, right) = i, line.split("-->", 1)
        start, end = _CLOCK.fullmatch(left.strip()), _CLOCK.match(right.strip())
        said = []
        while i < len(lines) and lines[i].strip() and "-->" not in lines[i]:
            said.append(lines[i])
            i += 1
        if i < len(lines) and "-->" in lines[i] and said and said[-1].strip().isdigit():
            said.pop()  # the number of the next cue, where the empty line before it is missing
        if start is None or end is None:
            found.append(finding("cue-unreadable", Location(line=number)))
            continue
        cues.append((number, Cue(_seconds(start), _seconds(end), _plain_text(" ".join(said)))))
    return cues


def _read_plain(lines: list[str], found: list[Finding]) -> list[tuple[int, Cue]]:
    """Read lines that start with a time in brackets; each lasts until the next later one."""
    read = []
    for number, line in enumerate(lines, start=1):
        said = _PLAIN.fullmatch(line)
        if said is not None:
            read.append((number, _seconds(said), " ".join(said[5].split())))
        elif line.strip():
            found.append(finding("cue-unreadable", Location(line=number)))
    times = sorted({start for _, start, _ in read})
    after = dict(zip(times, [*times[1:], times[-1] + LAST_LINE_S] if times else [], strict=True))
    return [(number, Cue(start, after[start], text)) for number, start, text in read]


def _seconds(clock: re.Match[str]) -> float:
    hours, minutes, seconds, part = clock.groups()[:4]
    return int(hours or 0) * 3600 + int(minutes) * 60 + int(seconds) + float(f"0.{part or 0}")


def _plain_text(text: str) -> str:
    """Drop player commands and decode escapes."""
    return " ".join(html.unescape(_TAG.sub("", text)).replace("\u2060", "").split())
