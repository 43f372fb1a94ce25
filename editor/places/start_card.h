// What to begin with, over an empty view.
#pragma once

#include "editor/kit/scopes.h"

#include <filesystem>
#include <optional>
#include <string_view>
#include <vector>

namespace editor {

struct StartChoice {
    std::string_view command;                   // its id; empty when none was asked for
    std::optional<std::filesystem::path> file;  // to open: a sample, or one that was open before
};

StartChoice draw_start_card(const Area& view,
                            const std::vector<std::filesystem::path>& recent,
                            const std::vector<std::filesystem::path>& samples);

}  // namespace editor
