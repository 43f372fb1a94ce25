#include "model/resolve/joint_overrides.h"

#include "model/resolve/recipe.h"

#include <algorithm>
#include <utility>

namespace model {
namespace {

constexpr int most_in_a_lap = 12;

bool is_sensible(int count) { return count >= 1 && count <= most_in_a_lap; }

// "a brace" or "a leaning member" where one of the two is that, else empty.
std::string_view words_of_leaning(const Frame& frame, const JointOverride& joint) {
    for (const auto& name : joint.members) {
        const auto is_named = [&](const auto& things, auto member) {
            return std::ranges::find(things, name, member) != things.end();
        };
        if (is_named(frame.members, &Member::name)) continue;
        if (is_named(frame.diagonals, &Diagonal::name)) return "a brace";
        if (is_named(frame.leaning, &Leaning::name)) return "a leaning member";
    }
    return {};
}

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

const JointOverride* JointOverrides::find(const std::array<Index, 2>& members) {
    const JointOverride* found = peek(members);
    if (found != nullptr) used_.insert(found);
    return found;
}

const JointOverride* JointOverrides::find(const std::array<std::string, 2>& names) {
    const JointOverride* found = peek(names);
    if (found != nullptr) used_.insert(found);
    return found;
}

const JointOverride* JointOverrides::peek(const std::array<std::string, 2>& names) const {
    const auto found = by_members_.find(key(names[0], names[1]));
    return found == by_members_.end() ? nullptr : found->second;
}

void JointOverrides::note_held_by(const std::array<std::string, 2>& names,
                                  const std::string& joint) {
    const JointOverride* found = peek(names);
    if (found != nullptr) held_by_.emplace(found, joint);
}

const JointOverride* JointOverrides::peek(const std::array<Index, 2>& members) const {
    if (by_members_.empty()) return nullptr;
    if (members[0] >= frame_.members.size() || members[1] >= frame_.members.size()) return nullptr;
    const auto found =
        by_members_.find(key(frame_.members[members[0]].name, frame_.members[members[1]].name));
    return found == by_members_.end() ? nullptr : found->second;
}

void JointOverrides::report_unused(std::vector<Finding>& findings) const {
    for (const auto& [members, joint] : by_members_) {
        if (used_.count(joint) > 0) continue;
        Finding finding = about(*joint);
        if (const auto held = held_by_.find(joint); held != held_by_.end()) {
            finding.code = "joint_held_by_other";
            finding.what = "its fasteners are those of " + held->second;
            finding.mend = "say it of that joint, and take this entry out";
            findings.push_back(std::move(finding));
            continue;
        }
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
    if (joint.recipe && !find_recipe(*joint.recipe)) {
        Finding finding = about(joint);
        finding.code = "unknown_recipe";
        finding.what = "there is no recipe \"" + *joint.recipe + "\"";
        finding.mend = "choose one of: " + recipe_names() +
                       "; until then it is joined as the rest of the frame is";
        findings.push_back(std::move(finding));
    }
    const auto leaning = words_of_leaning(frame_, joint);
    if (joint.recipe && !leaning.empty()) {
        Finding finding = about(joint);
        finding.code = "recipe_of_brace";
        finding.what = std::string(leaning) + " lies on what it is fastened to: no recipe joins it";
        finding.mend = "take the recipe out of the entry; until then it counts for nothing";
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
