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

void ColumnWidth::set_up() const {
    ImGui::TableSetupColumn(heading_.c_str(), ImGuiTableColumnFlags_WidthFixed, width_ + scaled(2));
}

}  // namespace editor
