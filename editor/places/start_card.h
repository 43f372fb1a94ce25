// What to begin with, over an empty view.
#pragma once

#include "editor/kit/scopes.h"

#include <filesystem>
#include <optional>
#include <string_view>
#include <vector>

namespace editor {

struct StartChoice {
    std::string_view command;                     // its id; empty when none was asked for
    std::optional<std::filesystem::path> sample;  // to open
};

StartChoice draw_start_card(const Area& view, const std::vector<std::filesystem::path>& samples);

}  // namespace editor
