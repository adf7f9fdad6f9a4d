from .film.captions import (
    Caption as Caption,
    caption_script as caption_script,
)
from .film.filming import (
    filming_plan as filming_plan,
    script_leaf as script_leaf,
)
from .film.frame import (
    FRAME as FRAME,
    HEAD as HEAD,
    PICTURE as PICTURE,
    SIDE as SIDE,
    WHOLE as WHOLE,
    Box as Box,
    Still as Still,
    frame_stills as frame_stills,
    named_pictures as named_pictures,
    place_in_frame as place_in_frame,
)
from .film.motion import (
    SWAP as SWAP,
    moving_marks_at as moving_marks_at,
    stack_at as stack_at,
    still_marks_at as still_marks_at,
)
from .film.script import (
    Chapter as Chapter,
    Script as Script,
    ScriptLine as ScriptLine,
    write_script as write_script,
)
from .film.storyboard import (
    PAN as PAN,
    Cut as Cut,
    Storyboard as Storyboard,
    clip_storyboard as clip_storyboard,
    draw_storyboard as draw_storyboard,
    excerpt as excerpt,
)
from .gallery import (
    Gallery as Gallery,
    GalleryCard as GalleryCard,
    GalleryLink as GalleryLink,
    plan_gallery as plan_gallery,
)
from .handout.finished import view_text as view_text
from .handout.front import is_worn as is_worn
from .handout.leaf import (
    Leaf as Leaf,
    Table as Table,
)
from .handout.mistakes import draw_mistake as draw_mistake
from .handout.plan import plan_lesson as plan_lesson
from .handout.results import (
    UNKNOWN_FINISH as UNKNOWN_FINISH,
    FinishedPiece as FinishedPiece,
    HoldResult as HoldResult,
    MissingReason as MissingReason,
    SnapResult as SnapResult,
)
from .handout.sheet import (
    Block as Block,
    Checkpoint as Checkpoint,
    CommonMistake as CommonMistake,
    Conclusion as Conclusion,
    FinishedSection as FinishedSection,
    Fork as Fork,
    Hand as Hand,
    Lesson as Lesson,
    LessonStep as LessonStep,
    Phase as Phase,
    Swatch as Swatch,
)
from .handout.sizes import SMALLEST_MM as SMALLEST_MM
from .kit import kit_sheet as kit_sheet
from .review.review import (
    review_lesson as review_lesson,
    translation_findings as translation_findings,
)
from .row_chart import (
    ChartColour as ChartColour,
    RowChart as RowChart,
    plan_row_chart as plan_row_chart,
)
from .say.mistake_text import (
    MistakeWriter as MistakeWriter,
    move_label as move_label,
)
from .say.phrasebook import (
    Phrasebook as Phrasebook,
    Units as Units,
    languages as languages,
    message_patterns as message_patterns,
)
from .say.say import Speaker as Speaker
from .scene.palette import (
    check_palette as check_palette,
    luminance as luminance,
)
from .scene.picture import (
    Arc as Arc,
    ArrowMark as ArrowMark,
    BadgeMark as BadgeMark,
    BandMark as BandMark,
    BarMark as BarMark,
    FastenerMark as FastenerMark,
    FingerMark as FingerMark,
    HookMark as HookMark,
    LabelMark as LabelMark,
    Mark as Mark,
    Outline as Outline,
    PegMark as PegMark,
    Picture as Picture,
    PostMark as PostMark,
    Window as Window,
)
from .scene.portrait import (
    Camera as Camera,
    Portrait as Portrait,
    Tube as Tube,
    ViewName as ViewName,
    mirror_portrait as mirror_portrait,
    portrait_of as portrait_of,
    tint_of as tint_of,
)
from .scene.rounds import Shift as Shift
from .scene.scene import look_of as look_of
from .scene.times import (
    Pace as Pace,
    motif_moves as motif_moves,
    pace_from_timing as pace_from_timing,
)

__all__ = [
    "FRAME",
    "HEAD",
    "PAN",
    "PICTURE",
    "SIDE",
    "SMALLEST_MM",
    "SWAP",
    "UNKNOWN_FINISH",
    "WHOLE",
    "Arc",
    "ArrowMark",
    "BadgeMark",
    "BandMark",
    "BarMark",
    "Block",
    "Box",
    "Camera",
    "Caption",
    "Chapter",
    "ChartColour",
    "Checkpoint",
    "CommonMistake",
    "Conclusion",
    "Cut",
    "FastenerMark",
    "FingerMark",
    "FinishedPiece",
    "FinishedSection",
    "Fork",
    "Gallery",
    "GalleryCard",
    "GalleryLink",
    "Hand",
    "HoldResult",
    "HookMark",
    "LabelMark",
    "Leaf",
    "Lesson",
    "LessonStep",
    "Mark",
    "MissingReason",
    "MistakeWriter",
    "Outline",
    "Pace",
    "PegMark",
    "Phase",
    "Phrasebook",
    "Picture",
    "Portrait",
    "PostMark",
    "RowChart",
    "Script",
    "ScriptLine",
    "Shift",
    "SnapResult",
    "Speaker",
    "Still",
    "Storyboard",
    "Swatch",
    "Table",
    "Tube",
    "Units",
    "ViewName",
    "Window",
    "caption_script",
    "check_palette",
    "clip_storyboard",
    "draw_mistake",
    "draw_storyboard",
    "excerpt",
    "filming_plan",
    "frame_stills",
    "is_worn",
    "kit_sheet",
    "languages",
    "look_of",
    "luminance",
    "message_patterns",
    "mirror_portrait",
    "motif_moves",
    "move_label",
    "moving_marks_at",
    "named_pictures",
    "pace_from_timing",
    "place_in_frame",
    "plan_gallery",
    "plan_lesson",
    "plan_row_chart",
    "portrait_of",
    "review_lesson",
    "script_leaf",
    "stack_at",
    "still_marks_at",
    "tint_of",
    "translation_findings",
    "view_text",
    "write_script",
]
