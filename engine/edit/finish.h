#pragma once

// A finish: the boards of a mat from the top down, with their reveals, and a moulding, kept by name
// for other jobs. A small XML file of the shop's own:
//
//   <finishes version="1">
//     <finish name="Oat over slate">
//       <layer name="Top mat" board="Oat" colour="#ece5d4" thickness="1/16 in"/>
//       <layer name="Under-mat" board="Slate" colour="#3f5563" thickness="1/16 in" reveal="1/4
//       in"/> <frame moulding="Ash, natural" colour="#c9b18a" face="1 in"/>
//     </finish>
//   </finishes>
//
// The words are those of a job file's layers and frame; lengths name their units.

#include <string>
#include <string_view>
#include <vector>

#include "engine/edit/edit.h"

namespace mullion::edit {

struct Finish {
  std::string name;
  std::vector<Attributes> layers;  // at least one
  Attributes frame;                // empty: none is kept
};

// Problems come with line and column.
Result<std::vector<Finish>> parse_finishes(std::string_view xml, const std::string& file);
std::string write_finishes(const std::vector<Finish>& finishes);

// By which a job comes to have the finish: its layers take these boards, are added or removed; a
// frame that it has takes the moulding.
Edit taking(const Finish& finish, const Job& job);

// What is wrong with a finish, as a job would say that took it.
Problems faults_of(const Finish& finish);

}  // namespace mullion::edit
