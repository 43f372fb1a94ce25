#include "engine/drawing/printable_text.h"

#include "engine/measure/text_scan.h"

#include <array>

namespace engine {
namespace {

constexpr char32_t not_printable = 0xFFFD;

// The least character that UTF-8 writes with so many bytes: shorter ones must not take as many
// (RFC 3629, section 3).
constexpr std::array<char32_t, 5> least_of_bytes{0, 0, 0x80, 0x800, 0x10000};

bool is_well_formed(const Character& character) {
    const char32_t code = character.code;
    if (character.bytes == 1) return code < 0x80;
    return code >= least_of_bytes[character.bytes] && code <= 0x10FFFF &&
           !is_between(code, 0xD800, 0xDFFF);
}

// C0 and C1 controls, and the two that are never characters (XML 1.0, section 2.2).
bool is_control(char32_t code) {
    return code < 0x20 || is_between(code, 0x7F, 0x9F) || code == 0xFFFE || code == 0xFFFF;
}

bool is_break(char32_t code) {
    return is_between(code, U'\t', U'\r') || code == 0x85 || code == 0x2028 || code == 0x2029;
}

}  // namespace

void append_character(std::string& text, char32_t character) {
    const auto put = [&](char32_t bits) { text += static_cast<char>(bits); };
    const auto put_rest = [&](unsigned shift) { put(0x80U | ((character >> shift) & 0x3FU)); };
    if (character < 0x80) {
        put(character);
    } else if (character < 0x800) {
        put(0xC0U | (character >> 6U));
        put_rest(0);
    } else if (character < 0x10000) {
        put(0xE0U | (character >> 12U));
        put_rest(6);
        put_rest(0);
    } else {
        put(0xF0U | (character >> 18U));
        put_rest(12);
        put_rest(6);
        put_rest(0);
    }
}

std::string printable_text(std::string_view text) {
    std::string printable;
    printable.reserve(text.size());
    for (std::size_t at = 0; at < text.size();) {
        Character character = decoded_character(text, at);
        if (!is_well_formed(character)) character = {not_printable, 1};
        at += character.bytes;
        if (is_break(character.code)) {
            // A carriage return and the line feed behind it are one break.
            const bool is_pair = character.code == U'\r' && at < text.size() && text[at] == '\n';
            if (!is_pair) printable += ' ';
        } else {
            append_character(printable,
                             is_control(character.code) ? not_printable : character.code);
        }
    }
    return printable;
}

std::u32string characters_of(std::string_view printable) {
    std::u32string characters;
    for (std::size_t at = 0; at < printable.size();) {
        const Character character = decoded_character(printable, at);
        characters += character.code;
        at += character.bytes;
    }
    return characters;
}

}  // namespace engine
