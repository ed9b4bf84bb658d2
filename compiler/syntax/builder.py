"""Turns what the parser reduces into syntax nodes, one line at a time.

Comes in: lark's tokens, with columns within the line. Goes out: a node of `nodes`, with spans in the file. Lark calls
the method that bears the name of each rule of the grammar, with the list of what the rule was made of.
"""

from setwright.syntax.building.libraries import Libraries
from setwright.syntax.building.numbers import Numbers
from setwright.syntax.building.plans import Plans
from setwright.syntax.building.sessions import Sessions


class Builder(Numbers, Sessions, Plans, Libraries):
    """Callbacks for every rule. `at_line` says which line the columns belong to."""
