/** A whole number that an option of a command gives. @throws Error naming the option */
export function wholeNumber(name: string, text: string, least: number): number {
  const value = Number(text);
  if (Number.isInteger(value) && value >= least) return value;
  throw new Error(`--${name} must be a whole number from ${least}, not ${text}`);
}
