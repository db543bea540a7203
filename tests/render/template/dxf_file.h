#pragma once

// A DXF file as dxflib reads it, measured; and the lines that should be in it.

#include <string>
#include <vector>

#include "engine/cuts/cuts.h"
#include "tests/oracle/drawn_page.h"

namespace dxf {

struct Corner {
  oracle::Spot at;
  double bulge = 0;  // DXF Reference, LWPOLYLINE, code 42: tan(angle / 4), counterclockwise above 0
};

// A polyline, or a circle where it has a radius.
struct Line {
  std::string layer;
  bool closed = false;
  std::vector<Corner> corners;
  oracle::Spot centre;
  double radius = 0;
};

struct File {
  std::vector<Line> lines;
  std::vector<std::string> texts;
};

File read(const std::string& path);

struct Extent {
  double left = 0, low = 0, right = 0, high = 0;
};

Extent extent_of(const Line& line);
double length_of(const Line& line);
double distance(const Line& line, oracle::Spot spot);
bool encloses(const Line& closed, oracle::Spot spot);

// In millimetres from the lower left corner of the top mat's blank, seen from behind.
struct PlannedLine {
  std::string layer;
  Extent box;
  bool circle = false;
};

std::vector<PlannedLine> planned_lines(const mullion::Cuts& cuts);

}  // namespace dxf
