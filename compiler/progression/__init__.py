"""How a prescription moves on from one exposure to the next: rules as data, the engine, the rules in words.

Pure: it knows no plan and no file. `link` reads declarations into it, `expand` projects weeks with it.
"""

from setwright.progression.engine import Asked, Done, Standing, advanced, as_asked, begun
from setwright.progression.model import Progression
from setwright.progression.words import in_words

__all__ = ["Asked", "Done", "Progression", "Standing", "advanced", "as_asked", "begun", "in_words"]
