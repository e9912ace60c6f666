// The program reports each kind of failure with its exit code and remedy.
import { describe, expect, it } from "vitest";
import type { Act, CommandSpec, Options } from "#cli/call/command.ts";
import { MachineFailure } from "#cli/machine/machineFailure.ts";
import {
  calledSettings,
  lengthOption,
  replicationsOption,
  seedOption,
  setOption,
  settingsOf,
  verboseOption,
} from "#cli/call/options.ts";
import { runProgram } from "#cli/program.ts";
import { invariant } from "#foundation/invariant.ts";
import { openFakeHost } from "./fakeHost.ts";

function commandOf(act: Act): CommandSpec {
  const options = [setOption, seedOption, replicationsOption, lengthOption, verboseOption];
  return { name: "try", operands: "[file...]", meaning: "", example: "", options, load: () => Promise.resolve(act) };
}

async function run(argv: readonly string[], act: Act) {
  const host = openFakeHost();
  const code = await runProgram(argv, host, [commandOf(act)]);
  return { code, ...host.written };
}

describe("the program", () => {
  it("passes operands and options to the command and returns its exit code", async () => {
    let given: unknown;
    const { code } = await run(
      ["try", "a.yaml", "b.yaml", "--set", "a=1", "--set", "b=[2, 3]"],
      (operands, options) => {
        given = { operands, options };
        return 3;
      },
    );
    expect(code).toBe(3);
    expect(given).toEqual({ operands: ["a.yaml", "b.yaml"], options: { set: ["a=1", "b=[2, 3]"] } });
  });

  it("reads operands after options as operands, not as values of a repeatable option", async () => {
    const { code } = await run(["try", "--set", "a=1", "a.yaml"], (operands) => operands.length);
    expect(code).toBe(1);
  });

  it("prints how to report an internal fault, with the facts and without the stack", async () => {
    const { code, errors } = await run(["try", "x.yaml"], () => {
      invariant(false, "a shot is somewhere", { station: "left" });
      return 0;
    });
    expect(code).toBe(70);
    expect(errors).toContain('BrokenInvariant: a shot is somewhere {"station":"left"}');
    expect(errors).toContain("call      blowcell try x.yaml");
    expect(errors).toMatch(/remedy {4}Please report it/);
    expect(errors).not.toMatch(/^ +at /m);
  });

  it("prints the stack of a fault only under --verbose", async () => {
    const { errors } = await run(["try", "--verbose"], () => Promise.reject(new TypeError("x is undefined")));
    expect(errors).toMatch(/^ +at /m);
  });

  it("prints a failure of the machine with its remedy and returns 74", async () => {
    const { code, errors } = await run(["try"], () => {
      throw new MachineFailure("write into out", Object.assign(new Error("no"), { code: "ENOSPC" }));
    });
    expect(code).toBe(74);
    expect(errors).toContain("cannot write into out: the disk is full (ENOSPC)\n    remedy    Free some space");
  });

  it("reports a thrown value that is not an error", async () => {
    const { code, errors } = await run(["try"], () => Promise.reject("words"));
    expect({ code, isReported: errors.includes("words") }).toEqual({ code: 70, isReported: true });
  });
});

describe("settings", () => {
  it("are empty without options", () => {
    expect(settingsOf({})).toEqual({ set: [], run: {} });
    expect(calledSettings({})).toEqual([]);
  });

  it("name their options, --set first", () => {
    const options: Options = { set: ["run.length=1 h"], seed: "007", replications: "5", length: "8 h" };
    expect(calledSettings(options)).toEqual([
      { option: "--set", text: "run.length=1 h" },
      { option: "--seed", text: "007" },
      { option: "--replications", text: "5" },
      { option: "--length", text: "8 h" },
    ]);
  });
});
