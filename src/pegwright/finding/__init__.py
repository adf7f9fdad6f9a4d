"""One finding: what is wrong or worth knowing, where, and how to mend it.

A user's mistake is a `Finding`; a programmer's mistake is an exception. A finding is data: a code and facts.
Every room names a code and hands over the facts; they are put in words, in any language, by
`pegwright.finding.wording`, and only where somebody reads them."""

import lazy_loader

__getattr__, __dir__, __all__ = lazy_loader.attach_stub(__name__, __file__)
