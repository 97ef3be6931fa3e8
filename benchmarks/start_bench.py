"""How long does a command take from a cold start, as a whole process?"""

import statistics
import subprocess
import sys
import tempfile
import time
from pathlib import Path

from sootline.core.job.codec import encode
from sootline.core.job.jobs import Job
from sootline.wiring.demo import demo_job

RUNS = 5
COMMANDS = (
    ("--version",),
    ("rules", "show", "nfpa-1851/2020"),
    ("decide", "JOB"),
    ("loads", "JOB"),
    ("due", "JOB"),
)


def main() -> None:
    """Print the median and range over some runs of each command on the demo's job."""
    with tempfile.TemporaryDirectory() as folder:
        job = Path(folder) / "night.json"
        job.write_text(encode(Job, demo_job()), encoding="utf-8")
        print("cold start [s]                     median    min    max")
        for command in COMMANDS:
            words = [str(job) if word == "JOB" else word for word in command]
            took = sorted(_sootline(*words) for _ in range(RUNS))
            label = " ".join(command)
            middle = statistics.median(took)
            print(f"  sootline {label:24} {middle:6.3f} {took[0]:6.3f} {took[-1]:6.3f}")


def _sootline(*words: str) -> float:
    began = time.perf_counter()
    subprocess.run([sys.executable, "-m", "sootline", *words], check=False, capture_output=True)
    return time.perf_counter() - began


if __name__ == "__main__":
    main()
