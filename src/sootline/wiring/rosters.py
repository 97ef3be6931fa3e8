"""Which files hold gear lists, their column mappings and registers?"""

from sootline.files.mapping import mapping_text, read_mapping
from sootline.files.registers import read_register, register_text
from sootline.files.tables import Wish, read_table

__all__ = ["Wish", "mapping_text", "read_mapping", "read_register", "read_table", "register_text"]
