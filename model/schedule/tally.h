// What a project comes to, in the figures by which two ways of making it are compared.
#pragma once

#include "engine/measure/length.h"
#include "engine/measure/tape.h"
#include "model/catalogue/catalogue.h"
#include "model/project/project.h"
#include "model/resolve/resolved.h"

#include <map>
#include <string>
#include <vector>

namespace model {

struct Tally {
    std::map<PieceKind, int> kinds;        // how many pieces
    int holes = 0;                         // drilled in all pieces together
    std::map<std::string, int> fasteners;  // by id in the catalogue: "blind rivet 1/8"
    std::map<std::string, int> nuts;       // what else holds screws: "nut", "rivet nut"
    double weight_kg = 0.0;                // of the pieces, see weight.h
    std::vector<std::vector<engine::Length>> member_lengths;  // by frame and member: its pieces'

    bool operator==(const Tally&) const = default;
};

// `weights_kg` are those of piece_weights_kg.
Tally tally_of(const Project& project,
               const Catalogue& catalogue,
               const Resolved& resolved,
               const std::vector<double>& weights_kg);

int piece_count(const Tally& tally);
int fastener_count(const Tally& tally);

// "+4 gussets", "-1 piece" (with a minus sign); empty for none.
std::string count_change_words(int by, const std::string& one, const std::string& many);

// "+3.0 oz" below a pound, "+1.20 lb", "-84 g", "+1.05 kg"; empty for less than half a gram.
std::string weight_change_words(double by_kg, const engine::TapeStyle& shown);

// What is there more or less of by its kind, without holes and weight: "+4 gussets, +16 rivets
// 1/8".
std::string part_change_words(const Tally& before, const Tally& after);

// "+4 gussets, +16 holes, +16 rivets 1/8, +3.0 oz"; empty when nothing is different.
std::string change_words(const Tally& before, const Tally& after, const engine::TapeStyle& shown);

// Members that are there before and after, along the same axis, and have become longer or shorter:
// "4 x-rails 1/4 in shorter, mid post 3/8 in longer"; beyond three such groups only how many.
std::string length_change_words(const Project& before_project,
                                const Tally& before,
                                const Project& after_project,
                                const Tally& after);

}  // namespace model
