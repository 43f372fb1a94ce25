// What is to be done to a piece, in words for large print.
#pragma once

#include "editor/derived.h"
#include "model/bench/bench.h"

#include <string>
#include <vector>

namespace editor {

std::vector<std::string> bench_lines(const Derived& derived,
                                     const model::Catalogue& catalogue,
                                     const model::BenchPiece& piece,
                                     model::BenchWork work);

}  // namespace editor
