/** So much of a log is looked at to find its layout. */
export const HEAD_BYTES = 1 << 16;
