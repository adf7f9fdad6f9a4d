"""One self-contained HTML file: style, script and fonts are inside, and nothing else may load.

The content security policy allows the one style and the one script by their SHA-256 and no network at all.
Every text is escaped, so nothing a user wrote is ever read as markup.
"""

from __future__ import annotations

import base64
import hashlib
from functools import lru_cache
from html import escape
from pathlib import Path

_HERE = Path(__file__).parent
_FONT = "Atkinson Hyperlegible"


def html_document(*, language: str, title: str, name: str, body: str) -> str:
    """Return a page. `name` picks the style and script; `body` is already markup."""
    style, script = _style(name), _script(name)
    policy = (
        f"default-src 'none'; style-src '{_sha256(style)}'; script-src '{_sha256(script)}'; "
        "font-src data:; img-src data:; base-uri 'none'; form-action 'none'"
    )
    return (
        f'<!DOCTYPE html>\n<html lang="{escape(language)}">\n<head>\n<meta charset="utf-8">\n'
        f'<meta http-equiv="Content-Security-Policy" content="{escape(policy, quote=False)}">\n'
        '<meta name="viewport" content="width=device-width, initial-scale=1">\n'
        '<meta name="referrer" content="no-referrer">\n'
        f"<title>{escape(title)}</title>\n<style>{style}</style>\n</head>\n"
        f"<body>\n{body}\n<script>{script}</script>\n</body>\n</html>\n"
    )


def tag(name: str, text: str, **attributes: str) -> str:
    """Return an element round an escaped text. In attribute names `_` becomes `-`, a trailing `_` goes."""
    given = "".join(f' {k.rstrip("_").replace("_", "-")}="{escape(v)}"' for k, v in attributes.items())
    return f"<{name}{given}>{escape(text)}</{name}>"


@lru_cache
def _style(name: str) -> str:
    faces = "".join(
        f'@font-face {{ font-family: "{_FONT}"; font-weight: {weight}; '
        f"src: url(data:font/ttf;base64,{_data(file)}) format('truetype'); }}\n"
        for weight, file in ((400, "Regular"), (700, "Bold"))
    )
    return faces + (_HERE / "web" / f"{name}.css").read_text(encoding="utf-8")


@lru_cache
def _script(name: str) -> str:
    return (_HERE / "web" / f"{name}.js").read_text(encoding="utf-8")


def _data(weight: str) -> str:
    file = _HERE.parent / "fonts" / f"AtkinsonHyperlegible-{weight}.ttf"
    return base64.b64encode(file.read_bytes()).decode()


def _sha256(text: str) -> str:
    return f"sha256-{base64.b64encode(hashlib.sha256(text.encode()).digest()).decode()}"
