"""SW10: how the sheets of a club look: `setwright.toml`, logo, colour, language, a template of its own."""

from setwright.diagnostics.model import Code, Severity

_TOML = "setwright.toml"
_TEMPLATE = "club.html.j2"
_SVG = '<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 8 8"><path d="M0 8 4 0l4 8z"/></svg>\n'

BROKEN_SETTINGS = Code(
    "SW1001",
    "broken-settings",
    Severity.ERROR,
    title="The settings are no TOML",
    message="this is no TOML: {reason}",
    text="`setwright.toml` is written in TOML (toml.io): a table `[sheets]`, and under it a line for each setting, with "
    "its text in quotes.",
    failing="[sheets]\nclub = Tarnfell Rowing Club\n",
    mended='[sheets]\nclub = "Tarnfell Rowing Club"\n',
    file=_TOML,
)
UNKNOWN_SETTING = Code(
    "SW1002",
    "unknown-setting",
    Severity.ERROR,
    title="A setting that there is not",
    message="there is no setting `{name}`",
    text="`setwright.toml` may hold one table, `[sheets]`, with `club`, `logo`, `colour`, `language` and `template`.",
    failing='[sheets]\ncolor = "#7a1f3d"\n',
    mended='[sheets]\ncolour = "#7a1f3d"\n',
    file=_TOML,
)
SETTING_WITHOUT_TEXT = Code(
    "SW1003",
    "setting-without-text",
    Severity.ERROR,
    title="A setting is not one line of text",
    message="`{name}` takes one line of text",
    text="Every setting of the sheets is one line of text in quotes, which is not empty and of at most 200 characters.",
    failing="[sheets]\nclub = 1874\n",
    mended='[sheets]\nclub = "Club of 1874"\n',
    file=_TOML,
)
BAD_COLOUR = Code(
    "SW1004",
    "bad-colour",
    Severity.ERROR,
    title="A colour that cannot be read",
    message="`{written}` is no colour",
    text="A club's colour is `#` and six digits from 0 to 9 and a to f: two each for red, green and blue. It is made "
    "darker on light paper, and lighter on dark screens, as far as it takes to be read.",
    failing='[sheets]\ncolour = "burgundy"\n',
    mended='[sheets]\ncolour = "#7a1f3d"\n',
    file=_TOML,
)
BAD_LOGO = Code(
    "SW1005",
    "bad-logo",
    Severity.ERROR,
    title="A file that cannot be the logo",
    message="`{file}` cannot be the logo: {reason}",
    text="The logo is put into each sheet, which needs no other file. It is a PNG, JPEG, WebP, GIF or SVG of at most "
    "100 kB. An SVG that holds scripts or fetches something from elsewhere is refused.",
    failing='[sheets]\nlogo = "logo.txt"\n',
    mended='[sheets]\nlogo = "logo.svg"\n',
    files=(("logo.txt", "our logo\n"), ("logo.svg", _SVG)),
    file=_TOML,
)
UNKNOWN_LANGUAGE = Code(
    "SW1006",
    "unknown-language",
    Severity.ERROR,
    title="A language that the sheets do not speak",
    message="{reason}",
    text="A language is given by its tag, `en` for English. Languages other than English need "
    "`pip install 'setwright[languages]'`. Names, notes and cues stay as they were written.",
    failing='[sheets]\nlanguage = "harbour"\n',
    mended='[sheets]\nlanguage = "en"\n',
    file=_TOML,
)
TEMPLATE_UNREADABLE = Code(
    "SW1007",
    "template-unreadable",
    Severity.ERROR,
    title="A template that cannot be read",
    message="this template cannot be read: {reason}",
    text="A template is HTML with marks of jinja2 in it: values between `{{` and `}}`, loops and conditions between "
    "`{%` and `%}`. It may include and extend the shipped templates, and no other file.",
    failing='{% extends "page.html.j2" %}\n{% block title %}{{ look.club }\n{% endblock %}\n',
    mended='{% extends "page.html.j2" %}\n{% block title %}{{ look.club }}\n{% endblock %}\n',
    file=_TEMPLATE,
)
TEMPLATE_STOPS = Code(
    "SW1008",
    "template-stops",
    Severity.ERROR,
    title="A template that does not come to its end",
    message="the template stops here: {reason}",
    text="What a template is given is in the table of the reference, chapter “Sheets of your own”. It reads those values "
    "and nothing else: no file, nothing of the program, nothing that begins with `_`.",
    failing='{% extends "page.html.j2" %}\n{% block title %}\n<h1>{{ sheet.nmae }}</h1>\n{% endblock %}\n',
    mended='{% extends "page.html.j2" %}\n{% block title %}\n<h1>{{ sheet.name }}</h1>\n{% endblock %}\n',
    file=_TEMPLATE,
)
TEMPLATE_LIMIT = Code(
    "SW1009",
    "template-limit",
    Severity.ERROR,
    title="A template that asks for too much",
    message="the template passes a limit here: {reason}",
    text="A page may take so many passes of loops and calls, and so many characters, and no more; a sheet of a whole "
    "season stays far below. The limits are in chapter 22 of the reference.",
    failing='{% extends "page.html.j2" %}\n{% block title %}\n{% for n in range(1000000) %}{{ n }}{% endfor %}\n{% endblock %}\n',
    mended='{% extends "page.html.j2" %}\n{% block title %}\n{% for n in range(3) %}{{ n }}{% endfor %}\n{% endblock %}\n',
    file=_TEMPLATE,
)
TEMPLATE_PAGE = Code(
    "SW1010",
    "template-page",
    Severity.ERROR,
    title="A template makes a page that no sheet can be",
    message="the page cannot be a sheet: {reason}",
    text="Right behind `<head>` every sheet says what a browser may do with it: nothing but show it. Nothing may stand "
    "before that but `<!DOCTYPE html>` and `<html>`, which may have `lang`, `dir` and `class`. The page has no scripts "
    "of its own, no `<meta http-equiv>`, and no `<link>` but to `data:`. A template that begins with "
    '`{% extends "page.html.j2" %}` has all that is needed.',
    failing="<h1>{{ sheet.name }}</h1>\n",
    mended='<!DOCTYPE html>\n<html lang="en">\n<head>\n<title>{{ sheet.name }}</title>\n</head>\n'
    '<body>\n<h1>{{ sheet.name }}</h1>\n{% include "cautions.html.j2" %}\n</body>\n</html>\n',
    file=_TEMPLATE,
)
CAUTIONS_LEFT_OUT = Code(
    "SW1011",
    "cautions-left-out",
    Severity.WARNING,
    title="A template leaves out cautions",
    message="the page leaves out {left_out} of {count} cautions, the first of them `{head}`",
    text="Whoever trains by the sheet should find the cautions on it: those of the plan in `sheet.cautions` (or "
    '`{% include "cautions.html.j2" %}`), those of a week in `week.cautions`, those of a session in `session.cautions`.',
    failing='{% extends "page.html.j2" %}\n{% block cautions %}{% endblock %}\n',
    mended='{% extends "page.html.j2" %}\n{% block cautions %}\n<h2>Take care</h2>\n'
    "{% for head, said in sheet.cautions %}\n<p><b>{{ head }}</b> {{ said }}</p>\n{% endfor %}\n{% endblock %}\n",
    file=_TEMPLATE,
)

CODES = (
    BROKEN_SETTINGS,
    UNKNOWN_SETTING,
    SETTING_WITHOUT_TEXT,
    BAD_COLOUR,
    BAD_LOGO,
    UNKNOWN_LANGUAGE,
    TEMPLATE_UNREADABLE,
    TEMPLATE_STOPS,
    TEMPLATE_LIMIT,
    TEMPLATE_PAGE,
    CAUTIONS_LEFT_OUT,
)
