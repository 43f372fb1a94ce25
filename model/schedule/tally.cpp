#include "model/schedule/tally.h"

#include "model/resolve/fastener_choice.h"
#include "model/resolve/finding.h"
#include "model/schedule/piece_words.h"
#include "model/schedule/weight.h"

#include <algorithm>
#include <charconv>
#include <cmath>
#include <cstdlib>
#include <numeric>
#include <string_view>
#include <unordered_map>

namespace model {
namespace {

constexpr const char* minus = "\xE2\x88\x92";
// The avoirdupois ounce, a sixteenth of the pound of 1959; from memory (restated in NIST SP 811,
// Appendix B).
constexpr double kg_per_ounce = 0.45359237 / 16.0;

void count_fasteners(Tally& tally, const Catalogue& catalogue, const Resolved& resolved) {
    for (const auto& fastener : resolved.fasteners) {
        ++tally.fasteners[fastener_id(catalogue, fastener.spec)];
        if (fastener.spec.kind == FastenerSpec::Kind::screw_through) ++tally.nuts["nut"];
        if (fastener.spec.kind == FastenerSpec::Kind::screw_in_rivet_nut) ++tally.nuts["rivet nut"];
    }
}

void add_member_lengths(Tally& tally, const Project& project, const Resolved& resolved) {
    for (const auto& frame : project.frames) {
        tally.member_lengths.emplace_back(frame.members.size());
    }
    for (const auto& piece : resolved.pieces) {
        if (piece.frame >= tally.member_lengths.size()) continue;
        auto& lengths = tally.member_lengths[piece.frame];
        if (piece.member < lengths.size()) lengths[piece.member] += Length::from_nm(piece.length);
    }
}

void append(std::string& text, const std::string& part) {
    if (part.empty()) return;
    if (!text.empty()) text += ", ";
    text += part;
}

std::string sign_of(bool is_more) { return is_more ? "+" : minus; }

// "piece" for what members are cut into, since those are spoken of by their own names.
std::string one_of(PieceKind kind) {
    return kind == PieceKind::bar ? "piece" : std::string(name_of(kind));
}

std::string many_of(PieceKind kind) {
    return kind == PieceKind::foot ? "feet" : one_of(kind) + "s";
}

// "blind rivet 1/8" is "rivet 1/8" or "rivets 1/8", as it is said at the bench.
std::string said(std::string id, bool is_many) {
    constexpr std::string_view blind = "blind ";
    if (id.rfind(blind, 0) == 0) id.erase(0, blind.size());
    if (!is_many) return id;
    for (const std::string_view word : {"rivet", "screw"}) {
        const auto at = id.find(word);
        if (at == std::string::npos) continue;
        return id.insert(at + word.size(), "s");
    }
    return id + "s";
}

template <class What>
int total(const std::map<What, int>& counts) {
    int all = 0;
    for (const auto& entry : counts) all += entry.second;
    return all;
}

template <class What>
int count_of(const std::map<What, int>& counts, const What& what) {
    const auto at = counts.find(what);
    return at == counts.end() ? 0 : at->second;
}

// `put` gives the words for one and for many.
template <class What, class Put>
void append_counts(std::string& text,
                   const std::map<What, int>& before,
                   const std::map<What, int>& after,
                   const Put& put) {
    auto all = before;
    all.insert(after.begin(), after.end());
    for (const auto& entry : all) {
        const auto& what = entry.first;
        append(text, count_change_words(count_of(after, what) - count_of(before, what),
                                        put(what, false), put(what, true)));
    }
}

void append_pieces(std::string& text, const Tally& before, const Tally& after) {
    append_counts(text, before.kinds, after.kinds, [](PieceKind kind, bool is_many) {
        return is_many ? many_of(kind) : one_of(kind);
    });
}

void append_fasteners(std::string& text, const Tally& before, const Tally& after) {
    append_counts(text, before.fasteners, after.fasteners, said);
    append_counts(text, before.nuts, after.nuts,
                  [](const std::string& id, bool is_many) { return id + (is_many ? "s" : ""); });
}

std::string number_text(double value, int decimals) {
    std::array<char, 32> buffer{};
    const auto end = std::to_chars(buffer.data(), buffer.data() + buffer.size(), value,
                                   std::chars_format::fixed, decimals)
                         .ptr;
    return {buffer.data(), end};
}

// ---- lengths ------------------------------------------------------------------------------------

// Members of one direction that have changed by the same length.
struct Stretch {
    Length by;
    Axis run = Axis::x;
    int count = 0;
    std::string first;  // name of the first one

    std::string who() const {
        if (count == 1) return first;
        constexpr std::array<const char*, 3> called{"x-rails", "y-rails", "posts"};
        return std::to_string(count) + " " + called[index_of(run)];
    }
};

void add_to(std::vector<Stretch>& stretches, const Member& member, Length by) {
    const auto at = std::find_if(stretches.begin(), stretches.end(), [&](const Stretch& it) {
        return it.by == by && it.run == member.run;
    });
    if (at != stretches.end()) {
        ++at->count;
    } else {
        stretches.push_back({.by = by, .run = member.run, .count = 1, .first = member.name});
    }
}

struct KnownMember {
    const Member* member = nullptr;
    Length length;
};

std::unordered_map<std::string_view, KnownMember> known_members(
    const Frame& frame, const std::vector<Length>& lengths) {
    std::unordered_map<std::string_view, KnownMember> known;
    for (std::size_t i = 0; i < frame.members.size() && i < lengths.size(); ++i) {
        known.try_emplace(frame.members[i].name, KnownMember{&frame.members[i], lengths[i]});
    }
    return known;
}

void compare_frames(std::vector<Stretch>& stretches,
                    const std::unordered_map<std::string_view, KnownMember>& before,
                    const Frame& frame,
                    const std::vector<Length>& lengths) {
    for (std::size_t i = 0; i < frame.members.size() && i < lengths.size(); ++i) {
        const auto at = before.find(frame.members[i].name);
        if (at == before.end() || at->second.member->run != frame.members[i].run) continue;
        // A member with no piece at all was left out for a reason that is told elsewhere.
        const bool is_there = at->second.length != Length{} && lengths[i] != Length{};
        if (!is_there || at->second.length == lengths[i]) continue;
        add_to(stretches, frame.members[i], lengths[i] - at->second.length);
    }
}

std::vector<Stretch> stretches_of(const Project& before_project,
                                  const Tally& before,
                                  const Project& after_project,
                                  const Tally& after) {
    std::vector<Stretch> stretches;
    for (std::size_t f = 0; f < after.member_lengths.size(); ++f) {
        const auto& frame = after_project.frames[f];
        for (std::size_t g = 0; g < before.member_lengths.size(); ++g) {
            if (before_project.frames[g].name != frame.name) continue;
            compare_frames(stretches,
                           known_members(before_project.frames[g], before.member_lengths[g]), frame,
                           after.member_lengths[f]);
            break;
        }
    }
    std::ranges::stable_sort(stretches, std::ranges::greater{}, &Stretch::count);
    return stretches;
}

// The nearest 1/64 in or 0.1 mm, and one of them at least: pieces that lean end between the marks.
std::string nearest_mark_in_words(Length by, const engine::TapeStyle& style) {
    const auto unit = engine::bare_unit(style);
    const bool is_inch = unit == engine::LengthUnit::inch || unit == engine::LengthUnit::foot;
    const auto mark = is_inch ? Length::nm_per_inch / 64 : Length::nm_per_mm / 10;
    const auto marks = std::max<std::int64_t>(1, (by.nm() + mark / 2) / mark);
    return length_in_words(Length::from_nm(marks * mark), style);
}

}  // namespace

Tally tally_of(const Project& project,
               const Catalogue& catalogue,
               const Resolved& resolved,
               const std::vector<double>& weights_kg) {
    Tally tally;
    for (const auto& piece : resolved.pieces) ++tally.kinds[piece.kind];
    tally.holes = static_cast<int>(resolved.holes.size());
    count_fasteners(tally, catalogue, resolved);
    tally.weight_kg = std::accumulate(weights_kg.begin(), weights_kg.end(), 0.0);
    add_member_lengths(tally, project, resolved);
    return tally;
}

int piece_count(const Tally& tally) { return total(tally.kinds); }

int fastener_count(const Tally& tally) { return total(tally.fasteners); }

std::string count_change_words(int by, const std::string& one, const std::string& many) {
    if (by == 0) return {};
    const int count = std::abs(by);
    return sign_of(by > 0) + std::to_string(count) + " " + (count == 1 ? one : many);
}

std::string weight_change_words(double by_kg, const engine::TapeStyle& shown) {
    const double kg = std::abs(by_kg);
    const auto unit = engine::bare_unit(shown);
    const bool is_inch = unit == engine::LengthUnit::inch || unit == engine::LengthUnit::foot;
    if (kg < (is_inch ? 0.05 * kg_per_ounce : 0.0005)) return {};  // would be told as 0
    std::string text = weight_text(kg, shown);
    if (is_inch && kg < 16.0 * kg_per_ounce) text = number_text(kg / kg_per_ounce, 1) + " oz";
    if (!is_inch && kg < 1.0) text = number_text(kg * 1000.0, 0) + " g";
    return sign_of(by_kg > 0.0) + text;
}

std::string part_change_words(const Tally& before, const Tally& after) {
    std::string text;
    append_pieces(text, before, after);
    append_fasteners(text, before, after);
    return text;
}

std::string change_words(const Tally& before, const Tally& after, const engine::TapeStyle& shown) {
    std::string text;
    append_pieces(text, before, after);
    append(text, count_change_words(after.holes - before.holes, "hole", "holes"));
    append_fasteners(text, before, after);
    append(text, weight_change_words(after.weight_kg - before.weight_kg, shown));
    return text;
}

std::string length_change_words(const Project& before_project,
                                const Tally& before,
                                const Project& after_project,
                                const Tally& after) {
    constexpr std::size_t most_told = 3;
    const auto stretches = stretches_of(before_project, before, after_project, after);
    std::string text;
    int untold = 0;
    for (std::size_t i = 0; i < stretches.size(); ++i) {
        const auto& it = stretches[i];
        if (i >= most_told) {
            untold += it.count;
            continue;
        }
        const bool is_longer = it.by > Length{};
        append(text, it.who() + " " +
                         nearest_mark_in_words(is_longer ? it.by : -it.by, after_project.shown) +
                         (is_longer ? " longer" : " shorter"));
    }
    if (untold == 1) append(text, "1 other by another length");
    if (untold > 1) append(text, std::to_string(untold) + " others by other lengths");
    return text;
}

}  // namespace model
