"""Every sentence a person reads, by message id and language."""

from sootline.words.catalogues import languages
from sootline.words.saying import name, say

__all__ = ["languages", "name", "say"]
