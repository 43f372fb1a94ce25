#include "editor/dialogs/frame_form.h"

#include "editor/by_name.h"
#include "editor/kit/item_log.h"
#include "editor/kit/scopes.h"
#include "editor/kit/widgets.h"

#include <imgui.h>

#include <algorithm>
#include <utility>

namespace editor {
namespace {

constexpr std::size_t most_named = 6;

using Names = std::vector<std::string>;

template <class Things>
void add_gone(const Things& before, const Things& after, Names& gone) {
    for (const auto& thing : before) {
        if (by_name(after, thing.name) == nullptr) gone.push_back(thing.name);
    }
}

// Of one frame and what becomes of it: its planes stay where they are.
class MembersBeforeAndAfter {
public:
    MembersBeforeAndAfter(const Derived& derived,
                          const model::Frame& before,
                          const model::Frame& after)
        : derived_{derived}, before_{before}, after_{after} {}

    // A rail that became one with the next is still there, under the name of the first.
    Names gone() const {
        Names names;
        for (const auto& member : before_.members) {
            if (by_name(after_.members, member.name) != nullptr) continue;
            const bool goes_on = std::ranges::any_of(
                after_.members, [&](const auto& other) { return goes_on_as(member, other); });
            if (!goes_on) names.push_back(member.name);
        }
        return names;
    }

    Names shorter() const {
        Names names;
        for (const auto& member : after_.members) {
            const auto* was = by_name(before_.members, member.name);
            if (was != nullptr && is_within(member, *was) && !is_within(*was, member))
                names.push_back(member.name);
        }
        return names;
    }

    Names turned() const {
        return of_both([](const auto& was, const auto& is) {
            return was.run == is.run && was.legs != is.legs;
        });
    }

    Names without_foot() const {
        return of_both([](const auto& was, const auto& is) {
            return (was.foot_from && !is.foot_from) || (was.foot_to && !is.foot_to);
        });
    }

    Names ranked_anew() const {
        return of_both([](const auto& was, const auto& is) { return was.rank != is.rank; });
    }

    // Between bars that are both still there: with a bar that goes, or becomes one with another,
    // its joints go too.
    Names joints_to_the_rule() const {
        Names names;
        for (const auto& joint : before_.joints) {
            const std::string& first = joint.members[0];
            const std::string& second = joint.members[1];
            if (!has_bar(first) || !has_bar(second)) continue;
            const bool is_kept = std::ranges::any_of(after_.joints, [&](const auto& other) {
                return (other.members[0] == first && other.members[1] == second) ||
                       (other.members[0] == second && other.members[1] == first);
            });
            if (!is_kept) names.push_back(first + " + " + second);
        }
        return names;
    }

private:
    template <class Differs>
    Names of_both(Differs differs) const {
        Names names;
        for (const auto& member : after_.members) {
            const auto* was = by_name(before_.members, member.name);
            if (was != nullptr && differs(*was, member)) names.push_back(member.name);
        }
        return names;
    }

    bool has_bar(const std::string& name) const {
        return by_name(after_.members, name) != nullptr ||
               by_name(after_.diagonals, name) != nullptr ||
               by_name(after_.leaning, name) != nullptr;
    }

    std::optional<engine::Nm> position(const std::string& plane) const {
        return plane_position(derived_, before_.name, plane);
    }

    // Not as one that stands back to back with it.
    bool goes_on_as(const model::Member& member, const model::Member& other) const {
        return member.legs == other.legs && is_within(member, other);
    }

    // In one line with the other one, and no further than it.
    bool is_within(const model::Member& inner, const model::Member& outer) const {
        if (inner.run != outer.run || inner.on != outer.on) return false;
        const auto begin = position(inner.from), end = position(inner.to);
        const auto from = position(outer.from), to = position(outer.to);
        return begin && end && from && to && *from <= *begin && *end <= *to;
    }

    const Derived& derived_;
    const model::Frame& before_;
    const model::Frame& after_;
};

std::string sentence(const char* what, const Names& names) {
    if (names.empty()) return {};
    std::string words = what;
    for (std::size_t i = 0; i < std::min(most_named, names.size()); ++i) {
        words += (i > 0 ? ", " : " ") + names[i];
    }
    if (names.size() > most_named) {
        words += " and " + std::to_string(names.size() - most_named) + " more";
    }
    return words + ".";
}

}  // namespace

void draw_frames(FrameForm& form, const model::Project& project) {
    if (project.frames.size() < 2) return;
    draw_names("frame", project.frames, form.frame, [](const auto&) { return true; });
}

void draw_names_in_lines(const char* word,
                         const std::vector<std::string>& names,
                         std::string& chosen) {
    draw_form_word(word);
    const IdScope id(word);
    const ItemScope items(word);
    const float left = ImGui::GetCursorPosX();
    const float right = ImGui::GetWindowPos().x + ImGui::GetWindowContentRegionMax().x;
    bool is_first = true;
    for (const auto& name : names) {
        const float width = size_of_text(name, Type::text).x + ImGui::GetFrameHeight() +
                            2.0F * ImGui::GetStyle().ItemInnerSpacing.x;
        const float next = ImGui::GetItemRectMax().x + ImGui::GetStyle().ItemSpacing.x + width;
        if (!is_first && next < right) {
            ImGui::SameLine();
        } else {
            ImGui::SetCursorPosX(left);
        }
        is_first = false;
        if (draw_radio(name.c_str(), chosen == name)) chosen = name;
    }
    if (names.empty()) draw_text("there is none", Type::text, colour::quiet);
}

std::vector<std::string> planes_in_order(const Derived& derived,
                                         const std::string& frame,
                                         model::Axis axis) {
    const auto& frames = derived.project->frames;
    const auto* stated = by_name(frames, frame);
    if (stated == nullptr) return {};
    const auto& placed = derived.resolved.frames[static_cast<std::size_t>(stated - frames.data())];
    std::vector<std::pair<engine::Nm, std::string>> found;
    for (std::size_t i = 0; i < stated->planes.size(); ++i) {
        const auto at = placed.planes[i].position;
        if (stated->planes[i].axis == axis && at) found.emplace_back(*at, stated->planes[i].name);
    }
    std::ranges::stable_sort(found, {}, [](const auto& one) { return one.first; });
    std::vector<std::string> names;
    for (auto& one : found) names.push_back(std::move(one.second));
    return names;
}

std::optional<engine::Nm> plane_position(const Derived& derived,
                                         const std::string& frame,
                                         const std::string& plane) {
    const auto& frames = derived.project->frames;
    const auto* stated = by_name(frames, frame);
    const auto* found = stated == nullptr ? nullptr : by_name(stated->planes, plane);
    if (found == nullptr) return std::nullopt;
    const auto& placed = derived.resolved.frames[static_cast<std::size_t>(stated - frames.data())];
    return placed.planes[static_cast<std::size_t>(found - stated->planes.data())].position;
}

std::vector<std::string> bay_names(const Derived& derived, const std::string& frame) {
    std::vector<std::string> names;
    const auto* stated = by_name(derived.project->frames, frame);
    if (stated == nullptr) return names;
    for (const auto& bay : stated->bays) names.push_back(bay.name);
    return names;
}

std::string words_of_gone(const Derived& derived,
                          const model::Frame& before,
                          const model::Frame& after) {
    const MembersBeforeAndAfter members(derived, before, after);
    auto gone = members.gone();
    add_gone(before.diagonals, after.diagonals, gone);
    add_gone(before.leaning, after.leaning, gone);
    add_gone(before.bays, after.bays, gone);
    add_gone(before.panels, after.panels, gone);
    add_gone(before.loads, after.loads, gone);
    std::string words;
    for (const auto& more : {sentence("These go:", gone), sentence("Shorter:", members.shorter()),
                             sentence("Legs turned:", members.turned()),
                             sentence("Without a foot that they have:", members.without_foot()),
                             sentence("Ranked anew:", members.ranked_anew()),
                             sentence("Joined by the rule again:", members.joints_to_the_rule())}) {
        if (!more.empty()) words += (words.empty() ? "" : " ") + more;
    }
    return words;
}

FormOutcome end_frame_form(FrameForm& form,
                           const model::Edit& edit,
                           std::string_view verb,
                           bool can_put) {
    draw_rule();
    draw_frame_trial(*form.trial);
    const auto answer =
        draw_form_answers({}, {.verb = verb, .can_put = can_put && form.trial->refusal.empty()});
    FormOutcome outcome;
    if (answer.puts) outcome.change = change_of(edit);
    outcome.is_cancelled = answer.is_cancelled;
    end_form(form.is_fresh, outcome);
    return outcome;
}

}  // namespace editor
