#include "editor/places/section_match.h"

#include <algorithm>
#include <optional>
#include <string>
#include <utility>

namespace editor {
namespace {

std::vector<std::string_view> words_of(std::string_view text) {
    std::vector<std::string_view> words;
    while (true) {
        const auto begin = text.find_first_not_of(' ');
        if (begin == std::string_view::npos) return words;
        text.remove_prefix(begin);
        const auto end = std::min(text.find(' '), text.size());
        words.push_back(text.substr(0, end));
        text.remove_prefix(end);
    }
}

bool begins_with(const std::vector<std::string_view>& words,
                 std::size_t at,
                 const std::vector<std::string_view>& typed) {
    if (at + typed.size() > words.size()) return false;
    return std::equal(typed.begin(), typed.end(), words.begin() + static_cast<std::ptrdiff_t>(at));
}

// The last word may still be half typed.
bool may_begin_with(const std::vector<std::string_view>& words,
                    std::size_t at,
                    const std::vector<std::string_view>& typed) {
    if (at + typed.size() > words.size()) return false;
    for (std::size_t i = 0; i + 1 < typed.size(); ++i) {
        if (words[at + i] != typed[i]) return false;
    }
    const std::string_view last = words[at + typed.size() - 1];
    return last.substr(0, typed.back().size()) == typed.back();
}

bool holds_in_order(const std::vector<std::string_view>& words,
                    const std::vector<std::string_view>& typed) {
    auto at = words.begin();
    for (const auto word : typed) {
        at = std::find(at, words.end(), word);
        if (at == words.end()) return false;
        ++at;
    }
    return true;
}

// Lower is likelier; none where a word is missing. The size begins behind the word for the form.
std::optional<int> rank_of(std::string_view id, const std::vector<std::string_view>& typed) {
    const auto words = words_of(id);
    if (words == typed) return 0;
    for (const std::size_t at : {std::size_t{0}, std::size_t{1}}) {
        if (begins_with(words, at, typed)) return 1;
    }
    for (const std::size_t at : {std::size_t{0}, std::size_t{1}}) {
        if (may_begin_with(words, at, typed)) return 2;
    }
    if (holds_in_order(words, typed)) return 3;
    const bool has_all = std::all_of(typed.begin(), typed.end(), [&](std::string_view word) {
        return id.find(word) != std::string_view::npos;
    });
    return has_all ? std::optional(4) : std::nullopt;
}

std::string lowered(std::string_view text) {
    std::string low(text);
    for (char& c : low) {
        if (c >= 'A' && c <= 'Z') c = static_cast<char>(c - 'A' + 'a');
    }
    return low;
}

}  // namespace

std::vector<const model::Section*> matching_sections(const model::Catalogue& catalogue,
                                                     std::string_view typed) {
    const std::string low = lowered(typed);
    const auto words = words_of(low);
    std::vector<std::pair<int, const model::Section*>> ranked;
    for (const auto& section : catalogue.sections) {
        const auto rank = words.empty() ? std::optional(0) : rank_of(section.id, words);
        if (rank) ranked.emplace_back(*rank, &section);
    }
    std::stable_sort(ranked.begin(), ranked.end(),
                     [](const auto& a, const auto& b) { return a.first < b.first; });
    std::vector<const model::Section*> sections;
    for (const auto& [rank, section] : ranked) sections.push_back(section);
    return sections;
}

}  // namespace editor
