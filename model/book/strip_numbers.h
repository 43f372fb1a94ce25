// The numbers of the holes on a paper of a drill strip: each beside its cross, or where it has
// room.
#pragma once

#include "model/book/strip_ground.h"
#include "model/book/strip_labels.h"
#include "model/book/strip_paper.h"
#include "model/book/strip_words.h"

#include <string>
#include <vector>

namespace model {

struct StripNumbers {
    std::vector<StripNumber> numbers;
    // What is done at a hole that has no room beside its cross, to be told elsewhere on the paper.
    std::vector<std::string> notes;
};

// Their places are blocked on the ground.
StripNumbers strip_numbers(const StripPart& part,
                           const StripTools& tools,
                           const StripPaper& paper,
                           StripGround& ground);

}  // namespace model
