"""What may a line of the log say? Never who, never which piece: those stand in the record."""

import datetime as dt
import json
import logging

_NAMED = ("status_code", "seq", "right", "route", "command")


class JsonLines(logging.Formatter):
    """Writes each line as one JSON object.

    The words of a message are written, never the values put into them: a name or a path with a
    number in it stays out whoever logged it. An exception is named by its type alone.
    """

    def format(self, record: logging.LogRecord) -> str:
        """Return the line of a record."""
        moment = dt.datetime.fromtimestamp(record.created, tz=dt.UTC)
        line: dict[str, object] = {
            "at": moment.isoformat(timespec="milliseconds"),
            "level": record.levelname.lower(),
            "from": record.name,
            "message": str(record.msg),
        }
        for name in _NAMED:
            if isinstance(value := getattr(record, name, None), str | int):
                line[name] = value
        if record.exc_info and record.exc_info[0]:
            line["error"] = record.exc_info[0].__name__
        return json.dumps(line, ensure_ascii=True)
