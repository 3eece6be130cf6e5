declare module "xirr" {
  /** Rate of return of dated flows, on years of 365 days. */
  export default function xirr(
    flows: readonly { readonly amount: number; readonly when: Date }[],
  ): number;
}
