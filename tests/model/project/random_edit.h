// Edits of all kinds, sensible or not, that meet one another.
#pragma once

#include "model/project/edit.h"

#include <array>
#include <cstddef>
#include <random>
#include <string>
#include <utility>

namespace model_tests {

// Draws small things from a few names, so that edits meet one another.
class Draw {
public:
    explicit Draw(unsigned seed) : random_{seed} {}

    std::size_t below(std::size_t n) { return random_() % n; }
    bool coin() { return below(2) == 0; }

    template <std::size_t n>
    std::string one_of(const std::array<const char*, n>& texts) {
        return texts[below(n)];
    }

    std::string dimension() {
        return one_of(std::array{"width", "width max", "lean", "depth", "step height", "", "2nd"});
    }
    std::string plane() {
        return one_of(std::array{"left", "right", "front", "back", "bottom", "top", "mid", ""});
    }
    std::string bar() { return one_of(std::array{"post", "rail", "brace", "mid post", "strut"}); }
    std::string bay() { return one_of(std::array{"lower", "upper", "side"}); }
    std::string stock() { return one_of(std::array{"angle", "flat", "tube"}); }
    std::string frame() { return one_of(std::array{"counter", "counter", "locker", "box"}); }
    std::string note() {
        return one_of(std::array{"", "\"quoted\"\n", "½ in ø", "\xc3\x28", "ok"});
    }
    model::Formula formula() {
        return one_of(std::array{"0", "12", "36 in", "width / 2", "depth - 1/8 in",
                                 "max(width, depth)", "step height + 3 mm", "((", "", "7 +"});
    }
    std::string replaced(std::string name) { return coin() ? "" : std::move(name); }
    model::Axis axis() { return static_cast<model::Axis>(below(3)); }
    model::Sense sense() { return coin() ? model::Sense::plus : model::Sense::minus; }

private:
    std::mt19937 random_;
};

model::Edit random_edit(Draw& draw);

// The full project, with a frame that can be stepped over an obstacle.
model::Project project_to_edit();

}  // namespace model_tests
