// A result as text, with every number in full.
#pragma once

#include <cmath>
#include <cstdio>
#include <string>

#include "result.h"

inline std::string json(double number) {
  char text[40];
  std::snprintf(text, sizeof text, "%.17g", number);
  return text;
}

inline std::string json(const Tally& tally) {
  const auto known = [&tally](long least, double number) { return tally.count < least ? "null" : json(number); };
  return "{\"count\":" + json(tally.count) + ",\"mean\":" + known(1, tally.mean) +
         ",\"sd\":" + known(2, std::sqrt(tally.squares / (tally.count - 1))) + ",\"min\":" + known(1, tally.least) +
         ",\"max\":" + known(1, tally.greatest) + "}";
}

inline std::string json(const StationResult& station) {
  return "{\"working\":" + json(station.working) + ",\"blocked\":" + json(station.blocked) + ",\"exchanging\":" +
         json(station.exchanging) + ",\"starved\":" + json(station.starved) + ",\"longestBlockSeconds\":" +
         json(station.longestBlock) + ",\"cycles\":" + json(station.cycles) + "}";
}

inline std::string json(const ZoneResult& zone) {
  const double* seconds = zone.seconds;
  return "{\"free\":" + json(seconds[zoneFree]) + ",\"claimed\":" + json(seconds[zoneClaimed]) + ",\"working\":" +
         json(seconds[zoneWorking]) + ",\"blocked\":" + json(seconds[zoneBlocked]) + ",\"vacating\":" +
         json(seconds[zoneVacating]) + ",\"occupancyMean\":" + json(zone.occupancyMean) + ",\"movesOut\":" +
         json(zone.movesOut) + "}";
}

inline std::string json(const CarrierResult& carrier) {
  const double* seconds = carrier.seconds;
  return "{\"moving\":" + json(seconds[carrierMoves]) + ",\"worked on\":" + json(seconds[carrierWorkedOn]) +
         ",\"waiting with product\":" + json(seconds[carrierWaitsLoaded]) + ",\"waiting empty\":" +
         json(seconds[carrierWaitsEmpty]) + ",\"laps\":" + json(carrier.laps) + "}";
}

template <typename T>
std::string json(const std::vector<T>& list) {
  std::string text;
  for (const T& one : list) text += (text.empty() ? "" : ",") + json(one);
  return "[" + text + "]";
}

inline std::string json(const Result& result) {
  return "{\"loads\":" + json(result.loads) + ",\"outputPerHour\":" + json(result.outputPerHour) + ",\"outputByHour\":" +
         json(result.outputByHour) + ",\"outputSeconds\":" + json(result.outputSeconds) + ",\"lap\":" + json(result.lap) +
         ",\"timeInLine\":" + json(result.timeInLine) + ",\"productsInLineMean\":" + json(result.productsInLineMean) +
         ",\"stations\":" + json(result.stations) + ",\"zones\":" + json(result.zones) + ",\"carriers\":" +
         json(result.carriers) + ",\"events\":" + json(result.events) + "}";
}
