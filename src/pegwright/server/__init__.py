"""The studio's server: a thin door on the workshop, for one maker on one machine."""

from pegwright.server.app import make_app
from pegwright.server.run import serve

__all__ = ["make_app", "serve"]
