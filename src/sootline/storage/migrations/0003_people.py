"""Make room for how people are known: second factor, PIN, station devices, guesses."""

from django.conf import settings
from django.db import migrations, models
from django.db.models import CASCADE


class Migration(migrations.Migration):
    """The tables of people's second factors, PINs and devices."""

    dependencies = (("storage", "0002_guards"),)
    operations = (
        migrations.CreateModel(
            name="Device",
            fields=[
                ("id", models.CharField(max_length=60, primary_key=True, serialize=False)),
                ("name", models.CharField(max_length=80)),
                ("place", models.CharField(max_length=200)),
                ("station", models.CharField(blank=True, max_length=200)),
                ("digest", models.CharField(max_length=64)),
                ("enrolled_at", models.DateTimeField()),
                ("enrolled_by", models.CharField(max_length=200)),
                ("seen_at", models.DateTimeField()),
                ("revoked_at", models.DateTimeField(null=True)),
                ("revoked_by", models.CharField(blank=True, max_length=200)),
            ],
            options={
                "db_table": "device",
            },
        ),
        migrations.CreateModel(
            name="Guesses",
            fields=[
                ("subject", models.CharField(max_length=120, primary_key=True, serialize=False)),
                ("failures", models.PositiveIntegerField(default=0)),
                ("last_at", models.DateTimeField()),
            ],
            options={
                "db_table": "guesses",
            },
        ),
        migrations.CreateModel(
            name="Pin",
            fields=[
                (
                    "user",
                    models.OneToOneField(
                        on_delete=CASCADE,
                        primary_key=True,
                        related_name="pin",
                        serialize=False,
                        to=settings.AUTH_USER_MODEL,
                    ),
                ),
                ("digest", models.CharField(max_length=200)),
                ("first", models.BooleanField()),
                ("since", models.DateTimeField()),
            ],
            options={
                "db_table": "pin",
            },
        ),
        migrations.CreateModel(
            name="SecondFactor",
            fields=[
                (
                    "user",
                    models.OneToOneField(
                        on_delete=CASCADE,
                        primary_key=True,
                        related_name="factor",
                        serialize=False,
                        to=settings.AUTH_USER_MODEL,
                    ),
                ),
                ("salt", models.CharField(max_length=64)),
                ("since", models.DateTimeField()),
                ("last_step", models.PositiveBigIntegerField()),
            ],
            options={
                "db_table": "second_factor",
            },
        ),
        migrations.CreateModel(
            name="RecoveryCodeRow",
            fields=[
                (
                    "id",
                    models.BigAutoField(
                        auto_created=True, primary_key=True, serialize=False, verbose_name="ID"
                    ),
                ),
                ("number", models.PositiveSmallIntegerField()),
                ("digest", models.CharField(max_length=200)),
                (
                    "user",
                    models.ForeignKey(
                        on_delete=CASCADE,
                        related_name="recovery_codes",
                        to=settings.AUTH_USER_MODEL,
                    ),
                ),
            ],
            options={
                "db_table": "recovery_code",
                "constraints": [
                    models.UniqueConstraint(fields=("user", "number"), name="recovery_code_once")
                ],
            },
        ),
    )
