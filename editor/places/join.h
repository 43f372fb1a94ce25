// Join: how members meet, for the whole project, for a frame and for a joint, with what each way
// would cost.
#pragma once

#include "editor/change.h"
#include "editor/choice_price.h"
#include "editor/derived.h"
#include "editor/joint_group_choices.h"
#include "editor/joint_list.h"
#include "editor/kit/scopes.h"
#include "editor/places/join_fields.h"
#include "editor/places/joint_choice.h"
#include "editor/selection.h"

#include <optional>
#include <string>
#include <vector>

namespace editor {

enum class JoinScope { joint, frame, project };
enum class JoinSection { meet, hold };  // of a scope; one is open at a time

struct JoinState {
    JoinScope scope = JoinScope::joint;
    JoinSection section = JoinSection::meet;
    std::string frame;       // whose way is chosen; empty: the first one's
    std::string seen_frame;  // of what was selected last
    PriceBoard prices;
    JoinTyping typing;
    std::optional<Revision> revision;  // of `joints`
    std::vector<MemberJoint> joints;
    JointListing listing;
    JointGroup group;
};

std::optional<Change> draw_join(const Area& area,
                                const Derived& derived,
                                const model::Catalogue& catalogue,
                                JoinState& state,
                                Selection& selection);

}  // namespace editor
