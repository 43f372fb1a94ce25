// What the user says of single joints, found by the two members that meet.
#pragma once

#include "model/project/project.h"
#include "model/resolve/finding.h"
#include "model/resolve/resolved.h"

#include <array>
#include <map>
#include <set>
#include <string>
#include <utility>
#include <vector>

namespace model {

class JointOverrides {
public:
    // Senseless entries become findings; the first of two about the same members counts.
    JointOverrides(const Frame& frame, std::vector<Finding>& findings);

    // What is said of the joint of these two members of the frame, in either order; null: nothing.
    // The one found is in use from then on.
    const JointOverride* find(const std::array<Index, 2>& members);

    // The same of a member and a diagonal, or of any two that are known by name.
    const JointOverride* find(const std::array<std::string, 2>& names);

    // The same, but it counts as used only when it is found.
    const JointOverride* peek(const std::array<Index, 2>& members) const;

    const JointOverride* peek(const std::array<std::string, 2>& names) const;

    // What is said of these two cannot be followed: they are held by the fasteners of that joint,
    // "post + rail".
    void note_held_by(const std::array<std::string, 2>& names, const std::string& joint);

    // A finding for each entry that no joint has found.
    void report_unused(std::vector<Finding>& findings) const;

private:
    using Key = std::pair<std::string, std::string>;

    static Key key(const std::string& a, const std::string& b);
    Finding about(const JointOverride& joint) const;
    void check(const JointOverride& joint, std::vector<Finding>& findings) const;

    const Frame& frame_;
    std::map<Key, const JointOverride*> by_members_;
    std::set<const JointOverride*> used_;
    std::map<const JointOverride*, std::string> held_by_;
};

// Fasteners in a lap: what the joint says where it is from 1 to 12, else what the shop says.
int fasteners_wanted(const Shop& shop, const JointOverride* own);

}  // namespace model
