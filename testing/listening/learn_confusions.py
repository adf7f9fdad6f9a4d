"""Count what a recogniser made of each word in the stored recordings that may be looked at.

    python -m testing.listening.learn_confusions

writes `confusions.json`: for each word said, what was heard for it and how often ("" if nothing was).
"""

from __future__ import annotations

from collections import Counter, defaultdict
from pathlib import Path

import msgspec
from rapidfuzz.distance import Levenshtein

from pegwright.listening.words import split_words
from testing.listening.recordings import load_recordings

TABLE = Path(__file__).parent / "confusions.json"


def main() -> None:
    counts: dict[str, Counter[str]] = defaultdict(Counter)
    for truth, cues in load_recordings(kept=False):
        said = [word for one in truth.spoken for word, _ in split_words(one.text, "en")]
        heard = [word for cue in cues for word, _ in split_words(cue.text, "en")]
        for part in Levenshtein.opcodes(said, heard):
            here, there = said[part.src_start : part.src_end], heard[part.dest_start : part.dest_end]
            if part.tag == "equal" or max(len(here), len(there)) > 8:
                continue
            for k, word in enumerate(here):
                counts[word][there[k] if k < len(there) else ""] += 1
    table = {word: dict(heard.most_common(12)) for word, heard in sorted(counts.items())}
    TABLE.write_bytes(msgspec.json.format(msgspec.json.encode(table), indent=1) + b"\n")


if __name__ == "__main__":
    main()
