// The clock: every duration is rounded once to a whole number of ticks of 2^-20 s, so that sums of durations are exact. (MODEL.md §1)
#pragma once

#include <cmath>

inline double toGrid(double seconds) {
  constexpr double ticksPerSecond = 1 << 20;
  return std::floor(seconds * ticksPerSecond + 0.5) / ticksPerSecond;
}
