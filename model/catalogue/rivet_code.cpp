#include "model/catalogue/rivet_code.h"

#include <charconv>

namespace model {
namespace {

std::optional<int> small_number(std::string_view text) {
    int value = 0;
    const auto* const end = text.data() + text.size();
    const auto [stopped, fault] = std::from_chars(text.data(), end, value);
    constexpr int largest = 99;
    if (fault != std::errc{} || stopped != end || value <= 0 || value > largest) {
        return std::nullopt;
    }
    return value;
}

}  // namespace

std::optional<RivetCode> read_rivet_code(std::string_view text) {
    using namespace engine::literals;
    const auto dash = text.find('-');
    if (dash == std::string_view::npos) return std::nullopt;
    const auto thirty_seconds = small_number(text.substr(0, dash));
    const auto sixteenths = small_number(text.substr(dash + 1));
    if (!thirty_seconds || !sixteenths) return std::nullopt;
    return RivetCode{2_in_64 * *thirty_seconds, 4_in_64 * *sixteenths};
}

}  // namespace model
