// Opens the compressed parts of the page: the program becomes a worker and a script, which get what the command gave.
import type * as Program from "./program.ts";

/** What the script defines as soon as it is in the page. */
declare const blowcell: typeof Program;

/** Of five letters, which count from `#` with `x` in place of `<`, four bytes; first the number of bytes to leave out. */
function unpacked(letters: string): Uint8Array<ArrayBuffer> {
  const bytes = new DataView(new ArrayBuffer(((letters.length - 1) / 5) * 4));
  for (let at = 1, place = 0; at < letters.length; at += 5, place += 4) {
    let number = 0;
    for (let i = at; i < at + 5; i++) number = number * 85 + (letters[i] === "x" ? 25 : letters.charCodeAt(i) - 35);
    bytes.setUint32(place, number);
  }
  return new Uint8Array(bytes.buffer, 0, bytes.byteLength - Number(letters[0]));
}

async function opened(id: string): Promise<string> {
  const bytes = unpacked(document.getElementById(id)!.textContent);
  const stream = new Blob([bytes]).stream().pipeThrough(new DecompressionStream("gzip"));
  return new Response(stream).text();
}

async function open(): Promise<void> {
  const code = await opened("program");
  const place = URL.createObjectURL(new Blob([code], { type: "text/javascript" }));
  const openWorker = (): Worker => new Worker(place);
  // It reads the program while the page does.
  const first = openWorker();
  const script = document.createElement("script");
  script.textContent = code;
  document.head.append(script);
  blowcell.start({
    first,
    openWorker,
    given: JSON.parse(document.getElementById("given")!.textContent),
    openPart: (part) => opened(part),
  });
}

open().catch((error: unknown) => {
  const words = document.createElement("p");
  words.className = "finding";
  words.textContent = `This browser cannot open the page (${String(error)}). Use one of 2023 or later.`;
  document.getElementById("page")!.append(words);
});
