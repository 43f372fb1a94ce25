// Comma-separated values by RFC 4180.
#pragma once

#include "engine/result.h"

#include <initializer_list>
#include <span>
#include <string>
#include <string_view>
#include <utility>
#include <vector>

namespace engine {

using CsvRow = std::vector<std::string>;

// A table with a header row; every row has as many fields as the header.
struct CsvTable {
    CsvRow header;
    std::vector<CsvRow> rows;

    bool operator==(const CsvTable&) const = default;
};

// The text of a table, written row by row, so that a long one needs no memory but its text.
// CRLF line ends, quotes where they are needed. A text that a spreadsheet would take for a formula
// (first character = + - @, tab or carriage return, unless the whole field is a plain number) gets
// an apostrophe in front.
class CsvText {
public:
    explicit CsvText(std::span<const std::string_view> header) { row(header); }
    explicit CsvText(std::initializer_list<std::string_view> header) { row(header); }

    void row(std::span<const std::string_view> fields);
    void row(std::initializer_list<std::string_view> fields) {
        row(std::span{fields.begin(), fields.size()});
    }

    std::string take() && { return std::move(text_); }

private:
    std::string text_;
};

// A whole table as such a text; read_csv gives it back.
std::string to_csv(const CsvTable& table);

// Accepts CRLF and LF, quoted fields with doubled quotes and line breaks, and a byte order mark;
// fields come as they stand, an apostrophe in front included. Error: bad_file with the line number
// (from 1) in `where` for a row of the wrong width, an open quote, text behind a closing quote, or
// a text without a header.
Result<CsvTable> read_csv(std::string_view text);

}  // namespace engine
