"""What the proof means for a maker: which bands fall and why, what one loss costs, which fixes are safe."""

import lazy_loader

__getattr__, __dir__, __all__ = lazy_loader.attach_stub(__name__, __file__)
