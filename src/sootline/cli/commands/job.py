"""`sootline job`: what does a job look like, is mine one, how do I put one together?"""

import argparse
import json
from pathlib import Path

from sootline.cli.output import deliver, write_whole
from sootline.core.basis import BadInputError, Fault, MessageId
from sootline.core.job.assemble import assemble
from sootline.core.job.codec import schema
from sootline.core.job.jobs import Job
from sootline.core.job.label_texts import with_label_texts
from sootline.wiring.jobs import read_job, read_part, to_job
from sootline.words import say


def add_arguments(parser: argparse.ArgumentParser) -> None:
    """Add `schema`, `check FILE` and `assemble FILE...`."""
    parser.add_argument("what", choices=("schema", "check", "assemble"))
    parser.add_argument("files", nargs="*", type=Path, metavar="FILE")


def run(options: argparse.Namespace) -> int:
    """Print the schema, check one job, or write several parts as one job."""
    if options.what == "schema":
        print(json.dumps(schema(Job), ensure_ascii=False, indent=2))
        return 0
    if not options.files:
        raise BadInputError([Fault(place="FILE", message=MessageId("job.no_file"))])
    if options.what == "check":
        for path in options.files:
            job = read_job(path)
            counts = {
                "file": path.name,
                "members": str(len(job.members)),
                "components": str(len(job.components)),
                "calls": str(len(job.calls)),
            }
            deliver(counts, [say("job.checked", counts, lang=options.lang)], options)
        return 0
    parts = [(path.name, read_part(path)) for path in options.files]
    whole = with_label_texts(assemble(parts))
    text = json.dumps(whole, ensure_ascii=False, indent=2)
    to_job(text)
    if options.out:
        write_whole(options.out, text + "\n")
    else:
        print(text)
    return 0
