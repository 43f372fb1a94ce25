// Comma-separated values by RFC 4180.
#pragma once

#include "engine/result.h"

#include <string>
#include <string_view>
#include <vector>

namespace engine {

using CsvRow = std::vector<std::string>;

// A table with a header row; every row has as many fields as the header.
struct CsvTable {
    CsvRow header;
    std::vector<CsvRow> rows;

    bool operator==(const CsvTable&) const = default;
};

// CRLF line ends, quotes where they are needed. A text that a spreadsheet would take for a formula
// (first character = + - @, tab or carriage return, unless the whole field is a plain number) gets
// an apostrophe in front.
std::string to_csv(const CsvTable& table);

// Accepts CRLF and LF, quoted fields with doubled quotes and line breaks, and a byte order mark;
// fields come as they stand, an apostrophe in front included. Error: bad_file with the line number
// (from 1) in `where` for a row of the wrong width, an open quote, text behind a closing quote, or
// a text without a header.
Result<CsvTable> read_csv(std::string_view text);

}  // namespace engine
