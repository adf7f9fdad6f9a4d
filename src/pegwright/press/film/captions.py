"""Write captions and chapters: WebVTT (W3C), SRT, and chapters as a plain list of times.

A user's text is shown verbatim: `&`, `<` and `>` are escaped in WebVTT. SRT has no escapes, and players read
`<…>` and `{…}` as commands, so an invisible word joiner (U+2060) is put in to break them up.
"""

from __future__ import annotations

from collections.abc import Iterable

from pegwright.lesson import Caption, Chapter

_JOINER = "\u2060"


def captions_vtt(captions: Iterable[Caption], language: str) -> str:
    """Return captions as WebVTT, numbered from 1."""
    cues = [_cue(i, c.start_s, c.end_s, c.lines) for i, c in enumerate(captions, start=1)]
    return "\n".join((f"WEBVTT\n\nNOTE {language}\n", *cues))


def chapters_vtt(chapters: Iterable[Chapter]) -> str:
    """Return chapters as a WebVTT chapter track: one cue a title."""
    cues = [_cue(i, c.start_s, c.end_s, (c.title,)) for i, c in enumerate(chapters, start=1)]
    return "\n".join(("WEBVTT\n", *cues))


def captions_srt(captions: Iterable[Caption]) -> str:
    """Return captions as SRT, numbered from 1."""
    cues = []
    for i, caption in enumerate(captions, start=1):
        start, end = (_clock(t).replace(".", ",") for t in (caption.start_s, caption.end_s))
        lines = "\n".join(_escape_srt(text) for text in caption.lines)
        cues.append(f"{i}\n{start} --> {end}\n{lines}\n")
    return "\n".join(cues)


def chapters_text(chapters: Iterable[Chapter]) -> str:
    """Return chapters as plain text, one a line: m:ss (h:mm:ss in a long film), then the title."""
    chapters = tuple(chapters)
    hours = bool(chapters) and chapters[-1].start_s >= 3600
    return "".join(f"{clock_time(c.start_s, hours)} {c.title}\n" for c in chapters)


def clock_time(seconds: float, hours: bool = False) -> str:
    """Write whole seconds as 4:05, or as 0:04:05 with hours."""
    minutes, second = divmod(int(seconds), 60)
    if hours:
        return f"{minutes // 60}:{minutes % 60:02}:{second:02}"
    return f"{minutes}:{second:02}"


def _cue(number: int, start_s: float, end_s: float, lines: tuple[str, ...]) -> str:
    shown = "\n".join(text.replace("&", "&amp;").replace("<", "&lt;").replace(">", "&gt;") for text in lines)
    return f"{number}\n{_clock(start_s)} --> {_clock(end_s)}\n{shown}\n"


def _clock(seconds: float) -> str:
    """Format a time as hh:mm:ss.ttt. Rounding keeps the order, so neighbouring cues never overlap."""
    whole = round(seconds * 1000)
    return f"{whole // 3_600_000:02}:{whole // 60_000 % 60:02}:{whole // 1000 % 60:02}.{whole % 1000:03}"


def _escape_srt(text: str) -> str:
    """Break up what a player would read as a command."""
    return text.replace("<", f"<{_JOINER}").replace("{", f"{{{_JOINER}").replace("-->", f"-{_JOINER}->")
