// Which words of the trade are looked up.
#pragma once

#include <cstddef>
#include <string>

namespace editor {

struct TradeWords {
    std::string words;       // typed to find one
    std::size_t chosen = 0;  // of what is found
    bool is_fresh = true;
};

}  // namespace editor
