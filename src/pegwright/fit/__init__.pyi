from .advice import (
    FitAdvice as FitAdvice,
    PieceMeasurements as PieceMeasurements,
    RepeatOptions as RepeatOptions,
    advise_fit as advise_fit,
    gauge_from_measurements as gauge_from_measurements,
)
from .calibration import (
    Calibration as Calibration,
    Estimate as Estimate,
    FittedLaw as FittedLaw,
    calibrate as calibrate,
)
from .girths import read_girth as read_girth
from .grading import (
    GradedSize as GradedSize,
    LengthSample as LengthSample,
    SizePlan as SizePlan,
    fit_gauge as fit_gauge,
    grade_sizes as grade_sizes,
    plan_size as plan_size,
    with_extension as with_extension,
)
from .loom_loads import (
    LoomLoads as LoomLoads,
    bands_on_pegs_at as bands_on_pegs_at,
    check_hooked_bands as check_hooked_bands,
    find_loom_loads as find_loom_loads,
    peg_loads_at as peg_loads_at,
)
from .measurements import (
    BandMeasurements as BandMeasurements,
    HungReading as HungReading,
)
from .packs import (
    ShoppingItem as ShoppingItem,
    ShoppingList as ShoppingList,
    choose_packs as choose_packs,
)
from .rubber import rubber_of as rubber_of
from .sizing import (
    EASE as EASE,
    Fit as Fit,
    WornFit as WornFit,
    assess_fit as assess_fit,
    read_stretch_curve as read_stretch_curve,
)
from .stash import (
    Stash as Stash,
    read_stash as read_stash,
    write_stash as write_stash,
)
from .stated_counts import check_stated_counts as check_stated_counts
from .stretch import check_stretch as check_stretch
from .supplies import (
    Heap as Heap,
    Supplies as Supplies,
    count_supplies as count_supplies,
    supplies_for_class as supplies_for_class,
)
from .wrist import (
    Wrist as Wrist,
    read_wrist as read_wrist,
)

__all__ = [
    "EASE",
    "BandMeasurements",
    "Calibration",
    "Estimate",
    "Fit",
    "FitAdvice",
    "FittedLaw",
    "GradedSize",
    "Heap",
    "HungReading",
    "LengthSample",
    "LoomLoads",
    "PieceMeasurements",
    "RepeatOptions",
    "ShoppingItem",
    "ShoppingList",
    "SizePlan",
    "Stash",
    "Supplies",
    "WornFit",
    "Wrist",
    "advise_fit",
    "assess_fit",
    "bands_on_pegs_at",
    "calibrate",
    "check_hooked_bands",
    "check_stated_counts",
    "check_stretch",
    "choose_packs",
    "count_supplies",
    "find_loom_loads",
    "fit_gauge",
    "gauge_from_measurements",
    "grade_sizes",
    "peg_loads_at",
    "plan_size",
    "read_girth",
    "read_stash",
    "read_stretch_curve",
    "read_wrist",
    "rubber_of",
    "supplies_for_class",
    "with_extension",
    "write_stash",
]
