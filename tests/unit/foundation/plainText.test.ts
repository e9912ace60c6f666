// Text for terminals, file names and colors without control characters or unsafe parts.
import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { mayColor } from "#cli/machine/mayColor.ts";
import { plainText } from "#foundation/plainText.ts";
import { safeName } from "#cli/machine/safeName.ts";

describe("plain text", () => {
  it("escapes control characters", () => {
    expect(plainText("a\u001b[2Jb\nc\td\u202ee")).toBe("a\\u001b[2Jb\\nc\\td\\u202ee");
  });

  it("keeps ordinary text of any language", () => {
    expect(plainText("75 °C, Größe, 瓶, 🙂")).toBe("75 °C, Größe, 瓶, 🙂");
  });

  it("is cut between characters, never inside one", () => {
    expect(plainText("🙂🙂🙂", 2)).toBe("🙂🙂 …");
    expect(plainText("🙂🙂", 2)).toBe("🙂🙂");
  });

  it("is one printable line for any input", () => {
    fc.assert(
      fc.property(fc.string({ unit: "binary" }), (text) => {
        expect(plainText(text)).not.toMatch(/\p{Cc}/u);
      }),
    );
  });
});

describe("a safe name", () => {
  it.each([
    ["two-station", "two-station"],
    ["Größe 2", "Größe 2"],
    ["..", "scenario"],
    [".hidden", "hidden"],
    ["a/b\\c:d", "a-b-c-d"],
    ["con", "_con"],
    ["NUL.csv", "_NUL.csv"],
    ["ends. ", "ends"],
    ["", "scenario"],
  ])("of %j is %j", (name, safe) => {
    expect(safeName(name)).toBe(safe);
  });

  it("has no path separators and is its own safe name, for any input", () => {
    fc.assert(
      fc.property(fc.string({ unit: "binary", maxLength: 200 }), (name) => {
        const safe = safeName(name);
        expect(safe).not.toMatch(/[/\\\p{Cc}]|^\.|^$/u);
        expect(safeName(safe)).toBe(safe);
      }),
    );
  });
});

describe("color", () => {
  const terminal = { isTTY: true };

  it.each([
    ["is allowed on a terminal", terminal, {}, true],
    ["is allowed on a terminal with an empty NO_COLOR (no-color.org [M])", terminal, { NO_COLOR: "" }, true],
    ["is not allowed when NO_COLOR is set", terminal, { NO_COLOR: "1" }, false],
    ["is not allowed on a dumb terminal", terminal, { TERM: "dumb" }, false],
    ["is not allowed in a file", {}, { TERM: "xterm" }, false],
  ])("%s", (_case, outlet, environment, allowed) => {
    expect(mayColor(outlet, environment)).toBe(allowed);
  });
});
