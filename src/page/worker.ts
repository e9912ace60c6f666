// The worker of the page: answers one question after the other.
import { answers, type Asked, type Replied } from "#page/answer/answers.ts";

function reply({ id, question, given }: Asked): Replied {
  try {
    return { id, answer: answers[question](given) };
  } catch (error) {
    return { id, fault: String(error) };
  }
}

self.addEventListener("message", ({ data }: MessageEvent<Asked>) => self.postMessage(reply(data)));
