"""Make room for long work that is asked for; it is no part of the record."""

from django.db import migrations, models


class Migration(migrations.Migration):
    """The table of errands."""

    dependencies = (("storage", "0004_due_days"),)
    operations = (
        migrations.CreateModel(
            name="ErrandRow",
            fields=[
                (
                    "id",
                    models.BigAutoField(
                        auto_created=True, primary_key=True, serialize=False, verbose_name="ID"
                    ),
                ),
                ("kind", models.CharField(max_length=20)),
                ("key", models.CharField(max_length=200, unique=True)),
                ("by", models.CharField(max_length=200)),
                ("station", models.CharField(max_length=200, null=True)),
                ("said", models.TextField()),
                ("total", models.PositiveBigIntegerField()),
                ("done", models.PositiveBigIntegerField(default=0)),
                ("state", models.CharField(max_length=20)),
                ("worker", models.CharField(blank=True, max_length=120)),
                ("asked_at", models.DateTimeField()),
                ("beat_at", models.DateTimeField(null=True)),
                ("ended_at", models.DateTimeField(null=True)),
                ("tries", models.PositiveSmallIntegerField(default=0)),
                ("outcome", models.TextField(blank=True)),
            ],
            options={
                "db_table": "errand",
                "indexes": [models.Index(fields=["state", "id"], name="errand_state")],
            },
        ),
    )
