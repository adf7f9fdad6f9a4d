"""Propose working orders for laid bands, and the smallest changes that make a piece hold."""

import lazy_loader

__getattr__, __dir__, __all__ = lazy_loader.attach_stub(__name__, __file__)
