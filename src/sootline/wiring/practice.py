"""Which tables hold the figures that estimates rest on, and what studies report of washing?"""

from sootline.files.practice_tables import load_assumptions, load_reductions, read_sheet

__all__ = ["load_assumptions", "load_reductions", "read_sheet"]
