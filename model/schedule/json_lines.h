// Appends JSON to a text, for files too large to build as a tree first.
#pragma once

#include "engine/files/json_text.h"
#include "engine/geometry/box.h"
#include "model/schedule/decimal_mm.h"

#include <array>
#include <charconv>
#include <cstdint>
#include <string>
#include <string_view>

namespace model {

class JsonLines {
public:
    explicit JsonLines(std::string& out) : out_{out} {}

    JsonLines& raw(std::string_view text) {
        out_ += text;
        return *this;
    }
    JsonLines& text(std::string_view value) { return raw(engine::json_quoted(value)); }
    // One of the program's own words, in which nothing needs an escape.
    JsonLines& word(std::string_view value) { return raw("\"").raw(value).raw("\""); }
    JsonLines& mm(std::int64_t nm) {
        append_decimal_mm(out_, nm);
        return *this;
    }
    // A letter and a number from 1, quoted: "P17".
    JsonLines& id(char letter, std::uint32_t index) {
        std::array<char, 16> text{'"', letter};
        char* end = std::to_chars(text.data() + 2, text.data() + text.size(), index + 1U).ptr;
        *end++ = '"';
        out_.append(text.data(), end);
        return *this;
    }
    JsonLines& point(const engine::Point& p) {
        return raw("[").mm(p[0]).raw(",").mm(p[1]).raw(",").mm(p[2]).raw("]");
    }
    JsonLines& direction(const std::array<int, 3>& d) {
        out_ += '[';
        for (std::size_t i = 0; i < 3; ++i) {
            if (i > 0) out_ += ',';
            out_ += d[i] < 0 ? "-1" : (d[i] > 0 ? "1" : "0");
        }
        out_ += ']';
        return *this;
    }
    // With as many digits as tell it from every other number.
    JsonLines& real(double value) {
        std::array<char, 32> text{};
        if (value == 0.0) value = 0.0;  // no minus
        char* end = std::to_chars(text.data(), text.data() + text.size(), value).ptr;
        out_.append(text.data(), end);
        return *this;
    }
    JsonLines& reals(const std::array<double, 3>& v) {
        return raw("[").real(v[0]).raw(",").real(v[1]).raw(",").real(v[2]).raw("]");
    }

private:
    std::string& out_;
};

}  // namespace model
