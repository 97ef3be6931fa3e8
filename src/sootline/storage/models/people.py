"""How a person is known at a screen: second factor, recovery codes, PIN, station devices."""

from django.db import models

from sootline.storage.models.accounts import User


class SecondFactor(models.Model):
    """An account's authenticator.

    The secret itself is nowhere: it is derived from the installation's secret and this salt.

    Args:
        last_step: the last time step a code of which was taken; codes up to it are spent.
    """

    user = models.OneToOneField(User, models.CASCADE, primary_key=True, related_name="factor")
    salt = models.CharField(max_length=64)
    since = models.DateTimeField()
    last_step = models.PositiveBigIntegerField()

    class Meta:
        db_table = "second_factor"


class RecoveryCodeRow(models.Model):
    """One recovery code, as an Argon2id hash; the row goes when the code is used."""

    user = models.ForeignKey(User, models.CASCADE, related_name="recovery_codes")
    number = models.PositiveSmallIntegerField()
    digest = models.CharField(max_length=200)

    class Meta:
        db_table = "recovery_code"
        constraints = (
            models.UniqueConstraint(fields=("user", "number"), name="recovery_code_once"),
        )


class Pin(models.Model):
    """An account's PIN for station devices, as an Argon2id hash.

    Args:
        first: somebody else chose it; it must be changed when it is first used.
    """

    user = models.OneToOneField(User, models.CASCADE, primary_key=True, related_name="pin")
    digest = models.CharField(max_length=200)
    first = models.BooleanField()
    since = models.DateTimeField()

    class Meta:
        db_table = "pin"


class Device(models.Model):
    """A station device; its row stays when it is revoked, as entries name it.

    Args:
        digest: SHA-256 of the token in the device's cookie, which holds 256 bits of chance.
        station: the only station whose gear it shows; blank shows all.
    """

    id = models.CharField(max_length=60, primary_key=True)
    name = models.CharField(max_length=80)
    place = models.CharField(max_length=200)
    station = models.CharField(max_length=200, blank=True)
    digest = models.CharField(max_length=64)
    enrolled_at = models.DateTimeField()
    enrolled_by = models.CharField(max_length=200)
    seen_at = models.DateTimeField()
    revoked_at = models.DateTimeField(null=True)
    revoked_by = models.CharField(max_length=200, blank=True)

    class Meta:
        db_table = "device"


class Guesses(models.Model):
    """Wrong guesses in a row at one thing ("pin:7", "second-factor:7")."""

    subject = models.CharField(max_length=120, primary_key=True)
    failures = models.PositiveIntegerField(default=0)
    last_at = models.DateTimeField()

    class Meta:
        db_table = "guesses"
