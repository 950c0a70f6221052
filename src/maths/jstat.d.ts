declare module 'jstat' {
  const jstat: {
    jStat: {
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
