"""Which files does the demo department have?"""

from sootline.files.demo import demo_files, demo_job

__all__ = ["demo_files", "demo_job"]
