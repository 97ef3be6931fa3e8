"""Who may sign in? Accounts are made on the console or by an administrator, never by default."""

from collections.abc import Sequence

from django.contrib.auth.password_validation import validate_password
from django.contrib.sessions.models import Session
from django.core.exceptions import ValidationError
from django.utils import timezone

from sootline.core.basis import BadInputError, Fault, MessageId
from sootline.storage.models import User
from sootline.tasks.rights import Role

_LONGEST_NAME = 80


def make_account(
    name: str, password: str, roles: Sequence[str], *, member: str = "", station: str = ""
) -> User:
    """Make an account.

    Args:
        member: whose it is, as the record names people; blank is the name.

    Raises:
        BadInputError: with everything wrong: the name is taken or blank, an office does not
            exist, the password is not good enough.
    """
    user = User(name=name.strip().casefold(), member=member or name.strip(), station=station)
    faults = [*_name_faults(user), *_role_faults(roles), *_password_faults(password, user)]
    if faults:
        raise BadInputError(faults)
    return User.objects.make(user.name, password, roles, member=user.member, station=station)


def set_password(name: str, password: str) -> None:
    """Give an account another password; whoever is signed in by the old one no longer is.

    Raises:
        BadInputError: there is no such account, or the password is not good enough.
    """
    user = find_account(name)
    faults = _password_faults(password, user)
    if faults:
        raise BadInputError(faults)
    user.set_password(password)
    user.save()
    end_sessions(user)


def set_roles(name: str, roles: Sequence[str]) -> User:
    """Give an account other offices; they count from its next request.

    Raises:
        BadInputError: there is no such account or office, or nobody would administer any more.
    """
    user = find_account(name)
    faults = _role_faults(roles)
    if Role.ADMINISTRATOR not in roles and _last_administrator(user):
        faults.append(_fault("roles", "accounts.last_administrator"))
    if faults:
        raise BadInputError(faults)
    user.roles = sorted(roles)
    user.save()
    return user


def close_account(name: str) -> None:
    """Close an account; it stays, so that its name is never somebody else's.

    Raises:
        BadInputError: there is no such account, or nobody would administer any more.
    """
    user = find_account(name)
    if _last_administrator(user):
        raise BadInputError([_fault("name", "accounts.last_administrator")])
    user.is_active = False
    user.save()
    end_sessions(user)


def find_account(name: str) -> User:
    """Return an account by its name as typed.

    Raises:
        BadInputError: there is none.
    """
    user = User.objects.filter(name=name.strip().casefold()).first()
    if user is None:
        raise BadInputError([_fault("name", "accounts.no_such", name=name)])
    return user


def list_accounts() -> list[User]:
    """List every account, open ones first."""
    return list(User.objects.order_by("-is_active", "name"))


def end_sessions(user: User) -> int:
    """End everything an account is signed in to; return how many sessions that were."""
    theirs = [
        session.pk
        for session in Session.objects.filter(expire_date__gt=timezone.now())
        if session.get_decoded().get("_auth_user_id") == str(user.pk)
    ]
    Session.objects.filter(pk__in=theirs).delete()
    return len(theirs)


def _last_administrator(user: User) -> bool:
    others = User.objects.filter(is_active=True).exclude(pk=user.pk)
    mine = Role.ADMINISTRATOR in user.roles
    return mine and not any(Role.ADMINISTRATOR in other.roles for other in others)


def _name_faults(user: User) -> list[Fault]:
    if not 0 < len(user.name) <= _LONGEST_NAME:
        return [_fault("name", "accounts.name", name=user.name)]
    if User.objects.filter(name=user.name).exists():
        return [_fault("name", "accounts.taken", name=user.name)]
    return []


def _role_faults(roles: Sequence[str]) -> list[Fault]:
    known = ", ".join(Role)
    return [
        _fault("roles", "accounts.no_such_role", role=role, known=known)
        for role in roles
        if role not in set(Role)
    ]


def _password_faults(password: str, user: User) -> list[Fault]:
    try:
        validate_password(password, user)
    except ValidationError as error:
        return [_password_fault(one) for one in error.error_list]
    return []


def _password_fault(error: ValidationError) -> Fault:
    """Turn a validator's word into ours; the framework's own list knows only common ones."""
    params = {name: str(value) for name, value in (error.params or {}).items()}
    message = str(error.message)
    ours = message.startswith("accounts.")
    return _fault("password", message if ours else "accounts.password.common", **params)


def _fault(place: str, message: str, **values: str) -> Fault:
    return Fault(place=place, message=MessageId(message), values=tuple(values.items()))
