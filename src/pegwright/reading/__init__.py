"""Turn a maker's words into a pattern: printed steps read back, or free text."""

import lazy_loader

__getattr__, __dir__, __all__ = lazy_loader.attach_stub(__name__, __file__)
