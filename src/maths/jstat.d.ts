declare module 'jstat' {
  export const jStat: {
    normal: {
      cdf(x: number, mean: number, standardDeviation: number): number;
      inv(probability: number, mean: number, standardDeviation: number): number;
    };
  };
}
