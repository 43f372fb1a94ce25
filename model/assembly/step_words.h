// A step of the assembly in words, for the window and for paper.
#pragma once

#include "model/assembly/assembly_order.h"

#include <string>
#include <vector>

namespace model {

enum class StepWork { put_on, pin, measure, set, fix };

struct StepWords {
    StepWork work = StepWork::put_on;
    std::string text;

    bool operator==(const StepWords&) const = default;
};

// What is done in a step, in the order of the work, a line for each thing to do: what is put on,
// the pins, each diagonal, the fasteners in the order in which the tool reaches them, the fixing to
// the van.
std::vector<StepWords> step_words(const Project& project,
                                  const Catalogue& catalogue,
                                  const Resolved& resolved,
                                  const AssemblyOrder& order,
                                  Index step);

// "Step 3: joined on", "Step 1: flat on the bench, face left"; counted within its frame.
std::string step_title(const AssemblyOrder& order, Index step);

// Its number within its frame, from 1.
int step_number(const AssemblyOrder& order, Index step);

}  // namespace model
