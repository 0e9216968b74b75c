/** A number of pulls in words: 1 pull, 2 pulls. */
export const countPulls = (count: number): string => `${count} ${count === 1 ? 'pull' : 'pulls'}`;
