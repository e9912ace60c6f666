// The settings as the call that repeats them, to copy; undo, redo, and keeping a variant.
import { useSignal } from "@preact/signals";
import { h, type ComponentChild } from "preact";
import type { UnitSystem } from "#foundation/formatQuantity.ts";
import { shellWord } from "#foundation/shellWord.ts";
import { unitsOption, useUnits } from "#page/units/unitsOfPage.ts";
import { mostVariants, type Trying } from "./trying.ts";

export function SettingsBar({ trying }: { readonly trying: Trying }): ComponentChild {
  const { set, given, canUndo, canRedo, shown, variants } = trying;
  const said = useSignal("");
  const call = callText(given.file, [...given.set, ...set.value], useUnits());
  const isFinal = shown.value !== undefined && "made" in shown.value;
  const copy = (): void => {
    navigator.clipboard.writeText(call).then(
      () => {
        said.value = "Copied.";
      },
      () => {
        said.value = "This browser does not allow it; select the text and copy it.";
      },
    );
  };
  return h(
    "section",
    { class: "settings", "aria-label": "Settings" },
    h(
      "div",
      { class: "controls", role: "group", "aria-label": "Steps" },
      button("Undo", trying.undo, !canUndo.value),
      button("Redo", trying.redo, !canRedo.value),
      button("Back to the scenario as it is", trying.reset, set.value.length === 0),
      button("Keep as a variant", trying.keep, !isFinal),
      button("Copy the call", copy, false),
      h("span", { role: "status" }, said.value),
    ),
    h("pre", { tabIndex: 0, "aria-label": "The call that repeats it" }, call),
    variants.value.length === mostVariants
      ? h("p", { class: "quiet" }, `A further variant takes the place of the first of ${mostVariants}.`)
      : null,
  );
}

/** As a shell takes it. */
function callText(file: string, set: readonly string[], units: UnitSystem): string {
  const settings = set.map((each) => `--set ${shellWord(each)}`);
  return [`blowcell run ${shellWord(file)}`, ...settings, ...unitsOption(units)].join(" ");
}

function button(label: string, act: () => void, isIdle: boolean): ComponentChild {
  return h("button", { type: "button", onClick: act, "aria-disabled": isIdle }, label);
}
