#include "model/bench/bench.h"
#include "model/schedule/piece_words.h"

#include <algorithm>
#include <set>

namespace model {
namespace {

// What a piece is named after, without its number.
class NamedAfter {
public:
    NamedAfter(const Project& project, const Resolved& resolved)
        : project_{project}, resolved_{resolved}, joint_of_shim_(resolved.pieces.size(), no_index) {
        for (Index i = 0; i < resolved.joints.size(); ++i) {
            const Index shim = resolved.joints[i].shim;
            if (shim < joint_of_shim_.size()) joint_of_shim_[shim] = i;
        }
    }

    std::vector<std::string> operator()(Index index) const {
        const auto& piece = resolved_.pieces[index];
        if (piece.kind != PieceKind::shim) return stated(piece);
        std::vector<std::string> of;
        if (joint_of_shim_[index] == no_index) return of;
        for (const Index beside : resolved_.joints[joint_of_shim_[index]].pieces) {
            for (auto& name : stated(resolved_.pieces[beside])) of.push_back(std::move(name));
        }
        return of;
    }

private:
    template <class List>
    static std::vector<std::string> one_of(const List& list, Index index) {
        if (index >= list.size()) return {};
        return {list[index].name};
    }

    std::vector<std::string> stated(const Piece& piece) const {
        const auto& frame = project_.frames[piece.frame];
        if (piece.kind == PieceKind::brace) return one_of(frame.diagonals, piece.stated);
        if (piece.kind == PieceKind::leaning) return one_of(frame.leaning, piece.stated);
        if (piece.kind == PieceKind::panel) return one_of(frame.panels, piece.stated);
        if (piece.member != no_index) return one_of(frame.members, piece.member);
        auto of = one_of(frame.members, piece.serves[0]);
        if (piece.serves[1] == piece.serves[0]) return of;
        for (auto& name : one_of(frame.members, piece.serves[1])) of.push_back(std::move(name));
        return of;
    }

    const Project& project_;
    const Resolved& resolved_;
    std::vector<Index> joint_of_shim_;  // by piece
};

template <PieceKind kind>
bool is_of(const PieceName& name) {
    return name.kind == name_of(kind);
}

bool is_of_member(const PieceName& name) {
    return !is_of<PieceKind::brace>(name) && !is_of<PieceKind::leaning>(name) &&
           !is_of<PieceKind::panel>(name);
}

struct Renamed {
    std::string from;
    std::string to;
};

template <class List>
bool has_name(const List& list, const std::string& name) {
    return std::ranges::any_of(list, [&](const auto& thing) { return thing.name == name; });
}

template <class List>
std::optional<Renamed> renamed_in(const List& before, const List& after) {
    if (before.size() != after.size()) return std::nullopt;
    std::optional<Renamed> renamed;
    for (std::size_t i = 0; i < before.size(); ++i) {
        if (before[i].name == after[i].name) continue;
        if (renamed) return std::nullopt;
        renamed = Renamed{before[i].name, after[i].name};
    }
    if (!renamed || has_name(before, renamed->to) || has_name(after, renamed->from)) {
        return std::nullopt;
    }
    return renamed;
}

// Gives the pieces that `concerns` a name in which one text is replaced. What bore that name before
// takes the old one, so that no two are the same and none is lost.
template <class Concerns, class Rename>
void rename_pieces(BenchTicks& ticks, Concerns concerns, Rename rename) {
    // By the names as they were: what has exchanged its name is not renamed again.
    const auto were = ticks.pieces;
    for (std::size_t i = 0; i < were.size(); ++i) {
        const PieceName& before = were[i].piece;
        if (!concerns(before)) continue;
        const PieceName after = rename(before);
        if (after == before) continue;
        const auto same = std::ranges::find(were, after, &PieceTicks::piece);
        if (same != were.end()) {
            ticks.pieces[static_cast<std::size_t>(same - were.begin())].piece = before;
        }
        ticks.pieces[i].piece = after;
    }
}

void follow_in_frame(BenchTicks& ticks,
                     const std::string& frame,
                     const std::optional<Renamed>& renamed,
                     bool (*concerns)(const PieceName&)) {
    if (!renamed) return;
    rename_pieces(
        ticks, [&](const PieceName& name) { return name.frame == frame && concerns(name); },
        [&](PieceName name) {
            std::ranges::replace(name.of, renamed->from, renamed->to);
            return name;
        });
}

}  // namespace

std::string_view name_of(BenchWork work) {
    constexpr std::array<std::string_view, bench_work_count> names{"cut", "deburr", "drill", "fit",
                                                                   "set"};
    return names[static_cast<std::size_t>(work)];
}

std::string_view done_name_of(BenchWork work) {
    constexpr std::array<std::string_view, bench_work_count> names{"cut", "deburred", "drilled",
                                                                   "fitted", "set"};
    return names[static_cast<std::size_t>(work)];
}

std::vector<PieceName> piece_names(const Project& project, const Resolved& resolved) {
    const NamedAfter named_after(project, resolved);
    std::set<PieceName> given;
    std::vector<PieceName> names;
    names.reserve(resolved.pieces.size());
    for (Index i = 0; i < resolved.pieces.size(); ++i) {
        const auto& piece = resolved.pieces[i];
        PieceName name{.frame = project.frames[piece.frame].name,
                       .kind = std::string(name_of(piece.kind)),
                       .of = named_after(i)};
        if (piece.kind == PieceKind::bar) name.number += static_cast<int>(piece.part);
        while (!given.insert(name).second) ++name.number;
        names.push_back(std::move(name));
    }
    return names;
}

std::string words_of(const PieceName& name) {
    std::string words = name.frame + ": ";
    const bool is_bar = name.kind == name_of(PieceKind::bar);
    if (!is_bar) {
        words += name.kind;
        if (name.number > 1) words += " " + std::to_string(name.number);
        if (!name.of.empty()) words += name.of.size() > 1 ? " at " : " of ";
    }
    for (std::size_t i = 0; i < name.of.size(); ++i) {
        if (i > 0) words += i + 1 < name.of.size() ? ", " : " and ";
        words += name.of[i];
    }
    if (is_bar && name.number > 1) words += " part " + std::to_string(name.number);
    return words;
}

BenchTicks with_names_followed(BenchTicks ticks, const Project& before, const Project& after) {
    if (before.frames.size() != after.frames.size()) return ticks;
    for (std::size_t i = 0; i < before.frames.size(); ++i) {
        const Frame& was = before.frames[i];
        const Frame& is = after.frames[i];
        follow_in_frame(ticks, was.name, renamed_in(was.members, is.members), is_of_member);
        follow_in_frame(ticks, was.name, renamed_in(was.diagonals, is.diagonals),
                        is_of<PieceKind::brace>);
        follow_in_frame(ticks, was.name, renamed_in(was.leaning, is.leaning),
                        is_of<PieceKind::leaning>);
        follow_in_frame(ticks, was.name, renamed_in(was.panels, is.panels),
                        is_of<PieceKind::panel>);
    }
    if (const auto renamed = renamed_in(before.frames, after.frames)) {
        rename_pieces(
            ticks, [&](const PieceName& name) { return name.frame == renamed->from; },
            [&](PieceName name) {
                name.frame = renamed->to;
                return name;
            });
    }
    std::ranges::sort(ticks.pieces, {}, &PieceTicks::piece);
    return ticks;
}

}  // namespace model
