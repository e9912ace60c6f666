// The levers: the four that matter most, and under "more" all other quantities of the scenario.
import { useSignal } from "@preact/signals";
import { h, type ComponentChild, type TargetedEvent } from "preact";
import type { Lever } from "#page/trial/lever.ts";
import { useUnits } from "#page/units/unitsOfPage.ts";
import { textInUnits } from "#report/words/textInUnits.ts";
import { otherSettings } from "./leverSettings.ts";
import type { Trying } from "./trying.ts";

export function LeverList({ trying }: { readonly trying: Trying }): ComponentChild {
  const { levers } = trying;
  const isOpen = useSignal(false);
  const found = levers.value;
  if (!found) return h("p", { class: "quiet" }, "The levers are read.");
  const others = otherSettings([...found.first, ...found.more], trying.set.value);
  const isMoved = found.more.some((lever) => trying.positionOf(lever) !== lever.present);
  return h(
    "section",
    { "aria-label": "Levers" },
    h("h2", {}, "Levers"),
    others.length === 0 ? null : h("p", {}, `These settings hold as well; no lever shows them: ${others.join("; ")}.`),
    h(
      "div",
      { class: "levers" },
      found.first.map((lever) => h(LeverInput, { key: lever.id, trying, lever })),
    ),
    found.more.length === 0
      ? null
      : h(
          "details",
          {
            open: isOpen.value || isMoved,
            onToggle: ({ currentTarget }: TargetedEvent<HTMLDetailsElement>) => {
              isOpen.value = currentTarget.open;
            },
          },
          h("summary", {}, `More: ${found.more.length} other quantities of the scenario`),
          isOpen.value || isMoved
            ? h(
                "div",
                { class: "levers" },
                found.more.map((lever) => h(LeverInput, { key: lever.id, trying, lever })),
              )
            : null,
        ),
  );
}

interface LeverInputProps {
  readonly trying: Trying;
  readonly lever: Lever;
}

function LeverInput({ trying, lever }: LeverInputProps): ComponentChild {
  const { name, positions, present } = lever;
  const units = useUnits();
  const at = trying.positionOf(lever);
  const words = textInUnits(positions[at]!.words, units);
  const written = textInUnits(lever.written, units);
  const isMoved = at !== present;
  return h(
    "label",
    { class: isMoved ? "lever moved" : "lever" },
    h("span", { class: "name" }, name),
    h("input", {
      type: "range",
      min: 0,
      max: positions.length - 1,
      value: at,
      "aria-valuetext": isMoved ? `${words}; before ${written}` : `${words}, as it is`,
      onInput: ({ currentTarget }: TargetedEvent<HTMLInputElement>) => trying.move(lever, Number(currentTarget.value)),
      onChange: () => trying.commit(),
    }),
    h("output", {}, isMoved ? `${words} (before ${written})` : written),
  );
}
