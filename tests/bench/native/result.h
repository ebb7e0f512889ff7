// What a run tells of its window. (MODEL.md §11)
#pragma once

#include <cmath>
#include <vector>

// Count, mean and spread, one value at a time. (Welford 1962)
struct Tally {
  long count = 0;
  double mean = 0;
  double squares = 0;
  double least = 0;
  double greatest = 0;

  void add(double value) {
    count++;
    const double difference = value - mean;
    mean += difference / count;
    squares += difference * (value - mean);
    if (count == 1 || value < least) least = value;
    if (count == 1 || value > greatest) greatest = value;
  }
};

enum ZoneState { zoneFree, zoneClaimed, zoneWorking, zoneBlocked, zoneVacating, zoneStates };
enum CarrierState { carrierMoves, carrierWorkedOn, carrierWaitsLoaded, carrierWaitsEmpty, carrierStates };

struct ZoneResult {
  double seconds[zoneStates] = {};
  double occupancyMean = 0;
  int movesOut = 0;
};

// A station without stops follows its zone: it exchanges while the zone is claimed or vacating, and starves while it is free.
struct StationResult {
  double working = 0;
  double blocked = 0;
  double exchanging = 0;
  double starved = 0;
  double longestBlock = 0;
  int cycles = 0;
};

struct CarrierResult {
  double seconds[carrierStates] = {};
  int laps = 0;
};

struct Result {
  int loads = 0;
  double outputPerHour = 0;
  std::vector<int> outputByHour;
  std::vector<double> outputSeconds;
  Tally lap;
  Tally timeInLine;
  double productsInLineMean = 0;
  std::vector<StationResult> stations;
  std::vector<ZoneResult> zones;
  std::vector<CarrierResult> carriers;
  long events = 0;
};

// What follows from what has been added up: zones' and carriers' seconds, loads, outputs, products in line so far as their integral over time.
inline void complete(Result& result, const std::vector<int>& stationIn, double warmup, double end) {
  const double window = end - warmup;
  result.outputPerHour = result.outputSeconds.size() / window * 3600;
  result.outputByHour.assign(static_cast<std::size_t>(std::ceil(window / 3600)), 0);
  for (const double at : result.outputSeconds) result.outputByHour[static_cast<std::size_t>(std::ceil((at - warmup) / 3600)) - 1]++;
  result.productsInLineMean /= window;
  for (std::size_t z = 0; z < result.zones.size(); z++) {
    ZoneResult& zone = result.zones[z];
    // a carrier counts from its move's start in to its move's start out
    zone.occupancyMean = (zone.seconds[zoneClaimed] + zone.seconds[zoneWorking] + zone.seconds[zoneBlocked]) / window;
    if (stationIn[z] < 0) continue;
    StationResult& station = result.stations[stationIn[z]];
    station.working = zone.seconds[zoneWorking];
    station.blocked = zone.seconds[zoneBlocked];
    station.exchanging = zone.seconds[zoneClaimed] + zone.seconds[zoneVacating];
    station.starved = zone.seconds[zoneFree];
  }
}
