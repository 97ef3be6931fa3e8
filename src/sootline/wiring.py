"""Which files answer the ports, when everything works from files?

The one place where commands meet what reads and writes; each name below is bound here only.
"""

from sootline.files.jobs import read_job, read_part, to_job

__all__ = ["read_job", "read_part", "to_job"]
