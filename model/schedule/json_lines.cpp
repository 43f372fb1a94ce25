#include "model/schedule/json_lines.h"

namespace model {
namespace {

void append_escape(std::string& out, char c) {
    constexpr std::string_view hex = "0123456789abcdef";
    if (c == '"' || c == '\\') {
        out += '\\';
        out += c;
    } else {
        const auto code = static_cast<unsigned char>(c);
        out += "\\u00";
        out += hex[code >> 4U];
        out += hex[code & 0xFU];
    }
}

bool needs_escape(char c) { return c == '"' || c == '\\' || static_cast<unsigned char>(c) < 0x20U; }

}  // namespace

void append_json_text(std::string& out, std::string_view text) {
    out += '"';
    for (const char c : text) {
        if (needs_escape(c)) {
            append_escape(out, c);
        } else {
            out += c;
        }
    }
    out += '"';
}

}  // namespace model
