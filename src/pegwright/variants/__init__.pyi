from .band_colours import (
    BandColour as BandColour,
    band_colours_of as band_colours_of,
    letter_colours as letter_colours,
    read_band_colours as read_band_colours,
)
from .cells import (
    MAT_CELL as MAT_CELL,
    CellSize as CellSize,
    choose_colours as choose_colours,
    clean_lone_cells as clean_lone_cells,
    grid_size as grid_size,
    mat_cell_of as mat_cell_of,
    match_cells as match_cells,
    scale_to_cells as scale_to_cells,
)
from .colour_distance import linear_of_tints as linear_of_tints
from .colourways import (
    Colourway as Colourway,
    rank_colourways as rank_colourways,
    with_colours as with_colours,
)
from .other_makings import (
    read_band_size as read_band_size,
    read_loom_size as read_loom_size,
    with_band_size as with_band_size,
    with_loom as with_loom,
)
from .pictures import (
    PictureReading as PictureReading,
    SourcePicture as SourcePicture,
    read_picture as read_picture,
)
from .row_by_row import (
    mat_pattern as mat_pattern,
    read_mat as read_mat,
)
from .technique import Technique as Technique
from .techniques import TECHNIQUES as TECHNIQUES

__all__ = [
    "MAT_CELL",
    "TECHNIQUES",
    "BandColour",
    "CellSize",
    "Colourway",
    "PictureReading",
    "SourcePicture",
    "Technique",
    "band_colours_of",
    "choose_colours",
    "clean_lone_cells",
    "grid_size",
    "letter_colours",
    "linear_of_tints",
    "mat_cell_of",
    "mat_pattern",
    "match_cells",
    "rank_colourways",
    "read_band_colours",
    "read_band_size",
    "read_loom_size",
    "read_mat",
    "read_picture",
    "scale_to_cells",
    "with_band_size",
    "with_colours",
    "with_loom",
]
from .variant_names import describe_variant as describe_variant
