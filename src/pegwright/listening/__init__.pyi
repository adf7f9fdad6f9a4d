from .captions import (
    CaptionReading as CaptionReading,
    Cue as Cue,
    read_captions as read_captions,
)
from .chapters import HeardChapter as HeardChapter
from .comparison import (
    RecordingComparison as RecordingComparison,
    compare_recording as compare_recording,
    contradiction_findings as contradiction_findings,
    find_chapters as find_chapters,
)
from .contradictions import Contradiction as Contradiction
from .corrections import (
    WordCorrection as WordCorrection,
    correct_cues as correct_cues,
)
from .draft import (
    DraftLine as DraftLine,
    RecordingDraft as RecordingDraft,
    draft_recording as draft_recording,
)
from .recogniser import (
    hear_recording as hear_recording,
    is_recording as is_recording,
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
    "contradiction_findings",
    "correct_cues",
    "draft_recording",
    "find_chapters",
    "hear_recording",
    "is_recording",
    "read_captions",
]
