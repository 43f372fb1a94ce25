#include "editor/kit/trade_pictures.h"

#include "editor/kit/theme.h"
#include "editor/kit/widgets.h"

#include <cmath>
#include <initializer_list>
#include <string_view>

namespace editor {
namespace {

constexpr float field_height = 62.0F;  // of a field 100 wide, y up

class Sheet {
public:
    Sheet(ImDrawList& on, ImVec2 at, float width) : on_{on}, at_{at}, unit_{width / 100} {
        on_.AddRectFilled(at, place(100, 0), colour::paper, scaled(3));
    }

    void metal(float x0, float y0, float x1, float y1) {
        fill(x0, y0, x1, y1, colour::metal, colour::metal_edge);
    }
    // What the word means.
    void meant(float x0, float y0, float x1, float y1) {
        fill(x0, y0, x1, y1, colour::dye_coat, colour::dye);
    }
    void shape(std::initializer_list<ImVec2> corners, bool is_meant) {
        for (const auto& it : corners) on_.PathLineTo(place(it.x, it.y));
        on_.PathFillConvex(is_meant ? colour::dye_coat : colour::metal);
        for (const auto& it : corners) on_.PathLineTo(place(it.x, it.y));
        on_.PathStroke(is_meant ? colour::dye : colour::metal_edge, ImDrawFlags_Closed,
                       scaled(1.2F));
    }
    void hole(float x, float y, float radius = 2.6F) {
        on_.AddCircleFilled(place(x, y), radius * unit_, colour::paper, 20);
        on_.AddCircle(place(x, y), radius * unit_, colour::ink, 20, scaled(1.2F));
    }
    void dot(float x, float y) { on_.AddCircleFilled(place(x, y), 2.4F * unit_, colour::dye, 16); }
    void line(float x0, float y0, float x1, float y1, ImU32 ink, float thick = 1.2F) {
        on_.AddLine(place(x0, y0), place(x1, y1), ink, scaled(thick));
    }
    void dashes(float x0, float y0, float x1, float y1, ImU32 ink) {
        const float length = std::hypot(x1 - x0, y1 - y0);
        for (float at = 0; at < length; at += 5) {
            const float to = std::fmin(at + 3, length);
            line(x0 + (x1 - x0) * at / length, y0 + (y1 - y0) * at / length,
                 x0 + (x1 - x0) * to / length, y0 + (y1 - y0) * to / length, ink);
        }
    }
    // A measure with a bar at each end.
    void measure(float x0, float y0, float x1, float y1) {
        line(x0, y0, x1, y1, colour::dye, 1.8F);
        const float length = std::hypot(x1 - x0, y1 - y0);
        const float across_x = (y1 - y0) / length * 2.5F;
        const float across_y = (x0 - x1) / length * 2.5F;
        line(x0 - across_x, y0 - across_y, x0 + across_x, y0 + across_y, colour::dye, 1.8F);
        line(x1 - across_x, y1 - across_y, x1 + across_x, y1 + across_y, colour::dye, 1.8F);
    }
    void word(float x, float y, std::string_view text, bool is_meant = false) {
        const ImVec2 at = place(x, y);
        draw_text_at(on_, {at.x, at.y - scaled(7)}, text, Type::small,
                     is_meant ? colour::dye : colour::quiet, Align::middle);
    }

private:
    void fill(float x0, float y0, float x1, float y1, ImU32 ground, ImU32 edge) {
        on_.AddRectFilled(place(x0, y1), place(x1, y0), ground);
        on_.AddRect(place(x0, y1), place(x1, y0), edge, 0, 0, scaled(1.2F));
    }
    ImVec2 place(float x, float y) const {
        return {at_.x + x * unit_, at_.y + (field_height - y) * unit_};
    }

    ImDrawList& on_;
    ImVec2 at_;
    float unit_;
};

void draw_angle(Sheet& sheet, std::string_view word) {
    const bool is_leg = word == "leg";
    is_leg ? sheet.meant(30, 10, 38, 54) : sheet.metal(30, 10, 38, 54);
    sheet.metal(30, 10, 78, 18);
    sheet.word(19, 34, "leg", is_leg);
    sheet.word(56, 25, "leg", false);
    sheet.word(22, 7, "heel", word == "heel");
    sheet.word(34, 58, "toe", word == "toe");
    sheet.word(88, 14, "toe", word == "toe");
    sheet.word(52, 38, "root", word == "root");
    sheet.line(47, 34, 40, 21, word == "root" ? colour::dye : colour::quiet);
    if (word == "heel") sheet.dot(30, 10);
    if (word == "root") sheet.dot(38, 18);
    if (word == "toe") {
        sheet.dot(34, 54);
        sheet.dot(78, 14);
    }
}

void draw_gauge(Sheet& sheet) {
    sheet.metal(8, 14, 92, 48);
    sheet.line(8, 19, 92, 19, colour::metal_edge);
    sheet.hole(44, 34);
    sheet.dashes(44, 34, 66, 34, colour::quiet);
    sheet.measure(64, 14, 64, 34);
    sheet.word(78, 27, "gauge", true);
    sheet.word(20, 8, "heel");
    sheet.word(20, 55, "toe");
}

void draw_pitch(Sheet& sheet) {
    sheet.metal(8, 14, 92, 44);
    sheet.hole(30, 28);
    sheet.hole(64, 28);
    sheet.measure(30, 50, 64, 50);
    sheet.dashes(30, 30, 30, 50, colour::quiet);
    sheet.dashes(64, 30, 64, 50, colour::quiet);
    sheet.word(47, 57, "pitch", true);
}

void draw_edge_distance(Sheet& sheet) {
    sheet.metal(8, 10, 76, 50);
    sheet.hole(56, 32);
    sheet.measure(56, 32, 76, 32);
    sheet.measure(56, 32, 56, 50);
    sheet.word(88, 32, "end", true);
    sheet.word(56, 57, "edge", true);
}

void draw_grip(Sheet& sheet, std::string_view word) {
    const bool is_stack = word == "stack";
    is_stack ? sheet.meant(12, 32, 72, 40) : sheet.metal(12, 32, 72, 40);
    is_stack ? sheet.meant(12, 22, 72, 32) : sheet.metal(12, 22, 72, 32);
    sheet.shape({{36, 22}, {46, 22}, {46, 40}, {36, 40}}, false);
    sheet.shape({{31, 40}, {51, 40}, {47, 47}, {35, 47}}, false);
    sheet.shape({{33, 15}, {49, 15}, {46, 22}, {36, 22}}, false);
    sheet.measure(80, 22, 80, 40);
    sheet.word(89, 31, word, true);
    sheet.word(41, 54, "head");
    sheet.word(41, 9, "tail");
}

void draw_lap(Sheet& sheet) {
    sheet.metal(40, 4, 60, 58);
    sheet.metal(8, 22, 92, 42);
    sheet.meant(40, 22, 60, 42);
    sheet.hole(50, 28);
    sheet.hole(50, 36);
    sheet.word(74, 50, "lap", true);
}

void draw_gusset(Sheet& sheet) {
    sheet.metal(14, 4, 30, 58);
    sheet.metal(30, 42, 92, 58);
    sheet.shape({{16, 16}, {28, 16}, {70, 44}, {70, 56}, {16, 56}}, true);
    sheet.hole(22, 24);
    sheet.hole(22, 36);
    sheet.hole(44, 50);
    sheet.hole(60, 50);
    sheet.word(70, 26, "gusset", true);
}

void draw_cleat(Sheet& sheet) {
    sheet.metal(14, 4, 26, 58);
    sheet.metal(27, 38, 92, 50);
    sheet.meant(26, 18, 31, 38);
    sheet.meant(26, 33, 52, 38);
    sheet.word(62, 26, "cleat", true);
}

void draw_strap(Sheet& sheet) {
    sheet.metal(14, 4, 32, 58);
    sheet.metal(33, 22, 92, 40);
    sheet.meant(16, 25, 72, 37);
    for (const float x : {20.0F, 27.0F, 44.0F, 62.0F}) sheet.hole(x, 31, 2.2F);
    sheet.word(62, 50, "strap", true);
}

void draw_splice(Sheet& sheet) {
    sheet.meant(24, 22, 76, 32);
    sheet.metal(4, 32, 49.5F, 42);
    sheet.metal(50.5F, 32, 96, 42);
    for (const float x : {30.0F, 42.0F, 58.0F, 70.0F}) {
        sheet.line(x, 18, x, 46, colour::ink, 1.6F);
    }
    sheet.word(50, 12, "backing", true);
    sheet.word(50, 54, "butt");
}

void draw_cope(Sheet& sheet) {
    sheet.metal(10, 4, 18, 58);
    sheet.metal(18, 4, 30, 58);
    sheet.metal(19, 20, 92, 34);
    sheet.metal(31, 34, 92, 46);
    sheet.line(31, 34, 31, 46, colour::dye, 2.2F);
    sheet.line(19, 34, 31, 34, colour::dye, 2.2F);
    sheet.word(52, 54, "notched back", true);
}

void draw_mitre(Sheet& sheet) {
    sheet.shape({{16, 58}, {16, 4}, {32, 4}, {32, 42}}, false);
    sheet.shape({{17, 58}, {92, 58}, {92, 42}, {33, 42}}, false);
    sheet.line(16, 58.5F, 32.5F, 42, colour::dye, 2.2F);
    sheet.word(60, 28, "both cut aslant", true);
}

void draw_shim(Sheet& sheet) {
    sheet.metal(10, 36, 74, 46);
    sheet.meant(34, 30, 74, 36);
    sheet.metal(34, 18, 92, 30);
    sheet.word(20, 30, "shim", true);
}

void draw_kerf(Sheet& sheet) {
    sheet.metal(6, 18, 46, 40);
    sheet.metal(54, 18, 94, 40);
    sheet.meant(46, 18, 54, 40);
    sheet.measure(46, 47, 54, 47);
    sheet.word(50, 55, "kerf", true);
    sheet.word(26, 10, "a piece");
    sheet.word(74, 10, "the next");
}

void draw_end_trim(Sheet& sheet) {
    sheet.shape({{8, 20}, {20, 18}, {20, 42}, {12, 42}}, true);
    sheet.metal(22, 18, 94, 42);
    sheet.measure(8, 48, 21, 48);
    sheet.word(22, 56, "end trim", true);
    sheet.word(58, 10, "pieces are cut from here on");
}

void draw_frame_lines(Sheet& sheet) {
    sheet.metal(12, 6, 17, 56);
    sheet.metal(47, 6, 52, 56);
    sheet.metal(83, 6, 88, 56);
    sheet.metal(12, 6, 88, 11);
    sheet.metal(12, 51, 88, 56);
}

void draw_plane(Sheet& sheet) {
    draw_frame_lines(sheet);
    sheet.dashes(4, 30, 96, 30, colour::dye);
    sheet.word(68, 37, "shelf 15", true);
}

void draw_bay(Sheet& sheet) {
    draw_frame_lines(sheet);
    sheet.meant(17, 11, 47, 51);
    sheet.word(32, 31, "bay", true);
}

void draw_hands(Sheet& sheet) {
    sheet.metal(6, 14, 42, 24);
    sheet.metal(6, 24, 12, 50);
    sheet.metal(58, 14, 94, 24);
    sheet.meant(88, 24, 94, 50);
    sheet.hole(30, 19);
    sheet.hole(70, 19);
    sheet.dashes(50, 4, 50, 58, colour::dye);
    sheet.word(27, 44, "as drawn");
    sheet.word(72, 44, "opposite", true);
}

void draw_datum(Sheet& sheet) {
    sheet.metal(10, 14, 92, 34);
    sheet.hole(36, 24);
    sheet.hole(70, 24);
    sheet.line(10, 8, 10, 56, colour::dye, 2.2F);
    sheet.measure(10, 41, 36, 41);
    sheet.measure(10, 50, 70, 50);
    sheet.word(26, 7, "datum end", true);
}

void draw_square(Sheet& sheet) {
    sheet.metal(20, 6, 80, 10);
    sheet.metal(20, 52, 80, 56);
    sheet.metal(20, 6, 24, 56);
    sheet.metal(76, 6, 80, 56);
    sheet.measure(20, 6, 80, 56);
    sheet.measure(20, 56, 80, 6);
    sheet.word(50, 44, "the same", true);
}

void draw(Sheet& sheet, const TradeWord& word) {
    switch (word.picture) {
        case TermPicture::none:
            return;
        case TermPicture::angle:
            return draw_angle(sheet, word.word);
        case TermPicture::gauge:
            return draw_gauge(sheet);
        case TermPicture::pitch:
            return draw_pitch(sheet);
        case TermPicture::edge_distance:
            return draw_edge_distance(sheet);
        case TermPicture::grip:
            return draw_grip(sheet, word.word);
        case TermPicture::lap:
            return draw_lap(sheet);
        case TermPicture::gusset:
            return draw_gusset(sheet);
        case TermPicture::cleat:
            return draw_cleat(sheet);
        case TermPicture::strap:
            return draw_strap(sheet);
        case TermPicture::splice:
            return draw_splice(sheet);
        case TermPicture::cope:
            return draw_cope(sheet);
        case TermPicture::mitre:
            return draw_mitre(sheet);
        case TermPicture::shim:
            return draw_shim(sheet);
        case TermPicture::kerf:
            return draw_kerf(sheet);
        case TermPicture::end_trim:
            return draw_end_trim(sheet);
        case TermPicture::plane:
            return draw_plane(sheet);
        case TermPicture::bay:
            return draw_bay(sheet);
        case TermPicture::opposite_hand:
            return draw_hands(sheet);
        case TermPicture::datum_end:
            return draw_datum(sheet);
        case TermPicture::square:
            return draw_square(sheet);
    }
}

}  // namespace

float height_of_trade_picture(float width) { return width * field_height / 100; }

void draw_trade_picture(ImDrawList& on, ImVec2 at, float width, const TradeWord& word) {
    if (word.picture == TermPicture::none) return;
    Sheet sheet(on, at, width);
    draw(sheet, word);
}

}  // namespace editor
