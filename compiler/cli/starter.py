"""The texts that `setwright new` writes: a plan written out or made from a template, an athlete, a log.

Comes in: the plan's name and perhaps a template. Goes out: text of the language, with comments that teach it.
"""

from __future__ import annotations

from typing import TYPE_CHECKING

if TYPE_CHECKING:
    from setwright.cli.templates import Template


def written_out(name: str) -> str:
    """A plan with every line there to read and change."""
    return _PLAN.replace("{name}", _escaped(name))


def made_from(template: Template, name: str) -> str:
    """A plan `from` a shipped template, each parameter with its default."""
    arguments = ", ".join(f"{one.name}: {one.default}" for one in template.parameters)
    block, day = template.first_day
    return _FROM.format(
        about=template.about.rstrip("."),
        template=template.name,
        name=_escaped(name),
        call=f"{template.name}({arguments})" if arguments else template.name,
        block=block,
        day=day,
    )


def _escaped(name: str) -> str:
    return name.replace("\\", "\\\\").replace('"', '\\"')


_PLAN = """\
# Three full-body days a week, for the first year of training, all written out.
#
# How to read it: what stands further in belongs to the line above. A line says what
# to do, how often and how hard:  Movement: sets x reps @ effort, extras

use stdlib.exercises
use stdlib.rules.hypertrophy-newer

plan "{name}"
  units kg
  # start 2027-01-04
  follow hypertrophy-newer
  warm-up 40% x 8, 60% x 5, 75% x 3    # what a bare `warm-up` below stands for

  block Base: 4 weeks
    limit effort RPE 8                 # no line of this block asks for more
    deload week 4: sets 50%, load 90%, effort RPE 6
    day Mon "Squat first"
      # RPE 8: about two reps were left. It moves up by itself over the weeks.
      Back Squat: 3 x 6-8 @ RPE 7 -> 8, rest 2-3 min, warm-up
        note "Set the safety bars one hand below your lowest point."
      Bench Press: 3 x 6-8 @ RPE 7 -> 8, rest 2-3 min, tempo 2-1-1-0, warm-up
      superset rest 90 s
        Seated Cable Row: 3 x 8-12 @ 2 RIR
        Lateral Raise: 2 x 12-15 @ 2 RIR
      Seated Leg Curl: 2 x 10-12 @ 2 RIR, rest 90 s
      Plank: 2 x 40 s, rest 60 s
    day Wed "Hinge first"
      Romanian Deadlift: 3 x 8-10 @ RPE 7 -> 8, rest 2-3 min, warm-up
      Overhead Press: 3 x 6-8 @ RPE 7 -> 8, rest 2 min
      Split Squat: 2 x 8-10/side @ 2 RIR, rest 90 s
      Lat Pulldown: 3 x 8-12 @ 2 RIR, rest 2 min
      superset rest 60 s
        Dumbbell Curl: 2 x 10-12 @ 2 RIR
        Triceps Pushdown: 2 x 10-12 @ 2 RIR
      Dead Bug: 2 x 8/side, rest 60 s
    # Friday is Monday with other movements: `swap` keeps the prescription, `drop`
    # takes a line out, `add` brings one.
    day Fri like Mon
      swap Back Squat for Leg Press
      swap Bench Press for Incline Dumbbell Bench Press
      drop Plank
      add Dumbbell Shoulder Press: 2 x 10-12 @ 2 RIR, rest 90 s after Incline Dumbbell Bench Press
      add Hammer Curl: 2 x 10-12 @ 2 RIR, rest 60 s
      add Rope Pushdown: 2 x 10-12 @ 2 RIR, rest 60 s

  block Build: 4 weeks like Base
    deload week 4: sets 50%, load 90%, effort RPE 6
    day Mon
      # A list gives one value a working week.
      Back Squat: [3, 3, 4] x 5-6 @ RPE 8, rest 3 min, warm-up
      Bench Press: [3, 4, 4] x 5-6 @ RPE 8, rest 3 min, warm-up
    day Wed
      Romanian Deadlift: 3 x 6-8 @ RPE 8, rest 3 min, warm-up
"""

_FROM = """\
# {about}.
#
# The plan is made from a template; `setwright library {template}` shows all its lines.

use stdlib.exercises
use stdlib.templates.{template}

# In brackets stands what can be changed, each with the value it has anyway: write
# another lift, another number of weeks. What you leave out keeps its value.
plan "{name}" from {call}
  units kg
  # start 2027-01-04    # take the # away, and the weeks get dates

  # Edit the template's days with the lines that edit a day that is `like` another:
  # a line for a movement that is there replaces it, and there are `add`, `drop`, `swap`.
  # For example (take away the # and the space after it):
  # block {block}
  #   day {day}
  #     add Dead Bug: 2 x 8/side @ 3 RIR, rest 60 s
"""

ATHLETE = """\
# Who the sheets are for. Only the name must be here; each line tells the compiler more.
# Loads come from the bests, and are rounded to what this bar and these plates make.

use stdlib.exercises

athlete "Noor"
  bodyweight 70 kg
  bar 20 kg
  plates 4x20, 2x15, 2x10, 2x5, 4x2.5, 2x1.25 kg    # how many there are in all; a bar takes pairs
  dumbbells 2-30 kg by 2 kg
  best Back Squat: 90 kg                            # tested
  best Bench Press: 60 kg x 5 @ RPE 9               # or a hard set, from which a best is estimated
  best Deadlift: 110 kg x 3 @ RPE 8
"""

LOG = """\
# What was done: a session a day, a line a movement, the repetitions of each set.

use stdlib.exercises

session 2027-01-04 Mon
  Back Squat: 65 kg x 5, 5, 5 @ RPE 7
  Bench Press: 45 kg x 8, 8, 7
  note "Replace this session with your own."
"""
