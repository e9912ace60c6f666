// Answers one question of the page; an error of the program becomes a fault that the page shows.
import { answers, type Answers, type Asked, type Replied } from "./answers.ts";

export function reply({ id, question, given }: Asked): Replied {
  try {
    // `Asked` ties each question to what it is given.
    const answer = answers[question] as (asked: typeof given) => ReturnType<Answers[typeof question]>;
    return { id, answer: answer(given) };
  } catch (error) {
    return { id, fault: String(error) };
  }
}
