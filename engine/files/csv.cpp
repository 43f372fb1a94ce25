#include "engine/files/csv.h"

#include <cctype>
#include <cstddef>

namespace engine {
namespace {

bool is_plain_number(std::string_view text) {
    std::size_t at = (text[0] == '-' || text[0] == '+') ? 1 : 0;
    bool has_digit = false;
    bool has_point = false;
    for (; at < text.size(); ++at) {
        if (std::isdigit(static_cast<unsigned char>(text[at])) != 0) {
            has_digit = true;
        } else if (text[at] == '.' && !has_point) {
            has_point = true;
        } else {
            return false;
        }
    }
    return has_digit;
}

bool looks_like_a_formula(std::string_view text) {
    constexpr std::string_view starters = "=+-@\t\r";
    return !text.empty() && starters.find(text[0]) != std::string_view::npos &&
           !is_plain_number(text);
}

void append_field(std::string& out, std::string_view field) {
    const bool guard = looks_like_a_formula(field);
    if (!guard && field.find_first_of(",\"\r\n") == std::string_view::npos) {
        out += field;
        return;
    }
    out += '"';
    if (guard) out += '\'';
    for (const char c : field) {
        if (c == '"') out += '"';
        out += c;
    }
    out += '"';
}

void append_row(std::string& out, const CsvRow& row) {
    for (std::size_t i = 0; i < row.size(); ++i) {
        if (i > 0) out += ',';
        append_field(out, row[i]);
    }
    out += "\r\n";
}

}  // namespace

std::string to_csv(const CsvTable& table) {
    std::string out;
    append_row(out, table.header);
    for (const auto& row : table.rows) append_row(out, row);
    return out;
}

}  // namespace engine
