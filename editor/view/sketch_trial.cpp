#include "editor/view/sketch_trial.h"

#include "editor/by_name.h"
#include "editor/dialogs/node_bar_form.h"
#include "editor/dimension_values.h"
#include "editor/frame_nodes.h"
#include "editor/node_bars.h"
#include "editor/places/section_choice.h"
#include "editor/view/sketch_ghost.h"
#include "editor/view/sketch_member.h"
#include "model/resolve/piece_subject.h"
#include "model/room/resolve_in_room.h"

#include <algorithm>
#include <utility>

namespace editor {
namespace {

using model::Finding;
using model::Subject;
using model::SubjectKind;

bool is_among(const std::vector<Finding>& findings, const Finding& finding) {
    return std::ranges::any_of(findings, [&](const Finding& other) {
        return other.code == finding.code && other.concerns == finding.concerns;
    });
}

std::string length_text(model::Nm length, const engine::TapeStyle& shown) {
    auto style = shown;
    style.with_unit = true;
    return quantity_text(
        {.kind = engine::QuantityKind::length, .length = engine::Length::from_nm(length)}, style);
}

// Those that are not there yet; and how many would go.
void compare_findings(SketchTrial& trial,
                      const std::vector<Finding>& before,
                      const std::vector<Finding>& after) {
    std::vector<std::string> said;
    for (const auto& finding : after) {
        if (finding.severity == model::Severity::note || is_among(before, finding)) continue;
        if (std::ranges::find(said, finding.what) != said.end()) continue;
        said.push_back(finding.what);
        trial.findings.push_back({model::where_text(finding) + ": " + finding.what,
                                  finding.severity == model::Severity::error});
    }
    const auto mended = std::ranges::count_if(before, [&](const Finding& finding) {
        return finding.severity != model::Severity::note && !is_among(after, finding);
    });
    if (mended > 0 && trial.findings.empty()) {
        trial.words += trial.words.empty() ? "mends " : "; mends ";
        trial.words += std::to_string(mended) + (mended == 1 ? " finding" : " findings");
    }
}

// "30 in long", "3 pieces, 29 1/2 in of bar"; empty: no piece could be made.
std::string size_words(const model::Resolved& resolved,
                       const std::vector<model::Index>& pieces,
                       const engine::TapeStyle& shown) {
    model::Nm all = 0;
    for (const auto piece : pieces) all += resolved.pieces[piece].length;
    if (pieces.empty()) return "no piece comes of it";
    if (pieces.size() == 1) return length_text(all, shown) + " long";
    return std::to_string(pieces.size()) + " pieces, " + length_text(all, shown) + " of bar";
}

// Resolves the project with the change.
void try_bar(SketchTrial& trial, const SketchScene& scene, const Subject& bar) {
    const auto& derived = scene.derived;
    auto next = project_after(*derived.project, *trial.change);
    if (!next) {
        trial.refusal = engine::to_text(next.error());
        trial.change.reset();
        return;
    }
    const auto resolved = model::resolve_in_room(*next, scene.catalogue, *derived.scans);
    std::vector<model::Index> pieces;
    for (model::Index i = 0; i < resolved.pieces.size(); ++i) {
        const auto& piece = resolved.pieces[i];
        if (piece.frame != scene.grid.frame) continue;
        if (model::piece_subject(next->frames[piece.frame], piece) == bar) pieces.push_back(i);
    }
    trial.words += (trial.words.empty() ? "" : ", ") + size_words(resolved, pieces, next->shown);
    trial.ghost = ghost_of_pieces(resolved, scene.catalogue, pieces);
    compare_findings(trial, derived.resolved.findings, resolved.findings);
}

SketchTrial trial_for(const SketchScene& scene) {
    SketchTrial trial;
    trial.of = worked_out_of(scene.derived);
    return trial;
}

SketchTrial already_there(const SketchScene& scene, Subject subject) {
    auto trial = trial_for(scene);
    trial.title = subject.name;
    trial.words = "is there: click to choose it";
    trial.chosen = {std::move(subject)};
    return trial;
}

// The one plane that both nodes lie on, where they differ along both its axes.
std::optional<model::Axis> face_of(const GridNode& a, const GridNode& b) {
    std::optional<model::Axis> face;
    for (std::size_t k = 0; k < 3; ++k) {
        if (a[k] != b[k]) continue;
        if (face) return std::nullopt;
        face = static_cast<model::Axis>(k);
    }
    return face;
}

NodeName node_name(const PlaneGrid& grid, const GridNode& node, model::Axis face) {
    const auto cross = model::across(face);
    const auto name = [&](model::Axis axis) {
        return grid.across(axis)[node[model::index_of(axis)]].name;
    };
    return {name(cross[0]), name(cross[1])};
}

}  // namespace

SketchTrial member_trial(const SketchScene& scene,
                         const GridSegment& segment,
                         const std::string& stock) {
    const auto& frame = scene.frame();
    if (const auto* there = member_on(frame, scene.grid, segment)) {
        return already_there(scene, {SubjectKind::member, frame.name, there->name});
    }
    auto trial = trial_for(scene);
    auto member = new_member(frame, scene.grid, segment, stock);
    const Subject subject{SubjectKind::member, frame.name, member.name};
    trial.title = member.name;
    trial.words = stock;
    trial.chosen = {subject};
    trial.change = change_of(model::PutMember{frame.name, std::move(member), {}});
    try_bar(trial, scene, subject);
    return trial;
}

SketchTrial brace_trial(const SketchScene& scene, const GridNode& from, const GridNode& to) {
    auto trial = trial_for(scene);
    const auto& frame = scene.frame();
    const auto face = face_of(from, to);
    if (!face) {
        trial.refusal =
            "a brace runs across one face: choose a node that lies on one plane with "
            "the first one and is apart from it along both others";
        return trial;
    }
    const auto form =
        new_node_bar_form<model::Diagonal>(scene.derived, scene.catalogue, frame.name, {});
    auto bar = form.bar;
    bar.face = scene.grid.across(*face)[from[model::index_of(*face)]].name;
    bar.from = node_name(scene.grid, from, *face);
    bar.to = node_name(scene.grid, to, *face);
    Change change{.label = "Add brace " + bar.name};
    if (!form.section.empty()) {
        auto stock = stock_of_section(*scene.derived.project, scene.catalogue, form.section,
                                      usual_stock_of(*scene.derived.project, frame));
        if (stock.edit) change.edits.push_back(*std::move(stock.edit));
        bar.stock = stock.name;
    }
    const auto subject = subject_of(frame.name, bar);
    trial.title = bar.name;
    trial.words = bar.stock;
    trial.chosen = {subject};
    change.edits.push_back(model::PutDiagonal{frame.name, std::move(bar), {}});
    trial.change = std::move(change);
    try_bar(trial, scene, subject);
    return trial;
}

}  // namespace editor
