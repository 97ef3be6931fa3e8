"""Long work that was asked for: no part of the record, and forgotten when it is old."""

from django.db import models


class ErrandRow(models.Model):
    """One errand.

    Args:
        key: names the wish: sent twice it is one.
        said: JSON of what it takes to do it.
        total, done: entries or seconds, as the kind counts.
        worker: who does it now; another takes it over when no word comes for long.
        beat_at: the last word of whoever does it.
        tries: how often it was begun.
        outcome: JSON of a message and its values.
    """

    kind = models.CharField(max_length=20)
    key = models.CharField(max_length=200, unique=True)
    by = models.CharField(max_length=200)
    station = models.CharField(max_length=200, null=True)
    said = models.TextField()
    total = models.PositiveBigIntegerField()
    done = models.PositiveBigIntegerField(default=0)
    state = models.CharField(max_length=20)
    worker = models.CharField(max_length=120, blank=True)
    asked_at = models.DateTimeField()
    beat_at = models.DateTimeField(null=True)
    ended_at = models.DateTimeField(null=True)
    tries = models.PositiveSmallIntegerField(default=0)
    outcome = models.TextField(blank=True)

    class Meta:
        db_table = "errand"
        indexes = (models.Index(fields=("state", "id"), name="errand_state"),)
