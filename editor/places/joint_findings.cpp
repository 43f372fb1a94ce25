#include "editor/places/joint_findings.h"

#include "editor/kit/scopes.h"
#include "editor/kit/widgets.h"

#include <algorithm>

namespace editor {
namespace {

ImU32 ink_of(model::Severity severity) {
    switch (severity) {
        case model::Severity::error:
            return colour::red;
        case model::Severity::warning:
            return colour::amber;
        case model::Severity::note:
            break;
    }
    return colour::quiet;
}

// A stroke at the left in the colour of what is said.
void draw_one(const model::Finding& finding, std::size_t number) {
    const ImVec2 at = ImGui::GetCursorScreenPos();
    const float indent = scaled(10);
    ImGui::Indent(indent);
    const std::string text = finding.what + (finding.mend.empty() ? "" : "; " + finding.mend);
    draw_wrapped(text, Type::small, ink_of(finding.severity));
    log_item("finding " + std::to_string(number), text);
    ImGui::Unindent(indent);
    const float end = ImGui::GetItemRectMax().y;
    ImGui::GetWindowDrawList()->AddRectFilled({at.x, at.y}, {at.x + scaled(3), end},
                                              ink_of(finding.severity));
}

}  // namespace

std::vector<const model::Finding*> findings_of(const Derived& derived, const JointName& joint) {
    const auto here = subject_of(joint);
    const auto turned = subject_of({joint.frame, {joint.members[1], joint.members[0]}});
    std::vector<const model::Finding*> found;
    for (const auto& finding : derived.findings) {
        const bool is_named = std::any_of(
            finding.concerns.begin(), finding.concerns.end(),
            [&](const model::Subject& subject) { return subject == here || subject == turned; });
        if (is_named) found.push_back(&finding);
    }
    std::stable_sort(found.begin(), found.end(),
                     [](const auto* a, const auto* b) { return a->severity > b->severity; });
    return found;
}

void draw_joint_findings(const Derived& derived, const JointName& joint) {
    constexpr std::size_t most_told = 4;
    const auto found = findings_of(derived, joint);
    for (std::size_t i = 0; i < found.size() && i < most_told; ++i) draw_one(*found[i], i + 1);
    if (found.size() > most_told) {
        draw_text("and " + std::to_string(found.size() - most_told) + " more under Lay out",
                  Type::small, colour::quiet);
    }
}

}  // namespace editor
