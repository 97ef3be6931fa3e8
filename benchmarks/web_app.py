"""The app as the bench serves it, by the door of the product: with its collector's thresholds."""

import os

os.environ["DJANGO_SETTINGS_MODULE"] = "benchmarks.web_settings"

from sootline.project.wsgi import application

__all__ = ["application"]
