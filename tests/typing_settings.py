"""The settings as the type checker reads them: it must make no data directory of its own."""

import os
import tempfile

os.environ.setdefault("SOOTLINE_DATA", tempfile.gettempdir() + "/sootline-typing")

from sootline.project.settings import *  # noqa: F403
