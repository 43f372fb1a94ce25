#include "model/resolve/joint_overrides.h"

#include <algorithm>

namespace model {
namespace {

constexpr int most_in_a_lap = 12;

bool is_sensible(int count) { return count >= 1 && count <= most_in_a_lap; }

}  // namespace

JointOverrides::JointOverrides(const Frame& frame, std::vector<Finding>& findings) : frame_{frame} {
    for (const auto& joint : frame.joints) {
        if (!by_members_.emplace(key(joint.members[0], joint.members[1]), &joint).second) {
            Finding finding = about(joint);
            finding.code = "duplicate_name";
            finding.what = "another entry is about the same two members";
            finding.mend = "keep one of them; the first one counts";
            findings.push_back(std::move(finding));
        }
        check(joint, findings);
    }
}

const JointOverride* JointOverrides::find(const std::string& a, const std::string& b) {
    if (by_members_.empty()) return nullptr;
    const auto found = by_members_.find(key(a, b));
    if (found == by_members_.end()) return nullptr;
    used_.insert(found->second);
    return found->second;
}

void JointOverrides::report_unused(std::vector<Finding>& findings) const {
    for (const auto& [members, joint] : by_members_) {
        if (used_.count(joint) > 0) continue;
        Finding finding = about(*joint);
        finding.code = "no_such_joint";
        finding.what = "these two members do not lap anywhere";
        finding.mend = "take the entry out, or let the members meet";
        findings.push_back(std::move(finding));
    }
}

JointOverrides::Key JointOverrides::key(const std::string& a, const std::string& b) {
    return a < b ? Key{a, b} : Key{b, a};
}

Finding JointOverrides::about(const JointOverride& joint) const {
    return {.severity = Severity::warning,
            .concerns = {
                {SubjectKind::joint, frame_.name, joint.members[0] + " + " + joint.members[1]}}};
}

void JointOverrides::check(const JointOverride& joint, std::vector<Finding>& findings) const {
    if (joint.recipe && *joint.recipe != "staggered lap") {
        Finding finding = about(joint);
        finding.code = "unknown_recipe";
        finding.what = "the recipe \"" + *joint.recipe +
                       "\" cannot be worked out; the only one is the staggered lap";
        finding.mend = "leave the recipe out; the joint is lapped until then";
        findings.push_back(std::move(finding));
    }
    if (joint.count && !is_sensible(*joint.count)) {
        Finding finding = about(joint);
        finding.code = "bad_setting";
        finding.what = "the number of fasteners is not from 1 to 12";
        finding.mend = "give a number from 1 to 12; until then the shop's number counts";
        findings.push_back(std::move(finding));
    }
}

int fasteners_wanted(const Shop& shop, const JointOverride* own) {
    if (own != nullptr && own->count && is_sensible(*own->count)) return *own->count;
    return std::clamp(shop.per_lap, 1, most_in_a_lap);
}

}  // namespace model
