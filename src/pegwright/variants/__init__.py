"""Other makings of a design, and designs made of pictures: each is proposed as a pattern."""

import lazy_loader

__getattr__, __dir__, __all__ = lazy_loader.attach_stub(__name__, __file__)
