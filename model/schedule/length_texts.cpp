#include "model/schedule/length_texts.h"

namespace model {

std::string shown_text(engine::Length length, const engine::TapeStyle& style) {
    return (engine::is_on_mark(length, style) ? "" : "~") + engine::tape_text(length, style);
}

const std::string& LengthTexts::operator()(engine::Length length) {
    const auto [entry, is_new] = texts_.try_emplace(length.nm());
    if (is_new) entry->second = shown_text(length, style_);
    return entry->second;
}

}  // namespace model
