// The line event by event, with a queue of timers: ends of moves and of work, looks, and zones that turn clear. (MODEL.md §1, §3, §5)
#pragma once

#include <queue>
#include <string>
#include <vector>

#include "line.h"
#include "result.h"
#include "workplace.h"

class EventEngine {
 public:
  explicit EventEngine(const Line& line) : line(line) {}

  Result run(const std::string& seed, int replication) {
    start(seed, replication);
    runTo(line.warmup);
    restart(line.warmup);
    runTo(line.end);
    return finish();
  }

 private:
  enum class Kind { look, rest, workEnd, clear };

  struct Event {
    double at;
    Kind kind;
    // the zone that the carrier looks from, is at rest in or is worked on in; that is clear
    int zone;

    bool operator>(const Event& other) const { return at > other.at; }
  };

  enum class Phase { done, moving, looking, working };

  struct Carrier {
    Phase phase = Phase::done;
    // how the move that it is on has started
    Start moveStart = fromRest;
    CarrierState state = carrierWaitsEmpty;
    bool isLoaded = false;
    bool hasLap = false;
    double since = 0;
    double loadedAt = 0;
    double lapStart = 0;
    CarrierResult told;
  };

  struct Zone {
    ZoneState state = zoneFree;
    int carrier = none;
    double since = 0;
    ZoneResult told;
  };

  void start(const std::string& seed, int replication) {
    now = 0;
    events = 0;
    loads = 0;
    productsInLine = 0;
    queue = {};
    zones.assign(line.paths.size(), {});
    carriers.assign(line.carriers, {});
    workplaces = workplacesOf(line, seed, replication);
    for (int c = 0; c < line.carriers; c++) {
      const int z = line.startZone(c);
      zones[z].carrier = c;
      zones[z].state = zoneBlocked;
    }
    ready.clear();
    for (int z = 0; z < line.zones(); z++) ready.push_back(z);
    startMoves();
  }

  // Statistics begin, the state stays.
  void restart(double at) {
    now = at;
    for (Zone& zone : zones) {
      zone.told = {};
      zone.since = now;
    }
    for (Carrier& carrier : carriers) {
      carrier.told = {};
      carrier.since = now;
    }
    for (Workplace& workplace : workplaces) {
      workplace.longestBlock = 0;
      workplace.cycles = 0;
    }
    loads = 0;
    lap = {};
    timeInLine = {};
    outputs.clear();
    productSeconds = 0;
    productsSince = now;
  }

  void runTo(double end) {
    while (!queue.empty() && queue.top().at <= end) {
      now = queue.top().at;
      ready.clear();
      while (!queue.empty() && queue.top().at == now) {
        const Event event = queue.top();
        queue.pop();
        events++;
        handle(event);
      }
      startMoves();
    }
  }

  // Whatever ends now; who may start because of it becomes ready.
  void handle(const Event& event) {
    Zone& zone = zones[event.zone];
    switch (event.kind) {
      case Kind::clear:
        set(zone, zoneFree);
        ready.push_back(line.before(event.zone));
        return;
      case Kind::look:
        carriers[zone.carrier].phase = Phase::looking;
        break;
      case Kind::rest:
        if (comeToRest(event.zone)) return;
        break;
      case Kind::workEnd:
        endWork(event.zone);
        break;
    }
    ready.push_back(event.zone);
  }

  // True where work begins.
  bool comeToRest(int z) {
    Zone& zone = zones[z];
    Carrier& carrier = carriers[zone.carrier];
    const int s = line.stationIn[z];
    if (s == none || !isDue(line.stations[s].duty, carrier.isLoaded)) {
      carrier.phase = Phase::done;
      set(zone, zoneBlocked);
      set(carrier, carrier.isLoaded ? carrierWaitsLoaded : carrierWaitsEmpty);
      return false;
    }
    Workplace& workplace = workplaces[s];
    carrier.phase = Phase::working;
    workplace.hasServed = true;
    set(zone, zoneWorking);
    set(carrier, carrierWorkedOn);
    if (line.stations[s].duty == Duty::load) {
      carrier.isLoaded = true;
      carrier.loadedAt = now;
      countProducts(1);
      loads++;
    }
    queue.push({now + workplace.times.next(), Kind::workEnd, z});
    return true;
  }

  void endWork(int z) {
    Zone& zone = zones[z];
    Carrier& carrier = carriers[zone.carrier];
    if (line.stations[line.stationIn[z]].duty == Duty::unload) {
      carrier.isLoaded = false;
      countProducts(-1);
      timeInLine.add(now - carrier.loadedAt);
      outputs.push_back(now);
    }
    carrier.phase = Phase::done;
    set(zone, zoneBlocked);
    set(carrier, carrier.isLoaded ? carrierWaitsLoaded : carrierWaitsEmpty);
  }

  // Since every clear takes time, no start makes another one possible: each is asked once, and who looks and cannot go on brakes.
  void startMoves() {
    for (const int z : ready) {
      const int c = zones[z].carrier;
      if (c == none) continue;
      Carrier& carrier = carriers[c];
      if (carrier.phase != Phase::done && carrier.phase != Phase::looking) continue;
      if (zones[line.after(z)].state == zoneFree) {
        startMove(z, c);
      } else if (carrier.phase == Phase::looking) {
        brake(z, c);
      }
    }
  }

  void startMove(int from, int c) {
    const int to = line.after(from);
    const Path& path = line.paths[from];
    Zone& left = zones[from];
    Zone& entered = zones[to];
    Carrier& carrier = carriers[c];
    const Start how = carrier.phase == Phase::looking ? fromSpeed : fromRest;

    const int here = line.stationIn[from];
    if (here != none) {
      Workplace& workplace = workplaces[here];
      if (left.state == zoneBlocked && now - left.since > workplace.longestBlock) workplace.longestBlock = now - left.since;
      if (workplace.hasServed) workplace.cycles++;
      workplace.hasServed = false;
    }
    left.told.movesOut++;
    if (from == line.lapZone) countLap(carrier);
    set(left, zoneVacating);
    set(entered, zoneClaimed);
    set(carrier, carrierMoves);
    left.carrier = none;
    entered.carrier = c;
    carrier.phase = Phase::moving;
    carrier.moveStart = how;
    queue.push({now + path.clear[how], Kind::clear, from});
    const int ahead = line.stationIn[to];
    const bool stops = ahead != none && isDue(line.stations[ahead].duty, carrier.isLoaded);
    queue.push(stops ? Event{now + path.toRest[how], Kind::rest, to} : Event{now + path.toLook[how], Kind::look, to});
  }

  void brake(int z, int c) {
    const Path& path = line.paths[line.before(z)];
    Carrier& carrier = carriers[c];
    const double seconds = path.toRest[carrier.moveStart] - path.toLook[carrier.moveStart];
    carrier.phase = Phase::moving;
    if (seconds > 0) {
      queue.push({now + seconds, Kind::rest, z});
    } else {
      comeToRest(z);
    }
  }

  void countLap(Carrier& carrier) {
    if (carrier.hasLap) {
      lap.add(now - carrier.lapStart);
      carrier.told.laps++;
    }
    carrier.hasLap = true;
    carrier.lapStart = now;
  }

  void countProducts(int change) {
    productSeconds += productsInLine * (now - productsSince);
    productsSince = now;
    productsInLine += change;
  }

  // A part changes its state now: the time in the one before is told.
  void set(Zone& zone, ZoneState state) {
    zone.told.seconds[zone.state] += now - zone.since;
    zone.since = now;
    zone.state = state;
  }

  void set(Carrier& carrier, CarrierState state) {
    carrier.told.seconds[carrier.state] += now - carrier.since;
    carrier.since = now;
    carrier.state = state;
  }

  Result finish() {
    now = line.end;
    countProducts(0);
    Result result;
    result.loads = loads;
    result.outputSeconds = outputs;
    result.lap = lap;
    result.timeInLine = timeInLine;
    result.productsInLineMean = productSeconds;
    result.events = events;
    for (std::size_t s = 0; s < workplaces.size(); s++) {
      const Zone& zone = zones[line.stations[s].zone];
      StationResult station;
      station.cycles = workplaces[s].cycles;
      station.longestBlock = workplaces[s].longestBlock;
      if (zone.state == zoneBlocked && now - zone.since > station.longestBlock) station.longestBlock = now - zone.since;
      result.stations.push_back(station);
    }
    for (Zone& zone : zones) {
      set(zone, zone.state);
      result.zones.push_back(zone.told);
    }
    for (Carrier& carrier : carriers) {
      set(carrier, carrier.state);
      result.carriers.push_back(carrier.told);
    }
    complete(result, line.stationIn, line.warmup, line.end);
    return result;
  }

  const Line& line;
  double now = 0;
  std::priority_queue<Event, std::vector<Event>, std::greater<Event>> queue;
  std::vector<Zone> zones;
  std::vector<Carrier> carriers;
  std::vector<Workplace> workplaces;
  // zones whose carriers may start now
  std::vector<int> ready;
  long events = 0;
  int loads = 0;
  Tally lap;
  Tally timeInLine;
  std::vector<double> outputs;
  int productsInLine = 0;
  double productSeconds = 0;
  double productsSince = 0;
};
