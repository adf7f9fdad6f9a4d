"""What happens when the maker goes wrong: every likely slip rehearsed before it is made."""

import lazy_loader

__getattr__, __dir__, __all__ = lazy_loader.attach_stub(__name__, __file__)
