from .reader import (
    is_pattern_text as is_pattern_text,
    read_any_pattern as read_any_pattern,
    read_pattern_text as read_pattern_text,
)
from .writer import (
    SUFFIX as SUFFIX,
    encode_pattern as encode_pattern,
    write_pattern_text as write_pattern_text,
)

__all__ = [
    "SUFFIX",
    "encode_pattern",
    "is_pattern_text",
    "read_any_pattern",
    "read_pattern_text",
    "write_pattern_text",
]
