"""The commands about lessons: write everything a teacher hands out, and read a pattern as an editor would."""

from __future__ import annotations

from pathlib import Path
from typing import Literal, get_args

import msgspec

from pegwright.cli.shared import Json, Share, answer, cannot, load_work, reason, refuse
from pegwright.cli.terminal import exit_code, progress, say, say_findings
from pegwright.finding import Finding, Language, RefusedError, phrase
from pegwright.fit import Stash, read_stash
from pegwright.workshop import (
    Codec,
    Edition,
    FilmOrder,
    LessonOrder,
    LessonOutput,
    prepare_lesson,
    press_lesson,
    read_bytes,
    read_weight_files,
    review_piece,
    write_into,
)

_PIECES: tuple[LessonOutput, ...] = tuple(
    p for group in get_args(LessonOutput) for p in get_args(group) or (group,)
)


def lesson_(
    file: Path,
    folder: Path | None = None,
    *,
    parts: str = "",
    language: Language = "en",
    hand: Literal["right", "left"] = "right",
    units: Literal["metric", "inches"] = "metric",
    paper: Literal["a4", "letter", "both"] = "a4",
    edition: Literal["standard", "large", "giant", "grey", "all"] = "standard",
    learners: int = 1,
    spare: Share = 0.1,
    stash: Path | None = None,
    timing: str = "",
    wpm: int = 120,
    tall: Literal["1080", "2160", "both"] = "1080",
    codec: Codec = "vp9",
    film_tall: int = 720,
    excerpt: bool = False,
    voice: bool = True,
    voice_model: Path | None = None,
    phrases: Path | None = None,
    rehearse: bool = True,
    picture: bool = True,
    fit: bool = True,
    likelihood: Path | None = None,
    seen: Path | None = None,
    json: Json = False,
) -> int:
    """Write everything a teacher hands out, films and puts on a screen into a folder.

    Parameters
    ----------
    file
        the pattern document.
    folder
        where to write; without it, a folder beside the pattern.
    parts
        some of handout, page, script, prompter, captions, filming, kit, pictures, stills, film and bundle,
        with commas between; without it, all but film.
    language
        of the lesson and of what was found: en, es or de.
    hand
        right, or left: the mirrored pattern, worked and proved again.
    units
        metric or inches.
    paper
        a4, letter or both.
    edition
        standard, large print, giant print, grey (black ink only), or all.
    learners
        how many are in the class, for the kit sheet.
    spare
        spare bands and clips as a share, such as 10% or 0.1.
    stash
        a document of your own with pack sizes and prices, for the kit sheet.
    timing
        your own time in seconds, as outline=42 for a motif or 1-8=60 for the moves 1 to 8.
    wpm
        words spoken a minute, 110 to 130.
    tall
        how many pixels the stills are high: 1080, 2160 or both.
    codec
        of the film: vp9 or av1 (WebM), or h264 (MP4).
    film_tall
        how many pixels the film is high.
    excerpt
        make only 20 seconds of the film.
    voice
        let an installed voice (espeak-ng, or piper) speak a scratch narration.
    voice_model
        the file of a voice for piper.
    phrases
        a JSON file with your own words for ours, as {"peg": "pin", "pegs": "pins"}.
    rehearse
        rehearse every likely slip first, and carry warnings, wrong pictures and checks in the lesson.
    picture
        bring the piece to rest first, and carry its picture and its size in the lesson.
    fit
        pull at a piece that goes round a wrist, and say whom it suits and which extension a wrist asks for.
    likelihood
        a table of your own that says how likely each kind of slip is.
    seen
        a table of the same form with what happened in class.
    """
    table = read_weight_files(likelihood, seen)
    if table.weights is None:
        return refuse(table.findings, json, language)
    made = load_work(file, json, language)
    prices: Stash | None = None
    findings: tuple[Finding, ...] = ()
    if stash is not None:
        data = read_bytes(stash)
        reading = read_stash(data) if isinstance(data, bytes) else data
        findings = reading.findings
        prices = getattr(reading, "stash", None)
        if prices is None:
            return refuse(findings, json, language)
    target = folder or file.with_name(f"{file.stem}-lesson")
    written: list[dict[str, str | int]] = []
    try:
        order = LessonOrder(
            language=language,
            hand=hand,
            units=units,
            papers=("a4", "letter") if paper == "both" else (paper,),
            editions=get_args(Edition) if edition == "all" else (edition,),
            parts=_pieces(parts),
            learners=learners,
            spare=spare,
            stash=prices,
            timing=timing,
            wpm=wpm,
            heights_px=(1080, 2160) if tall == "both" else (int(tall),),
            film=FilmOrder(codec=codec, tall_px=film_tall, excerpt=excerpt, voice=voice, model=voice_model),
            phrases=_phrases(phrases),
            rehearse=rehearse,
            picture=picture,
            fit=fit,
            weights=table.weights,
        )
        with progress(json) as report:
            taught = prepare_lesson(made, order, report)
            for name, data in press_lesson(taught, order, report):
                write_into(target, name, data)
                written.append({"name": name, "bytes": len(data)})
    except (RefusedError, OSError) as error:
        return cannot(reason(error, language), json)
    findings = (*taught.findings, *findings)
    steps = len(taught.lesson.steps)
    if json:
        facts = {"folder": str(target), "title": taught.lesson.title, "language": language, "hand": hand}
        more = {"steps": steps, "film_s": round(taught.script.length_s, 1), "files": written}
        return answer({**facts, **more}, findings, language=language)
    say(f"{target}: {taught.lesson.title}, {steps} steps, {len(written)} files")
    for name in _summary([str(one["name"]) for one in written]):
        say(f"  {name}")
    say_findings(findings, language)
    return exit_code(findings)


def review_(file: Path, *, language: Language = "en", sizes: bool = False, json: Json = False) -> int:
    """Read a pattern and its lesson as a technical editor would, and say all that was found.

    Parameters
    ----------
    file
        the pattern document.
    language
        the language the designer's own texts are written in, and of what was found: en, es or de.
    sizes
        bring the piece to rest first, to look at its size and at the numbers of every wrist as well; what a
        lesson has worked out before is looked at in any case.
    """
    made = load_work(file, json, language)
    with progress(json) as report:
        report("reading it as an editor would", 0, 1)
        findings, looked = review_piece(made, language, sizes=sizes, progress=report)
    if json:
        return answer({"title": made.pattern.title, "sizes": looked}, findings, language=language)
    say(made.pattern.title, style="bold")
    say_findings(findings, language)
    if not findings:
        say("nothing to mend")
    if not looked:
        say("left out: the finished size and the numbers of every wrist (--sizes looks at them)")
    return exit_code(findings)


def _pieces(listed: str) -> tuple[LessonOutput, ...]:
    """Return the parts that are listed, in the order of the line; all, where none is."""
    named = {part.strip() for part in listed.split(",") if part.strip()}
    unknown = sorted(named - set(_PIECES))
    if unknown:
        raise RefusedError(phrase("no-such-part", name=unknown[0], known=_PIECES))
    return tuple(piece for piece in _PIECES if piece in named) or LessonOrder().parts


def _phrases(file: Path | None) -> dict[str, str]:
    if file is None:
        return {}
    data = read_bytes(file)
    if not isinstance(data, bytes):
        raise RefusedError(phrase("cannot-read", **data.findings[0].facts))
    try:
        return msgspec.json.decode(data, type=dict[str, str])
    except (msgspec.DecodeError, UnicodeDecodeError) as error:
        raise RefusedError(phrase("no-words-to-exchange", file=str(file), reason=str(error))) from error


def _summary(names: list[str]) -> list[str]:
    """List the files; those in a folder are counted."""
    folders: dict[str, int] = {}
    plain = []
    for name in names:
        head, slash, _ = name.partition("/")
        if slash:
            folders[head] = folders.get(head, 0) + 1
        else:
            plain.append(name)
    return plain + [f"{head}/ ({count} files)" for head, count in folders.items()]
