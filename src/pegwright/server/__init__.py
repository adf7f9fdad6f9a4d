"""The studio's server: a thin door on the workshop, for one maker on one machine."""

import lazy_loader

__getattr__, __dir__, __all__ = lazy_loader.attach_stub(__name__, __file__)
