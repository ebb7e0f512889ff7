// Random numbers: named streams, and lognormal times by inversion. (MODEL.md §9)
#pragma once

#include <cmath>
#include <cstdint>
#include <string>

#include "clock.h"

// Hash of text that starts a generator. (Baagøe, Alea, 2010)
class Mash {
 public:
  double of(const std::string& text) {
    for (const unsigned char letter : text) {
      n += letter;
      double h = 0.02519603282416938 * n;
      n = static_cast<std::uint32_t>(h);
      h -= n;
      h *= n;
      n = static_cast<std::uint32_t>(h);
      h -= n;
      n += h * 4294967296.0;
    }
    return static_cast<std::uint32_t>(static_cast<std::uint64_t>(n)) * 2.3283064365386963e-10;
  }

 private:
  double n = 0xefc8249d;
};

// A stream of uniforms, above 0 and below 1, started by its name alone.
class Stream {
 public:
  explicit Stream(const std::string& name) {
    Mash mash;
    for (double* lag : {&lag0, &lag1, &lag2}) *lag = mash.of(" ");
    for (double* lag : {&lag0, &lag1, &lag2}) {
      *lag -= mash.of(name);
      if (*lag < 0) *lag += 1;
    }
  }

  double next() {
    const double high = step();
    const double low = step();
    const double u = high + static_cast<std::int32_t>(low * 0x200000) * 1.1102230246251565e-16;
    return u == 0 ? 5.551115123125783e-17 : u;
  }

 private:
  double step() {
    const double t = 2091639 * lag0 + carry * 2.3283064365386963e-10;
    carry = static_cast<std::int32_t>(t);
    lag0 = lag1;
    lag1 = lag2;
    return lag2 = t - carry;
  }

  double carry = 1;
  double lag0 = 0;
  double lag1 = 0;
  double lag2 = 0;
};

// Quotient of two polynomials of degree 7, the highest power first.
inline double quotient(const double (&top)[8], const double (&bottom)[8], double x) {
  double above = top[0];
  double below = bottom[0];
  for (int k = 1; k < 8; k++) {
    above = above * x + top[k];
    below = below * x + bottom[k];
  }
  return above / below;
}

// Inverse of the normal distribution function. (Wichura, Algorithm AS 241, 1988)
inline double normalQuantile(double p) {
  static constexpr double middleTop[8] = {2509.0809287301227, 33430.57558358813,  67265.7709270087,   45921.95393154987,
                                          13731.69376550946,  1971.5909503065513, 133.14166789178438, 3.3871328727963665};
  static constexpr double middleBottom[8] = {5226.495278852854, 28729.085735721943, 39307.89580009271, 21213.794301586597,
                                             5394.196021424751, 687.1870074920579,  42.31333070160091, 1};
  static constexpr double nearTop[8] = {0.0007745450142783414, 0.022723844989269184, 0.2417807251774506, 1.2704582524523684,
                                        3.6478483247632045,    5.769497221460691,    4.630337846156546,  1.4234371107496835};
  static constexpr double nearBottom[8] = {1.0507500716444169e-9, 0.0005475938084995345, 0.015198666563616457, 0.14810397642748008,
                                           0.6897673349851,       1.6763848301838038,    2.053191626637759,    1};
  static constexpr double farTop[8] = {2.0103343992922881e-7, 2.7115555687434876e-5, 0.0012426609473880784, 0.026532189526576124,
                                       0.29656057182850487,   1.7848265399172913,    5.463784911164114,     6.657904643501103};
  static constexpr double farBottom[8] = {2.0442631033899397e-15, 1.421511758316446e-7, 1.8463183175100548e-5, 0.0007868691311456133,
                                          0.014875361290850615,   0.1369298809227358,   0.599832206555888,     1};
  const double q = p - 0.5;
  if (std::fabs(q) <= 0.425) return q * quotient(middleTop, middleBottom, 0.180625 - q * q);
  const double root = std::sqrt(-std::log(p < 0.5 ? p : 1 - p));
  const double size = root <= 5 ? quotient(nearTop, nearBottom, root - 1.6) : quotient(farTop, farBottom, root - 5);
  return q < 0 ? -size : size;
}

// Times of a task: the k-th is for the k-th product that comes.
class TaskTimes {
 public:
  TaskTimes(double mean, double cv, const std::string& stream) : stream(stream) {
    const double variance = std::log1p(cv * cv);
    mu = std::log(mean) - variance / 2;
    sigma = std::sqrt(variance);
  }

  double next() { return toGrid(std::exp(mu + sigma * normalQuantile(stream.next()))); }

 private:
  Stream stream;
  double mu;
  double sigma;
};
