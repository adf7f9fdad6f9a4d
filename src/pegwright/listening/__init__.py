"""A recording is laid beside its lesson: its captions are read, its chapters found."""

import lazy_loader

__getattr__, __dir__, __all__ = lazy_loader.attach_stub(__name__, __file__)
