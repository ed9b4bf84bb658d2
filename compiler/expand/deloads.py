"""What a deload and a limit do to the prescription of one line."""

from __future__ import annotations

from fractions import Fraction

from setwright.link.model import Deload, LinkedBlock
from setwright.message import Phrase, message
from setwright.plan import Cause, EaseIn, Group, Line, Quantity, Segment, SegmentKind, Step
from setwright.prescription import Bodyweight, Effort, Intensity, PercentOfBest, Weight
from setwright.quantities import round_half_up
from setwright.record import replace
from setwright.source import Span

# What stands under a movement in place of its progression's rules.
EASED = Phrase(message("A lighter session after a break does not count. The next one goes on from before it."))
NO_EXPOSURE = Phrase(message("A deload does not count. The next session goes on from the one before it."))


def deloaded(line: Line, deload: Deload, block: LinkedBlock) -> Line:
    """The line of the working week before, lightened, within the limit of the block it lands in.

    Warm-ups stay as they are: they are shares of a lighter load.
    """
    lighter = tuple(_in_deload(segment, deload, block) for segment in line.segments)
    words = NO_EXPOSURE if line.advance_words else None
    return replace(line, segments=lighter, advance_words=words, group=_with_fewer_rounds(line.group, deload))


def eased(line: Line, rule: EaseIn) -> Line:
    """The line lightened after a gap; warm-ups stay as they are."""
    light = Deload(rule.sets, rule.load, rule.effort, rule.span)
    lighter = tuple(
        segment if segment.kind is SegmentKind.WARM_UP else _lightened(segment, light) for segment in line.segments
    )
    words = EASED if line.advance_words else None
    return replace(line, segments=lighter, advance_words=words, group=_with_fewer_rounds(line.group, light))


def limited(segment: Segment, cap: Fraction, span: Span, cause: Cause = Cause.LIMIT) -> Segment:
    """The segment with its stated effort at or under the cap (RPE)."""
    lowered = _capped(segment.intensity, cap)
    if lowered == segment.intensity:
        return segment
    step = Step(Quantity.INTENSITY, cause, segment.intensity, lowered, span, (("most", cap),))
    return replace(segment, intensity=lowered, steps=(*segment.steps, step))


def _in_deload(segment: Segment, deload: Deload, block: LinkedBlock) -> Segment:
    if segment.kind is SegmentKind.WARM_UP:
        return segment
    lighter = _lightened(segment, deload)
    if block.limit is None or block.limit_span is None:
        return lighter
    return limited(lighter, block.limit, block.limit_span)


def _lightened(segment: Segment, deload: Deload) -> Segment:
    if deload.sets is not None:
        segment = _with_fewer_sets(segment, deload.sets, deload.span)
    before = segment.intensity.high if isinstance(segment.intensity, Effort) else None
    if deload.effort is not None:
        segment = limited(segment, deload.effort, deload.span, Cause.DELOAD)
        if before is not None and before > deload.effort:
            segment = replace(segment, effort_before=before)
    if deload.load is not None and deload.load != 1:
        segment = _with_less_load(segment, deload.load, deload.span)
    return segment


def _fewer(count: int, share: Fraction) -> int:
    return max(1, int(round_half_up(count * share)))


def _with_fewer_rounds(group: Group | None, deload: Deload) -> Group | None:
    """A circuit has as many rounds as its lines have sets."""
    if group is None or group.rounds is None or deload.sets is None:
        return group
    return replace(group, rounds=_fewer(group.rounds, deload.sets))


def _with_fewer_sets(segment: Segment, share: Fraction, span: Span) -> Segment:
    fewer = _fewer(segment.sets, share)
    if fewer == segment.sets:
        return segment
    step = Step(Quantity.SETS, Cause.DELOAD, segment.sets, fewer, span, (("share", share),))
    return replace(segment, sets=fewer, steps=(*segment.steps, step))


def _with_less_load(segment: Segment, share: Fraction, span: Span) -> Segment:
    lighter: Intensity | None
    match segment.intensity:
        case PercentOfBest(percent=percent, of=of):
            lighter = PercentOfBest(percent * share, of)
        case Weight(mass=mass):
            lighter = Weight(mass.times(share), written=False)
        case Bodyweight(added=added) if added is not None and added.amount > 0:
            lighter = Bodyweight(added.times(share), written=False)
        case Effort():
            return replace(segment, load_factor=segment.load_factor * share, lightened=span)
        case _:
            # A change of the segment before follows that segment's lighter load; bodyweight alone has no load to scale.
            return segment
    step = Step(Quantity.INTENSITY, Cause.DELOAD, segment.intensity, lighter, span, (("share", share),))
    factor = segment.load_factor * share
    return replace(segment, intensity=lighter, load_factor=factor, lightened=span, steps=(*segment.steps, step))


def _capped(intensity: Intensity | None, cap: Fraction) -> Intensity | None:
    if isinstance(intensity, Effort) and intensity.high > cap:
        return Effort(min(intensity.low, cap), cap, intensity.as_reserve)
    return intensity
