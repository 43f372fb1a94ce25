// The order of assembly of the project as it is: worked out when something asks for it, not in each
// frame.
#pragma once

#include "editor/derived.h"
#include "model/assembly/step_words.h"

#include <cstddef>
#include <memory>
#include <optional>
#include <string>
#include <vector>

namespace editor {

// One step in words.
struct StepText {
    std::size_t step = 0;
    std::string title;
    std::vector<model::StepWords> lines;
    std::vector<model::StepJoint> joints;
};

struct AssemblyMemo {
    Snapshot of;  // the project whose order it is
    model::AssemblyOrder order;
    std::vector<model::Approach> approaches;  // of each piece
    std::vector<std::string> titles;          // of each step, counted within its frame
    std::vector<std::string> counts;          // of each step: what is done in it, counted
    std::optional<StepText> text;             // of the step that was asked for last
    std::optional<std::size_t> joint;         // of the step that is shown: which is chosen
    bool shows_joint = false;                 // it was chosen by the keyboard
};

const AssemblyMemo& assembly_of(std::shared_ptr<AssemblyMemo>& memo,
                                const Derived& derived,
                                const model::Catalogue& catalogue);

const StepText& step_text_of(AssemblyMemo& memo,
                             const Derived& derived,
                             const model::Catalogue& catalogue,
                             std::size_t step);

}  // namespace editor
