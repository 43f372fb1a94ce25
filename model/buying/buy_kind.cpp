#include "model/buying/buy_kind.h"

#include <array>
#include <cstddef>

namespace model {
namespace {

constexpr std::array<std::string_view, 5> names{"bar", "cutting", "sheet", "fastener", "delivery"};

}  // namespace

std::string_view name_of(BuyKind kind) { return names[static_cast<std::size_t>(kind)]; }

std::optional<BuyKind> buy_kind_of(std::string_view name) {
    for (std::size_t i = 0; i < names.size(); ++i) {
        if (names[i] == name) return static_cast<BuyKind>(i);
    }
    return std::nullopt;
}

bool is_goods(BuyKind kind) { return kind != BuyKind::cutting && kind != BuyKind::delivery; }

}  // namespace model
