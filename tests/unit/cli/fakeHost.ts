// A host without a machine that records what is written to it.
import type { Host } from "#cli/machine/host.ts";

export interface FakeHost extends Host {
  written: { output: string; errors: string };
}

export function openFakeHost(): FakeHost {
  const written = { output: "", errors: "" };
  return {
    written,
    print: (text) => void (written.output += text),
    report: (text) => void (written.errors += text),
    paint: (_outlet, _paint, text) => text,
    width: 80,
    cores: 2,
    seconds: () => 0,
    processorSeconds: () => 0,
    showProgress: () => Promise.resolve(undefined),
    system: "a test",
    readText: () => ({ text: "" }),
    whatIs: () => undefined,
    prepareFolder: () => undefined,
    writeFiles: () => Promise.resolve(),
    breathe: () => Promise.resolve(),
    leave: () => undefined,
    end: () => undefined,
  };
}
