"""A whole pattern as plain text that a person writes and reads in any editor: the maker's file."""

import lazy_loader

__getattr__, __dir__, __all__ = lazy_loader.attach_stub(__name__, __file__)
