"""Sets added or taken for a muscle, as far as the rules of the plan allow. The only caller is `pipeline`."""

from setwright.emphasis.placing import emphasised

__all__ = ["emphasised"]
