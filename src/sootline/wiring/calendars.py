"""Who writes a calendar feed for a command or a screen."""

from sootline.files.calendar_out import CalendarEntry, calendar_text

__all__ = ["CalendarEntry", "calendar_text"]
