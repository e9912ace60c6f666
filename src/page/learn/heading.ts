// A heading that takes the focus when it appears, so that keys and screen readers go on from there.
import { useLayoutEffect, useRef } from "preact/hooks";
import { h, type ComponentChild } from "preact";

export function Heading({ words }: { readonly words: string }): ComponentChild {
  const place = useRef<HTMLHeadingElement>(null);
  useLayoutEffect(() => place.current?.focus(), [words]);
  return h("h2", { tabIndex: -1, ref: place }, words);
}
