// A line with a word and a button that opens a list to choose from.
#pragma once

#include <optional>
#include <string>
#include <vector>

namespace editor {

struct ListEntry {
    std::string text;
    bool is_heading = false;
};

// The entry that was clicked in the list, as its index. The list is "NAME list".
std::optional<std::size_t> draw_choice_button(const std::string& name,
                                              const std::string& word,
                                              const std::vector<ListEntry>& entries,
                                              std::size_t chosen);

}  // namespace editor
