"""Which files hold jobs?"""

from sootline.files.jobs import read_job, read_part, to_job

__all__ = ["read_job", "read_part", "to_job"]
