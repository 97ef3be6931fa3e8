"""Which files hold jobs?"""

from sootline.files.jobs import read_job, read_part, to_job
from sootline.files.reading import read_text

__all__ = ["read_job", "read_part", "read_text", "to_job"]
