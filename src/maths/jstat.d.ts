declare module 'jstat' {
  const jstat: {
    jStat: {
      mean(values: readonly number[]): number;
      stdev(values: readonly number[], isSample: boolean): number;
      normal: {
        cdf(x: number, mean: number, standardDeviation: number): number;
        inv(probability: number, mean: number, standardDeviation: number): number;
      };
      tukey: {
        cdf(q: number, means: number, degreesOfFreedom: number): number;
        inv(probability: number, means: number, degreesOfFreedom: number): number;
      };
      centralF: {
        cdf(x: number, numerator: number, denominator: number): number;
        inv(probability: number, numerator: number, denominator: number): number;
      };
    };
  };
  export default jstat;
}
