declare module 'jstat' {
  const jstat: {
    readonly studentt: { cdf(t: number, degreesOfFreedom: number): number };
    readonly chisquare: { cdf(x: number, degreesOfFreedom: number): number };
    ibeta(x: number, a: number, b: number): number;
  };
  export default jstat;
}
