// Exact millimetres as text: whole nanometres with a decimal point in the right place.
#pragma once

#include "engine/measure/length.h"

#include <cstdint>
#include <string>

namespace model {

// "914.4", "-0.396875", "3": no zeros at the end, nothing lost.
void append_decimal_mm(std::string& out, std::int64_t nm);

inline std::string decimal_mm(engine::Length length) {
    std::string text;
    append_decimal_mm(text, length.nm());
    return text;
}

}  // namespace model
