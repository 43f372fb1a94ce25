// Which check a finding comes from: the kinds of checks, in the order of the job, in a maker's
// words.
#pragma once

#include "model/resolve/finding.h"

#include <array>
#include <optional>
#include <string_view>
#include <vector>

namespace model {

enum class CheckKind {
    measured,
    stated,
    apart,
    ends,
    joints,
    fasteners,
    setting,
    panels,
    feet,
    room,
    drawers,
    openings,
    bars
};

struct CheckRow {
    CheckKind kind = CheckKind::stated;
    std::string_view title;
    std::string_view checked;  // what exactly is looked at, as a sentence
    // What is to be done, of one and of several: "loose end to close", "loose ends to close".
    std::string_view one;
    std::string_view many;
};

// One for each kind, in its order.
extern const std::array<CheckRow, 13> check_rows;

const CheckRow& row_of(CheckKind kind);

// What a check found.
struct CheckCount {
    int errors = 0;
    int warnings = 0;
    int notes = 0;

    int open() const { return errors + warnings; }

    bool operator==(const CheckCount&) const = default;
};

using CheckCounts = std::array<CheckCount, 13>;  // as in check_rows

// Of a finding of no kind, what is stated is counted.
CheckCounts count_by_check(const std::vector<Finding>& findings);

// None for a code that no check reports.
std::optional<CheckKind> check_of(std::string_view finding_code);

}  // namespace model
