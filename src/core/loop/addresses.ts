// Turns the numbers in the code into addresses of records, once: the loop would otherwise work them out at every step.
import { kindAt } from "../state/draws.ts";
import {
  AMOUNTS,
  CODE,
  COUNT,
  GIVE,
  GIVE_CHOSEN,
  NEXT,
  RELEASE,
  SHOW,
  SHOW_CHOSEN,
  STEP,
  TAKE,
  TIME,
} from "../border/numbers.ts";
import { operand } from "../state/operands.ts";
import { resourceAt, stateAt } from "../state/resource.ts";
import { sectionOfReals, wholesOf } from "../state/sections.ts";
import { codeAt, stepAt } from "../state/steps.ts";
import { counterAt } from "../observed/tally.ts";
import { placeAt } from "../state/tokens.ts";

/** To be called when all records have been made. */
export function openAddresses(): void {
  const end = codeAt(wholesOf(CODE));
  for (let at = codeAt(0); at < end;) at = addressOperation(at);
}

/** Returns where the next operation lies. */
function addressOperation(at: usize): usize {
  switch (load<i32>(at)) {
    case STEP:
      return set(at, 1, changetype<usize>(stepAt(operand(at, 1))), 2);
    case TAKE:
      return set(at, 1, changetype<usize>(placeAt(operand(at, 1))), 5);
    case SHOW:
      return addressShown(at);
    case SHOW_CHOSEN:
      return at + ((4 + <usize>operand(at, 3)) << 2);
    case TIME:
      if (operand(at, 3) !== -1) set(at, 3, changetype<usize>(kindAt(operand(at, 3))), 0);
      if (operand(at, 5) !== -1) set(at, 5, changetype<usize>(resourceAt(operand(at, 5))), 0);
      return at + 28;
    case GIVE:
      return set(at, 1, changetype<usize>(placeAt(operand(at, 1))), 2);
    case GIVE_CHOSEN:
      return at + 20;
    case COUNT:
      set(at, 2, sectionOfReals(AMOUNTS) + ((<usize>operand(at, 2)) << 3), 0);
      return set(at, 1, changetype<usize>(counterAt(operand(at, 1))), 3);
    case RELEASE:
      return set(at, 1, changetype<usize>(resourceAt(operand(at, 1))), 2);
    case NEXT:
      return set(at, 1, codeAt(operand(at, 1)), 3);
    default:
      return at + 4;
  }
}

function addressShown(from: usize): usize {
  const end = from + 8 + ((<usize>operand(from, 1)) << 3);
  for (let at = from + 8; at < end; at += 8) {
    set(at, 0, changetype<usize>(resourceAt(operand(at, 0))), 0);
    set(at, 1, changetype<usize>(stateAt(operand(at, 1))), 0);
  }
  return end;
}

/** Returns where what follows in `size` numbers lies. */
function set(at: usize, which: i32, address: usize, size: i32): usize {
  store<u32>(at + ((<usize>which) << 2), address);
  return at + ((<usize>size) << 2);
}
