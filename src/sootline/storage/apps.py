"""What does the framework do with the store when it starts, and after each migration?"""

from django.apps import AppConfig
from django.db.models.signals import post_migrate


class StorageConfig(AppConfig):
    """The store; its guards are looked at again after every migration."""

    name = "sootline.storage"
    label = "storage"

    def ready(self) -> None:
        """Have every migration followed by a look at the guards."""
        # The tables exist for the framework only once it is ready.
        from sootline.storage.readiness import after_migration  # noqa: PLC0415

        post_migrate.connect(after_migration, sender=self)
