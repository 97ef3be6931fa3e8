"""Which files hold records and anchors?"""

from sootline.files.ledger_file import LedgerFile, read_anchor_file

__all__ = ["LedgerFile", "read_anchor_file"]
