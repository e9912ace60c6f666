// Keeps the session and the address of the page in step, until the returned function is called.
import { effect } from "@preact/signals";
import { addressText, readAddress, type AddressTerms } from "./address.ts";
import type { Session } from "./session.ts";

/** Milliseconds; browsers refuse many changes of the address in a short time. */
const pause = 300;

export function followAddress(session: Session, terms: AddressTerms): () => void {
  let timer: ReturnType<typeof setTimeout> | undefined;
  /** The part of the address that was read or written last. */
  let seen = "";
  /** Takes the address where it is another one, and says whether it did. */
  const take = (): boolean => {
    const { hash } = location;
    if (hash === seen) return false;
    seen = hash;
    // The skip link leads to an element, not to a place.
    if (hash === "" || document.getElementById(hash.slice(1)) !== null) return false;
    // What waits to be written is older than what the user wants now.
    clearTimeout(timer);
    const reading = readAddress(hash, terms);
    if ("fault" in reading) session.refuse(reading.fault);
    else session.follow(reading.address);
    return true;
  };
  const write = (text: string): void => {
    // A new address is there before its event, and is not written over.
    if (take()) return;
    history.replaceState(null, "", `#${text}`);
    seen = location.hash;
  };
  take();
  // The first address stays as it is until something changes.
  let isFirst = true;
  const stop = effect(() => {
    const text = addressText(session.address.value);
    clearTimeout(timer);
    if (!isFirst) timer = setTimeout(() => write(text), pause);
    isFirst = false;
  });
  addEventListener("hashchange", take);
  return () => {
    stop();
    clearTimeout(timer);
    removeEventListener("hashchange", take);
  };
}
