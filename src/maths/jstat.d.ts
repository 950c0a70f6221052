declare module 'jstat' {
  const jstat: {
    jStat: {
      normal: {
        cdf(x: number, mean: number, standardDeviation: number): number;
        inv(probability: number, mean: number, standardDeviation: number): number;
      };
    };
  };
  export default jstat;
}
