declare const gaugeKind: unique symbol;
declare const absoluteKind: unique symbol;

/** A pressure above the surrounding air, kPa. Negative below it (vacuum). Not assignable to AbsoluteKpa. */
export type GaugeKpa = number & { readonly [gaugeKind]: true };

/** A pressure above perfect vacuum, kPa. Never negative. Not assignable to GaugeKpa. */
export type AbsoluteKpa = number & { readonly [absoluteKind]: true };
