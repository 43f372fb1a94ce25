// Columns of a table as wide as what they hold.
#pragma once

#include "editor/kit/theme.h"

#include <string>
#include <string_view>

namespace editor {

// The widest text of a column; the heading counts too.
class ColumnWidth {
public:
    explicit ColumnWidth(std::string_view heading);

    void add(std::string_view text, Type type = Type::text);

    float width() const { return width_; }

    // Adds the column to the table that is being set up; by its id it is sorted.
    void set_up(unsigned id = 0) const;

private:
    std::string heading_;
    float width_ = 0.0F;
};

}  // namespace editor
