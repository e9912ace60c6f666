// A host without a machine, which remembers what was said to it.
import type { Host } from "#cli/machine/host.ts";

export interface FakeHost extends Host {
  said: { output: string; errors: string };
}

export function openFakeHost(): FakeHost {
  const said = { output: "", errors: "" };
  return {
    said,
    print: (text) => void (said.output += text),
    tell: (text) => void (said.errors += text),
    paint: (_outlet, _paint, text) => text,
    width: 80,
    cores: 2,
    seconds: () => 0,
    showProgress: () => Promise.resolve(undefined),
    system: "a test",
    readText: () => ({ text: "" }),
    writeFiles: () => Promise.resolve(),
    breathe: () => Promise.resolve(),
    leave: () => undefined,
    end: () => undefined,
  };
}
