// What stays with a paper of a drill strip when it is cut out: where its words have room between
// the crosses, and the tab that takes those which have none.
#pragma once

#include "engine/drawing/lettering.h"
#include "engine/drawing/page_items.h"
#include "model/book/strip_words.h"

#include <array>
#include <optional>
#include <string>
#include <vector>

namespace model {

inline constexpr double hole_number_size = 2.2;

enum class LabelArrow { none, up, down };

// Places in mm from the paper's upper left corner; above it on a tab.
struct StripLabel {
    std::vector<std::string> lines;
    engine::PageBox box;
    double size = 0.0;
    engine::LetterWeight weight = engine::LetterWeight::regular;
    bool is_turned = false;  // reads upwards, towards the datum end
    LabelArrow arrow = LabelArrow::none;
};

// The number of a hole, beside its cross.
struct StripNumber {
    engine::PagePoint at;
    std::string words;
    double size = hole_number_size;
    // From the number to the hole's edge, where it stands aside.
    std::optional<std::array<engine::PagePoint, 2>> lead = {};
};

struct StripLabels {
    std::vector<StripLabel> labels;
    std::vector<StripNumber> numbers;
    double tab = 0.0;  // mm that the paper is longer beyond its upper edge
};

inline constexpr double label_pitch = 1.25;  // from line to line, in sizes of the font
inline constexpr double label_arrow = 5.0;   // mm: its length
inline constexpr double label_arrow_room = 2.8;

// Mark and hand, part, the name and side of each leg, and which way the datum end lies: each on a
// leg where it covers no cross, level or along the leg; else across a fold; else on a tab, which
// says that it is one. What is drilled is told where there is room.
StripLabels strip_labels(const StripPart& part);

}  // namespace model
