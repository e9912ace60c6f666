// Answers one question of the page; an error of the program becomes a fault that the page shows.
import { answers, type Asked, type Replied } from "./answers.ts";

export function reply({ id, question, given }: Asked): Replied {
  try {
    return { id, answer: answers[question](given) };
  } catch (error) {
    return { id, fault: String(error) };
  }
}
