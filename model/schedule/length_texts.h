// Lengths as the project's tape shows them, each distinct one put into words once.
#pragma once

#include "engine/measure/tape.h"

#include <cstdint>
#include <string>
#include <unordered_map>

namespace model {

// The nearest mark of the tape, with "~" in front where the length is not on a mark: "35 23/32",
// "~11/16". The exact value stands in the millimetre column beside it.
std::string shown_text(engine::Length length, const engine::TapeStyle& style);

class LengthTexts {
public:
    explicit LengthTexts(const engine::TapeStyle& style) : style_{style} {}

    const std::string& operator()(engine::Length length);

private:
    engine::TapeStyle style_;
    std::unordered_map<std::int64_t, std::string> texts_;
};

}  // namespace model
