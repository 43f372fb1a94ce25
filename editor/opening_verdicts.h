// Whether frames go into their openings as these were measured, in a maker's words.
#pragma once

#include "editor/derived.h"
#include "model/room/as_built.h"

#include <array>
#include <optional>
#include <string>
#include <vector>

namespace editor {

struct OpeningVerdict {
    std::string frame;
    std::string opening;
    model::Severity severity = model::Severity::note;  // of the words
    std::string words;                                 // "goes in with 1/4 to spare across"
    std::vector<std::string> doubts;                   // why the measures are to be looked at again
    std::string sureness;                              // how far the measures agree
    std::optional<model::OpeningFit> fit;
};

// One for each measured opening, by frame.
std::vector<OpeningVerdict> opening_verdicts(const Derived& derived);

std::string name_of(model::OpeningLevel level);

}  // namespace editor
