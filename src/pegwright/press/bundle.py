"""The bundle: everything of a lesson in one zip, with a manifest, the licence, and a SHA-256 of every file.

The same files give the same bytes: names are sorted, every date is 1 January 1980 (the first that a zip can
hold), and there are no extra fields. No name in it can escape the folder that it is unpacked into.
"""

from __future__ import annotations

import hashlib
import io
import re
import zipfile
from collections.abc import Collection, Iterator, Mapping, Sequence
from concurrent.futures import ThreadPoolExecutor
from pathlib import Path, PurePosixPath
from typing import Literal, get_args

import msgspec

from pegwright.lesson import (
    Leaf,
    Lesson,
    Script,
    caption_script,
    filming_plan,
    frame_stills,
    named_pictures,
    script_leaf,
    view_text,
)
from pegwright.press.film.captions import captions_srt, captions_vtt, chapters_text, chapters_vtt
from pegwright.press.page.follow_along import page_html
from pegwright.press.page.prompter import prompter_html
from pegwright.press.pdf.typeset import Edition, Paper, handout_pdf, leaf_pdf
from pegwright.press.portrait.pixels import portrait_png
from pegwright.press.portrait.vectors import portrait_svg
from pegwright.press.raster.stills import still_png
from pegwright.press.svg.pictures import step_svg, still_svg

Output = Literal["handout", "page", "script", "prompter", "captions", "filming", "kit", "pictures", "stills"]
OUTPUTS: tuple[Output, ...] = get_args(Output)
MEDIA = {
    ".pdf": "application/pdf",
    ".svg": "image/svg+xml",
    ".png": "image/png",
    ".html": "text/html; charset=utf-8",
    ".vtt": "text/vtt; charset=utf-8",
    ".srt": "application/x-subrip; charset=utf-8",
    ".txt": "text/plain; charset=utf-8",
    ".json": "application/json",
    ".webm": "video/webm",
    ".mp4": "video/mp4",
}
_NAME = re.compile(r"[A-Za-z0-9][A-Za-z0-9._-]{0,99}")
_OWN = {"manifest.json", "LICENCE.txt", "SHA256SUMS.txt"}
_PACKED = {".png", ".webm", ".mp4"}  # deflating them again would take long and save nothing
_DATE = (1980, 1, 1, 0, 0, 0)
_FINISHED_PX = 1200
_FONTS = Path(__file__).parent / "fonts"


class BundledFile(msgspec.Struct, frozen=True):
    """A file of the bundle as the manifest lists it; `bytes` is its length."""

    name: str
    media: str
    bytes: int
    sha256: str


class Manifest(msgspec.Struct, frozen=True, kw_only=True):
    """What the bundle holds. `mark` is the print mark of the pattern that all of it was made from."""

    pegwright_bundle: int = 1
    title: str
    designer: str
    licence: str
    language: str
    mark: str
    files: tuple[BundledFile, ...]


def lesson_files(
    lesson: Lesson,
    script: Script,
    *,
    other: Lesson | None = None,
    kit: Leaf | None = None,
    parts: Collection[Output] = OUTPUTS,
    papers: Sequence[Paper] = ("a4", "letter"),
    editions: Sequence[Edition] = ("standard", "large", "grey"),
    heights_px: Sequence[int] = (1080,),
) -> dict[str, bytes]:
    """Press the files of a lesson and return them by name: all parts, or only those in `parts`.

    `other` is the lesson for the other hand; it adds a handout, and a switch on the page. The standard
    handout is pressed for every paper, everything else for the first one only. `heights_px` are the heights
    of the stills.
    """
    first = papers[0]
    files: dict[str, bytes] = {}
    if "handout" in parts:
        for edition in editions:
            for paper in papers if edition == "standard" else (first,):
                mark = "" if edition == "standard" else f"-{edition}"
                files[f"handout-{paper}{mark}.pdf"] = handout_pdf(lesson, paper, edition=edition)
        if other is not None:
            edition = editions[0]
            files[f"handout-{first}-{other.hand}-handed.pdf"] = handout_pdf(other, first, edition=edition)
    if "kit" in parts and kit is not None:
        files["kit.pdf"] = leaf_pdf(kit, first)
    if "filming" in parts:
        files["filming.pdf"] = leaf_pdf(filming_plan(lesson, script), first)
    if "script" in parts:
        files["script.pdf"] = leaf_pdf(script_leaf(lesson, script), first)
    files |= {name: text.encode() for name, text in _texts(lesson, script, other, parts)}
    if "pictures" in parts:
        files |= _pictures(lesson)
    if "stills" in parts:
        files |= _stills(lesson, heights_px)
    return files


def _texts(
    lesson: Lesson, script: Script, other: Lesson | None, parts: Collection[Output]
) -> Iterator[tuple[str, str]]:
    if "page" in parts:
        yield "follow.html", page_html(lesson, other)
    if "prompter" in parts:
        yield "prompter.html", prompter_html(lesson, script)
    if "captions" in parts:
        cut = caption_script(script)
        yield "captions.vtt", captions_vtt(cut, script.language)
        yield "captions.srt", captions_srt(cut)
        yield "chapters.vtt", chapters_vtt(script.chapters)
        yield "chapters.txt", chapters_text(script.chapters)


def picture_file(name: str) -> str:
    """Return where a lesson keeps the picture of a step with that name (`lesson.named_pictures`)."""
    return f"pictures/{name}.svg"


def still_file(name: str, height_px: int = 1080) -> str:
    """Return where a lesson keeps the same picture to be laid over a film of so many lines."""
    return f"stills/{name}-{height_px}.png"


def _pictures(lesson: Lesson) -> dict[str, bytes]:
    files = {}
    portrait = lesson.finished.portrait
    if portrait is not None:
        files["finished.png"] = portrait_png(portrait, "front", _FINISHED_PX)
        files["finished.svg"] = portrait_svg(
            portrait, "front", text=view_text(lesson.phrasebook, portrait)
        ).encode()
    for phase in lesson.phases:
        if phase.holding:
            files[f"pictures/holding-{phase.name}.svg"] = step_svg(phase.holding).encode()
        for i, picture in enumerate(phase.check.chart if phase.check else (), start=1):
            files[f"pictures/step-{phase.steps[-1].number:03}-chart-{i}.svg"] = step_svg(picture).encode()
    for step in lesson.steps:
        for name, picture in named_pictures(step):
            files[picture_file(name)] = step_svg(picture).encode()
    return files


def _stills(lesson: Lesson, heights_px: Sequence[int]) -> dict[str, bytes]:
    files = {}
    for still in frame_stills(lesson):
        files[f"stills/{still.name}.svg"] = still_svg(still).encode()
    asked = [(still, tall) for still in frame_stills(lesson) for tall in heights_px]
    with ThreadPoolExecutor(2) as pool:  # compressing is the slow part, and it releases the GIL
        for (still, tall), png in zip(asked, pool.map(lambda each: still_png(*each), asked), strict=True):
            files[still_file(still.name, tall)] = png
    return files


def bundle_lesson(lesson: Lesson, files: Mapping[str, bytes]) -> bytes:
    """Return a zip of the files with their manifest, the licence, and hashes that `sha256sum -c` can check.

    Raises:
        ValueError: a name leads out of the folder, is taken, or differs from another only by case.
    """
    _check_names(files)
    licence = "\n\n".join(
        (lesson.title, lesson.byline, lesson.licence, lesson.phrasebook.say("licence-fonts"))
    )
    fonts = (_FONTS / "AtkinsonHyperlegible-OFL.txt").read_text(encoding="utf-8")
    whole = dict(files) | {"LICENCE.txt": f"{licence}\n\n{fonts}".encode()}
    entries = tuple(
        BundledFile(
            name, MEDIA.get(PurePosixPath(name).suffix, "application/octet-stream"), len(data), _sha256(data)
        )
        for name, data in sorted(whole.items())
    )
    manifest = Manifest(
        title=lesson.title,
        designer=lesson.designer,
        licence=lesson.licence,
        language=lesson.language,
        mark=lesson.mark,
        files=entries,
    )
    whole["manifest.json"] = msgspec.json.format(msgspec.json.encode(manifest), indent=2) + b"\n"
    sums = sorted(
        (*((e.name, e.sha256) for e in entries), ("manifest.json", _sha256(whole["manifest.json"])))
    )
    whole["SHA256SUMS.txt"] = "".join(f"{digest}  {name}\n" for name, digest in sums).encode()
    out = io.BytesIO()
    with zipfile.ZipFile(out, "w", zipfile.ZIP_DEFLATED, compresslevel=9) as zipped:
        for name in sorted(whole):
            info = zipfile.ZipInfo(name, _DATE)
            info.create_system = 3
            info.external_attr = 0o100644 << 16
            packed = PurePosixPath(name).suffix in _PACKED
            info.compress_type = zipfile.ZIP_STORED if packed else zipfile.ZIP_DEFLATED
            zipped.writestr(info, whole[name])
    return out.getvalue()


def _check_names(files: Mapping[str, bytes]) -> None:
    folded = {name.casefold() for name in files}
    if len(folded) < len(files) or folded & {own.casefold() for own in _OWN}:
        raise ValueError("two files of the bundle would have one name")
    for name in files:
        if not all(_NAME.fullmatch(part) for part in name.split("/")):
            raise ValueError(f"{name!r} is no plain name for a file in a bundle")


def _sha256(data: bytes) -> str:
    return hashlib.sha256(data).hexdigest()
