"""A club's logo, ready to stand in a page.

Comes in: the bytes of a picture. Goes out: a `data:` address, or a `LogoError` that says why there is none.
"""

from __future__ import annotations

import re
from base64 import b64encode
from typing import Final
from xml.etree import ElementTree

LARGEST: Final = 100_000  # bytes: a sheet is sent by message and opened on old telephones

# How files of each kind begin, and what of fixed form comes before the picture itself.
_BEGINNINGS: Final = (
    # PNG (W3C): the signature, then IHDR, 13 bytes with width and height, and its check sum.
    ("image/png", re.compile(rb"\x89PNG\r\n\x1a\n"), re.compile(rb".{8}\0\0\0\x0dIHDR.{17}", re.DOTALL)),
    # JPEG (ITU-T T.81): start of image, a marker segment with its length; the end of image somewhere after it.
    ("image/jpeg", re.compile(rb"\xff\xd8\xff"), re.compile(rb"\xff\xd8\xff[\xc0-\xfe].{2}.*\xff\xd9", re.DOTALL)),
    # GIF87a and GIF89a: a logical screen descriptor of 7 bytes.
    ("image/gif", re.compile(rb"GIF8[79]a"), re.compile(rb".{13}", re.DOTALL)),
    # WebP (RFC 9649): the size of the file, then a first chunk with its size.
    ("image/webp", re.compile(rb"RIFF....WEBP", re.DOTALL), re.compile(rb".{12}VP8[ LX].{4}", re.DOTALL)),
)
_SVG: Final = "{http://www.w3.org/2000/svg}"


class LogoError(Exception):
    """A file that cannot be the logo; the text says why."""


def data_address(content: bytes) -> str:
    """The picture as a `data:` address. Its kind is told by its first bytes, not by the name of the file."""
    if len(content) > LARGEST:
        raise LogoError(f"it is larger than {LARGEST // 1000} kB")
    kind, whole = next(((kind, whole) for kind, begins, whole in _BEGINNINGS if begins.match(content)), (None, None))
    if whole is not None and not whole.match(content):
        raise LogoError("it is broken: it ends before the picture begins")
    if kind is None:
        _require_harmless_svg(content)
        kind = "image/svg+xml"
    return f"data:{kind};base64,{b64encode(content).decode()}"


def _require_harmless_svg(content: bytes) -> None:
    """A picture in an `img` runs no script and fetches nothing (SVG 2, "secure static mode"); it needs neither here.

    Printers are less strict than browsers, so what reaches out is refused, and a document type, which may grow without
    end when it is read.
    """
    if b"<svg" not in content:
        raise LogoError("it is no PNG, JPEG, WebP, GIF or SVG")
    try:
        text = content.decode("utf-8-sig")
    except UnicodeDecodeError:
        raise LogoError("it is an SVG, and not in UTF-8") from None
    if re.search(r"<!DOCTYPE|<!ENTITY|<\?(?!xml\s)", text, re.IGNORECASE):
        raise LogoError("it is an SVG with a document type or a style sheet of its own")
    try:
        root = ElementTree.fromstring(text)
    except (ElementTree.ParseError, ValueError) as error:
        raise LogoError(f"it is an SVG that cannot be read ({error})") from None
    if root.tag != f"{_SVG}svg":
        raise LogoError("it is no PNG, JPEG, WebP, GIF or SVG")
    for element in root.iter():
        _require_harmless(element)


def _require_harmless(element: ElementTree.Element) -> None:
    tag = str(element.tag)
    if tag.rpartition("}")[2] in ("script", "foreignObject", "iframe"):
        raise LogoError(f"it is an SVG with `{tag.rpartition('}')[2]}` in it")
    for name, value in element.attrib.items():
        plain_name = name.rpartition("}")[2].lower()
        if plain_name.startswith("on"):
            raise LogoError("it is an SVG with scripts in it")
        if plain_name in ("href", "src") and not value.strip().startswith(("#", "data:image/")):
            raise LogoError("it is an SVG that fetches something from elsewhere")
    for said in (*element.attrib.values(), element.text or ""):
        if _reaches_out(said):
            raise LogoError("it is an SVG that fetches something from elsewhere")


def _reaches_out(style: str) -> bool:
    return "@import" in style.lower() or any(
        not place.startswith(("#", "data:image/")) for place in re.findall(r"url\(\s*[\"']?([^\"')]*)", style, re.I)
    )
