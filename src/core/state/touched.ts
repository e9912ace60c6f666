// The places at which something has changed: those that wait there may be served, or wait for something else.
import { Place, placeAt, placeCount } from "./tokens.ts";

export let touchedPlaces = 0;

export function touch(place: Place): void {
  if (place.touched === 1) return;
  place.touched = 1;
  touchedPlaces++;
}

export function touchAll(): void {
  for (let number = 0; number < placeCount; number++) if (placeAt(number).length > 0) touch(placeAt(number));
}

/** The first place at which something has changed; it counts as seen. */
export function nextTouched(): Place {
  let at = changetype<usize>(placeAt(0));
  while (changetype<Place>(at).touched === 0) at += offsetof<Place>();
  const place = changetype<Place>(at);
  place.touched = 0;
  touchedPlaces--;
  return place;
}
