// What is chosen from lists at the Join place: fasteners, how many, what holds screws, the sheet.
#pragma once

#include "editor/change.h"
#include "editor/derived.h"
#include "editor/joint_group_choices.h"
#include "model/catalogue/catalogue.h"

#include <optional>

namespace editor {

// Of one joint, or of several at once: the fastener, and how many in each lap.
std::optional<Change> draw_joint_settings(const Derived& derived,
                                          const model::Catalogue& catalogue,
                                          const JointGroup& group);

// Of the whole project: how many in each lap, the screws of joints that come apart and what holds
// them.
std::optional<Change> draw_shop_settings(const Derived& derived, const model::Catalogue& catalogue);

std::optional<Change> draw_gusset_alloy(const Derived& derived, const model::Catalogue& catalogue);

}  // namespace editor
