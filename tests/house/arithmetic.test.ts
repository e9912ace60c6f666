// Keeps out of src/ every function whose result depends on the machine or the JavaScript engine.
import { describe, expect, it } from "vitest";
import { codeUnder, type SourceFile } from "./sourceFiles.ts";
import { codeTokensOf, type Token } from "./tokens.ts";

/** Exactly defined by ECMA-262 [M]. */
const exact = new Set(["sqrt", "floor", "ceil", "round", "trunc", "abs", "min", "max", "imul", "clz32", "sign"]);
const banned: ReadonlyMap<string, string> = new Map([
  ["Date", "reads a clock"],
  ["Temporal", "reads a clock"],
  ["performance", "reads a clock"],
  ["crypto", "draws random numbers without a seed"],
  ["Intl", "depends on the language of the machine"],
  ["localeCompare", "depends on the language of the machine"],
  ["console", "reaches for the machine"],
  ["globalThis", "gives access to everything banned"],
  ["eval", "gives access to everything banned"],
]);
/** `process` is also a term of the simulator; with these members it is the machine's. */
const machineMembers = new Set(["argv", "cwd", "env", "exit", "exitCode", "hrtime", "memoryUsage", "nextTick", "on"]);
const streams = new Set(["stderr", "stdin", "stdout"]);
const shells = /^src\/(?:cli|page)\//;

function faultOfToken(tokens: readonly Token[], index: number): string | undefined {
  const { kind, text } = tokens[index] ?? { kind: "mark", text: "" };
  if (text === "**" || text === "**=") return "differs in the last bit between engines";
  if (kind !== "word") return undefined;
  if (text.startsWith("toLocale")) return "depends on the language of the machine";
  if (text === "Math") return faultOfMath(tokens[index + 1]?.text, tokens[index + 2]?.text ?? "");
  if (text === "process") return faultOfProcess(tokens[index + 1]?.text, tokens[index + 2]?.text ?? "");
  return tokens[index + 1]?.text === ":" ? undefined : banned.get(text);
}

function faultOfMath(next: string | undefined, member: string): string | undefined {
  if (next !== ".") return "hides behind another name";
  return exact.has(member) ? undefined : `has no exact ${member}`;
}

function faultOfProcess(next: string | undefined, member: string): string | undefined {
  const reaches = next === "." && (machineMembers.has(member) || streams.has(member));
  return reaches ? "reaches for the machine" : undefined;
}

function arithmeticFaults(files: readonly SourceFile[]): readonly string[] {
  return files
    .filter(({ path }) => !shells.test(path))
    .flatMap(({ path, text }) => {
      const tokens = codeTokensOf(text);
      return tokens.flatMap((token, index) => {
        const fault = faultOfToken(tokens, index);
        return fault === undefined ? [] : [`${path}:${token.line} ${token.text} ${fault}`];
      });
    });
}

describe("arithmetic in src", () => {
  it("gives the same bits in every engine", () => {
    expect(arithmeticFaults(codeUnder("src"))).toEqual([]);
  });
});

describe("the arithmetic test", () => {
  it.each([
    "const y = x ** 2;",
    "x **= 2;",
    "const y = Math.log(x);",
    "const y = Math.random();",
    "const M = Math;",
    "const { exp } = Math;",
    'const y = Math["exp"](x);',
    "const now = new Date();",
    "const now = performance.now();",
    "names.sort((a, b) => a.localeCompare(b));",
    "const text = x.toLocaleString();",
    "const text = `${x ** 2}`;",
    "const place = process.cwd();",
    "const { Math: M } = globalThis;",
  ])("fails on %s", (text) => {
    expect(arithmeticFaults([{ path: "src/cell/a.ts", text }])).not.toEqual([]);
  });

  it.each([
    "const y = Math.sqrt(x) / 2; // x ** 2",
    'const words = "Date, Math.log and ** are banned";',
    "const words = `Math.log`;",
    "const next = process.next;",
    "const pattern = /\\/Math.log(x) ** 2/;",
    "const y = a / b / c; /** Math.log */",
  ])("passes %s", (text) => {
    expect(arithmeticFaults([{ path: "src/cell/a.ts", text }])).toEqual([]);
  });

  it("passes the date in a shell", () => {
    expect(arithmeticFaults([{ path: "src/cli/a.ts", text: "const now = new Date();" }])).toEqual([]);
  });
});
