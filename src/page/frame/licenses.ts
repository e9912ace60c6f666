// The licenses of the packages whose code is in the page, opened only when they are asked for.
import { useSignal } from "@preact/signals";
import { h, type ComponentChild } from "preact";

export function Licenses({ openLicenses }: { readonly openLicenses: () => Promise<string> }): ComponentChild {
  const text = useSignal("");
  const open = async (): Promise<void> => {
    text.value = await openLicenses();
  };
  return h(
    "details",
    { onToggle: () => void open() },
    h("summary", {}, "Licenses"),
    h("pre", { tabIndex: 0 }, text.value),
  );
}
