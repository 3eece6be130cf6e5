declare module "jstat" {
  interface Distribution {
    cdf(x: number, ...parameters: number[]): number;
    inv(p: number, ...parameters: number[]): number;
  }
  const library: {
    readonly jStat: {
      readonly normal: Distribution;
      readonly beta: Distribution;
      readonly triangular: Distribution;
      readonly lognormal: Distribution;
      readonly centralF: Distribution;
      readonly studentt: Distribution;
      readonly chisquare: Distribution;
      quantiles(values: number[], ps: number[], alpha?: number, beta?: number): number[];
    };
  };
  export default library;
}
