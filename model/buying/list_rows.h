// The rows of a table that somebody keeps by hand in a spreadsheet, in whatever manner the
// spreadsheet of that country writes it.
#pragma once

#include "engine/result.h"

#include <cstddef>
#include <string>
#include <string_view>
#include <vector>

namespace model {

struct ListRow {
    std::size_t line = 0;             // from 1
    std::vector<std::string> fields;  // without spaces around them; as many as there are headings

    bool operator==(const ListRow&) const = default;
};

struct ListRows {
    char separator = ',';
    ListRow headings;           // in small letters
    std::vector<ListRow> rows;  // without blank ones and those that begin with #

    bool operator==(const ListRows&) const = default;
};

// Takes commas, semicolons or tabs between fields, whichever stand between the headings; quoted
// fields with doubled quotes and line breaks; a byte order mark; line ends of any system; a first
// line "sep=;". The headings are the first row in which all of `needed` stand. Rows may lack fields
// at their end, or have empty ones too many. Error: bad_file with the line in `where`, and with the
// mend.
engine::Result<ListRows> read_list_rows(std::string_view text,
                                        const std::vector<std::string_view>& needed);

// Without the spaces, of any kind, before and behind it.
std::string_view trimmed(std::string_view text);

}  // namespace model
