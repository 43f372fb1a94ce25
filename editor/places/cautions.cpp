#include "editor/places/cautions.h"

#include "editor/kit/scopes.h"
#include "editor/kit/widgets.h"

#include <string>

namespace editor {

void draw_caution(Work work) {
    const auto& caution = caution_of(work);
    const ImVec2 at = ImGui::GetCursorScreenPos();
    const float indent = scaled(12);
    const float width = ImGui::GetContentRegionAvail().x - indent;
    const ImVec2 size = size_of_text(caution.line, Type::small, width);
    ImDrawList& on = *ImGui::GetWindowDrawList();
    on.AddRectFilled(at, {at.x + scaled(3), at.y + size.y}, colour::amber);
    draw_wrapped_at(on, {at.x + indent, at.y}, caution.line, Type::small, colour::amber, width);
    ImGui::Dummy({width + indent, size.y});
    log_item("caution for " + std::string(model::name_of(work)), caution.line);
    std::string further;
    for (const auto sentence : caution.further)
        further += (further.empty() ? "" : "\n") + std::string(sentence);
    draw_hint(further);
}

}  // namespace editor
