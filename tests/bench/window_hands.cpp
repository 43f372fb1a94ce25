#include "tests/bench/window_hands.h"

#include "editor/keys.h"

#include "tests/bench/must.h"

#include <cstddef>
#include <optional>
#include <string>
#include <vector>

namespace tests {
namespace {

// Within the view, away from its middle, which tags may cover, and never twice at one place.
class Wanderer {
public:
    explicit Wanderer(OffscreenWindow& window)
        : window_{window}, view_{window.item("View/picture")} {}

    void step(float across, float down) {
        x_ = x_ + across > 0.9F ? x_ + across - 0.8F : x_ + across;
        y_ = y_ + down > 0.9F ? y_ + down - 0.8F : y_ + down;
        window_.input.move(view_.left + x_ * (view_.right - view_.left),
                           view_.top + y_ * (view_.bottom - view_.top));
    }

private:
    OffscreenWindow& window_;
    editor::ItemRecord view_;
    float x_ = 0.1F;
    float y_ = 0.85F;
};

void take_hold(OffscreenWindow& window, Wanderer& hand) {
    hand.step(0.0F, 0.0F);
    window.build_frames();
    window.input.button(0, true);
    hand.step(0.05F, 0.0F);  // further than a click may slip
    window.show();
}

void turn_a_little(OffscreenWindow& window, Wanderer& hand) {
    const auto before = window.scenes_drawn();
    hand.step(0.0113F, 0.0F);
    window.build_frames();
    window.paint_scene();
    window.paint_panels();
    must(window.scenes_drawn() == before + 1, "the view turns with the mouse");
}

// So many of each, before what was drawn is waited for.
template <class First, class Second>
SpentInTurn in_turn(const OffscreenWindow& window,
                    int times,
                    const First& first,
                    const Second& second) {
    const auto all_of = [&](const auto& draw) {
        return [&window, &draw, times] {
            for (int i = 0; i < times; ++i) draw();
            window.finish();
        };
    };
    return spent_in_turn([] {}, all_of(first), all_of(second));
}

// Some places over bars; of each two that follow one another the bar differs.
std::vector<ImVec2> places_of_bars(OffscreenWindow& window) {
    std::vector<ImVec2> places;
    Wanderer hand{window};
    const auto& hovered = window.desk.ui.view.hovered;
    std::optional<model::Index> first;
    std::optional<model::Index> last;
    for (int i = 0; i < 10'000 && places.size() < 8; ++i) {
        hand.step(0.0731F, 0.1171F);
        window.build_frames();
        if (!hovered || hovered == last || hovered == first) continue;
        if (!first) first = hovered;
        last = hovered;
        places.push_back(ImGui::GetIO().MousePos);
    }
    must(places.size() > 1, "the pointer comes over bars");
    return places;
}

// Into the list's field, without the key that ends it.
void write_depth(OffscreenWindow& window, const std::string& text) {
    window.settle();
    window.click("Lay out/depth");
    window.press('A', editor::key::left_control);
    window.type(text);
    window.show();
}

}  // namespace

model::Project with_typed_depth(model::Project project) {
    project.dimensions.push_back({.name = "depth", .formula = "16 in"});
    for (auto& frame : project.frames) {
        for (auto& plane : frame.planes) {
            if (plane.axis != model::Axis::y || plane.position == "0 in") continue;
            plane.position = "depth + (" + plane.position + ") - 16 in";
        }
    }
    return project;
}

void show_all(OffscreenWindow& window) {
    editor::see_from(window.desk, engine::ViewFrom::corner);
    window.settle();
}

Turned turn_view(OffscreenWindow& window, BareDraw& bare) {
    show_all(window);
    Wanderer hand{window};
    take_hold(window, hand);
    const auto turn = [&] { turn_a_little(window, hand); };
    const auto turn_bare = [&] { bare.turn_and_draw(); };
    const Turned turned{in_turn(window, 1, turn, turn_bare), in_turn(window, 5, turn, turn_bare)};
    window.input.button(0, false);
    show_all(window);
    return turned;
}

Spent point_at_bars(OffscreenWindow& window) {
    show_all(window);
    const auto places = places_of_bars(window);
    std::size_t next = 0;
    return median_spent([&] {
        const auto before = window.scenes_drawn();
        const auto& place = places[next++ % places.size()];
        window.input.move(place.x, place.y);
        window.show();
        must(window.scenes_drawn() == before + 1, "the bar under the pointer is shown as such");
    });
}

SpentInTurn type_depth(OffscreenWindow& window, BareDraw& bare) {
    show_all(window);
    int typed = 0;
    const auto write = [&] { write_depth(window, "16 " + std::to_string(++typed) + "/64"); };
    const auto end_typing = [&] {
        const auto before = window.desk.history.revision();
        const auto scenes = window.scenes_drawn();
        window.press(editor::key::enter);
        window.show();
        must(window.desk.history.revision() != before, "the typed depth is taken");
        must(window.scenes_drawn() == scenes + 1, "the new skeleton is drawn");
    };
    const auto spent = spent_in_turn(write, end_typing, [&] {
        bare.turn_and_draw();
        window.finish();
    });
    window.settle();
    return spent;
}

}  // namespace tests
