"""An `emphasis` line as a `Wish`.

Comes in: the line, of a plan or an athlete. Goes out: a muscle with sets to add or to take, or the reason why not.
"""

from __future__ import annotations

from setwright.diagnostics import Diagnostic
from setwright.diagnostics.catalogue import names, structure
from setwright.link.library import Library
from setwright.link.values import whole
from setwright.rules import Wish
from setwright.suggest import Suggestion, either
from setwright.syntax import nodes as n

MOST_WISHED = 20  # sets a week for one muscle; more than anyone adds to a plan, and a bound on the work


def linked_wish(
    node: n.EmphasisLine, before: tuple[Wish, ...], library: Library, problems: list[Diagnostic]
) -> Wish | None:
    """The wish of a line after those `before` it, or None after saying what is wrong with it."""
    sets = whole(node.sets, problems, f"a whole number of sets from 1 to {MOST_WISHED}", MOST_WISHED)
    subject = library.known_subject(node.muscle, problems)
    if subject is None:
        return None
    group = library.groups.get(subject)
    if group is not None:
        members = either([f"`{member}`" for member in group.members])
        sentence = f"Write a line for {members}, or one for each."
        fitting = () if node.muscle.prefixed else group.members  # behind a prefix they are called otherwise
        help_ = Suggestion(sentence, node.muscle.text, fitting) if members else None
        problems.append(names.GROUP_IN_EMPHASIS.at(node.muscle.span, name=group.word, help=help_))
        return None
    if sets is None:
        return None
    total = sum(wish.sets for wish in before if wish.muscle == subject) + node.sign * sets
    if abs(total) > MOST_WISHED:
        what = f"sets a week for {subject}"
        problems.append(structure.TOO_LARGE.at(node.span, what=what, count=abs(total), most=MOST_WISHED))
        return None
    return Wish(subject, node.sign * sets, node.span)
