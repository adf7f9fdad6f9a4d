from .diagnosis import (
    Answer as Answer,
    Candidate as Candidate,
    Diagnosis as Diagnosis,
    Diagnostician as Diagnostician,
    Question as Question,
    answer_as_maker as answer_as_maker,
    answer_from_appearance as answer_from_appearance,
)
from .inspection import (
    InspectionPoints as InspectionPoints,
    choose_inspection_points as choose_inspection_points,
)
from .likelihood import (
    DEFAULT_WEIGHTS as DEFAULT_WEIGHTS,
    ClassTally as ClassTally,
    SlipWeights as SlipWeights,
    read_weights as read_weights,
    slip_chances as slip_chances,
    weights_schema as weights_schema,
    write_weights as write_weights,
)
from .outcome import (
    Outcome as Outcome,
    Symptom as Symptom,
)
from .prepared_history import (
    PreparedHistory as PreparedHistory,
    prepare_history as prepare_history,
)
from .ranking import (
    Comparison as Comparison,
    FailureMode as FailureMode,
    Risk as Risk,
    RiskyStep as RiskyStep,
    Trouble as Trouble,
)
from .rehearsal import (
    PartialRehearsal as PartialRehearsal,
    Rehearsal as Rehearsal,
    ShareWork as ShareWork,
    SlipOutcomes as SlipOutcomes,
    SlipPairs as SlipPairs,
    assemble_rehearsal as assemble_rehearsal,
    compare_orders as compare_orders,
    rehearse as rehearse,
    rehearse_pairs as rehearse_pairs,
    worker_pool as worker_pool,
)
from .slip_run import move_at_opposite_pegs as move_at_opposite_pegs
from .slips import (
    SLIP_KINDS as SLIP_KINDS,
    Slip as Slip,
    find_slips as find_slips,
)
from .way_back import (
    Act as Act,
    WayBack as WayBack,
    find_way_back as find_way_back,
)
from .worker_process import (
    follow_parent as follow_parent,
    hold_interrupts as hold_interrupts,
)

__all__ = [
    "DEFAULT_WEIGHTS",
    "SLIP_KINDS",
    "Act",
    "Answer",
    "Candidate",
    "ClassTally",
    "Comparison",
    "Diagnosis",
    "Diagnostician",
    "FailureMode",
    "InspectionPoints",
    "Outcome",
    "PartialRehearsal",
    "PreparedHistory",
    "Question",
    "Rehearsal",
    "Risk",
    "RiskyStep",
    "Slip",
    "SlipOutcomes",
    "SlipPairs",
    "SlipWeights",
    "Symptom",
    "Trouble",
    "WayBack",
    "answer_as_maker",
    "answer_from_appearance",
    "assemble_rehearsal",
    "choose_inspection_points",
    "compare_orders",
    "find_slips",
    "find_way_back",
    "follow_parent",
    "hold_interrupts",
    "move_at_opposite_pegs",
    "prepare_history",
    "read_weights",
    "rehearse",
    "rehearse_pairs",
    "slip_chances",
    "weights_schema",
    "write_weights",
]
