/** A fault that moves the mean peak by no more than this share of it does not show. */
export const SHOWS_FROM = 0.03;
