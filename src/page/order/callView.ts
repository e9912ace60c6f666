// The call that repeats the answer, with a button that copies it.
import { useSignal } from "@preact/signals";
import { useRef } from "preact/hooks";
import { h, type ComponentChild } from "preact";

export function CallView({ call }: { readonly call: string }): ComponentChild {
  const place = useRef<HTMLPreElement>(null);
  const said = useSignal("");
  const copy = async (): Promise<void> => {
    try {
      await navigator.clipboard.writeText(call);
      said.value = "Copied.";
    } catch {
      // Some browsers allow no copy by a script in a page from disk.
      getSelection()?.selectAllChildren(place.current!);
      said.value = "The call is selected; copy it with the keyboard.";
    }
  };
  return h(
    "section",
    { class: "call", "aria-label": "Call" },
    h("p", {}, "The same answer in a terminal:"),
    h("pre", { ref: place, tabIndex: 0 }, call),
    h("button", { type: "button", onClick: () => void copy() }, "Copy the call"),
    h("span", { role: "status" }, said.value),
  );
}
