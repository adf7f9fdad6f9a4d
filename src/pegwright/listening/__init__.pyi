from .captions import (
    CaptionReading as CaptionReading,
    Cue as Cue,
    read_captions as read_captions,
)
from .chapters import HeardChapter as HeardChapter
from .comparison import (
    RecordingComparison as RecordingComparison,
    compare_recording as compare_recording,
    find_chapters as find_chapters,
)
from .contradictions import Contradiction as Contradiction
from .corrections import WordCorrection as WordCorrection
from .draft import (
    DraftLine as DraftLine,
    RecordingDraft as RecordingDraft,
    draft_recording as draft_recording,
)
from .timeline import (
    HeardStep as HeardStep,
    Trim as Trim,
)

__all__ = [
    "CaptionReading",
    "Contradiction",
    "Cue",
    "DraftLine",
    "HeardChapter",
    "HeardStep",
    "RecordingComparison",
    "RecordingDraft",
    "Trim",
    "WordCorrection",
    "compare_recording",
    "draft_recording",
    "find_chapters",
    "read_captions",
]
