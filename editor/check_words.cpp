#include "editor/check_words.h"

#include <algorithm>
#include <cstddef>

namespace editor {
namespace {

using model::CheckKind;

template <class Holds>
bool any_frame(const Derived& derived, Holds holds) {
    return std::ranges::any_of(derived.project->frames, holds);
}

bool has_drawer(const model::Frame& frame) {
    return std::ranges::any_of(
        frame.bays, [](const model::Bay& bay) { return bay.use == model::BayUse::drawer; });
}

bool has_piece(const Derived& derived, model::PieceKind kind) {
    return std::ranges::any_of(derived.resolved.pieces,
                               [&](const model::Piece& piece) { return piece.kind == kind; });
}

}  // namespace

const model::CheckCount& count_of(const Derived& derived, CheckKind kind) {
    return derived.checks[static_cast<std::size_t>(kind)];
}

std::string nothing_to_check(const Derived& derived, CheckKind kind) {
    const auto& project = *derived.project;
    const bool has_openings =
        any_frame(derived, [](const model::Frame& frame) { return !frame.openings.empty(); });
    switch (kind) {
        case CheckKind::measured:
            return project.room.empty() && !has_openings ? "nothing measured" : "";
        case CheckKind::stated:
            return project == model::Project{} ? "nothing stated" : "";
        case CheckKind::apart:
        case CheckKind::ends:
        case CheckKind::bars:
            return derived.resolved.pieces.empty() ? "no piece" : "";
        case CheckKind::joints:
        case CheckKind::fasteners:
        case CheckKind::setting:
            return derived.resolved.joints.empty() ? "no joint" : "";
        case CheckKind::panels:
            return any_frame(derived, [](const model::Frame& f) { return !f.panels.empty(); })
                       ? ""
                       : "no panel";
        case CheckKind::feet:
            return has_piece(derived, model::PieceKind::foot) ? "" : "no foot";
        case CheckKind::room:
            if (derived.resolved.pieces.empty()) return "no piece";
            return project.room.empty() && project.frames.size() < 2 ? "no room measured" : "";
        case CheckKind::drawers:
            return any_frame(derived, has_drawer) ? "" : "no drawer";
        case CheckKind::openings:
            return has_openings ? "" : "no opening measured";
    }
    return "";
}

std::string state_words(const Derived& derived, CheckKind kind) {
    const auto& count = count_of(derived, kind);
    if (count.open() > 0) return std::to_string(count.open()) + " to mend";
    if (count.notes > 0)
        return std::to_string(count.notes) + (count.notes == 1 ? " note" : " notes");
    const auto nothing = nothing_to_check(derived, kind);
    return nothing.empty() ? "nothing to mend" : nothing;
}

Place place_of(CheckKind kind) {
    switch (kind) {
        case CheckKind::measured:
            return Place::measure;
        case CheckKind::stated:
        case CheckKind::apart:
        case CheckKind::ends:
        case CheckKind::panels:
        case CheckKind::feet:
            return Place::lay_out;
        case CheckKind::joints:
        case CheckKind::fasteners:
        case CheckKind::setting:
            return Place::join;
        case CheckKind::room:
        case CheckKind::drawers:
        case CheckKind::openings:
            return Place::prove;
        case CheckKind::bars:
            return Place::buy;
    }
    return Place::lay_out;
}

int open_at(const Derived& derived, Place place) {
    int open = 0;
    for (const auto& row : model::check_rows) {
        if (place_of(row.kind) == place) open += count_of(derived, row.kind).open();
    }
    return open;
}

CheckKind kind_of(const model::Finding& finding) {
    return model::check_of(finding.code).value_or(CheckKind::stated);
}

}  // namespace editor
