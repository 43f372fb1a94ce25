#include "editor/finding_groups.h"

#include <algorithm>
#include <map>
#include <string>
#include <tuple>

namespace editor {
namespace {

using Key = std::tuple<model::Severity, std::string, std::string, std::string>;

Key key_of(const model::Finding& finding) {
    return {finding.severity, finding.code, finding.what, finding.mend};
}

void add_concerns(FindingGroup& group, const model::Finding& finding) {
    for (const auto& subject : finding.concerns) {
        const auto at = std::find(group.concerns.begin(), group.concerns.end(), subject);
        if (at == group.concerns.end()) group.concerns.push_back(subject);
    }
}

}  // namespace

std::vector<FindingGroup> finding_groups(const std::vector<model::Finding>& findings) {
    std::vector<FindingGroup> groups;
    std::map<Key, std::size_t> known;
    for (std::size_t i = 0; i < findings.size(); ++i) {
        const auto [at, is_new] = known.try_emplace(key_of(findings[i]), groups.size());
        if (is_new) groups.emplace_back();
        groups[at->second].findings.push_back(i);
        add_concerns(groups[at->second], findings[i]);
    }
    std::stable_sort(groups.begin(), groups.end(),
                     [&](const FindingGroup& a, const FindingGroup& b) {
                         return findings[a.findings[0]].severity > findings[b.findings[0]].severity;
                     });
    return groups;
}

std::string where_words(const FindingGroup& group, const std::vector<model::Finding>& findings) {
    constexpr std::size_t most_named = 3;  // more names than this fill the card and tell nothing
    const bool is_single = group.findings.size() == 1;
    if (is_single && group.concerns.size() <= most_named) {
        return model::where_text(findings[group.findings[0]]);
    }
    std::string words =
        std::to_string(is_single ? group.concerns.size() : group.findings.size()) + " places";
    if (group.concerns.empty()) return words;
    const auto& first = group.concerns.front();
    const auto all_alike = [&](auto member) {
        return std::all_of(
            group.concerns.begin(), group.concerns.end(),
            [&](const model::Subject& subject) { return subject.*member == first.*member; });
    };
    const bool is_one_each = is_single || group.concerns.size() == group.findings.size();
    if (!all_alike(&model::Subject::kind) || !is_one_each) return words;
    words =
        std::to_string(group.concerns.size()) + " " + std::string(model::name_of(first.kind)) + "s";
    const bool is_in_one_frame = all_alike(&model::Subject::frame) && !first.frame.empty();
    return is_in_one_frame ? words + " of " + first.frame : words;
}

}  // namespace editor
