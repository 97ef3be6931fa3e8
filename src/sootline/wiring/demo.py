"""Which files does the demo department have, and which job do they make?"""

from sootline.core.job.jobs import Job
from sootline.files import demo
from sootline.files.demo import demo_files
from sootline.wiring.rules import RULES

__all__ = ["demo_files", "demo_job"]


def demo_job() -> Job:
    """Return the demo department's job."""
    return demo.demo_job(RULES)
