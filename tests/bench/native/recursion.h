// The line without a queue: a carrier leaves a zone when it is done there and the next zone has been left and cleared, so that each carrier can be taken as far as the one
// ahead has been taken, front to back, round and round. (MODEL.md §12)
#pragma once

#include <algorithm>
#include <string>
#include <vector>

#include "line.h"
#include "result.h"
#include "workplace.h"

class Recursion {
 public:
  explicit Recursion(const Line& line) : line(line) {}

  Result run(const std::string& seed, int replication) {
    start(seed, replication);
    int idle = 0;
    for (int turn = 0; idle < line.carriers; turn = turn + 1 == line.carriers ? 0 : turn + 1) {
      if (advance(order[turn])) {
        idle = 0;
      } else {
        idle++;
      }
    }
    return finish();
  }

 private:
  struct Carrier {
    int zone = 0;
    // true: at the end of its move it looks, at lookAt, and is at rest at restAt if it cannot go on; false: at rest and done at restAt
    bool looks = false;
    bool isLoaded = false;
    bool hasLap = false;
    double lookAt = 0;
    double restAt = 0;
    // start of the move into its zone
    double enteredAt = 0;
    double loadedAt = 0;
    double lapStart = 0;
    CarrierResult told;
  };

  struct Zone {
    int carrier = none;
    // when it turned or turns free after the last carrier that left it
    double freeAt = 0;
    ZoneResult told;
  };

  void start(const std::string& seed, int replication) {
    result = {};
    zones.assign(line.paths.size(), {});
    carriers.assign(line.carriers, {});
    order.clear();
    workplaces = workplacesOf(line, seed, replication);
    for (int c = 0; c < line.carriers; c++) {
      carriers[c].zone = line.startZone(c);
      zones[carriers[c].zone].carrier = c;
      order.insert(order.begin(), c);
    }
  }

  bool counts(double at) const { return at > line.warmup && at <= line.end; }

  // Seconds of a time that lie in the window.
  double within(double from, double to) const { return std::max(0.0, std::min(to, line.end) - std::max(from, line.warmup)); }

  // Takes a carrier as far as the one ahead has been taken. False: not at all.
  bool advance(int c) {
    Carrier& carrier = carriers[c];
    bool any = false;
    zones[carrier.zone].carrier = none;
    for (;;) {
      const Zone& next = zones[line.after(carrier.zone)];
      if (next.carrier != none) break;
      if (carrier.looks && carrier.lookAt > line.end) break;
      if (carrier.looks && next.freeAt <= carrier.lookAt) {
        zones[carrier.zone].told.seconds[zoneClaimed] += within(carrier.enteredAt, carrier.lookAt);
        move(carrier, carrier.lookAt, fromSpeed);
      } else {
        if (carrier.looks) {
          brake(carrier);
          any = true;
        }
        const double at = std::max(next.freeAt, carrier.restAt);
        if (at > line.end) break;
        stand(carrier, at);
        move(carrier, at, fromRest);
      }
      any = true;
    }
    zones[carrier.zone].carrier = c;
    return any;
  }

  void brake(Carrier& carrier) {
    carrier.looks = false;
    zones[carrier.zone].told.seconds[zoneClaimed] += within(carrier.enteredAt, carrier.restAt);
    if (carrier.restAt > carrier.lookAt && carrier.restAt <= line.end) result.events++;
  }

  // It has been at rest and done, and leaves at an instant.
  void stand(Carrier& carrier, double at) {
    const double seconds = within(carrier.restAt, at);
    carrier.told.seconds[carrier.isLoaded ? carrierWaitsLoaded : carrierWaitsEmpty] += seconds;
    zones[carrier.zone].told.seconds[zoneBlocked] += seconds;
    const int s = line.stationIn[carrier.zone];
    if (s != none && seconds > workplaces[s].longestBlock) workplaces[s].longestBlock = seconds;
  }

  void move(Carrier& carrier, double at, Start how) {
    const int from = carrier.zone;
    const int to = line.after(from);
    const Path& path = line.paths[from];
    Zone& left = zones[from];
    const bool isCounted = at > line.warmup;
    const int here = line.stationIn[from];
    if (here != none && workplaces[here].hasServed) {
      workplaces[here].hasServed = false;
      if (isCounted) workplaces[here].cycles++;
    }
    if (isCounted) left.told.movesOut++;
    if (from == line.lapZone) countLap(carrier, at);
    left.freeAt = at + path.clear[how];
    left.told.seconds[zoneVacating] += within(at, left.freeAt);
    if (left.freeAt <= line.end) result.events++;

    carrier.zone = to;
    carrier.enteredAt = at;
    carrier.restAt = at + path.toRest[how];
    const int ahead = line.stationIn[to];
    if (ahead != none && isDue(line.stations[ahead].duty, carrier.isLoaded)) {
      carrier.looks = false;
      if (carrier.restAt <= line.end) result.events++;
      serve(carrier, ahead);
    } else {
      carrier.looks = true;
      carrier.lookAt = at + path.toLook[how];
      if (carrier.lookAt <= line.end) result.events++;
    }
  }

  // Its stay at a station, from rest on; restAt becomes the instant at which it is done.
  void serve(Carrier& carrier, int s) {
    Workplace& workplace = workplaces[s];
    const double start = carrier.restAt;
    carrier.restAt = start + workplace.times.next();
    workplace.hasServed = true;
    const double seconds = within(start, carrier.restAt);
    zones[carrier.zone].told.seconds[zoneClaimed] += within(carrier.enteredAt, start);
    zones[carrier.zone].told.seconds[zoneWorking] += seconds;
    carrier.told.seconds[carrierWorkedOn] += seconds;
    if (carrier.restAt <= line.end) result.events++;
    if (line.stations[s].duty == Duty::load) {
      carrier.isLoaded = true;
      carrier.loadedAt = start;
      if (counts(start)) result.loads++;
    } else if (line.stations[s].duty == Duty::unload) {
      carrier.isLoaded = false;
      result.productsInLineMean += within(carrier.loadedAt, carrier.restAt);
      if (!counts(carrier.restAt)) return;
      result.timeInLine.add(carrier.restAt - carrier.loadedAt);
      result.outputSeconds.push_back(carrier.restAt);
    }
  }

  void countLap(Carrier& carrier, double at) {
    if (carrier.hasLap && at > line.warmup) {
      result.lap.add(at - carrier.lapStart);
      carrier.told.laps++;
    }
    carrier.hasLap = true;
    carrier.lapStart = at;
  }

  Result finish() {
    const double window = line.end - line.warmup;
    for (Carrier& carrier : carriers) {
      if (carrier.looks) brake(carrier);
      stand(carrier, line.end);
      if (carrier.isLoaded) result.productsInLineMean += within(carrier.loadedAt, line.end);
      double& moves = carrier.told.seconds[carrierMoves];
      moves = window;
      for (int state = carrierMoves + 1; state < carrierStates; state++) moves -= carrier.told.seconds[state];
      result.carriers.push_back(carrier.told);
    }
    for (const Workplace& workplace : workplaces) {
      StationResult station;
      station.longestBlock = workplace.longestBlock;
      station.cycles = workplace.cycles;
      result.stations.push_back(station);
    }
    for (Zone& zone : zones) {
      double& free = zone.told.seconds[zoneFree];
      free = window;
      for (int state = zoneFree + 1; state < zoneStates; state++) free -= zone.told.seconds[state];
      result.zones.push_back(zone.told);
    }
    complete(result, line.stationIn, line.warmup, line.end);
    return result;
  }

  const Line& line;
  std::vector<Zone> zones;
  std::vector<Carrier> carriers;
  std::vector<Workplace> workplaces;
  // carriers, from the front one backwards
  std::vector<int> order;
  Result result;
};
