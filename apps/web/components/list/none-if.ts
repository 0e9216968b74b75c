/** Marks a cell that is not worth a place of its own where a table stands in lines. */
export const noneIf = (isNone: boolean): '' | undefined => (isNone ? '' : undefined);
