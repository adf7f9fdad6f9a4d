"""Where the bands come to rest: elastic rods in contact."""

import lazy_loader

__getattr__, __dir__, __all__ = lazy_loader.attach_stub(__name__, __file__)
