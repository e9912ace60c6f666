// The place Try: the answer first, then the levers, what they give, variants, the map of the pace, and files.
import { useEffect, useLayoutEffect } from "preact/hooks";
import { h, type ComponentChild } from "preact";
import type { Pool } from "#page/answer/pool.ts";
import type { GivenScenario } from "#page/file/given.ts";
import { AnswerView } from "./answerView.ts";
import { FilesPanel } from "./filesPanel.ts";
import { Findings } from "./findings.ts";
import { LeverList } from "./leverList.ts";
import { PaceMap } from "./paceMap.ts";
import { SettingsBar } from "./settingsBar.ts";
import { openTrying, type Trying } from "./trying.ts";
import { VariantsTable } from "./variantsTable.ts";

interface TryPlaceProps {
  readonly given: GivenScenario;
  readonly pool: Pool;
  /** The settings in the address. */
  readonly set: readonly string[];
  readonly write: (set: readonly string[]) => void;
}

/** What was tried stays while another place is shown. */
const opened = new WeakMap<GivenScenario, Trying>();

function tryingOf({ given, pool, write }: TryPlaceProps): Trying {
  const known = opened.get(given) ?? openTrying(given, pool, write);
  opened.set(given, known);
  return known;
}

export function TryPlace(props: TryPlaceProps): ComponentChild {
  const trying = tryingOf(props);
  const { set, pool } = props;
  // At once: later, the settings of the address may be older than those of the levers.
  useLayoutEffect(() => trying.follow(set), [trying, set]);
  useEffect(() => () => trying.leave(), [trying]);
  return h(
    "div",
    { class: "try" },
    h(AnswerView, { trying }),
    h(LeverList, { trying }),
    h(SettingsBar, { trying }),
    h(Findings, { trying }),
    h(VariantsTable, { trying }),
    h(PaceMap, { trying, pool }),
    h(FilesPanel, { trying, pool }),
  );
}
