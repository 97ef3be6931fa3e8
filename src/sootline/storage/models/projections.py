"""The tables screens read: every row follows from the entries, and can be made anew from them."""

from django.db import models


class Thing(models.Model):
    """What is known of one thing of any kind, folded from its entries.

    Args:
        facts: canonical JSON.
        seq: the last entry about it.
    """

    item = models.CharField(max_length=240, primary_key=True)
    kind = models.CharField(max_length=20)
    facts = models.TextField()
    registered = models.BooleanField()
    seq = models.PositiveBigIntegerField()

    class Meta:
        db_table = "thing"
        indexes = (models.Index(fields=("kind", "item"), name="thing_kind"),)


class ComponentRow(models.Model):
    """One component as it stands now: the whole as a document, and what lists are drawn by.

    Args:
        document: JSON of a Component of a job.
        holds: how many are open.
        seq: the last entry about it.
    """

    id = models.CharField(max_length=200, primary_key=True)
    kind = models.CharField(max_length=60)
    owner = models.CharField(max_length=200, null=True)
    holder = models.CharField(max_length=200, null=True)
    set = models.CharField(max_length=200, null=True)
    station = models.CharField(max_length=200, null=True)
    offered_to = models.CharField(max_length=200, null=True)
    place = models.CharField(max_length=200, null=True)
    maker = models.CharField(max_length=200, null=True)
    lot = models.CharField(max_length=200, null=True)
    serial = models.CharField(max_length=200, null=True)
    custody = models.CharField(max_length=20)
    stage = models.CharField(max_length=20)
    life = models.CharField(max_length=20)
    holds = models.PositiveSmallIntegerField()
    made_by = models.DateField(null=True)
    document = models.TextField()
    seq = models.PositiveBigIntegerField()

    class Meta:
        db_table = "component"
        indexes = tuple(
            models.Index(fields=(*columns, "id"), name=f"component_{columns[0]}")
            for columns in (("owner",), ("holder",), ("set",), ("station",), ("lot",), ("serial",),
                            ("life", "stage"), ("made_by",), ("seq",))
        )  # fmt: skip


class Link(models.Model):
    """An item whose life takes in entries about another: a load it was in, a wrong number."""

    item = models.CharField(max_length=240)
    other = models.CharField(max_length=240)

    class Meta:
        db_table = "link"
        constraints = (models.UniqueConstraint(fields=("item", "other"), name="link_once"),)
        indexes = (models.Index(fields=("other",), name="link_other"),)


class DueDay(models.Model):
    """When something is due on a component: what long lists are drawn by, page by page.

    Args:
        day: the first day at its earliest reading, else at its latest; None is not known.
    """

    component = models.CharField(max_length=200)
    matter = models.CharField(max_length=40)
    day = models.DateField(null=True)
    station = models.CharField(max_length=200, null=True)

    class Meta:
        db_table = "due_day"
        constraints = (
            models.UniqueConstraint(fields=("component", "matter"), name="due_day_once"),
        )
        indexes = (
            models.Index(fields=("day", "component", "matter"), name="due_day_day"),
            models.Index(fields=("station", "day", "component", "matter"), name="due_day_station"),
        )


class DueBasis(models.Model):
    """By which texts the due days were reckoned, and up to which entry: one row.

    Args:
        digest: of the adopted edition, the policy and the guides, as texts.
    """

    id = models.PositiveSmallIntegerField(primary_key=True, default=1)
    digest = models.CharField(max_length=64)
    seq = models.PositiveBigIntegerField()

    class Meta:
        db_table = "due_basis"
