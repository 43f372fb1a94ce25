// By which rule each finding is found, and where that rule comes from: what a user reads behind
// "why".
#pragma once

#include <span>
#include <string_view>
#include <vector>

namespace model {

struct FindingRule {
    std::string_view code;
    std::string_view rule;    // one sentence, no trailing stop
    std::string_view source;  // as where the check is made: read, from memory, common practice
};

// None for a code that is not known.
const FindingRule* finding_rule(std::string_view code);

std::vector<std::string_view> codes_with_rules();  // rising

// The rows, each from its own file.
std::span<const FindingRule> rules_of_joints();
std::span<const FindingRule> rules_of_room();    // and of bars
std::span<const FindingRule> rules_of_stated();  // what is stated, and how it lies together

// Of rules that need no source.
inline constexpr std::string_view of_itself = "needs no source: it cannot be otherwise";
inline constexpr std::string_view practice = "common practice";

}  // namespace model
