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

}  // namespace

void CsvText::row(std::span<const std::string_view> fields) {
    bool is_first = true;
    for (const auto field : fields) {
        if (!is_first) text_ += ',';
        is_first = false;
        append_field(text_, field);
    }
    text_ += "\r\n";
}

std::string to_csv(const CsvTable& table) {
    const auto fields_of = [](const CsvRow& row) {
        return std::vector<std::string_view>{row.begin(), row.end()};
    };
    CsvText text{fields_of(table.header)};
    for (const auto& row : table.rows) text.row(fields_of(row));
    return std::move(text).take();
}

}  // namespace engine
