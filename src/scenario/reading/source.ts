// A piece of text that a scenario was read from: the file itself, or the value of one --set.
import { LineCounter } from "yaml";
import type { Place } from "#foundation/issue.ts";

export class Source {
  readonly file: string;
  readonly text: string;
  readonly lines = new LineCounter();
  /** Characters before the text on its first line, as the path before the value of a --set. */
  readonly indent: number;
  /** A remark after a shown value of this text. */
  readonly note: string;

  constructor(file: string, text: string, indent = 0, note = "") {
    this.file = file;
    this.text = text;
    this.indent = indent;
    this.note = note;
  }

  placeOf(offset: number): Place {
    const { line, col } = this.lines.linePos(offset);
    // A text that was never parsed has one line only.
    if (line === 0) return { file: this.file, line: 1, column: 1 + offset + this.indent };
    return { file: this.file, line, column: line === 1 ? col + this.indent : col };
  }

  /** A stretch of the text, short enough to be shown. */
  excerpt(from: number, to: number): string {
    const plain = this.text.slice(from, to).trim().replaceAll(/\s+/gu, " ");
    return plain.length > 80 ? `${plain.slice(0, 79)}…` : plain;
  }

  /** The same for a message, with what happened to it. */
  shown(from: number, to: number): string {
    const plain = this.excerpt(from, to);
    return plain === "" ? "" : plain + this.note;
  }
}
