/**
 * What the decision weighs; settled on the development shapes of the practice cars, checked on others
 * (docs/bench/advice.md).
 */

/** Confidence that an accept asks for: the mean is inside the tolerance. */
export const ACCEPT_CONFIDENCE = 0.94;
/** Share of the risk limit that one pull may use up: what is left covers what the prior does not know. */
export const RISK_SHARE = 0.9;
/**
 * Pulls that one would make to avoid a risk as large as the risk limit; it grows with the square, so that one high
 * risk weighs more than several small ones, and a lower ceiling holds the duty down.
 */
export const PULLS_PER_RISK_LIMIT = 2.5;
/** What a pull that misses the tolerance costs, in pulls, against one that only does not suffice for an accept. */
export const MISS_SHARE = 0.5;
/** What a further pull at a duty already pulled is worth over one at a new duty, in pulls, if it is the right one. */
export const PULLED_WORTH = 0.08;
