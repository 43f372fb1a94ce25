// The published and own instance files of nesting (reference/cutting beside the repository), with
// the optima that are known of them.
#pragma once

#include "engine/cutting/nest.h"

#include <cstdint>
#include <optional>
#include <string>
#include <vector>

namespace tests {

struct NestFile {
    std::string name;  // as in instances.csv
    engine::NestProblem problem;
    std::optional<std::int64_t> least;  // known bounds of the cost, of a bar in the published ones
    std::optional<std::int64_t> most;
};

struct NestSet {
    std::string name;
    std::vector<NestFile> files;
};

// `reference`: the folder that holds cutting/. Empty where the files are absent; a set of Scholl's
// whose archive cannot be unpacked (program unzip) is left out.
//
// The own files are in 0.01 mm, but what is known of them holds on a grid of 0.1 mm, pieces rounded
// up and bars down (nesting.md, section 5): three of the h files have a cheaper plan in 0.01 mm.
enum class OwnGrid { tenths, hundredths };
std::vector<NestFile> own_nest_files(const std::string& reference, OwnGrid grid);
std::vector<NestSet> published_nest_sets(const std::string& reference);

// Bars of one length at the price of 1.
engine::NestProblem one_bar_problem(std::int64_t length,
                                    const std::vector<engine::NestPiece>& pieces);

}  // namespace tests
