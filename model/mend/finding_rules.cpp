#include "model/mend/finding_rules.h"

#include <algorithm>
#include <array>

namespace model {
namespace {

std::array<std::span<const FindingRule>, 3> all_rules() {
    return {rules_of_joints(), rules_of_room(), rules_of_stated()};
}

}  // namespace

const FindingRule* finding_rule(std::string_view code) {
    for (const auto rules : all_rules()) {
        const auto at = std::ranges::find(rules, code, &FindingRule::code);
        if (at != rules.end()) return &*at;
    }
    return nullptr;
}

std::vector<std::string_view> codes_with_rules() {
    std::vector<std::string_view> codes;
    for (const auto rules : all_rules()) {
        for (const auto& rule : rules) codes.push_back(rule.code);
    }
    std::ranges::sort(codes);
    return codes;
}

}  // namespace model
