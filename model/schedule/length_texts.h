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

// The length of a bar as it is asked for at the counter: in whole feet where it is, "20 ft", else
// exactly.
std::string bar_length_text(engine::Length length, engine::TapeStyle style);

// As the files show them: with the unit, since a spreadsheet would take a bare "1/2" for a date.
class LengthTexts {
public:
    explicit LengthTexts(const engine::TapeStyle& style) : style_{style} {
        style_.with_unit = true;
    }

    const std::string& operator()(engine::Length length);

private:
    engine::TapeStyle style_;
    std::unordered_map<std::int64_t, std::string> texts_;
};

}  // namespace model
