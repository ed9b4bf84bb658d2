"""SW00: files that cannot be read, and imports."""

from setwright.diagnostics.model import Code, Severity

_PLAN = 'plan "Pier"\n  block Base: 1 week\n    day Mon\n      note "Easy walk."\n'

UNREADABLE_FILE = Code(
    "SW0001",
    "unreadable-file",
    Severity.ERROR,
    title="A file cannot be read",
    message="cannot read `{file}`: {reason}",
    text="The file is not there, is a folder, or may not be read. Paths are relative to the file that names them.",
    failing='use "clients/nobody.plan"\n',
    mended='use "clients/ines.plan"\n',
    files=(("clients/ines.plan", 'athlete "Ines"\n'),),
)
NOT_UTF8 = Code(
    "SW0002",
    "not-utf8",
    Severity.ERROR,
    title="A file is not UTF-8 text",
    message="byte {byte} is not UTF-8 text",
    text="Plans are text files in UTF-8. Save the file with that encoding, or check that it is a plan at all.",
    failing=b'plan "Qu\xe4y"\n',
    mended='plan "Quäy"\n  block Base: 1 week\n    day Mon\n      note "Easy walk."\n',
)
FILE_TOO_LARGE = Code(
    "SW0003",
    "file-too-large",
    Severity.ERROR,
    title="A file is too large to be a plan",
    message="`{file}` is larger than {most} MB",
    text="A season of plans for a whole club stays far below this size; the file is probably something else.",
    failing="",  # an example would be as large as the title says
    mended=_PLAN,
)
EMPTY_FILE = Code(
    "SW0004",
    "empty-file",
    Severity.ERROR,
    title="A file declares nothing",
    message="this file declares nothing",
    text="There is no plan, athlete, library or log in the file; perhaps it was not saved. `setwright new` writes a start.",
    failing="# nothing yet\n",
    mended=_PLAN,
)
OUTSIDE_ROOT = Code(
    "SW0005",
    "outside-root",
    Severity.ERROR,
    title="An import leaves the workspace",
    message="`{file}` lies outside {home}",
    text="A plan may only use files of its own workspace: the nearest folder above that holds `.git` or "
    "`setwright.toml`, else its own folder, or the folder given with `--root`. A file of a pack may only use files of "
    "its own pack, and name those of the shipped library and of other packs.",
    failing='use "../../elsewhere/secret.plan"\n',
    mended='use "library.plan"\n',
    files=(("library.plan", "exercise Squat\n"),),
)
IMPORT_CYCLE = Code(
    "SW0006",
    "import-cycle",
    Severity.ERROR,
    title="Files use each other in a circle",
    message="these files use each other in a circle: {chain}",
    text="Each file would have to be read before the other. Move what both need into a third file.",
    failing='use "b.plan"\n',
    mended='use "c.plan"\n',
    files=(("b.plan", 'use "example.plan"\n'), ("c.plan", "exercise Squat\n")),
)
UNKNOWN_LIBRARY = Code(
    "SW0007",
    "unknown-library",
    Severity.ERROR,
    title="There is no such library",
    message="there is no library `{name}`",
    text="The shipped library is `stdlib`, with `stdlib.exercises`, `stdlib.muscles`, `stdlib.equipment` and rule sets "
    "under `stdlib.rules`.",
    failing="use stdlib.exercices\n",
    mended="use stdlib.exercises\n",
)
TOO_MANY_IMPORTS = Code(
    "SW0008",
    "too-many-imports",
    Severity.ERROR,
    title="Imports go too deep or too wide",
    message="more than {most} files in one plan, or imports nested too deep",
    text="The limit keeps a damaged or hostile set of files from holding up the compiler.",
    failing='use "f1.plan"\n',
    mended='use "c.plan"\n',
    files=(
        *((f"f{index}.plan", f'use "f{index + 1}.plan"\n') for index in range(1, 102)),
        ("f102.plan", "exercise Squat\n"),
        ("c.plan", "exercise Squat\n"),
    ),
)
OTHER_LANGUAGE = Code(
    "SW0009",
    "other-language",
    Severity.ERROR,
    title="A file is written in another version of the language",
    message="this compiler reads language 1, not {version}",
    text="A file may begin with `language 1`. A later version of the language needs a later Setwright.",
    failing="language 2\n" + _PLAN,
    mended="language 1\n" + _PLAN,
)
LATE_LANGUAGE = Code(
    "SW0010",
    "late-language",
    Severity.ERROR,
    title="`language` is not the first line",
    message="`language` belongs on the first line of the file",
    text="What follows is read by the rules of that version, so nothing may stand before it but comments.",
    failing=_PLAN + "language 1\n",
    mended="language 1\n" + _PLAN,
)
UNKNOWN_PACK = Code(
    "SW0011",
    "unknown-pack",
    Severity.ERROR,
    title="A pack that is not installed",
    message="no installed pack is called `{name}`",
    text="A pack is a Python package that offers libraries of plans under a name, its entry point in the group "
    "`setwright.library`. It has to be installed in the environment that Setwright runs in, with pip or uv. The "
    "shipped library is called `stdlib`.",
    failing="use stdlb.exercises\n",
    mended="use stdlib.exercises\n",
)
BROKEN_PACK = Code(
    "SW0012",
    "broken-pack",
    Severity.ERROR,
    title="An installed pack cannot be used",
    message="the pack `{name}` cannot be used: {reason}",
    text="Its entry point in the group `setwright.library` has to name a package with a folder, in which its `.plan` "
    "files lie. Whoever made the pack can mend it; installing it again may help. A pack's own code is never run.",
    failing="",  # it takes a package that is installed and broken
    mended="",
)
BAD_PREFIX = Code(
    "SW0013",
    "bad-prefix",
    Severity.ERROR,
    title="A prefix that is no lower-case word",
    message="the prefix `{prefix}` begins with a capital",
    text='A prefix is a lower-case word of your choice: `use "library.plan" as club`. What begins with a capital is a '
    "name, and may hold points itself.",
    failing='use "library.plan" as Club\n' + _PLAN,
    mended='use "library.plan" as club\n' + _PLAN,
    files=(("library.plan", "exercise Squat\n"),),
)

CODES = (
    UNREADABLE_FILE,
    NOT_UTF8,
    FILE_TOO_LARGE,
    EMPTY_FILE,
    OUTSIDE_ROOT,
    IMPORT_CYCLE,
    UNKNOWN_LIBRARY,
    TOO_MANY_IMPORTS,
    OTHER_LANGUAGE,
    LATE_LANGUAGE,
    UNKNOWN_PACK,
    BROKEN_PACK,
    BAD_PREFIX,
)
