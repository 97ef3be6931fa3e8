"""One module per command, imported only when the command is called.

A command module is named in `cli/registry.py` and has two functions:

    def add_arguments(parser: CommandParser) -> None:
        parser.add_argument("file", type=Path, help="cli.loads.file")

    def run(options: argparse.Namespace) -> int:
        result = ...  # one task, called with what wiring reads from the files
        deliver(result, text_lines, options)
        return DONE

Help texts are message ids; the parser says them in the reader's language. Every command already
has `options.json`, `options.out` and `options.lang`. A command with sub-commands calls
`parser.add_sub_commands("action")` and on what it returns `.add_parser("show", help=...)`; those
get the common options too.
`run` returns DONE, PROBLEM (an answer came out, and it is not a good one) or BAD_INPUT from
`cli/registry.py`. It lets BadInputError and UnreadableValueError pass: the frame prints every
fault and answers BAD_INPUT.
Imports that cost time (solvers, the document library) belong to the module that needs them, so
that no other command pays for them.
"""
