// A length as it is told on paper, where nothing reads it back.
#pragma once

#include "engine/measure/tape.h"
#include "model/schedule/decimal_mm.h"

#include <string>

namespace model {

// To the nearest 0.01 mm: nothing finer is laid off by hand.
inline engine::Length to_hundredth(engine::Length length) {
    constexpr auto hundredth = engine::Length::nm_per_mm / 100;
    const auto half = length.nm() < 0 ? -hundredth / 2 : hundredth / 2;
    return engine::Length::from_nm((length.nm() + half) / hundredth * hundredth);
}

// Its millimetres: "26.31", "500.06", "12".
inline std::string told_mm(engine::Length length) { return decimal_mm(to_hundredth(length)); }

// Whether it is shown so finely anyway.
inline bool shows_hundredths(const engine::TapeStyle& style) {
    switch (style.form) {
        case engine::TapeForm::millimetre:
            return style.decimals >= 2;
        case engine::TapeForm::centimetre:
            return style.decimals >= 3;
        case engine::TapeForm::metre:
            return style.decimals >= 5;
        default:
            return false;
    }
}

// Exactly where it lies on a mark of the tape or on 1/64 in, else to the nearest 0.01 mm.
inline std::string told_text(engine::Length length, const engine::TapeStyle& style) {
    const auto unit = engine::bare_unit(style);
    const bool is_inch = unit == engine::LengthUnit::inch || unit == engine::LengthUnit::foot;
    const bool is_on_64th = is_inch && length.nm() % (engine::Length::nm_per_inch / 64) == 0;
    if (is_on_64th || engine::is_on_mark(length, style)) return engine::exact_text(length, style);
    return engine::exact_text(to_hundredth(length), style);
}

}  // namespace model
