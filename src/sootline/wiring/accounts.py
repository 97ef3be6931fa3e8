"""Where are accounts kept? To be imported once the framework is started."""

from sootline.storage.accounts import (
    close_account,
    find_account,
    make_account,
    set_password,
    set_roles,
)

__all__ = ["close_account", "find_account", "make_account", "set_password", "set_roles"]
