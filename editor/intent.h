// What the user is about to do that would put the present project away.
#pragma once

#include <cstddef>
#include <filesystem>

namespace editor {

struct Intent {
    enum class Kind { leave, begin_new, browse, open_file, bring_back };
    Kind kind = Kind::leave;
    std::filesystem::path file;   // to open, or the journal to bring back
    std::size_t passed_over = 0;  // files that were dropped with it

    bool operator==(const Intent&) const = default;
};

}  // namespace editor
