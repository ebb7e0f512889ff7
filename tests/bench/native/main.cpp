// Runs the line on standard input. `conveyor events|recursion tell SEED COUNT` tells the first replications, a line of JSON each.
// `conveyor events|recursion time SEED` then reads pairs, the first replication and how many, and tells of each pair the seconds of processor time and the events.
#include <cstdio>
#include <cstdlib>
#include <ctime>
#include <exception>
#include <iostream>
#include <stdexcept>
#include <string>

#include "events.h"
#include "json.h"
#include "line.h"
#include "recursion.h"

namespace {

template <typename Engine>
void tell(Engine& engine, const std::string& seed, int count) {
  for (int replication = 0; replication < count; replication++) std::puts(json(engine.run(seed, replication)).c_str());
}

template <typename Engine>
void time(Engine& engine, const std::string& seed) {
  for (int first, count; std::cin >> first >> count;) {
    long events = 0;
    const std::clock_t start = std::clock();
    for (int replication = first; replication < first + count; replication++) events += engine.run(seed, replication).events;
    const double seconds = static_cast<double>(std::clock() - start) / CLOCKS_PER_SEC;
    std::printf("{\"seconds\":%.9f,\"events\":%ld}\n", seconds, events);
    std::fflush(stdout);
  }
}

template <typename Engine>
void work(Engine engine, int words, char** word) {
  const std::string what = word[2];
  if (what == "tell" && words == 5) {
    tell(engine, word[3], std::atoi(word[4]));
  } else if (what == "time" && words == 4) {
    time(engine, word[3]);
  } else {
    throw std::runtime_error("tell SEED COUNT, or time SEED");
  }
}

}  // namespace

int main(int words, char** word) try {
  if (words < 3) throw std::runtime_error("events or recursion, then tell or time");
  const Line line = readLine(std::cin);
  if (std::string(word[1]) == "events") {
    work(EventEngine(line), words, word);
  } else {
    work(Recursion(line), words, word);
  }
} catch (const std::exception& error) {
  std::fprintf(stderr, "%s\n", error.what());
  return 1;
}
