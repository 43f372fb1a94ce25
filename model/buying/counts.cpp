#include "model/buying/counts.h"

#include "model/catalogue/near_name.h"

namespace model {

std::optional<int> count_in(std::string_view text) {
    constexpr int most_of_anything = 1'000'000;
    if (text.empty() || text.size() > 7) return std::nullopt;
    int count = 0;
    for (const char c : text) {
        if (c < '0' || c > '9') return std::nullopt;
        count = count * 10 + (c - '0');
    }
    return count <= most_of_anything ? std::optional{count} : std::nullopt;
}

std::optional<int> box_count(std::string_view per) {
    const auto words = compact_name(per);
    if (words.empty() || words == "each" || words == "1") return 1;
    for (const std::string_view box : {"boxof", "bagof", "packof"}) {
        if (words.substr(0, box.size()) != box) continue;
        const auto count = count_in(std::string_view{words}.substr(box.size()));
        return count && *count > 0 ? count : std::nullopt;
    }
    return std::nullopt;
}

}  // namespace model
