// A minimal event simulation of the two-station cell in C++, written by hand for speed and without any observation: it only keeps
// the ticks of its shots. It is kernel.ts in another language, with the same three pending times and the same draws.
#include <algorithm>
#include <cstdint>
#include <cstdio>
#include <cstdlib>
#include <ctime>
#include <limits>
#include <unordered_map>
#include <vector>

namespace {

const double NEVER = std::numeric_limits<double>::infinity();
// As in src/core/border/numbers.ts.
const uint32_t CELLS = 1024;
const uint32_t NODES = CELLS + 1;
const int BITS_IN_CELL = 22;
const int BITS_IN_FINEST = 17;
const uint32_t TAIL = CELLS << BITS_IN_FINEST;
const uint32_t END = 8u << BITS_IN_FINEST;

// Alea, a multiply-with-carry generator.
struct Stream {
  uint32_t s0, s1, s2, carry;

  uint32_t next() {
    const uint64_t t = 2091639ull * s0 + carry;
    s0 = s1;
    s1 = s2;
    s2 = static_cast<uint32_t>(t);
    carry = static_cast<uint32_t>(t >> 32);
    return s2;
  }
};

double between(const double *part, uint32_t draw, int bitsInCell) {
  const double *at = part + (draw >> bitsInCell);
  const uint32_t inCell = draw & ((1u << bitsInCell) - 1);
  return at[0] + (at[1] - at[0]) * (static_cast<int32_t>(inCell) / static_cast<double>(1u << bitsInCell));
}

struct Step {
  Stream *stream;
  const double *table;
  double location, scale, least, mass;
  // Of draws at the very ends, which no table gives.
  std::unordered_map<uint32_t, double> exact;

  double ticks() const {
    const uint32_t draw = stream->next();
    if (draw + TAIL < 2 * TAIL) return ticksInTail(draw);
    return ticksOf(between(table, draw, BITS_IN_CELL));
  }

  __attribute__((noinline)) double ticksInTail(uint32_t draw) const {
    if (draw + END < 2 * END) return exact.at(draw);
    if (draw < TAIL) return ticksOf(between(table + NODES, draw, BITS_IN_FINEST));
    return ticksOf(between(table + 2 * NODES, draw + TAIL, BITS_IN_FINEST));
  }

  // Never below 0: cutting off rounds down.
  double ticksOf(double quantile) const {
    const double value = std::max(least, location + scale * quantile);
    return static_cast<double>(static_cast<int64_t>((mass > 0 ? mass / value : value) + 0.5));
  }
};

struct Station {
  Step recharge;
  // Drop, close, blow, cool, vent, open, remove.
  Step steps[7];
};

struct Cell {
  double untilTick;
  std::vector<Stream> streams;
  std::vector<double> tables;
  Station left, right;
  Step toPort, toNeutral;
};

using Shots = std::vector<double>[2];

// Equal times are served in the order melt, left, right; a waiting station after all completions of the same tick.
void run(Cell &cell, Shots &shots) {
  enum { MELT, LEFT, RIGHT } active = MELT;
  double melt = NEVER, leftDue = NEVER, rightDue = NEVER, leftReady = 0, rightReady = 0, now = 0;
  int leftAt = 0, rightAt = 0;
  bool isFull = true, isShiftingBack = false;
  const Station *served = &cell.left;
  const Step *step;
  for (;;) {
    const double tick = std::min(melt, std::min(leftDue, rightDue));
    if (isFull && tick > now && (leftReady <= now || rightReady <= now)) {
      isFull = false;
      step = &cell.toPort;
      if (leftReady <= rightReady) {
        leftReady = NEVER;
        leftAt = -1;
        active = LEFT;
      } else {
        rightReady = NEVER;
        rightAt = -1;
        active = RIGHT;
      }
    } else {
      if (tick > cell.untilTick) return;
      now = tick;
      if (melt == tick) {
        if (!isShiftingBack) {
          melt = NEVER;
          isFull = true;
          continue;
        }
        isShiftingBack = false;
        step = &served->recharge;
        active = MELT;
      } else if (leftDue == tick) {
        if (++leftAt == 7) {
          leftDue = NEVER;
          leftReady = now;
          continue;
        }
        step = &cell.left.steps[leftAt];
        active = LEFT;
        if (leftAt == 1) {
          shots[0].push_back(now);
          served = &cell.left;
          isShiftingBack = true;
          melt = now + cell.toNeutral.ticks();
        }
      } else {
        if (++rightAt == 7) {
          rightDue = NEVER;
          rightReady = now;
          continue;
        }
        step = &cell.right.steps[rightAt];
        active = RIGHT;
        if (rightAt == 1) {
          shots[1].push_back(now);
          served = &cell.right;
          isShiftingBack = true;
          melt = now + cell.toNeutral.ticks();
        }
      }
    }
    const double end = now + step->ticks();
    if (active == LEFT) leftDue = end;
    else if (active == RIGHT) rightDue = end;
    else melt = end;
  }
}

// Doubles, one after the other, as kernelData.ts writes them.
struct Reader {
  FILE *file;

  double real() {
    double value = 0;
    if (fread(&value, sizeof value, 1, file) != 1) {
      fputs("the data of the cell end too early\n", stderr);
      exit(1);
    }
    return value;
  }

  uint32_t whole() { return static_cast<uint32_t>(real()); }

  void step(Cell &cell, Step &step) {
    step.stream = &cell.streams[whole()];
    step.table = &cell.tables[whole() * 3 * NODES];
    step.location = real();
    step.scale = real();
    step.least = real();
    step.mass = real();
    for (uint32_t count = whole(); count > 0; count--) {
      const uint32_t draw = whole();
      step.exact[draw] = real();
    }
  }
};

void read(const char *name, Cell &cell) {
  Reader from{fopen(name, "rb")};
  if (from.file == nullptr) {
    fputs("the data of the cell cannot be read\n", stderr);
    exit(1);
  }
  cell.untilTick = from.real();
  cell.streams.resize(from.whole());
  for (Stream &stream : cell.streams) stream = {from.whole(), from.whole(), from.whole(), from.whole()};
  cell.tables.resize(from.whole() * 3 * NODES);
  for (double &node : cell.tables) node = from.real();
  for (Station *station : {&cell.left, &cell.right}) {
    from.step(cell, station->recharge);
    for (Step &step : station->steps) from.step(cell, step);
  }
  from.step(cell, cell.toPort);
  from.step(cell, cell.toNeutral);
  fclose(from.file);
}

} // namespace

// `twoStation DATA` prints every shot, its station and its tick; `twoStation DATA PASSES` the median of nanoseconds a station cycle.
int main(int count, char **words) {
  Cell cell;
  read(count > 1 ? words[1] : "", cell);
  if (count == 2) {
    Shots shots;
    run(cell, shots);
    for (int station = 0; station < 2; station++)
      for (double tick : shots[station]) printf("%d %.0f\n", station, tick);
    return 0;
  }
  const std::vector<Stream> begin = cell.streams;
  std::vector<double> times(static_cast<size_t>(atoi(words[2])));
  for (double &time : times) {
    std::copy(begin.begin(), begin.end(), cell.streams.begin());
    Shots shots;
    const clock_t before = clock();
    run(cell, shots);
    time = 1e9 / CLOCKS_PER_SEC * static_cast<double>(clock() - before) / static_cast<double>(shots[0].size() + shots[1].size());
  }
  std::sort(times.begin(), times.end());
  printf("%g\n", times[times.size() / 2]);
}
