#include "editor/places/table_columns.h"

#include "editor/kit/widgets.h"

#include <algorithm>

namespace editor {

ColumnWidth::ColumnWidth(std::string_view heading) : heading_{heading} {
    add(heading, Type::small);
}

void ColumnWidth::add(std::string_view text, Type type) {
    width_ = std::max(width_, size_of_text(text, type).x);
}

void ColumnWidth::set_up(unsigned id) const {
    // Where lines can be sorted the head has an arrow beside its words.
    const float arrow = id > 0 ? size_of_text(heading_, Type::small).x + scaled(14) : 0.0F;
    ImGui::TableSetupColumn(heading_.c_str(), ImGuiTableColumnFlags_WidthFixed,
                            std::max(width_, arrow) + scaled(2), id);
}

}  // namespace editor
