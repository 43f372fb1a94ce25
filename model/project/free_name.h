// Names for things that come to be beside others.
#pragma once

#include "model/project/project.h"

#include <algorithm>
#include <optional>
#include <string>

namespace model {

struct NumberedName {
    std::string stem;  // "rail"
    int number = 0;    // 2, of "rail 2"
};

// None for a name without a number of its own at the end.
std::optional<NumberedName> numbered(const std::string& name);

std::string with_number(const std::string& stem, int number);

// The wanted name, or where that is taken the next free number behind it: "rail", "rail 2", ...
template <class IsTaken>
std::string free_name(const std::string& wanted, const IsTaken& is_taken) {
    if (!is_taken(wanted)) return wanted;
    const auto parted = numbered(wanted).value_or(NumberedName{wanted, 1});
    for (int n = parted.number + 1;; ++n) {
        const std::string name = with_number(parted.stem, n);
        if (!is_taken(name)) return name;
    }
}

template <class Things>
std::string free_name_in(const Things& things, const std::string& wanted) {
    return free_name(wanted, [&](const std::string& name) {
        return std::any_of(things.begin(), things.end(),
                           [&](const auto& thing) { return thing.name == name; });
    });
}

// Members, diagonals and leaning members share their names.
bool has_bar(const Frame& frame, const std::string& name);
std::string free_bar_name(const Frame& frame, const std::string& wanted);

}  // namespace model
