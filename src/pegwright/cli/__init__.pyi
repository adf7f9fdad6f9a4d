from .entry import (
    STOPPED as STOPPED,
    main as main,
)

__all__ = [
    "STOPPED",
    "main",
]
