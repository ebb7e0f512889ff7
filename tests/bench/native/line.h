// What is run: one closed loop by drive, zone i leading to zone i + 1, each station with one task of lognormal times. (MODEL.md §1 and §3)
#pragma once

#include <cmath>
#include <istream>
#include <stdexcept>
#include <string>
#include <vector>

#include "clock.h"

constexpr int none = -1;

enum Start { fromRest, fromSpeed };

// Times of the move out of a zone to the next one, seconds.
struct Path {
  // to rest, and to the look at its end, by how it starts
  double toRest[2];
  double toLook[2];
  double clear[2];
};

enum class Duty { load, work, unload };

struct Station {
  int zone;
  Duty duty;
  std::string task;
  double mean;
  double cv;
};

struct Line {
  std::vector<Path> paths;
  std::vector<Station> stations;
  // by zone: index of its station, or none
  std::vector<int> stationIn;
  int carriers = 0;
  double warmup = 0;
  double end = 0;
  // out of which laps begin and end
  int lapZone = 0;

  int zones() const { return static_cast<int>(paths.size()); }
  int after(int zone) const { return zone + 1 == zones() ? 0 : zone + 1; }
  int before(int zone) const { return zone == 0 ? zones() - 1 : zone - 1; }
  // where a carrier stands at time 0
  int startZone(int carrier) const { return carrier * zones() / carriers; }
};

// Whether a station has something to do for a carrier.
inline bool isDue(Duty duty, bool isLoaded) { return isLoaded != (duty == Duty::load); }

// Speed v, acceleration a (0: no ramp), distance d, carrier length l, sensor o before the stop point, reaction time of the control.
inline Path pathOf(double v, double a, double d, double l, double o, double reaction) {
  const double ramp = a > 0 ? v / (2 * a) : 0;
  const double rampDistance = a > 0 ? v * v / (2 * a) : 0;
  const double tail = l - o;
  const double oneRamp = d >= rampDistance ? d / v + ramp : std::sqrt(2 * d / a);
  const double twoRamps = d >= 2 * rampDistance ? d / v + ramp + ramp : 2 * std::sqrt(d / a);
  const double clear = tail >= rampDistance ? tail / v + ramp + reaction : std::sqrt(2 * tail / a) + reaction;
  return {
      {toGrid(twoRamps), toGrid(oneRamp)},
      {toGrid(oneRamp), toGrid(d / v)},
      {toGrid(clear), toGrid(tail / v + reaction)},
  };
}

// A line of text each: carriers, window, reaction; then a path for each zone, and the stations; then `end`.
inline Line readLine(std::istream& in) {
  Line line;
  double reaction = 0;
  for (std::string word; in >> word && word != "end";) {
    if (word == "carriers") {
      in >> line.carriers;
    } else if (word == "window") {
      in >> line.warmup >> line.end;
      line.warmup = toGrid(line.warmup);
      line.end = toGrid(line.end);
    } else if (word == "reaction") {
      in >> reaction;
    } else if (word == "path") {
      double v, a, d, l, o;
      in >> v >> a >> d >> l >> o;
      line.paths.push_back(pathOf(v, a, d, l, o, reaction));
    } else if (word == "station") {
      Station station;
      std::string duty;
      in >> station.zone >> duty >> station.task >> station.mean >> station.cv;
      station.duty = duty == "load" ? Duty::load : duty == "work" ? Duty::work : Duty::unload;
      line.stations.push_back(station);
    } else {
      throw std::runtime_error("a line of text begins with " + word);
    }
    if (!in) throw std::runtime_error("what follows " + word + " is no number");
  }
  line.stationIn.assign(line.paths.size(), none);
  bool hasUnload = false;
  for (std::size_t s = 0; s < line.stations.size(); s++) {
    const Station& station = line.stations[s];
    line.stationIn.at(station.zone) = static_cast<int>(s);
    if (station.duty != Duty::unload || hasUnload) continue;
    line.lapZone = station.zone;
    hasUnload = true;
  }
  return line;
}
