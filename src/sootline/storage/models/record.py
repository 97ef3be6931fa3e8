"""The tables that are the record: guarded by the database against every rewriting."""

from django.db import models


class Installation(models.Model):
    """Which installation this record belongs to: one row, written once."""

    id = models.PositiveSmallIntegerField(primary_key=True, default=1)
    name = models.CharField(max_length=80)
    since = models.DateTimeField()

    class Meta:
        db_table = "installation"


class EntryRow(models.Model):
    """One entry: its header as hashed, its place in the chain, and copies to find it by.

    Everything but `header`, `prev` and `hash` repeats what the header says; the database compares
    when the row comes in.
    """

    seq = models.PositiveBigIntegerField(primary_key=True)
    header = models.TextField()
    prev = models.CharField(max_length=64)
    hash = models.CharField(max_length=64)
    idem = models.CharField(max_length=200)
    actor = models.CharField(max_length=200)
    item = models.CharField(max_length=240)
    kind = models.CharField(max_length=40)
    recorded_at = models.DateTimeField()
    trusted_at = models.DateTimeField(null=True)
    corrects = models.PositiveBigIntegerField(null=True)
    erases = models.PositiveBigIntegerField(null=True)

    class Meta:
        db_table = "ledger_entry"
        constraints = (
            models.UniqueConstraint(fields=("actor", "idem"), name="entry_key"),
            models.UniqueConstraint(fields=("erases",), name="entry_erases"),
        )
        indexes = (
            models.Index(fields=("item", "seq"), name="entry_item"),
            models.Index(fields=("kind", "seq"), name="entry_kind"),
        )


class PayloadRow(models.Model):
    """What an entry says, with the salt of its digest; only an erasure takes it away."""

    seq = models.OneToOneField(
        EntryRow, primary_key=True, db_column="seq", on_delete=models.PROTECT,
        related_name="payload",
    )  # fmt: skip
    salt = models.CharField(max_length=32)
    body = models.TextField()

    class Meta:
        db_table = "ledger_payload"


class Attachment(models.Model):
    """A photo or paper of the record, kept as a file under the hash of its bytes.

    The original's own hash is kept beside: a photo is stored anew, without what a camera adds.
    """

    sha256 = models.CharField(max_length=64, primary_key=True)
    original_sha256 = models.CharField(max_length=64)
    media_type = models.CharField(max_length=40)
    bytes = models.PositiveBigIntegerField()
    added_at = models.DateTimeField()

    class Meta:
        db_table = "attachment"
