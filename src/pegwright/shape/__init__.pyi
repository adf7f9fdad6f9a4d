from .contact import add_contact_derivatives as add_contact_derivatives
from .crossing_count import count_pass_throughs as count_pass_throughs
from .elastic import (
    add_elastic_derivatives as add_elastic_derivatives,
    elastic_energy as elastic_energy,
)
from .elements import (
    Elements as Elements,
    empty_elements as empty_elements,
)
from .initial_shape import BandProperties as BandProperties
from .loads import (
    Dressing as Dressing,
    Pull as Pull,
    Supports as Supports,
    Tie as Tie,
    wrap_round_wrist as wrap_round_wrist,
)
from .multifrontal import (
    CholeskyFactor as CholeskyFactor,
    factorise as factorise,
    solve_factored as solve_factored,
)
from .near_pairs import (
    find_near_pairs as find_near_pairs,
    pairs_within as pairs_within,
    touchable_pairs as touchable_pairs,
)
from .nested_dissection import (
    build_elimination_tree as build_elimination_tree,
    vertex_adjacency as vertex_adjacency,
)
from .newton import Goal as Goal
from .piece import (
    USUAL_HANDLING as USUAL_HANDLING,
    CrossingCheck as CrossingCheck,
    GrownPiece as GrownPiece,
    Handling as Handling,
    RestingPiece as RestingPiece,
    grow_piece as grow_piece,
    relax_piece as relax_piece,
)
from .relaxation import (
    RelaxationProgress as RelaxationProgress,
    RelaxedBands as RelaxedBands,
    relax_bands as relax_bands,
)
from .rods import (
    Band as Band,
    Floats as Floats,
    build_rods as build_rods,
)
from .rubber import (
    RubberLaw as RubberLaw,
    mooney_rivlin as mooney_rivlin,
    neo_hookean as neo_hookean,
    nominal_stress as nominal_stress,
    yeoh as yeoh,
)

__all__ = [
    "USUAL_HANDLING",
    "Band",
    "BandProperties",
    "CholeskyFactor",
    "CrossingCheck",
    "Dressing",
    "Elements",
    "Floats",
    "Goal",
    "GrownPiece",
    "Handling",
    "Pull",
    "RelaxationProgress",
    "RelaxedBands",
    "RestingPiece",
    "RubberLaw",
    "Supports",
    "Tie",
    "add_contact_derivatives",
    "add_elastic_derivatives",
    "build_elimination_tree",
    "build_rods",
    "count_pass_throughs",
    "elastic_energy",
    "empty_elements",
    "factorise",
    "find_near_pairs",
    "grow_piece",
    "mooney_rivlin",
    "neo_hookean",
    "nominal_stress",
    "pairs_within",
    "relax_bands",
    "relax_piece",
    "solve_factored",
    "touchable_pairs",
    "vertex_adjacency",
    "wrap_round_wrist",
    "yeoh",
]
