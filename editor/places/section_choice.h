// Choosing a section of the catalogue, and the stock that it makes in the project.
#pragma once

#include "editor/change.h"
#include "model/catalogue/catalogue.h"
#include "model/project/project.h"

#include <optional>
#include <string>
#include <string_view>
#include <vector>

namespace editor {

// A button that shows the section and opens the list of the catalogue, narrowed by what is typed.
// Gives the section that was chosen.
std::optional<std::string> draw_section_choice(std::string_view name,
                                               const std::string& current,
                                               const model::Catalogue& catalogue,
                                               std::string& filter,
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

// Puts these members of the frame onto another section; none when the section is unknown.
Change section_change(const model::Project& project,
                      const model::Catalogue& catalogue,
                      const std::string& frame,
                      const std::vector<std::string>& members,
                      const std::string& section);

}  // namespace editor
