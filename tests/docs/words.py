"""Compiles the catalogues: `python -m tests.docs.words` (`make words`); `--check` compares only."""

import datetime as dt
import io
import sys
from pathlib import Path

from babel.messages.mofile import write_mo
from babel.messages.pofile import read_po

LOCALE = Path(__file__).parents[2] / "src" / "sootline" / "words" / "locale"
# Babel stamps the hour of compiling into a catalogue; a fixed one keeps the file comparable.
STAMP = dt.datetime(2026, 1, 1, tzinfo=dt.UTC)


def compiled() -> dict[Path, bytes]:
    """Return what each compiled catalogue must hold, from its source beside it."""
    return {
        source.with_suffix(".mo"): _compiled(source)
        for source in sorted(LOCALE.glob("*/LC_MESSAGES/*.po"))
    }


def _compiled(source: Path) -> bytes:
    with source.open("rb") as file:
        catalogue = read_po(file, locale=source.parts[-3], abort_invalid=True)
    catalogue.creation_date = catalogue.revision_date = STAMP
    target = io.BytesIO()
    write_mo(target, catalogue)
    return target.getvalue()


if __name__ == "__main__":
    from tests.docs.generated import bring_up_to_date

    sys.exit(bring_up_to_date(compiled(), check="--check" in sys.argv))
