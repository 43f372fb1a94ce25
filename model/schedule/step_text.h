// The text of an exchange file after ISO 10303-21: numbered entities, numbers and strings.
#pragma once

#include "engine/geometry/placement.h"

#include <cstdint>
#include <string>
#include <string_view>

namespace model {

using StepId = std::uint32_t;

// Appends entities one after the other.
class StepText {
public:
    explicit StepText(std::string& out) : out_{out} {}

    StepId begin(std::string_view entity);  // "#7=ENTITY(": its arguments follow
    void end() { out_ += ");\n"; }

    StepText& raw(std::string_view text) {
        out_ += text;
        return *this;
    }
    StepText& ref(StepId id);
    StepText& real(double value);  // always with a point: readers take none without it
    StepText& text(std::string_view utf8);
    StepText& triple(const engine::Vector& v);

    // Whole entities.
    StepId point(const engine::Vector& at);
    StepId direction(const engine::Vector& unit);
    StepId axes(const engine::Vector& at, const engine::Vector& z, const engine::Vector& x);

private:
    std::string& out_;
    StepId last_ = 0;
};

}  // namespace model
