from .at_rest import bring_to_rest as bring_to_rest
from .atlas import build_atlas as build_atlas
from .batch import (
    BatchFailure as BatchFailure,
    BatchOrder as BatchOrder,
    BatchPlace as BatchPlace,
    BatchRun as BatchRun,
    run_batch as run_batch,
)
from .batch_cluster import (
    BatchCluster as BatchCluster,
    connect_cluster as connect_cluster,
    start_cluster as start_cluster,
)
from .batch_gallery import write_gallery as write_gallery
from .batch_tasks import (
    BatchNote as BatchNote,
    BatchPart as BatchPart,
)
from .demo import (
    DemoPiece as DemoPiece,
    example_files as example_files,
    run_demo as run_demo,
)
from .files import (
    open_pattern as open_pattern,
    read_bytes as read_bytes,
    read_plain_file as read_plain_file,
    replace_file as replace_file,
)
from .finishes import (
    finish as finish,
    mirrored_finish as mirrored_finish,
)
from .folder import write_into as write_into
from .lengths import measure_lengths as measure_lengths
from .lesson_outputs import (
    Codec as Codec,
    Edition as Edition,
    FilmOrder as FilmOrder,
    LessonOrder as LessonOrder,
    LessonOutput as LessonOutput,
    PreparedLesson as PreparedLesson,
    first_handout as first_handout,
    prepare_lesson as prepare_lesson,
    press_lesson as press_lesson,
    review_piece as review_piece,
)
from .lesson_plan import lesson_of as lesson_of
from .line import (
    Work as Work,
    work as work,
)
from .mats import (
    Mat as Mat,
    MatCells as MatCells,
    MatOrder as MatOrder,
    chart_mat as chart_mat,
    chart_of as chart_of,
    lay_out_mat as lay_out_mat,
    make_mat as make_mat,
    measure_mat_cell as measure_mat_cell,
)
from .measured_techniques import (
    MeasuredTechnique as MeasuredTechnique,
    load_measured_techniques as load_measured_techniques,
)
from .pictures import (
    PictureFile as PictureFile,
    PictureForm as PictureForm,
    PictureOrder as PictureOrder,
    PictureSet as PictureSet,
    make_pictures as make_pictures,
)
from .planning import (
    mend_piece as mend_piece,
    plan_piece as plan_piece,
    simplify_piece as simplify_piece,
)
from .progress import (
    ReportProgress as ReportProgress,
    report_nothing as report_nothing,
)
from .recordings import (
    keep_pace as keep_pace,
    listen_to_lesson as listen_to_lesson,
    pace_patch as pace_patch,
    recording_files as recording_files,
    refuse_mends as refuse_mends,
    step_files as step_files,
)
from .rehearsals import (
    mirror_rehearsal as mirror_rehearsal,
    read_weight_files as read_weight_files,
    rehearse_piece as rehearse_piece,
)
from .starter import starter_pattern as starter_pattern
from .stretch_measures import measure_piece as measure_piece
from .swatches import (
    Bracelet as Bracelet,
    SwatchMeasures as SwatchMeasures,
    TypicalSlip as TypicalSlip,
)
from .variant_pieces import (
    PieceVariant as PieceVariant,
    VariantOrder as VariantOrder,
    Variants as Variants,
    make_variants as make_variants,
)
from .wrong_piece_picture import (
    WrongPiecePicture as WrongPiecePicture,
    picture_wrong_piece as picture_wrong_piece,
)

__all__ = [
    "BatchCluster",
    "BatchFailure",
    "BatchNote",
    "BatchOrder",
    "BatchPart",
    "BatchPlace",
    "BatchRun",
    "Bracelet",
    "Codec",
    "DemoPiece",
    "Edition",
    "FilmOrder",
    "LessonOrder",
    "LessonOutput",
    "Mat",
    "MatCells",
    "MatOrder",
    "MeasuredTechnique",
    "PictureFile",
    "PictureForm",
    "PictureOrder",
    "PictureSet",
    "PieceVariant",
    "PreparedLesson",
    "ReportProgress",
    "SwatchMeasures",
    "TypicalSlip",
    "VariantOrder",
    "Variants",
    "Work",
    "WrongPiecePicture",
    "bring_to_rest",
    "build_atlas",
    "chart_mat",
    "chart_of",
    "connect_cluster",
    "example_files",
    "finish",
    "first_handout",
    "keep_pace",
    "lay_out_mat",
    "lesson_of",
    "listen_to_lesson",
    "load_measured_techniques",
    "make_mat",
    "make_pictures",
    "make_variants",
    "measure_lengths",
    "measure_mat_cell",
    "measure_piece",
    "mend_piece",
    "mirror_rehearsal",
    "mirrored_finish",
    "open_pattern",
    "pace_patch",
    "picture_wrong_piece",
    "plan_piece",
    "prepare_lesson",
    "press_lesson",
    "read_bytes",
    "read_plain_file",
    "read_weight_files",
    "recording_files",
    "refuse_mends",
    "rehearse_piece",
    "replace_file",
    "report_nothing",
    "review_piece",
    "run_batch",
    "run_demo",
    "simplify_piece",
    "start_cluster",
    "starter_pattern",
    "step_files",
    "work",
    "write_gallery",
    "write_into",
]
