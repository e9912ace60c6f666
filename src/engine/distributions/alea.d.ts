// Types of seedrandom's alea generator, which the package's own declarations leave out.
declare module "seedrandom/lib/alea.js" {
  interface AleaState {
    readonly s0: number;
    readonly s1: number;
    readonly s2: number;
    readonly c: number;
  }
  export default function alea(seed: string): () => number;
  export default function alea(
    seed: string,
    options: { readonly state: true },
  ): (() => number) & { state(): AleaState };
}
