"""What do the entries add up to, in the tables that screens read?"""

from collections.abc import Sequence

from sootline.core.ledger import Entry


def project(alias: str, fresh: Sequence[Entry]) -> None:
    """Bring the tables up to the entries just added."""
