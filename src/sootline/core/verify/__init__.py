"""Does a wash plan keep every hard rule? Nothing here knows how the plan was made."""

from sootline.core.verify.check import verify

__all__ = ["verify"]
