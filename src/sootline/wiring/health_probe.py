"""`python -m sootline.wiring.health_probe URL`: does the app here answer that it is well?"""

import ssl
import sys
import urllib.error
import urllib.request

_WAIT_S = 4.0


def is_well(url: str) -> bool:
    """Ask, under the name the app has on its own machine; whose certificate it is does not matter.

    Args:
        url: on this machine.
    """
    ask = urllib.request.Request(url, headers={"Host": "localhost"})  # noqa: S310  # ours
    # Nothing is sent, and the one who answers is this machine.
    unasked = ssl._create_unverified_context()  # noqa: S323
    try:
        with urllib.request.urlopen(ask, timeout=_WAIT_S, context=unasked) as answer:  # noqa: S310
            return bool(answer.status == 200)
    except (urllib.error.URLError, OSError):
        return False


if __name__ == "__main__":
    sys.exit(0 if is_well(sys.argv[1]) else 1)
