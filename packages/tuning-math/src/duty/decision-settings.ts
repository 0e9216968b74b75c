/**
 * What the decision weighs; settled on the development shapes of the practice cars, checked on others
 * (docs/bench/advice.md).
 */

/** Confidence that an accept asks for: the mean is inside the tolerance. */
export const ACCEPT_CONFIDENCE = 0.955;
/** Share of the risk limit that one pull may use up: what is left covers what the prior does not know. */
export const RISK_SHARE = 0.9;
/** A pull that passes the ceiling passes it by about this much, log. */
export const USUAL_EXCESS = 0.06;
/**
 * Pulls that one would make to avoid a risk as large as the risk limit, of passing by the usual excess. What counts is by
 * how much the peak is expected to pass, to this power: one high risk weighs more than several small ones, and a lower
 * ceiling holds the duty down, since the higher of two duties always gains more excess by it (a chance may not: it is as
 * good as settled once a sudden rise lies behind).
 */
export const PULLS_PER_RISK_LIMIT = 6;
export const RISK_POWER = 1.5;
/** What a pull that misses the tolerance costs, in pulls, against one that only does not suffice for an accept. */
export const MISS_SHARE = 0.5;
