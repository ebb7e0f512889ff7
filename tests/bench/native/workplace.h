// A station while it is run: its task times, and what is told of it beside the time of its zone.
#pragma once

#include <string>
#include <vector>

#include "line.h"
#include "random.h"

struct Workplace {
  bool hasServed = false;
  double longestBlock = 0;
  int cycles = 0;
  TaskTimes times;
};

// One for each station, with the streams of the replication.
inline std::vector<Workplace> workplacesOf(const Line& line, const std::string& seed, int replication) {
  std::vector<Workplace> workplaces;
  for (const Station& station : line.stations) {
    const std::string stream = seed + "/" + std::to_string(replication) + "/task/" + station.task;
    workplaces.push_back({false, 0, 0, TaskTimes(station.mean, station.cv, stream)});
  }
  return workplaces;
}
