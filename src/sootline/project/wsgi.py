"""The door through which a server calls the app."""

import os

from django.core.wsgi import get_wsgi_application

os.environ.setdefault("DJANGO_SETTINGS_MODULE", "sootline.project.settings")

application = get_wsgi_application()
