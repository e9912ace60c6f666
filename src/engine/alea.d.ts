// Types of seedrandom's alea generator, which the package's own declarations leave out.
declare module "seedrandom/lib/alea.js" {
  export default function alea(seed: string): () => number;
}
