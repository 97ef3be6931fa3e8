"""Who may sign in, in which offices; and who looked at whose health data."""

from collections.abc import Sequence
from typing import Any, ClassVar

from django.contrib.auth.models import AbstractBaseUser, BaseUserManager
from django.db import models

from sootline.core.basis import DeviceId
from sootline.core.ledger.kinds import Established


class Users(BaseUserManager["User"]):
    """Makes accounts; a name is one name in capitals or not."""

    def make(self, name: str, password: str | None, roles: Sequence[str], **rest: Any) -> "User":  # noqa: ANN401
        """Make and save an account; the password must have been looked at before.

        Args:
            password: None makes an account that cannot sign in yet.
        """
        user = self.model(name=name.casefold(), roles=sorted(roles), **rest)
        user.set_password(password)
        user.save(using=self._db)
        return user

    def get_by_natural_key(self, username: str | None) -> "User":
        """Find an account by the name as typed."""
        return self.get(name=(username or "").casefold())


class User(AbstractBaseUser):
    """One account.

    Args:
        name: what is typed at the sign-in.
        member: whose account it is; the record names this person as actor.
        roles: offices, as in the table of rights.
        station: the only station whose gear it sees; blank sees all.
    """

    # How the person was established for this request, and where; no column.
    established: Established = Established.SIGNED_IN
    device: DeviceId = DeviceId("browser")

    name = models.CharField(max_length=80, unique=True)
    member = models.CharField(max_length=200)
    roles = models.JSONField(default=list)
    station = models.CharField(max_length=200, blank=True)
    is_active = models.BooleanField(default=True)
    made_at = models.DateTimeField(auto_now_add=True)

    objects: ClassVar[Users] = Users()

    USERNAME_FIELD = "name"

    class Meta:
        db_table = "account"


class Look(models.Model):
    """Somebody looked at what a person was exposed to; never changed, never deleted."""

    at = models.DateTimeField()
    actor = models.CharField(max_length=200)
    member = models.CharField(max_length=200)
    what = models.CharField(max_length=60)

    class Meta:
        db_table = "look"
        indexes = (models.Index(fields=("member", "at"), name="look_member"),)
