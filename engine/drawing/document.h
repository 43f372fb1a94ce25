// Pages that belong together, with what leads to them.
#pragma once

#include "engine/drawing/page.h"

#include <cstddef>
#include <optional>
#include <string>
#include <vector>

namespace engine {

struct Bookmark {
    std::string title;
    std::size_t page = 0;  // from 0
    int level = 0;         // 0, or that many deeper: below the last one of a lower level

    bool operator==(const Bookmark&) const = default;
};

struct Document {
    std::string title;
    std::vector<Page> pages;
    std::vector<Bookmark> bookmarks;

    bool operator==(const Document&) const = default;
};

}  // namespace engine
