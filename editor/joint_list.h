// The joints of a project as the user knows them: each by the two members that meet there, or by a
// brace or a leaning member and what it lies on.
#pragma once

#include "editor/selection.h"
#include "model/project/project.h"
#include "model/resolve/resolved.h"

#include <glm/vec3.hpp>

#include <array>
#include <cstdint>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

namespace editor {

struct JointName {
    std::string frame;
    // That of higher rank first, as findings name them. A brace or a leaning member stands for a
    // member here, since no two of a frame share a name.
    std::array<std::string, 2> members;

    bool operator==(const JointName&) const = default;
};

// Two members that meet, with what joins them now.
struct MemberJoint {
    JointName name;
    std::optional<std::uint8_t> recipe;  // in model::recipes(); none: nothing joins them yet
    int fasteners = 0;
    int fewest_in_lap = 0;  // that fit
    int wanted_in_lap = 0;
    bool has_finding = false;  // an error or a warning
    bool is_stated = false;    // the project says something of this joint
    // "brace" or "leaning member" where one of the two is that: no recipe has a say in it.
    std::string_view node_bar{};
};

// Those that are joined, those that a finding is about and those of which the project says
// something, by frame in order of the pieces.
std::vector<MemberJoint> member_joints(const model::Project& project,
                                       const model::Resolved& resolved,
                                       const std::vector<model::Finding>& findings);

// "brace" or "leaning member" where one of the two is that; else empty.
std::string_view node_bar_word(const model::Project& project, const JointName& joint);

// "post left + rail top".
std::string words_of(const JointName& joint);

model::Subject subject_of(const JointName& joint);

// Of the same two members in either order; null when there is none.
const MemberJoint* find_joint(const std::vector<MemberJoint>& joints, const JointName& name);

// What the project says of the joint; null: nothing.
const model::JointOverride* stated_joint(const model::Project& project, const JointName& joint);

// The joint that is chosen: by its name, by a part that was made for it, or by its two members.
// None: something else is chosen, or more than one.
std::optional<JointName> chosen_joint(const model::Project& project,
                                      const model::Resolved& resolved,
                                      const std::vector<MemberJoint>& joints,
                                      const Selection& selection);

// Selects the joint: its two members, and the parts that were made for it.
Selection selection_of_joint(const model::Project& project,
                             const model::Resolved& resolved,
                             const JointName& joint);

// The joint of the piece that lies nearest to a point of the room (mm), within half an inch of
// where the two touch; none where the piece is not joined.
std::optional<JointName> joint_near(const model::Project& project,
                                    const model::Resolved& resolved,
                                    model::Index piece,
                                    const glm::dvec3& at_mm);

}  // namespace editor
