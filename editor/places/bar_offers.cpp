#include "editor/places/bar_offers.h"

#include "editor/by_name.h"
#include "editor/dimension_values.h"
#include "editor/error_words.h"
#include "engine/measure/tape.h"
#include "model/project/project_fields.h"

#include <array>
#include <charconv>
#include <cstdio>
#include <string_view>

namespace editor {
namespace {

constexpr std::string_view before_price = " at ";
constexpr std::string_view before_limit = "only ";

std::string trimmed(std::string_view text) {
    const auto first = text.find_first_not_of(' ');
    if (first == std::string_view::npos) return {};
    return std::string(text.substr(first, text.find_last_not_of(' ') - first + 1));
}

engine::Error refusal(std::string message) {
    return {engine::ErrorCode::invalid_value, {}, std::move(message)};
}

// "27", "33.50", "33,50".
std::optional<double> money_in(std::string text) {
    for (auto& c : text) {
        if (c == ',') c = '.';
    }
    double value = 0.0;
    const auto* end = text.data() + text.size();
    const auto read = std::from_chars(text.data(), end, value, std::chars_format::fixed);
    if (read.ec != std::errc{} || read.ptr != end || value < 0.0) return std::nullopt;
    if (value > model::most_money) return std::nullopt;
    return value;
}

std::optional<int> count_in(const std::string& text) {
    int value = 0;
    const auto* end = text.data() + text.size();
    const auto read = std::from_chars(text.data(), end, value);
    if (read.ec != std::errc{} || read.ptr != end || value < 0) return std::nullopt;
    return value > model::most_count ? std::nullopt : std::optional(value);
}

std::string money_text(double price) {
    std::array<char, 64> digits{};
    const bool is_whole = price == static_cast<double>(static_cast<long long>(price));
    std::snprintf(digits.data(), digits.size(), is_whole ? "%.0f" : "%.2f", price);
    return digits.data();
}

// What is left once both mill ends are squared off must be something to cut from.
std::optional<engine::Error> too_short(const Derived& derived,
                                       const std::string& text,
                                       engine::Length length) {
    if (length <= engine::Length{}) {
        return refusal("a bar is longer than nothing; `" + text + "` is not");
    }
    const auto trim = engine::Length::from_nm(derived.resolved.shop.end_trim);
    if (length > trim + trim) return std::nullopt;
    auto style = derived.project->shown;
    style.with_unit = true;
    return refusal("nothing is left of a bar of `" + text + "` once " +
                   engine::tape_text(trim, style) + " is squared off each end");
}

// One offer: its length, then its price behind "at", then how many there are behind "only".
engine::Result<model::BarOffer> read_offer(const Derived& derived,
                                           const model::Stock& stock,
                                           const std::string& text) {
    std::string rest = text;
    model::BarOffer offer;
    bool is_plain = true;
    if (const auto at = rest.rfind(before_limit); at != std::string::npos && at > 0) {
        offer.limit = count_in(trimmed(rest.substr(at + before_limit.size())));
        if (!offer.limit) return refusal("how many there are is a whole number: `" + text + "`");
        rest = trimmed(rest.substr(0, at));
        if (rest.ends_with(',')) rest = trimmed(rest.substr(0, rest.size() - 1));
        is_plain = false;
    }
    if (const auto at = rest.rfind(before_price); at != std::string::npos) {
        offer.price = money_in(trimmed(rest.substr(at + before_price.size())));
        if (!offer.price) return refusal("a price is a number, such as 33.50: `" + text + "`");
        rest = trimmed(rest.substr(0, at));
        is_plain = false;
    }
    const auto value = tried_length(derived, rest);
    if (!value) return value.error();
    if (auto short_bar = too_short(derived, rest, value->length)) return *short_bar;
    offer.length = rest;
    if (!is_plain) return offer;
    for (const auto& known : stock.bars) {
        if (known.length == rest) offer = known;
    }
    return offer;
}

}  // namespace

std::string offers_text(const model::Stock& stock) {
    std::string text;
    for (const auto& bar : stock.bars) {
        text += (text.empty() ? "" : "; ") + bar.length;
        if (bar.price) text += std::string(before_price) + money_text(*bar.price);
        if (bar.limit) text += ", " + std::string(before_limit) + std::to_string(*bar.limit);
    }
    return text;
}

std::optional<Change> take_typed_offers(OfferTyping& typing, const Derived& derived) {
    if (typing.stock.empty()) return std::nullopt;
    const model::Stock* stock = by_name(derived.project->stock, typing.stock);
    if (stock == nullptr || typing.text == offers_text(*stock)) {
        typing = {};
        return std::nullopt;
    }
    const auto offers = read_offers(derived, *stock, typing.text);
    if (!offers) {
        typing.trouble = error_words(offers.error(), typing.text);
        return std::nullopt;
    }
    auto changed = *stock;
    changed.bars = *offers;
    typing = {};
    return change_of(model::PutStock{changed, changed.name});
}

engine::Result<std::vector<model::BarOffer>> read_offers(const Derived& derived,
                                                         const model::Stock& stock,
                                                         const std::string& text) {
    std::vector<model::BarOffer> offers;
    std::string_view rest = text;
    while (!rest.empty()) {
        const auto end = rest.find(';');
        const std::string one = trimmed(rest.substr(0, end));
        rest = end == std::string_view::npos ? std::string_view() : rest.substr(end + 1);
        if (one.empty()) continue;
        const auto offer = read_offer(derived, stock, one);
        if (!offer) return offer.error();
        offers.push_back(*offer);
    }
    return offers;
}

}  // namespace editor
