// Keeps the session and the address of the page in step, until the returned function is called.
import { effect } from "@preact/signals";
import { addressText, readAddress, type AddressTerms } from "./address.ts";
import type { Session } from "./session.ts";

/** Milliseconds; browsers refuse many changes of the address in a short time. */
const pause = 300;

export function followAddress(session: Session, terms: AddressTerms): () => void {
  const read = (): void => {
    const { hash } = location;
    // The skip link leads to an element, not to a place.
    if (hash === "" || document.getElementById(hash.slice(1)) !== null) return;
    if (hash.slice(1) === addressText(session.address.peek())) return;
    const reading = readAddress(hash, terms);
    if ("fault" in reading) session.refuse(reading.fault);
    else session.follow(reading.address);
  };
  read();
  let timer: ReturnType<typeof setTimeout> | undefined;
  // The first address stays as it is until something changes.
  let isFirst = true;
  const stop = effect(() => {
    const text = addressText(session.address.value);
    clearTimeout(timer);
    if (!isFirst) timer = setTimeout(() => history.replaceState(null, "", `#${text}`), pause);
    isFirst = false;
  });
  addEventListener("hashchange", read);
  return () => {
    stop();
    clearTimeout(timer);
    removeEventListener("hashchange", read);
  };
}
