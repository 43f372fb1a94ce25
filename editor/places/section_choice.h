// Choosing a section of the catalogue, and the stock that it makes in the project.
#pragma once

#include "editor/change.h"
#include "editor/derived.h"
#include "model/catalogue/catalogue.h"
#include "model/project/project.h"

#include <optional>
#include <string>
#include <string_view>
#include <vector>

namespace editor {

// The list while it is open: what narrows it, and the row that Enter takes.
struct SectionTyping {
    std::string text;
    int marked = 0;
    bool shows_mark = false;   // scroll to the marked row
    bool shows_first = false;  // scroll to the first one

    void clear() { *this = {}; }
};

// A button that shows the section and opens the list of the catalogue, narrowed by what is typed;
// the arrow keys move the mark. Gives the section that was chosen.
std::optional<std::string> draw_section_choice(std::string_view name,
                                               const std::string& current,
                                               const model::Catalogue& catalogue,
                                               SectionTyping& typing,
                                               float width);

struct StockChoice {
    std::string name;
    std::optional<model::Edit> edit;  // that adds it, when the project has no such stock yet
};

// The project's stock of that section, or a new one in the section's usual alloy that can be bought
// as `bars` and in the lengths of `like`.
StockChoice stock_of_section(const model::Project& project,
                             const model::Catalogue& catalogue,
                             const std::string& section,
                             std::string_view like = {},
                             const std::vector<model::BarOffer>& bars = {});

// Puts these members of the frame (all when nothing is named) and these braces and leaning members
// onto another section, in the alloy and lengths of stock_of_section. Where the section is of
// another form than before, each member lies the way in which the frame resolves with the fewest
// findings.
Change section_change(const Derived& now,
                      const model::Catalogue& catalogue,
                      const std::string& frame,
                      const std::vector<std::string>& members,
                      const std::string& section,
                      const std::vector<std::string>& node_bars = {});

}  // namespace editor
