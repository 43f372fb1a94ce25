#include "editor/places/hole_signs.h"

#include "editor/kit/item_log.h"
#include "editor/kit/widgets.h"

#include <algorithm>
#include <numbers>
#include <string>

namespace editor {
namespace {

constexpr float entry_height = 17.0F;
constexpr float sign_room = 22.0F;
constexpr float legend_radius = 3.2F;
constexpr const char* matched_words = "drill through its mate";

void draw_cross(ImDrawList& on, ImVec2 at, float reach, ImU32 ink) {
    on.AddLine({at.x - reach, at.y}, {at.x + reach, at.y}, ink, scaled(1));
    on.AddLine({at.x, at.y - reach}, {at.x, at.y + reach}, ink, scaled(1));
}

void draw_diagonals(ImDrawList& on, ImVec2 at, float reach, ImU32 ink) {
    on.AddLine({at.x - reach, at.y - reach}, {at.x + reach, at.y + reach}, ink, scaled(1));
    on.AddLine({at.x - reach, at.y + reach}, {at.x + reach, at.y - reach}, ink, scaled(1));
}

// Three quarters of a circle outside of the hole stand for the thread, open at the upper right
// (ISO 6410-1, from memory).
void draw_thread(ImDrawList& on, ImVec2 at, float radius, ImU32 ink) {
    constexpr float quarter = std::numbers::pi_v<float> / 2;
    on.PathArcTo(at, radius, 0.0F, 3 * quarter, 24);
    on.PathStroke(ink, ImDrawFlags_None, scaled(1.2F));
}

// A pennant on the hole: drilled where the parts are put together (as ISO 5845-1 marks holes that
// are not drilled in the shop, from memory).
void draw_flag(ImDrawList& on, ImVec2 at, float radius, ImU32 ink) {
    const ImVec2 foot{at.x + 0.7F * radius, at.y - 0.7F * radius};
    const ImVec2 top{foot.x + scaled(4), foot.y - scaled(6)};
    on.AddLine(foot, top, ink, scaled(1));
    on.AddTriangleFilled(top, {top.x + scaled(5), top.y + scaled(1)},
                         {top.x - scaled(1.5F), top.y + scaled(4)}, ink);
}

struct LegendPlace {
    HoleLook look;
    const char* words = "";
    ImVec2 at;
};

// From left to right, and on to the next line where one is full.
std::vector<LegendPlace> legend_places(const HoleLegend& legend, float width) {
    std::vector<LegendPlace> places;
    const float gap = scaled(10);
    ImVec2 pen{0, 0};
    const auto add = [&](const HoleLook& look, const char* words) {
        const float room = scaled(sign_room) + size_of_text(words, Type::small).x;
        if (pen.x > 0.0F && pen.x + room > width) pen = {0, pen.y + scaled(entry_height)};
        places.push_back({look, words, pen});
        pen.x += room + gap;
    };
    const float radius = scaled(legend_radius);
    for (const auto sign : legend.signs)
        add({sign, false, radius, colour::scribed}, words_of(sign));
    if (legend.has_matched)
        add({legend.signs.front(), true, radius, colour::scribed}, matched_words);
    return places;
}

}  // namespace

void draw_hole_sign(ImDrawList& on, ImVec2 at, const HoleLook& look) {
    const float radius = look.radius;
    on.AddCircle(at, radius, look.ink, 0, scaled(1.4F));
    switch (look.sign) {
        case HoleSign::rivet:
            draw_cross(on, at, radius + scaled(3.5F), look.ink);
            break;
        case HoleSign::tapped:
            draw_thread(on, at, radius + scaled(3), look.ink);
            break;
        case HoleSign::screw:
            on.AddNgon(at, radius + scaled(4), look.ink, 6, scaled(1.2F));
            break;
        case HoleSign::rivet_nut: {
            const float reach = radius + scaled(2.5F);
            on.AddRect({at.x - reach, at.y - reach}, {at.x + reach, at.y + reach}, look.ink, 0, 0,
                       scaled(1.2F));
            break;
        }
        case HoleSign::countersunk:
            on.AddCircle(at, radius + scaled(3), look.ink, 0, scaled(1.4F));
            break;
        case HoleSign::van:
            draw_diagonals(on, at, radius + scaled(2), look.ink);
            break;
    }
    if (look.is_matched) draw_flag(on, at, radius, look.ink);
}

HoleLegend hole_legend(const model::Resolved& resolved, const model::Piece& piece) {
    HoleLegend legend;
    for (auto h = piece.first_hole; h < piece.first_hole + piece.hole_count; ++h) {
        const auto& hole = resolved.holes[h];
        legend.signs.push_back(sign_of(resolved, hole));
        if (hole.operation == model::HoleOperation::match_drill) legend.has_matched = true;
    }
    std::ranges::sort(legend.signs);
    // std::ranges::unique gives what clang 14 cannot compile.
    legend.signs.erase(std::unique(legend.signs.begin(), legend.signs.end()), legend.signs.end());
    return legend;
}

float height_of_legend(const HoleLegend& legend, float width) {
    const auto places = legend_places(legend, width);
    return places.empty() ? 0.0F : places.back().at.y + scaled(entry_height);
}

void draw_legend(ImDrawList& on, ImVec2 at, const HoleLegend& legend, float width) {
    for (const auto& it : legend_places(legend, width)) {
        const ImVec2 low{at.x + it.at.x, at.y + it.at.y};
        draw_hole_sign(on, {low.x + scaled(9), low.y + scaled(entry_height / 2)}, it.look);
        const float reach = draw_text_at(on, {low.x + scaled(sign_room), low.y}, it.words,
                                         Type::small, colour::scribed);
        log_rectangle(std::string("sign: ") + it.words,
                      {low.x, low.y, low.x + scaled(sign_room) + reach,
                       low.y + scaled(entry_height), true, true, it.words});
    }
}

}  // namespace editor
