"""The shipped settings, with the framework's own administration beside the app to compare with."""

from sootline.project.settings import *  # noqa: F403
from sootline.project.settings import INSTALLED_APPS as _OURS

INSTALLED_APPS = [*_OURS, "django.contrib.admin"]
ROOT_URLCONF = "benchmarks.web_urls"
WSGI_APPLICATION = "benchmarks.web_app.application"
# Its account model wants permissions that ours answers by offices.
SILENCED_SYSTEM_CHECKS = ["axes.W006", "admin.E410"]
