"""How is a calendar feed written?"""

from sootline.files.calendar import CalendarEntry, calendar_text

__all__ = ["CalendarEntry", "calendar_text"]
