"""A maker's words become a pattern: printed steps read back, and what a person writes."""

import lazy_loader

__getattr__, __dir__, __all__ = lazy_loader.attach_stub(__name__, __file__)
