from .alignment import (
    HeardChapter as HeardChapter,
    find_chapters as find_chapters,
)
from .captions import (
    CaptionReading as CaptionReading,
    Cue as Cue,
    read_captions as read_captions,
)

__all__ = [
    "CaptionReading",
    "Cue",
    "HeardChapter",
    "find_chapters",
    "read_captions",
]
