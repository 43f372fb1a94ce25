#include "editor/view/piece_colours.h"

#include "editor/places/piece_words.h"
#include "editor/room_facts.h"
#include "editor/selection.h"
#include "model/room/clearance.h"

#include <algorithm>
#include <array>
#include <map>

namespace editor {
namespace {

using engine::Colour;
using model::Index;

struct Dye {
    Colour colour;
    std::string_view name;
};

// Told apart in grey as well as may be, and none of them the dye of what is chosen.
constexpr std::array dyes{Dye{{0x6F, 0x9B, 0xC9}, "blue"},   Dye{{0xE0, 0xA8, 0x3E}, "yellow"},
                          Dye{{0x7A, 0xAE, 0x68}, "green"},  Dye{{0xCB, 0x72, 0x5C}, "brick"},
                          Dye{{0x9C, 0x86, 0xC6}, "violet"}, Dye{{0x5F, 0xB0, 0xA8}, "teal"},
                          Dye{{0xDC, 0x95, 0xB2}, "rose"},   Dye{{0xA8, 0x8A, 0x62}, "brown"},
                          Dye{{0x9F, 0xCB, 0xE6}, "sky"},    Dye{{0xC3, 0xCF, 0x6E}, "lime"},
                          Dye{{0x8A, 0x93, 0x9E}, "slate"},  Dye{{0xEE, 0xCF, 0xA0}, "straw"}};

constexpr Dye is_wrong{{0xD4, 0x5B, 0x4C}, "red"};
constexpr Dye is_doubtful{{0xE6, 0xAC, 0x3F}, "amber"};
constexpr Dye is_well{{0x86, 0xB0, 0x78}, "green"};
constexpr Dye is_plain{{0xDC, 0xDE, 0xE0}, "pale"};

// Pieces of one word have one colour; words take the colours in the order in which they come, and
// share one where there are more.
PieceColours by_word(const std::vector<std::string>& words) {
    std::map<std::string, std::size_t> dye_of;
    PieceColours made;
    for (const auto& word : words) {
        const auto [at, is_new] = dye_of.try_emplace(word, dye_of.size() % dyes.size());
        const Dye& dye = dyes[at->second];
        made.of_pieces.push_back(dye.colour);
        if (at->second >= made.legend.size()) {
            made.legend.push_back({dye.colour, std::string(dye.name), {}, 0});
        }
        auto& row = made.legend[at->second];
        if (is_new) row.words += (row.words.empty() ? "" : ", ") + word;
        ++row.count;
    }
    return made;
}

std::string_view word_of_sheet(model::PieceKind kind) {
    if (kind == model::PieceKind::panel) return "panels";
    return kind == model::PieceKind::shim ? "shims" : "gussets";
}

PieceColours by_stock(const Derived& derived) {
    std::vector<std::string> words;
    for (const auto& piece : derived.resolved.pieces) {
        const auto& stocks = derived.project->stock;
        words.emplace_back(piece.stock < stocks.size() ? std::string_view(stocks[piece.stock].name)
                                                       : word_of_sheet(piece.kind));
    }
    return by_word(words);
}

PieceColours by_mark(const Derived& derived) {
    std::vector<std::string> words;
    for (Index i = 0; i < derived.resolved.pieces.size(); ++i) {
        const auto mark = mark_text(derived, i);
        words.push_back(mark.empty() ? "no mark" : mark);
    }
    return by_word(words);
}

struct Level {
    Dye dye;
    std::string_view words;
};

// The worst of each piece's levels; level 0 where it has none.
PieceColours by_level(const std::vector<std::size_t>& level_of, const std::vector<Level>& levels) {
    PieceColours made;
    for (const auto& level : levels) {
        made.legend.push_back(
            {level.dye.colour, std::string(level.dye.name), std::string(level.words), 0});
    }
    for (const auto level : level_of) {
        made.of_pieces.push_back(levels[level].dye.colour);
        ++made.legend[level].count;
    }
    std::ranges::reverse(made.legend);  // the worst first
    return made;
}

PieceColours by_finding(const Derived& derived) {
    std::vector<std::size_t> levels(derived.resolved.pieces.size(), 0);
    for (const auto& finding : derived.findings) {
        if (finding.severity == model::Severity::note) continue;
        const std::size_t level = finding.severity == model::Severity::error ? 2 : 1;
        const auto chosen =
            selection_of_subjects(*derived.project, derived.resolved, finding.concerns);
        for (const auto piece : selected_pieces(*derived.project, derived.resolved, chosen)) {
            levels[piece] = std::max(levels[piece], level);
        }
    }
    return by_level(levels, {{is_plain, "nothing to say"},
                             {is_doubtful, "to look at"},
                             {is_wrong, "not fit to cut from"}});
}

PieceColours by_clearance(const Derived& derived, const model::Catalogue& catalogue) {
    std::vector<model::Finding> ignored;
    const auto obstacles =
        model::room_obstacles(*derived.project, derived.resolved, *derived.scans, ignored);
    const auto places =
        model::near_places(derived.resolved, catalogue, obstacles,
                           {.reach = near_reach_mm, .boxes_beyond = true, .with_depth = false});
    std::vector<std::size_t> levels(derived.resolved.pieces.size(), 0);
    for (const auto& place : places) {
        const auto at =
            std::ranges::find(obstacles, place.obstacle, &model::RoomObstacle::obstacle);
        if (at == obstacles.end()) continue;
        const bool is_near = place.distance * 1e6 < static_cast<double>(at->wanted);
        const std::size_t level = place.distance <= 0.0 ? 3 : is_near ? 2 : 1;
        auto& own = levels[place.thing.piece];
        own = std::max(own, level);
    }
    return by_level(levels, {{is_plain, "nothing of the room near"},
                             {is_well, "clear of the room by enough"},
                             {is_doubtful, "nearer than the clearance"},
                             {is_wrong, "touches or stands in something"}});
}

}  // namespace

PieceColours piece_colours(ColourBy by, const Derived& derived, const model::Catalogue& catalogue) {
    switch (by) {
        case ColourBy::metal:
            break;
        case ColourBy::stock:
            return by_stock(derived);
        case ColourBy::mark:
            return by_mark(derived);
        case ColourBy::finding:
            return by_finding(derived);
        case ColourBy::clearance:
            return by_clearance(derived, catalogue);
    }
    return {};
}

std::string_view words_of(ColourBy by) {
    constexpr std::array<std::string_view, 5> words{"as metal", "by stock", "by mark", "by finding",
                                                    "by clearance"};
    return words[static_cast<std::size_t>(by)];
}

}  // namespace editor
