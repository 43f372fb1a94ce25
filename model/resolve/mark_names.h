// What marks are called.
#pragma once

#include "model/resolve/resolved.h"

#include <string>
#include <string_view>
#include <unordered_set>
#include <vector>

namespace model {

// The names of a project's marks, each given once.
class MarkNames {
public:
    // `stocks_alike` as first_stocks_alike gives it.
    MarkNames(const Project& project,
              const Resolved& resolved,
              const std::vector<Index>& stocks_alike);

    // The name of a new mark whose first piece this is: "A5b" of a bar, "CL3" of a part; shims are
    // numbered as they are asked for.
    std::string next(Index piece, Index stock_alike);

private:
    const Resolved& resolved_;
    std::vector<std::vector<Index>> member_numbers_;  // by frame, member
    std::vector<Index> part_numbers_;                 // by piece; empty where all are bars
    std::unordered_set<std::string> given_;
    Index shim_marks_ = 0;
};

// "CL" of a cleat, "S" of a shim; empty for a bar, whose letters tell its stock.
std::string_view mark_letters(PieceKind kind);

}  // namespace model
