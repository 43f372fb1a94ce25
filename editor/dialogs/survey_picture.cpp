#include "editor/dialogs/survey_picture.h"

#include "editor/kit/widgets.h"

#include <imgui.h>

#include <cmath>
#include <initializer_list>
#include <string>

namespace editor {
namespace {

// Draws in a field of 100 x 100 units, x to the right and y up, or mirrored.
class Sheet {
public:
    Sheet(float width, float height, char active, bool is_mirrored)
        : at_{ImGui::GetCursorScreenPos()},
          size_{scaled(width), scaled(height)},
          on_{*ImGui::GetWindowDrawList()},
          active_{active},
          is_mirrored_{is_mirrored} {
        on_.AddRectFilled(at_, {at_.x + size_.x, at_.y + size_.y}, colour::paper, scaled(3));
    }
    ~Sheet() { ImGui::Dummy(size_); }
    Sheet(const Sheet&) = delete;
    Sheet& operator=(const Sheet&) = delete;

    void line(std::initializer_list<ImVec2> points, float thickness = 1.5F) {
        ImVec2 last{};
        bool is_first = true;
        for (const auto& point : points) {
            const ImVec2 here = place(point);
            if (!is_first) on_.AddLine(last, here, colour::ink, scaled(thickness));
            last = here;
            is_first = false;
        }
    }

    void body(std::initializer_list<ImVec2> corners) {
        for (const auto& corner : corners) on_.PathLineTo(place(corner));
        on_.PathFillConvex(colour::from_rgb(0xd6be8a));
        for (const auto& corner : corners) on_.PathLineTo(place(corner));
        on_.PathStroke(colour::from_rgb(0x8f743c), ImDrawFlags_Closed, scaled(1.5F));
    }

    // A dimension line with a bar at each end and its letter beside the middle.
    void length(char letter, ImVec2 from, ImVec2 to) {
        const bool is_hot = letter == active_;
        const ImU32 ink = is_hot ? colour::dye : colour::quiet;
        const float thick = scaled(is_hot ? 3.0F : 1.0F);
        const ImVec2 a = place(from);
        const ImVec2 b = place(to);
        on_.AddLine(a, b, ink, thick);
        const float size = std::hypot(b.x - a.x, b.y - a.y);
        const ImVec2 across{(b.y - a.y) / size * scaled(4), (a.x - b.x) / size * scaled(4)};
        for (const ImVec2& end : {a, b}) {
            on_.AddLine({end.x - across.x, end.y - across.y}, {end.x + across.x, end.y + across.y},
                        ink, thick);
        }
        const ImVec2 middle{(a.x + b.x) / 2, (a.y + b.y) / 2};
        const float text = scaled(15);
        on_.AddRectFilled({middle.x - text * 0.4F, middle.y - text * 0.5F},
                          {middle.x + text * 0.4F, middle.y + text * 0.5F}, colour::paper);
        draw_text_at(on_, {middle.x, middle.y - text * 0.55F}, std::string(1, letter),
                     is_hot ? Type::strong : Type::small, ink, Align::middle);
    }

    void word(ImVec2 at, const char* text) {
        const ImVec2 here = place(at);
        draw_text_at(on_, {here.x, here.y - scaled(7)}, text, Type::small, colour::quiet,
                     Align::middle);
    }

private:
    ImVec2 place(ImVec2 point) const {
        const float x = is_mirrored_ ? 100 - point.x : point.x;
        return {at_.x + size_.x * x / 100, at_.y + size_.y * (100 - point.y) / 100};
    }

    ImVec2 at_;
    ImVec2 size_;
    ImDrawList& on_;
    char active_;
    bool is_mirrored_;
};

void draw_well_from_above(Sheet& sheet) {
    sheet.line({{10, 14}, {90, 14}});
    sheet.line({{10, 86}, {90, 86}});
    sheet.line({{10, 14}, {10, 86}}, 2.5F);
    sheet.line({{90, 14}, {90, 86}}, 2.5F);
    sheet.body({{10, 36}, {30, 36}, {33, 39}, {33, 61}, {30, 64}, {10, 64}});
    sheet.length('a', {42, 14}, {42, 36});
    sheet.length('b', {42, 36}, {42, 64});
    sheet.length('c', {42, 64}, {42, 86});
    sheet.length('d', {70, 14}, {70, 86});
    sheet.length('l', {30, 36}, {36, 30});
    sheet.word({58, 8}, "bulkhead");
    sheet.word({58, 93}, "rear, from above");
}

void draw_well_across(Sheet& sheet) {
    sheet.line({{10, 24}, {10, 92}}, 2.5F);
    sheet.line({{90, 24}, {90, 92}}, 2.5F);
    sheet.line({{10, 24}, {90, 24}});
    sheet.body({{10, 24}, {38, 24}, {33.5F, 56}, {31, 61}, {28, 63}, {10, 63}});
    sheet.body({{90, 24}, {72, 24}, {74, 63}, {90, 63}});
    sheet.length('e', {18, 24}, {18, 63});
    sheet.length('f', {10, 17}, {38, 17});
    sheet.length('h', {38, 17}, {72, 17});
    sheet.length('i', {72, 17}, {90, 17});
    sheet.length('j', {10, 6}, {90, 6});
    sheet.length('g', {10, 72}, {33, 72});
    sheet.length('k', {29, 57}, {40, 68});
    sheet.word({60, 90}, "across the van");
}

}  // namespace

void draw_well_picture(float width, char active, bool is_right) {
    {
        Sheet sheet(width, width * 0.66F, active, is_right);
        draw_well_from_above(sheet);
    }
    Sheet sheet(width, width * 0.66F, active, is_right);
    draw_well_across(sheet);
}

void draw_wall_picture(float width, char active, bool is_right) {
    Sheet sheet(width, width * 0.85F, active, is_right);
    sheet.line({{10, 12}, {90, 12}});
    sheet.line({{10, 12}, {10, 48}, {14, 72}, {24, 92}}, 2.5F);
    sheet.line({{90, 12}, {90, 48}, {86, 72}, {76, 92}}, 2.5F);
    sheet.line({{46, 94}, {46, 20}}, 1.0F);
    sheet.body({{44.5F, 20}, {47.5F, 20}, {46, 15}});
    sheet.length('a', {66, 12}, {66, 64});
    sheet.length('b', {12.6F, 64}, {46, 64});
    sheet.length('c', {46, 64}, {87.4F, 64});
    sheet.length('d', {14, 74}, {86, 74});
    sheet.word({46, 97}, "plumb line");
    sheet.word({50, 5}, "across the van");
}

}  // namespace editor
