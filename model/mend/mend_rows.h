// By which ways findings of each code may be mended.
#pragma once

#include "model/mend/ways.h"

#include <span>
#include <string_view>

namespace model {

// Either ways, or why there is none.
struct MendRow {
    std::string_view code;
    Ways (*ways)(const Case&) = nullptr;
    std::string_view why_none = {};
};

std::span<const MendRow> mend_rows();  // rising by code

const MendRow* mend_row(std::string_view code);

}  // namespace model
