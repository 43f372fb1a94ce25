#include "model/bench/bench.h"
#include "model/schedule/piece_words.h"

#include <algorithm>
#include <set>
#include <utility>

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

template <class Thing>
bool is_same_but_for_name(Thing before, const Thing& after) {
    before.name = after.name;
    return before == after;
}

// Where more than one name differs, more than one edit lies between: what was put in the place of
// another one is then not taken for it.
template <class List>
std::vector<Renamed> renamed_in(const List& before, const List& after) {
    std::vector<Renamed> renamed;
    if (before.size() != after.size()) return renamed;
    std::size_t other = 0;
    for (std::size_t i = 0; i < before.size(); ++i) other += before[i].name != after[i].name;
    for (std::size_t i = 0; i < before.size(); ++i) {
        if (before[i].name == after[i].name) continue;
        if (has_name(before, after[i].name) || has_name(after, before[i].name)) continue;
        if (other > 1 && !is_same_but_for_name(before[i], after[i])) continue;
        renamed.push_back({before[i].name, after[i].name});
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

// What was renamed in a frame, by its name before, among the pieces that bear such names.
struct RenamedInFrame {
    std::string frame;
    bool (*concerns)(const PieceName&) = nullptr;
    std::vector<Renamed> renamed;
};

std::vector<RenamedInFrame> renamed_in_frames(const Project& before, const Project& after) {
    std::vector<RenamedInFrame> all;
    if (before.frames.size() != after.frames.size()) return all;
    const auto add = [&](const Frame& frame, bool (*concerns)(const PieceName&),
                         std::vector<Renamed> renamed) {
        if (!renamed.empty()) all.push_back({frame.name, concerns, std::move(renamed)});
    };
    for (std::size_t i = 0; i < before.frames.size(); ++i) {
        const Frame& was = before.frames[i];
        const Frame& is = after.frames[i];
        add(was, is_of_member, renamed_in(was.members, is.members));
        add(was, is_of<PieceKind::brace>, renamed_in(was.diagonals, is.diagonals));
        add(was, is_of<PieceKind::leaning>, renamed_in(was.leaning, is.leaning));
        add(was, is_of<PieceKind::panel>, renamed_in(was.panels, is.panels));
    }
    return all;
}

void follow(BenchTicks& ticks, const RenamedInFrame& in) {
    rename_pieces(
        ticks, [&](const PieceName& name) { return name.frame == in.frame && in.concerns(name); },
        [&](PieceName name) {
            for (const auto& [from, to] : in.renamed) std::ranges::replace(name.of, from, to);
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

bool are_names_changed(const Project& before, const Project& after) {
    return !renamed_in_frames(before, after).empty() ||
           !renamed_in(before.frames, after.frames).empty();
}

BenchTicks with_names_followed(BenchTicks ticks, const Project& before, const Project& after) {
    for (const auto& in : renamed_in_frames(before, after)) follow(ticks, in);
    for (const auto& [from, to] : renamed_in(before.frames, after.frames)) {
        rename_pieces(
            ticks, [&from = from](const PieceName& name) { return name.frame == from; },
            [&to = to](PieceName name) {
                name.frame = to;
                return name;
            });
    }
    std::ranges::sort(ticks.pieces, {}, &PieceTicks::piece);
    return ticks;
}

}  // namespace model
