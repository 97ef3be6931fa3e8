"""Make room for what long lists of due work are drawn by."""

from django.db import migrations, models


class Migration(migrations.Migration):
    """The tables of due days, and an index to find what changed since they were reckoned."""

    dependencies = (("storage", "0003_people"),)
    operations = (
        migrations.CreateModel(
            name="DueDay",
            fields=[
                (
                    "id",
                    models.BigAutoField(
                        auto_created=True, primary_key=True, serialize=False, verbose_name="ID"
                    ),
                ),
                ("component", models.CharField(max_length=200)),
                ("matter", models.CharField(max_length=40)),
                ("day", models.DateField(null=True)),
                ("station", models.CharField(max_length=200, null=True)),
            ],
            options={"db_table": "due_day"},
        ),
        migrations.CreateModel(
            name="DueBasis",
            fields=[
                (
                    "id",
                    models.PositiveSmallIntegerField(default=1, primary_key=True, serialize=False),
                ),
                ("digest", models.CharField(max_length=64)),
                ("seq", models.PositiveBigIntegerField()),
            ],
            options={"db_table": "due_basis"},
        ),
        migrations.AddIndex(
            model_name="dueday",
            index=models.Index(fields=["day", "component", "matter"], name="due_day_day"),
        ),
        migrations.AddIndex(
            model_name="dueday",
            index=models.Index(
                fields=["station", "day", "component", "matter"], name="due_day_station"
            ),
        ),
        migrations.AddConstraint(
            model_name="dueday",
            constraint=models.UniqueConstraint(fields=("component", "matter"), name="due_day_once"),
        ),
        migrations.AddIndex(
            model_name="componentrow",
            index=models.Index(fields=["seq", "id"], name="component_seq"),
        ),
    )
