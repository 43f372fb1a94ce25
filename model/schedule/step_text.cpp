#include "model/schedule/step_text.h"

#include <array>
#include <charconv>
#include <cstdio>

namespace model {
namespace {

void append_number(std::string& out, std::uint32_t value) {
    std::array<char, 16> text{};
    out.append(text.data(), std::to_chars(text.data(), text.data() + text.size(), value).ptr);
}

// One character of well-formed UTF-8, and its length; U+FFFD for a byte that is none.
std::uint32_t character_at(std::string_view text, std::size_t at, std::size_t& length) {
    const auto byte = [&](std::size_t i) {
        return at + i < text.size() ? static_cast<unsigned char>(text[at + i]) : 0U;
    };
    const auto lead = byte(0);
    length = lead < 0x80U ? 1 : lead >= 0xF0U ? 4 : lead >= 0xE0U ? 3 : lead >= 0xC0U ? 2 : 1;
    if (length == 1) return lead < 0x80U ? lead : 0xFFFDU;
    std::uint32_t character = lead & (0x7FU >> length);
    for (std::size_t i = 1; i < length; ++i) {
        if ((byte(i) & 0xC0U) != 0x80U) {
            length = 1;
            return 0xFFFDU;
        }
        character = (character << 6U) | (byte(i) & 0x3FU);
    }
    return character;
}

void append_hex(std::string& out, std::uint32_t value, int digits) {
    constexpr std::string_view hex = "0123456789ABCDEF";
    for (int i = digits - 1; i >= 0; --i)
        out += hex[(value >> (4U * static_cast<unsigned>(i))) & 0xFU];
}

}  // namespace

StepId StepText::begin(std::string_view entity) {
    out_ += '#';
    append_number(out_, ++last_);
    out_ += '=';
    out_ += entity;
    out_ += '(';
    return last_;
}

StepText& StepText::ref(StepId id) {
    out_ += '#';
    append_number(out_, id);
    return *this;
}

StepText& StepText::real(double value) {
    std::array<char, 32> text{};
    if (value == 0.0) value = 0.0;  // no minus
    const char* end = std::to_chars(text.data(), text.data() + text.size(), value).ptr;
    const std::string_view digits(text.data(), static_cast<std::size_t>(end - text.data()));
    const auto exponent = digits.find('e');
    const auto mantissa = digits.substr(0, exponent);
    out_ += mantissa;
    if (mantissa.find('.') == std::string_view::npos) out_ += '.';
    if (exponent != std::string_view::npos) {
        out_ += 'E';
        out_ += digits.substr(exponent + 1);
    }
    return *this;
}

// Quotes and backslashes are doubled; what is not plain ASCII goes by its number (ISO 10303-21,
// 6.4.3, from memory).
StepText& StepText::text(std::string_view utf8) {
    out_ += '\'';
    for (std::size_t at = 0, length = 0; at < utf8.size(); at += length) {
        const auto character = character_at(utf8, at, length);
        if (character == '\'' || character == '\\') {
            out_.append(2, static_cast<char>(character));
        } else if (character >= 0x20U && character < 0x7FU) {
            out_ += static_cast<char>(character);
        } else if (character <= 0xFFFFU) {
            out_ += "\\X2\\";
            append_hex(out_, character, 4);
            out_ += "\\X0\\";
        } else {
            out_ += "\\X4\\";
            append_hex(out_, character, 8);
            out_ += "\\X0\\";
        }
    }
    out_ += '\'';
    return *this;
}

StepText& StepText::triple(const engine::Vector& v) {
    return raw("(").real(v[0]).raw(",").real(v[1]).raw(",").real(v[2]).raw(")");
}

StepId StepText::point(const engine::Vector& at) {
    const auto id = begin("CARTESIAN_POINT");
    raw("'',").triple(at).end();
    return id;
}

StepId StepText::direction(const engine::Vector& unit) {
    const auto id = begin("DIRECTION");
    raw("'',").triple(unit).end();
    return id;
}

StepId StepText::axes(const engine::Vector& at, const engine::Vector& z, const engine::Vector& x) {
    const auto origin = point(at);
    const auto up = direction(z);
    const auto first = direction(x);
    const auto id = begin("AXIS2_PLACEMENT_3D");
    raw("'',").ref(origin).raw(",").ref(up).raw(",").ref(first).end();
    return id;
}

}  // namespace model
