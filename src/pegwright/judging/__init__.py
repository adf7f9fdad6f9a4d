"""Says what the proof means for a maker: which bands fall and why, what one loss costs, which fix is safe."""

import lazy_loader

__getattr__, __dir__, __all__ = lazy_loader.attach_stub(__name__, __file__)
