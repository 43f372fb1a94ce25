// The kinds of things that are bought.
#pragma once

#include <optional>
#include <string_view>

namespace model {

enum class BuyKind { bar, cutting, sheet, fastener, delivery };

std::string_view name_of(BuyKind kind);  // "bar", "cutting", "sheet", ...
std::optional<BuyKind> buy_kind_of(std::string_view name);

// What one takes home; cuts and the delivery are done to it.
bool is_goods(BuyKind kind);

}  // namespace model
