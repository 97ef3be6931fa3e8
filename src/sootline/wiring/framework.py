"""When is the framework started? Only for commands that work in the store, and by the server."""

import os


def start() -> None:
    """Start the framework with the project's settings; files made from now on are the owner's."""
    # Commands that work from a job file never pay for this import.
    import django  # noqa: PLC0415
    from django.apps import apps  # noqa: PLC0415

    os.environ.setdefault("DJANGO_SETTINGS_MODULE", "sootline.project.settings")
    os.umask(0o077)
    if not apps.ready:
        django.setup()
