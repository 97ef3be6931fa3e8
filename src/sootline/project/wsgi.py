"""The door through which a server calls the app."""

import gc
import os

from django.core.wsgi import get_wsgi_application

# A department's gear stays in memory as hundreds of thousands of small objects. At the usual
# thresholds every few requests walk all of them, for a third of a second at 5,000 components.
gc.set_threshold(50_000, 20, 50)
os.environ.setdefault("DJANGO_SETTINGS_MODULE", "sootline.project.settings")

application = get_wsgi_application()

# Only once the framework is started.
from sootline.wiring.signing import begin_signs  # noqa: E402

begin_signs("web")
