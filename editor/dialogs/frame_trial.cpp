#include "editor/dialogs/frame_trial.h"

#include "editor/by_name.h"
#include "editor/kit/item_log.h"
#include "editor/kit/widgets.h"
#include "engine/measure/tape.h"
#include "model/resolve/piece_prisms.h"
#include "model/room/resolve_in_room.h"

#include <algorithm>
#include <utility>

namespace editor {
namespace {

std::string counted(std::size_t before, std::size_t after, const char* thing) {
    if (before == after) return {};
    const bool more = after > before;
    const auto count = more ? after - before : before - after;
    return std::to_string(count) + " " + thing + (count == 1 ? "" : "s") +
           (more ? " more" : " less");
}

std::string change_words(const model::Frame& before, const model::Frame& after) {
    std::string words;
    for (const auto& part : {counted(before.planes.size(), after.planes.size(), "layout plane"),
                             counted(before.bays.size(), after.bays.size(), "bay"),
                             counted(before.members.size(), after.members.size(), "member"),
                             counted(before.leaning.size(), after.leaning.size(), "leaning member"),
                             counted(before.diagonals.size(), after.diagonals.size(), "brace"),
                             counted(before.panels.size(), after.panels.size(), "panel"),
                             counted(before.loads.size(), after.loads.size(), "load")}) {
        if (!part.empty()) words += (words.empty() ? "" : ", ") + part;
    }
    return words.empty() ? "members are moved, none is added" : words;
}

// Of its pieces, without the heads and tails of their fasteners; empty where it has none.
std::string place_words(const model::Project& project,
                        const model::Resolved& resolved,
                        const std::string& name) {
    const auto* stated = by_name(project.frames, name);
    if (stated == nullptr) return {};
    const auto& frame = resolved.frames[static_cast<std::size_t>(stated - project.frames.data())];
    if (frame.piece_count == 0) return {};
    engine::Box all = box_in_room(frame, resolved.pieces[frame.first_piece].extents);
    for (model::Index i = 1; i < frame.piece_count; ++i) {
        const auto one = box_in_room(frame, resolved.pieces[frame.first_piece + i].extents);
        for (std::size_t k = 0; k < 3; ++k) {
            all.lo[k] = std::min(all.lo[k], one.lo[k]);
            all.hi[k] = std::max(all.hi[k], one.hi[k]);
        }
    }
    std::string words;
    for (std::size_t k = 0; k < 3; ++k) {
        const auto text = [&](engine::Nm at) {
            return engine::tape_text(engine::Length::from_nm(at), project.shown);
        };
        words += (k > 0 ? ", " : "") + std::string(1, "XYZ"[k]) + " " + text(all.lo[k]) + " to " +
                 text(all.hi[k]);
    }
    return words;
}

bool is_told_already(const Derived& derived, const model::Finding& finding) {
    return std::ranges::any_of(derived.findings, [&](const model::Finding& other) {
        return other.code == finding.code && other.concerns == finding.concerns;
    });
}

}  // namespace

FrameTrial frame_trial(const Derived& derived,
                       const model::Catalogue& catalogue,
                       const std::string& frame,
                       std::vector<std::string> asked,
                       const engine::Result<Change>& change) {
    FrameTrial trial{.of = worked_out_of(derived), .asked = std::move(asked)};
    const auto next = change ? project_after(*derived.project, *change)
                             : engine::Result<model::Project>(change.error());
    if (!next) {
        trial.refusal = engine::to_text(next.error());
        return trial;
    }
    const auto* before = by_name(derived.project->frames, frame);
    const auto* after = by_name(next->frames, frame);
    if (before != nullptr && after != nullptr) trial.words = change_words(*before, *after);
    auto resolved = model::resolve_in_room(*next, catalogue, *derived.scans);
    trial.place = place_words(*next, resolved, frame);
    for (auto& finding : resolved.findings) {
        if (finding.severity == model::Severity::note || is_told_already(derived, finding))
            continue;
        trial.findings.push_back(std::move(finding));
    }
    return trial;
}

void draw_frame_trial(const FrameTrial& trial) {
    if (!trial.refusal.empty()) {
        draw_wrapped(trial.refusal, Type::text, colour::red);
        log_item("trouble", trial.refusal);
        return;
    }
    draw_wrapped(trial.words, Type::strong);
    log_item("comes to", trial.words);
    constexpr std::size_t most = 4;
    for (std::size_t i = 0; i < std::min(most, trial.findings.size()); ++i) {
        const auto& finding = trial.findings[i];
        const bool is_error = finding.severity == model::Severity::error;
        draw_wrapped(model::where_text(finding) + ": " + finding.what, Type::small,
                     is_error ? colour::red : colour::amber);
    }
    if (trial.findings.size() > most) {
        draw_wrapped("and " + std::to_string(trial.findings.size() - most) + " more", Type::small,
                     colour::quiet);
    }
}

}  // namespace editor
