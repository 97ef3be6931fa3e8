"""At what time of day is a moment, on the department's clocks?"""

import datetime as dt
from dataclasses import dataclass
from zoneinfo import ZoneInfo

from sootline.core.basis import MinuteSpan
from sootline.core.job.jobs import Job
from sootline.words import name, say


@dataclass(frozen=True, kw_only=True)
class Clock:
    """Tells times as somebody reads them who knows which day it is.

    Args:
        now: in the department's zone.
    """

    now: dt.datetime
    lang: str

    def at(self, moment: dt.datetime) -> str:
        """Tell the time of day, with the weekday when it is another day."""
        local = moment.astimezone(self.now.tzinfo)
        time = f"{local:%H:%M}"
        if local.date() == self.now.date():
            return time
        return f"{say(f'web.weekday.{local.isoweekday()}', lang=self.lang)} {time}"

    def day(self, moment: dt.datetime) -> str:
        """Tell day and time, the month in letters."""
        local = moment.astimezone(self.now.tzinfo)
        weekday = name("weekday", str(local.isoweekday()), lang=self.lang)
        month = name("month", str(local.month), lang=self.lang)
        return f"{weekday} {local.day} {month}, {local:%H:%M}"

    def span(self, start: dt.datetime, minutes: MinuteSpan) -> str:
        """Tell an interval counted from a moment, earliest to latest."""
        first = self.at(start + dt.timedelta(minutes=minutes.earliest))
        late = self.at(start + dt.timedelta(minutes=minutes.late))
        return first if first == late else f"{first}–{late}"

    def likely(self, start: dt.datetime, minutes: MinuteSpan) -> str:
        """Tell the likely moment of an interval counted from a moment."""
        return self.at(start + dt.timedelta(minutes=minutes.likely))


def clock_of(job: Job, lang: str) -> Clock:
    """Return the clock of a job's department at the job's moment."""
    return Clock(now=job.now.astimezone(ZoneInfo(job.department.zone)), lang=lang)
