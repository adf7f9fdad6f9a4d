from .board import (
    Board as Board,
    board_of as board_of,
    hull as hull,
)
from .checks import check_loom as check_loom
from .collector import pause_collector as pause_collector
from .events import (
    Bight as Bight,
    Drawn as Drawn,
    Event as Event,
    Fastened as Fastened,
    Laid as Laid,
    Lifted as Lifted,
    Moved as Moved,
    Seat as Seat,
    Turned as Turned,
    is_put_on as is_put_on,
)
from .history import (
    AppliedMove as AppliedMove,
    History as History,
    replay as replay,
    replay_pattern as replay_pattern,
)
from .machine import (
    Effect as Effect,
    RefusedMove as RefusedMove,
    apply_move as apply_move,
)
from .move_generator import legal_moves as legal_moves
from .notation import (
    parse_bight as parse_bight,
    parse_move as parse_move,
    parse_state as parse_state,
    print_move as print_move,
    print_state as print_state,
)
from .state import (
    HOOK as HOOK,
    START as START,
    Fastener as Fastener,
    Stack as Stack,
    State as State,
    end_holder as end_holder,
    first_loop_is_off as first_loop_is_off,
)
from .steps import step_numbers as step_numbers
from .transitions import (
    apply_event as apply_event,
    revert_event as revert_event,
)

__all__ = [
    "HOOK",
    "START",
    "AppliedMove",
    "Bight",
    "Board",
    "Drawn",
    "Effect",
    "Event",
    "Fastened",
    "Fastener",
    "History",
    "Laid",
    "Lifted",
    "Moved",
    "RefusedMove",
    "Seat",
    "Stack",
    "State",
    "Turned",
    "apply_event",
    "apply_move",
    "board_of",
    "check_loom",
    "end_holder",
    "first_loop_is_off",
    "hull",
    "is_put_on",
    "legal_moves",
    "parse_bight",
    "parse_move",
    "parse_state",
    "pause_collector",
    "print_move",
    "print_state",
    "replay",
    "replay_pattern",
    "revert_event",
    "step_numbers",
]
