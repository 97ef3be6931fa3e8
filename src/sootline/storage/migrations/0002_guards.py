"""Put the guards over the record in place.

A later migration that changes a guarded table drops the guards first and ends with this step
again: SQLite rebuilds a table to change it, which the guards over entries refuse, and forgets the
triggers that stood over it.
"""

from django.db import migrations
from django.db.backends.base.schema import BaseDatabaseSchemaEditor
from django.db.migrations.state import StateApps

from sootline.storage.guards import install


def put_in_place(_apps: StateApps, editor: BaseDatabaseSchemaEditor) -> None:
    """Put every guard in place anew."""
    install(editor.connection)


class Migration(migrations.Migration):
    """The guards."""

    dependencies = (("storage", "0001_initial"),)
    operations = (migrations.RunPython(put_in_place, migrations.RunPython.noop),)
