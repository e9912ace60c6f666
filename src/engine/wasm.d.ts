// What the build makes of a program for the core, and what every host that runs it offers; the libraries of the compiler tell neither.
declare module "*.wasm" {
  const bytes: Uint8Array<ArrayBuffer>;
  export default bytes;
}

declare namespace WebAssembly {
  class Memory {
    readonly buffer: ArrayBuffer;
  }
  class Module {
    constructor(bytes: Uint8Array<ArrayBuffer>);
  }
  class Instance {
    constructor(module: Module, imports: Readonly<Record<string, object>>);
    readonly exports: object;
  }
}
