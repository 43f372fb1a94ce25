// What the forms share that change how one frame is laid out: whose frame it is, what the change
// would come to, and names to choose among.
#pragma once

#include "editor/change.h"
#include "editor/derived.h"
#include "editor/dialogs/form_answers.h"
#include "editor/dialogs/frame_trial.h"

#include <optional>
#include <string>
#include <string_view>
#include <vector>

namespace editor {

struct FrameForm {
    std::string frame;
    std::optional<FrameTrial> trial;
    bool is_fresh = true;
};

// Frames to choose from, where there are several.
void draw_frames(FrameForm& form, const model::Project& project);

// One of the names, on as many lines as they need.
void draw_names_in_lines(const char* word,
                         const std::vector<std::string>& names,
                         std::string& chosen);

// Names of the frame's planes across the axis, by their place.
std::vector<std::string> planes_in_order(const Derived& derived,
                                         const std::string& frame,
                                         model::Axis axis);

// Where it lies in the frame; none: it is not known.
std::optional<engine::Nm> plane_position(const Derived& derived,
                                         const std::string& frame,
                                         const std::string& plane);

std::vector<std::string> bay_names(const Derived& derived, const std::string& frame);

// What a change that takes out takes from the frame: "These go: rail left shelf 1, load a and 2
// more. Shorter: post front left. Legs turned: rail left top."; and which of those that stay lose
// a foot, a rank or what was stated of a joint. Empty: nothing.
std::string words_of_gone(const Derived& derived,
                          const model::Frame& before,
                          const model::Frame& after);

// What it comes to, and the buttons. The change is made of what was tried.
FormOutcome end_frame_form(FrameForm& form,
                           const model::Edit& edit,
                           std::string_view verb,
                           bool can_put = true);

}  // namespace editor
