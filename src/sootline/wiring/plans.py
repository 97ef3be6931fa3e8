"""Which files hold planning questions and planning times, and which clock ends a search?"""

import datetime as dt
import time
from collections.abc import Callable

from sootline.files.instances import read_question
from sootline.files.planning_table import load_planning_times

__all__ = ["clock_now", "load_planning_times", "read_question", "stop_after"]


def stop_after(seconds: float) -> Callable[[], bool]:
    """Return what a search asks again and again: are these seconds over?"""
    end = time.monotonic() + seconds
    return lambda: time.monotonic() >= end


def clock_now() -> dt.datetime:
    """Return the moment of this machine's clock, with its offset."""
    return dt.datetime.now().astimezone()
