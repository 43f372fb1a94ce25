#include "model/schedule/length_texts.h"

namespace model {

std::string shown_text(engine::Length length, const engine::TapeStyle& style) {
    return (engine::is_on_mark(length, style) ? "" : "~") + engine::tape_text(length, style);
}

std::string bar_length_text(engine::Length length, engine::TapeStyle style) {
    constexpr auto foot = 12 * engine::Length::nm_per_inch;
    const auto unit = engine::bare_unit(style);
    const bool is_inch = unit == engine::LengthUnit::inch || unit == engine::LengthUnit::foot;
    if (is_inch && length.nm() > 0 && length.nm() % foot == 0) {
        return std::to_string(length.nm() / foot) + " ft";
    }
    style.with_unit = true;
    return engine::exact_text(length, style);
}

const std::string& LengthTexts::operator()(engine::Length length) {
    const auto [entry, is_new] = texts_.try_emplace(length.nm());
    if (is_new) entry->second = shown_text(length, style_);
    return entry->second;
}

}  // namespace model
