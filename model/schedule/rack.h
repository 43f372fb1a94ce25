// What lies on the rack and at home: laid there, taken away, and taken back when it was a bad piece
// that is good after all.
#pragma once

#include "model/project/edit.h"
#include "model/resolve/resolved.h"

#include <string>
#include <vector>

namespace model {

// The bars of a stock as they are, to be changed.
KeepBars bars_kept(const Stock& stock, std::string what_was_done);

void lay_one(std::vector<Offcut>& lying, const Formula& length);

// One of that length; false where there is none.
bool take_one(const Project& project,
              const Resolved& resolved,
              std::vector<Offcut>& lying,
              Nm length);

// A spoiled piece that lies on the rack leaves it, and nothing of what was measured on it holds any
// more. Error out_of_range: it is not there, with where it went.
engine::Result<engine::Done> take_from_rack(const Project& project,
                                            const Resolved& resolved,
                                            KeepBars& bars,
                                            BarCut& cut);

}  // namespace model
