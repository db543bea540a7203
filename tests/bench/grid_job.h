#pragma once

// A job of any number of openings, in rows of columns of four, for timings.

#include <string>

namespace bench {

inline std::string grid_job(int openings, int columns = 5) {
  std::string pictures, arrangement = "<column align=\"stretch\">";
  int placed = 0;
  while (placed < openings) {
    arrangement += "<row>";
    for (int column = 0; column < columns && placed < openings; ++column) {
      arrangement += "<column>";
      for (int i = 0; i < 4 && placed < openings; ++i, ++placed) {
        const std::string id = "p" + std::to_string(placed);
        pictures += "<picture id=\"" + id + "\" width=\"" + std::to_string(40 + placed * 7 % 24) +
                    "/16\" height=\"" + std::to_string(32 + placed * 11 % 40) + "/16\"/>";
        arrangement += "<opening picture=\"" + id + "\"/>";
      }
      arrangement += "</column>";
    }
    arrangement += "</row>";
  }
  return "<job version=\"1\" reference=\"bench\" unit=\"in\" increment=\"1/16\"><pictures>" +
         pictures +
         "</pictures><layers><layer board=\"Oat\"/><layer board=\"Ink\" reveal=\"1/4\"/></layers>"
         "<arrange>" +
         arrangement + "</column></arrange></job>";
}

}  // namespace bench
