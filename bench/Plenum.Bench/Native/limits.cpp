// The limits: the same work as Plenum's, as plain loops. Built when the benchmarks start.
#include <cstdint>
#include <cstring>
#include <fcntl.h>
#include <sys/mman.h>
#include <sys/stat.h>
#include <unistd.h>
#include <vector>

extern "C" {

// Totals of four measures at every element of a tree in depth-first order; levels count from 1.
void roll_up(const int32_t *level, int64_t count, int32_t depth, const int64_t *const *own, int64_t *const *total) {
  struct Four { int64_t of[4]; };
  std::vector<Four> below(depth + 2, Four{});
  const int64_t *o0 = own[0], *o1 = own[1], *o2 = own[2], *o3 = own[3];
  int64_t *t0 = total[0], *t1 = total[1], *t2 = total[2], *t3 = total[3];
  for (int64_t row = count - 1; row >= 0; row--) {
    Four *at = &below[level[row]];
    Four *under = at + 1;
    const Four sum{{o0[row] + under->of[0], o1[row] + under->of[1], o2[row] + under->of[2], o3[row] + under->of[3]}};
    *under = Four{};
    for (int m = 0; m < 4; m++) at->of[m] += sum.of[m];
    t0[row] = sum.of[0];
    t1[row] = sum.of[1];
    t2[row] = sum.of[2];
    t3[row] = sum.of[3];
  }
}

static inline int64_t working_days(int32_t day) { // Monday to Friday; day 0 is a Monday
  const int32_t week = day / 7, weekday = day % 7;
  return int64_t(week) * 5 + (weekday < 5 ? weekday + 1 : 5);
}

// Even spread of five amounts a package over the periods that it touches, rounded half up on the running total,
// added up by account and period. Amounts are not negative; start and finish are working days.
void time_phase(int64_t packages, const int32_t *start, const int32_t *finish, const int64_t *budget,
                const int32_t *account, int32_t periods, const int32_t *end, int64_t *grid) {
  std::vector<int64_t> worked(periods);
  std::vector<int32_t> first_ending(end[periods - 1] - end[0] + 2);
  for (int32_t p = 0; p < periods; p++) worked[p] = working_days(end[p]);
  for (int32_t p = 0, day = end[0]; day <= end[periods - 1]; day++) {
    if (day > end[p]) p++;
    first_ending[day - end[0]] = p;
  }
  for (int64_t package = 0; package < packages; package++) {
    const int64_t before_start = working_days(start[package] - 1);
    const int64_t whole = working_days(finish[package]) - before_start;
    const int64_t half = whole / 2;
    const int32_t from = start[package] <= end[0] ? 0 : first_ending[start[package] - end[0]];
    int64_t *row = grid + int64_t(account[package]) * periods;
    for (int element = 0; element < 5; element++) {
      const int64_t amount = budget[package * 5 + element];
      if (amount == 0) continue;
      int64_t before = 0;
      int32_t p = from;
      for (; end[p] < finish[package]; p++) {
        const int64_t total = int64_t(uint64_t(amount * (worked[p] - before_start) + half) / uint64_t(whole));
        row[p] += total - before;
        before = total;
      }
      row[p] += amount - before;
    }
  }
}

// Sums amounts of a ledger (document,line,charge,period,cost_element,amount; no quotation marks) by charge and period.
// Charge codes are P and six digits, periods are 2020-01 and later; both are looked up in a table by hashing, not
// computed from their digits, as codes may be anything. Returns the number of rows, or -1 if anything is not known.
struct Slot { uint64_t key; int64_t index; };

static inline uint64_t key_of(const char *text, int64_t length) { // at most 7 characters; 8 bytes may be read
  uint64_t key;
  std::memcpy(&key, text, 8);
  return key & ((uint64_t(1) << (8 * length)) - 1);
}

struct Table {
  std::vector<Slot> slots;
  uint64_t mask;
  explicit Table(int64_t count) {
    uint64_t size = 16;
    while (size < uint64_t(count) * 4) size *= 2;
    slots.assign(size, Slot{0, -1});
    mask = size - 1;
  }
  static uint64_t hash(uint64_t key) { return (key * 0x9E3779B97F4A7C15ull) >> 20; }
  void add(uint64_t key, int64_t index) {
    uint64_t at = hash(key) & mask;
    while (slots[at].index >= 0) at = (at + 1) & mask;
    slots[at] = Slot{key, index};
  }
  int64_t find(uint64_t key) const {
    for (uint64_t at = hash(key) & mask;; at = (at + 1) & mask) {
      if (slots[at].key == key || slots[at].index < 0) return slots[at].index;
    }
  }
};

int64_t ledger(const char *path, const char *charges, int64_t charge_count, const char *periods, int64_t period_count,
               int64_t *sums) {
  const int file = open(path, O_RDONLY);
  struct stat facts;
  if (file < 0 || fstat(file, &facts) != 0) return -1;
  const int64_t size = facts.st_size;
  const char *text = static_cast<const char *>(mmap(nullptr, size, PROT_READ, MAP_PRIVATE | MAP_POPULATE, file, 0));
  close(file);
  if (text == MAP_FAILED) return -1;

  Table charge_of(charge_count), period_of(period_count);
  for (int64_t i = 0; i < charge_count; i++) charge_of.add(key_of(charges + i * 8, 7), i);
  for (int64_t i = 0; i < period_count; i++) period_of.add(key_of(periods + i * 8, 7), i);

  constexpr int batch = 32;
  int64_t place[batch], value[batch];
  int filled = 0;
  int64_t rows = 0;
  bool known = true;
  const char *at = static_cast<const char *>(std::memchr(text, '\n', size)) + 1;
  const char *const end = text + size;
  while (at < end) {
    while (*at++ != ',') {}
    while (*at++ != ',') {}
    const char *charge = at;
    while (*at != ',') at++;
    const int64_t c = charge_of.find(key_of(charge, at++ - charge));
    const char *period = at;
    while (*at != ',') at++;
    const int64_t p = period_of.find(key_of(period, at++ - period));
    while (*at++ != ',') {}
    const bool negative = *at == '-';
    at += negative;
    int64_t amount = 0;
    while (*at != '.') amount = amount * 10 + (*at++ - '0');
    amount = amount * 100 + (at[1] - '0') * 10 + (at[2] - '0');
    at += 4;
    known &= (c >= 0) & (p >= 0);
    if (!known) break;
    place[filled] = c * period_count + p;
    value[filled] = negative ? -amount : amount;
    __builtin_prefetch(&sums[place[filled]], 1);
    rows++;
    if (++filled == batch) {
      for (int i = 0; i < batch; i++) sums[place[i]] += value[i];
      filled = 0;
    }
  }
  for (int i = 0; i < filled; i++) sums[place[i]] += value[i];
  munmap(const_cast<char *>(text), size);
  return known ? rows : -1;
}

// Line ends of a file: what reading it takes at least.
int64_t line_ends(const char *path) {
  const int file = open(path, O_RDONLY);
  struct stat facts;
  if (file < 0 || fstat(file, &facts) != 0) return -1;
  const char *text = static_cast<const char *>(mmap(nullptr, facts.st_size, PROT_READ, MAP_PRIVATE | MAP_POPULATE, file, 0));
  close(file);
  if (text == MAP_FAILED) return -1;
  int64_t count = 0;
  for (int64_t i = 0; i < facts.st_size; i++) count += text[i] == '\n';
  munmap(const_cast<char *>(text), facts.st_size);
  return count;
}

// Early and late places of activities in topological order; links by successor, each with how far beyond its predecessor
// the successor must lie. Late places end with the latest early finish.
static void pass(int64_t count, const int32_t *in_start, const int32_t *from, const int32_t *weight, const int32_t *work,
                 int32_t *early, int32_t *late) {
  int32_t finish = 0;
  for (int64_t a = 0; a < count; a++) {
    int32_t at = 0;
    for (int32_t k = in_start[a]; k < in_start[a + 1]; k++) {
      const int32_t asked = early[from[k]] + weight[k];
      at = asked > at ? asked : at;
    }
    early[a] = at;
    finish = at + work[a] > finish ? at + work[a] : finish;
  }
  for (int64_t a = 0; a < count; a++) late[a] = finish - work[a];
  for (int64_t a = count - 1; a >= 0; a--) {
    const int32_t at = late[a];
    for (int32_t k = in_start[a]; k < in_start[a + 1]; k++) {
      const int32_t allowed = at - weight[k];
      int32_t &before = late[from[k]];
      before = allowed < before ? allowed : before;
    }
  }
}

void network(int64_t count, const int32_t *in_start, const int32_t *from, const int32_t *weight, const int32_t *work,
             int32_t *early, int32_t *late) {
  pass(count, in_start, from, weight, work, early, late);
}

// The same from raw links in any order over activities in any order: sorted, made ready, computed, handed back.
// Returns how many activities could be ordered.
int64_t network_raw(int64_t count, int64_t links, const int32_t *from, const int32_t *to, const int32_t *lag,
                    const int32_t *work, int32_t *early, int32_t *late) {
  std::vector<int32_t> out_start(count + 1), successor(links), waiting(count), order(count), rank(count);
  for (int64_t k = 0; k < links; k++) { out_start[from[k] + 1]++; waiting[to[k]]++; }
  for (int64_t a = 0; a < count; a++) out_start[a + 1] += out_start[a];
  std::vector<int32_t> next(out_start.begin(), out_start.end() - 1);
  for (int64_t k = 0; k < links; k++) successor[next[from[k]]++] = to[k];
  int64_t ready = 0;
  for (int64_t a = 0; a < count; a++) if (waiting[a] == 0) order[ready++] = int32_t(a);
  for (int64_t i = 0; i < ready; i++) {
    const int32_t a = order[i];
    rank[a] = int32_t(i);
    for (int32_t k = out_start[a]; k < out_start[a + 1]; k++) if (--waiting[successor[k]] == 0) order[ready++] = successor[k];
  }
  if (ready != count) return ready;
  std::vector<int32_t> in_start(count + 1), sorted_from(links), weight(links), sorted_work(count), e(count), l(count);
  for (int64_t k = 0; k < links; k++) in_start[rank[to[k]] + 1]++;
  for (int64_t a = 0; a < count; a++) { in_start[a + 1] += in_start[a]; sorted_work[a] = work[order[a]]; }
  next.assign(in_start.begin(), in_start.end() - 1);
  for (int64_t k = 0; k < links; k++) {
    const int32_t at = next[rank[to[k]]]++;
    sorted_from[at] = rank[from[k]];
    weight[at] = work[from[k]] + lag[k];
  }
  pass(count, in_start.data(), sorted_from.data(), weight.data(), sorted_work.data(), e.data(), l.data());
  for (int64_t i = 0; i < count; i++) { early[order[i]] = e[i]; late[order[i]] = l[i]; }
  return ready;
}
}
