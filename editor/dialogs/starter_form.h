// The forms that start a frame: a few dimensions in, ordinary planes, bays and members out.
#pragma once

#include "editor/change.h"
#include "editor/derived.h"
#include "editor/places/section_choice.h"

#include <optional>
#include <string>
#include <vector>

namespace editor {

enum class StarterKind { box, stepped, planes };  // planes: six of them and nothing else

struct StarterForm {
    StarterKind kind = StarterKind::box;
    std::string frame;
    std::string section;
    std::string bars;  // lengths it is sold in, "; " between
    std::string width;
    std::string depth;
    std::string height;
    std::string well_height;
    std::string well_depth;
    std::vector<std::string> shelf_levels;
    std::vector<std::string> dividers;
    std::string beside;  // where the frame begins along x
    SectionTyping section_filter;
    std::string trouble;
    std::string focus;  // the size that is to be typed next
};

// Filled with sizes to begin with, a free name, and a place beside the frames that there are.
StarterForm starter_form(StarterKind kind, const Derived& derived, const model::Catalogue& tables);

// The change that the form asks for. Error: bars that cannot be read.
engine::Result<Change> starter_change(const StarterForm& form,
                                      const Derived& derived,
                                      const model::Catalogue& tables);

struct StarterOutcome {
    std::optional<Change> change;
    bool is_cancelled = false;
};

StarterOutcome draw_starter_form(StarterForm& form,
                                 const Derived& derived,
                                 const model::Catalogue& tables);

}  // namespace editor
